// Workflow commands that GitHub shows beside the lines of a change.
import { visible } from '../display.ts';
import { messageOf, type Report } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'github',
  summary: 'workflow commands that GitHub shows beside the lines of a change',
  reader: 'program',
  write: written,
};

const commands = { error: 'error', warning: 'warning', note: 'notice' } as const;

function written(report: Report): string {
  let out = '';
  for (const { path, findings } of report.files)
    for (const finding of findings) {
      const { start, end } = finding.range;
      // Columns are only understood where the range stays on one line.
      const columns = start.line === end.line ? `,col=${start.column},endColumn=${end.column}` : '';
      out += `::${commands[finding.severity]} file=${property(path)},line=${start.line},endLine=${end.line}${columns},title=${property(finding.rule)}::${data(messageOf(finding))}\n`;
    }
  return out;
}

const data = (text: string): string => visible(text).replace(/%/g, '%25');
const property = (text: string): string => data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
