// One line for each finding, for editors’ tasks and for search tools: `PATH:LINE:COLUMN-LINE:COLUMN: SEVERITY: WHAT [RULE]`.
import { visible } from '../display.ts';
import type { Report } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'lines',
  summary: 'one line for each finding, for editors’ tasks and for search',
  reader: 'program',
  write: written,
};

function written(report: Report): string {
  let out = '';
  for (const { path, findings } of report.files)
    for (const { range, severity, what, rule } of findings)
      out += `${visible(path)}:${range.start.line}:${range.start.column}-${range.end.line}:${range.end.column}: ${severity}: ${visible(what).replace(/\s+/g, ' ')} [${rule}]\n`;
  return out;
}
