// For other programs: the shape is fixed by the contract.
import { JsonText } from '../json-text.ts';
import { messageOf, type ReportedAsk, type ReportedFinding, type ReportedJudgement, type ReportedPlace, type Unread } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'json',
  summary: 'for other programs, with every place and source',
  reader: 'program',
  begin,
};

/** The version of this shape, not of the program. */
const shapeVersion = 1;

function begin({ send }: Beginning): Writer {
  const json = new JsonText(send);
  const unreadable: Pick<Unread, 'path' | 'why'>[] = [];
  json.begin('{');
  json.value(shapeVersion, 'version');
  json.begin('[', 'files');
  return {
    file: ({ path, findings, account }) => {
      json.begin('{');
      json.value(path, 'path');
      json.begin('[', 'findings');
      for (const finding of findings()) json.value(shapeOf(finding));
      json.end();
      const { judged, of, open, asks } = account;
      json.value({ judged, of, open: open.map(openShape), asks: asks.map(askShape) }, 'judged');
      json.end();
    },
    unread: ({ path, why }) => void unreadable.push({ path, why }),
    end: ({ counts, judged }) => {
      json.end();
      if (unreadable.length > 0) json.value(unreadable, 'unreadable');
      json.value({ ...counts, notJudged: judged.of - judged.judged }, 'counts');
      json.end();
    },
  };
}

const shapeOf = (finding: ReportedFinding) => ({
  rule: finding.rule,
  severity: finding.severity,
  message: messageOf(finding),
  range: finding.range,
  related: finding.related.map(placeOf),
  source: finding.source,
});

const openShape = ({ what, lacks, range }: ReportedJudgement) => ({ what, lacks, range });
const askShape = ({ fact, path, range, settles }: ReportedAsk) => ({ fact, path, range, settles });

const placeOf = ({ message, path, range }: ReportedPlace) => ({ message, path, range });
