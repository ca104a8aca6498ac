// For people: every finding with its line, what is wrong, why that matters, and what to do.
import { type Colours, coloursFor, count, excerptOf, visible, wrapped } from '../display.ts';
import { type CheckedFile, countsInWords, type Report, type ReportedFinding } from '../report.ts';
import type { Manner, Output } from './output.ts';

export const output: Output = {
  name: 'text',
  summary: 'for people: each finding with its line, why it matters and what to do',
  reader: 'person',
  write: written,
};

/** Widest source line that is shown whole where no terminal sets a limit. */
const widestLine = 160;

function written(report: Report, manner: Manner): string {
  const colours = coloursFor(manner.colour);
  const parts: string[] = [];
  for (const file of report.files) for (const finding of file.findings) parts.push(findingText(file, finding, colours, manner.columns));
  if (!manner.quiet) parts.push(summaryOf(report) + '\n');
  return parts.join('\n');
}

function findingText(file: CheckedFile, finding: ReportedFinding, colours: Colours, columns: number | undefined): string {
  const { start, end } = finding.range;
  const lines: string[] = [];
  const where = `${visible(file.path)}:${start.line}:${start.column}`;
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
  for (const { path, range, message } of finding.related) say('See: ', `${path}:${range.start.line}:${range.start.column} ${message}`);
  say('Source: ', finding.source);
  return lines.join('\n') + '\n';
}

/** `8 files, 3 errors, 1 warning; 2 accepted` */
export function summaryOf(report: Report): string {
  const found = countsInWords(report.counts);
  const out = [`${count(report.files.length, 'file')}, ${found === '' ? 'no findings' : found}`];
  if (report.accepted > 0) out.push(`${report.accepted} accepted`);
  const held = countsInWords(report.heldBack);
  if (held !== '') out.push(`${held} known from the baseline and not shown`);
  if (report.unreadable.length > 0) out.push(`${report.unreadable.length} could not be read`);
  return out.join('; ');
}
