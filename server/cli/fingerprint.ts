// A name for a finding that stays when lines above it come and go: build servers follow findings by it.
import { createHash } from 'node:crypto';
import type { CheckedFile, ReportedFinding } from './report.ts';

/** The fingerprints of a file's findings, in their order; no two are the same. */
export function fingerprintsOf(file: CheckedFile): string[] {
  const seen = new Map<string, number>();
  return file.findings.map((finding: ReportedFinding) => {
    const key = [file.path, finding.rule, finding.sourceLine.trim().slice(0, 1000)].join('\n');
    const before = seen.get(key) ?? 0;
    seen.set(key, before + 1);
    return createHash('sha256').update(`${key}\n${before}`).digest('hex').slice(0, 32);
  });
}
