// GitLab's code quality report.
import { fingerprintOf, fingerprints } from '../fingerprint.ts';
import { JsonText } from '../json-text.ts';
import { messageOf, unreadInWords, unreadRule } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'gitlab',
  summary: 'GitLab’s code quality report',
  reader: 'program',
  begin,
};

const grades = { error: 'critical', warning: 'minor', note: 'info' } as const;

function begin({ send }: Beginning): Writer {
  const json = new JsonText(send);
  json.begin('[');
  return {
    file: (file) => {
      const fingerprint = fingerprints(file.path);
      for (const finding of file.findings())
        json.value({
          description: messageOf(finding),
          check_name: finding.rule,
          fingerprint: fingerprint(finding),
          severity: grades[finding.severity],
          location: { path: file.path, lines: { begin: finding.range.start.line, end: finding.range.end.line } },
        });
    },
    unread: (unread) =>
      json.value({
        description: unreadInWords(unread),
        check_name: unreadRule,
        fingerprint: fingerprintOf(unread.path, unreadRule, unread.why, 0),
        severity: grades.error,
        location: { path: unread.path, lines: { begin: 1, end: 1 } },
      }),
    end: () => json.end(),
  };
}
