// JUnit's XML, as build servers read it: a suite for each file, a case for each finding. What fails the run is a
// failure; milder findings are cases that pass and say what they found.
import { visible } from '../display.ts';
import { type CheckedFile, fails, messageOf, type Report, type ReportedFinding } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'junit',
  summary: 'JUnit’s XML, for build servers: a suite for each file, a case for each finding',
  reader: 'program',
  write: written,
};

function written(report: Report): string {
  const suites = report.files.map((file) => suite(file, report.failOn));
  const troubles = report.unreadable.map(
    ({ path, why }) =>
      `  <testsuite name="${escaped(path)}" tests="1" failures="0" errors="1">\n    <testcase name="read" classname="${escaped(path)}">\n      <error message="${escaped(why)}"/>\n    </testcase>\n  </testsuite>\n`,
  );
  const tests = report.files.reduce((sum, file) => sum + Math.max(1, file.findings.length), troubles.length);
  const failures = report.files.reduce((sum, file) => sum + failuresOf(file, report), 0);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="pintle" tests="${tests}" failures="${failures}" errors="${troubles.length}">\n${suites.join('')}${troubles.join('')}</testsuites>\n`;
}

const failuresOf = (file: CheckedFile, { failOn }: Pick<Report, 'failOn'>): number =>
  file.findings.filter((finding) => fails(finding.severity, failOn)).length;

function suite(file: CheckedFile, failOn: Report['failOn']): string {
  const cases =
    file.findings.length === 0
      ? `    <testcase name="check" classname="${escaped(file.path)}"/>\n`
      : file.findings.map((finding) => testCase(file, finding, failOn)).join('');
  return `  <testsuite name="${escaped(file.path)}" tests="${Math.max(1, file.findings.length)}" failures="${failuresOf(file, { failOn })}" errors="0">\n${cases}  </testsuite>\n`;
}

function testCase(file: CheckedFile, finding: ReportedFinding, failOn: Report['failOn']): string {
  const { line, column } = finding.range.start;
  const told = `${file.path}:${line}:${column} ${finding.severity} ${finding.rule}\n${messageOf(finding)}\nSource: ${finding.source}`;
  const result = fails(finding.severity, failOn)
    ? `<failure type="${finding.severity}" message="${escaped(finding.what)}">${content(told)}</failure>`
    : `<system-out>${content(told)}</system-out>`;
  return `    <testcase name="${escaped(`${finding.rule} at ${line}:${column}`)}" classname="${escaped(file.path)}">\n      ${result}\n    </testcase>\n`;
}

/** XML has no place for control characters, not even escaped. */
const escaped = (text: string): string =>
  visible(text)
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
const content = (text: string): string => text.split('\n').map(escaped).join('\n');
