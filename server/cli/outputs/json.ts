// For other programs: the shape is fixed by the contract.
import { messageOf, type Report } from '../report.ts';
import type { Output } from './output.ts';

export const output: Output = {
  name: 'json',
  summary: 'for other programs, with every place and source',
  reader: 'program',
  write: written,
};

/** The version of this shape, not of the program. */
const shapeVersion = 1;

function written(report: Report): string {
  const files = report.files.map(({ path, findings }) => ({
    path,
    findings: findings.map((finding) => ({
      rule: finding.rule,
      severity: finding.severity,
      message: messageOf(finding),
      range: finding.range,
      related: finding.related,
      source: finding.source,
    })),
  }));
  return JSON.stringify({ version: shapeVersion, files, counts: report.counts }, null, 2) + '\n';
}
