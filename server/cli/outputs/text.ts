// For people: every finding with its line, what is wrong, why that matters, and what to do.
import { caution } from '../../engine/inside.ts';
import { type Colours, coloursFor, count, excerptOf, guarded, linePath, visible, visiblePath, wrapped } from '../display.ts';
import {
  type CheckedFile,
  countsInWords,
  type JudgedTotals,
  type ReportedFinding,
  type ReportedJudgement,
  type Totals,
} from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'text',
  summary: 'for people: each finding with its line, why it matters and what to do',
  reader: 'person',
  begin,
};

/** Widest source line that is shown whole where no terminal sets a limit. */
const widestLine = 160;

function begin({ send, manner }: Beginning): Writer {
  const colours = coloursFor(manner.colour);
  let last: 'finding' | 'unread' | undefined;
  const part = (kind: 'finding' | 'unread', text: string): void => {
    // A blank line between the parts; what was not read is one part.
    send((last === undefined || (last === 'unread' && kind === 'unread') ? '' : '\n') + guarded(text));
    last = kind;
  };
  return {
    file: (file) => {
      for (const finding of file.findings()) part('finding', findingText(file, finding, colours, manner.columns));
      if (manner.account) part('finding', accountText(file, colours));
    },
    unread: ({ shown, why }) => part('unread', `${colours.strong(linePath(shown))} ${colours.error('not read')}: ${visible(why)}\n`),
    end: (totals) => {
      if (!manner.quiet)
        send(
          `${last === undefined ? '' : '\n'}${summaryOf(totals)}\n${guarded(judgedText(totals.judged))}${wrapped(caution, manner.columns ?? 0, '')}\n`,
        );
    },
  };
}

function findingText(file: CheckedFile, finding: ReportedFinding, colours: Colours, columns: number | undefined): string {
  const { start, end } = finding.range;
  const lines: string[] = [];
  const where = `${linePath(file.shown)}:${start.line}:${start.column}`;
  lines.push(`${colours.strong(where)} ${colours[finding.severity](finding.severity)} ${finding.rule}`);
  const number = String(start.line);
  const gutter = ' '.repeat(number.length);
  const room = Math.max(40, Math.min(widestLine, (columns ?? widestLine) - number.length - 5));
  const { line, carets } = excerptOf(
    finding.sourceLine,
    start.column - 1,
    end.line === start.line ? end.column - 1 : finding.sourceLine.length,
    room,
  );
  if (line.trim() !== '') {
    lines.push(`  ${colours.faint(`${number} |`)} ${line}`);
    lines.push(`  ${colours.faint(`${gutter} |`)} ${colours[finding.severity](carets)}`);
  }
  const say = (label: string, told: string): void => {
    if (told !== '') lines.push(wrapped(`  ${label}${visible(told)}`, columns ?? 0, '  '));
  };
  say('', finding.what);
  say('Why: ', finding.why);
  say('Do: ', finding.remedy);
  for (const { shown, range, message } of finding.related)
    say('See: ', `${visiblePath(shown)}:${range.start.line}:${range.start.column} ${message}`);
  say('Source: ', finding.source);
  return lines.join('\n') + '\n';
}

/** What was judged of one file, thing by thing. */
function accountText(file: CheckedFile, colours: Colours): string {
  const { draft, judged, of, all } = file.account;
  const head = `${colours.strong(linePath(file.shown))} ${draft ? 'DRAFT: ' : ''}judged ${judged} of ${of}`;
  return [head, ...all().map((one) => `  ${judgementText(one, colours)}`)].join('\n') + '\n';
}

function judgementText({ what, verdict, lacks, range }: ReportedJudgement, colours: Colours): string {
  const told = verdict === 'judged' || verdict === 'covered' ? verdict : colours.warning(verdict);
  return `${range.start.line}: ${visible(what)}: ${told}${lacks.length === 0 ? '' : `, lacks ${lacks.join(', ')}`}`;
}

/** `Judged 9 of 14. 3 facts would settle 5.`, with the questions that settle most. */
function judgedText({ judged, of, facts, asks, drafts }: JudgedTotals): string {
  const draft = drafts === 0 ? '' : `DRAFT: ${count(drafts, 'file')} in the stage of a draft.`;
  if (of === 0) return draft === '' ? '' : `${draft}\n`;
  const open = of - judged;
  const lines = [
    `${draft}${draft === '' ? '' : ' '}Judged ${judged} of ${of}.` +
      (open === 0 ? '' : ` ${count(facts, 'fact')} would settle ${open}${asks.length < facts ? '; --account tells all' : ''}.`),
  ];
  for (const { question, shown, range, settles, sites } of asks)
    lines.push(
      `  ${visible(question)} ${visiblePath(shown)}:${range.start.line}, settles ${settles}${sites > 1 ? ` in ${sites} sites` : ''}`,
    );
  return lines.join('\n') + '\n';
}

/** `8 files, 3 errors, 1 warning; 2 accepted` */
export function summaryOf(totals: Totals): string {
  const found = countsInWords(totals.counts);
  const out = [`${count(totals.files, 'file')}, ${found === '' ? 'no findings' : found}`];
  if (totals.accepted > 0) out.push(`${totals.accepted} accepted`);
  const held = countsInWords(totals.heldBack);
  if (held !== '') out.push(`${held} known from the baseline and not shown`);
  if (totals.unreadable > 0) out.push(`${totals.unreadable} could not be read`);
  return out.join('; ');
}
