// GitLab's code quality report.

import { fingerprintsOf } from '../fingerprint.ts';
import { messageOf, type Report } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'gitlab',
  summary: 'GitLab’s code quality report',
  reader: 'program',
  write: written,
};

const grades = { error: 'critical', warning: 'minor', note: 'info' } as const;

function written(report: Report): string {
  const issues = report.files.flatMap((file) => {
    const fingerprints = fingerprintsOf(file);
    return file.findings.map((finding, index) => ({
      description: messageOf(finding),
      check_name: finding.rule,
      fingerprint: fingerprints[index],
      severity: grades[finding.severity],
      location: { path: file.path, lines: { begin: finding.range.start.line, end: finding.range.end.line } },
    }));
  });
  return JSON.stringify(issues, null, 2) + '\n';
}
