// JUnit's XML, as build servers read it: a suite for each file, a case for each finding. What fails the run is a
// failure; milder findings are cases that pass and say what they found. Each suite says how many it has, the whole does
// not: that is known only when it is written.
import { guarded, visible, visiblePath } from '../display.ts';
import { type CheckedFile, fails, messageOf, type ReportedFinding, severities } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'junit',
  summary: 'JUnit’s XML, for build servers: a suite for each file, a case for each finding',
  reader: 'program',
  begin,
};

function begin({ send, failOn }: Beginning): Writer {
  send('<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="pintle">\n');
  return {
    file: (file) => {
      const all = severities.reduce((sum, severity) => sum + file.counts[severity], 0);
      const failures = severities.reduce((sum, severity) => sum + (fails(severity, failOn) ? file.counts[severity] : 0), 0);
      send(`  <testsuite name="${pathIn(file.path)}" tests="${Math.max(1, all)}" failures="${failures}" errors="0">\n`);
      if (all === 0) send(`    <testcase name="check" classname="${pathIn(file.path)}"/>\n`);
      for (const finding of file.findings()) send(testCase(file, finding, fails(finding.severity, failOn)));
      send('  </testsuite>\n');
    },
    unread: ({ path, why }) =>
      send(
        `  <testsuite name="${pathIn(path)}" tests="1" failures="0" errors="1">\n    <testcase name="read" classname="${pathIn(path)}">\n      <error message="${escaped(why)}"/>\n    </testcase>\n  </testsuite>\n`,
      ),
    end: () => send('</testsuites>\n'),
  };
}

function testCase(file: CheckedFile, finding: ReportedFinding, isFailure: boolean): string {
  const { line, column } = finding.range.start;
  const path = visiblePath(file.path);
  const told = `${path}:${line}:${column} ${finding.severity} ${finding.rule}\n${messageOf(finding)}\nSource: ${finding.source}`;
  const result = isFailure
    ? `<failure type="${finding.severity}" message="${escaped(finding.what)}">${content(told)}</failure>`
    : `<system-out>${content(told)}</system-out>`;
  return `    <testcase name="${escaped(`${finding.rule} at ${line}:${column}`)}" classname="${pathIn(file.path)}">\n      ${result}\n    </testcase>\n`;
}

/** XML has no place for control characters, not even escaped. */
const escaped = (text: string): string =>
  visible(text)
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
const pathIn = (path: string): string => escaped(visiblePath(path));
const content = (text: string): string => guarded(text).split('\n').map(escaped).join('\n');
