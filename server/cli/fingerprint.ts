// A name for a finding that stays when lines above it come and go: build servers follow findings by it.
import { createHash } from 'node:crypto';
import type { ReportedFinding } from './report.ts';

/** Names the findings of a file, told one after another in their order; no two have the same. `path`: as the report has it. */
export function fingerprints(path: string): (finding: ReportedFinding) => string {
  const seen = new Map<string, number>();
  return ({ rule, sourceLine }) => {
    const text = sourceLine.trim().slice(0, 1000);
    // A hash and not the text: a file can have very many lines that are faulty.
    const key = hashOf(`${rule}\n${text}`);
    const before = seen.get(key) ?? 0;
    seen.set(key, before + 1);
    return fingerprintOf(path, rule, text, before);
  };
}

/** `before`: how many findings of the same rule and text stand above it. */
export const fingerprintOf = (path: string, rule: string, text: string, before: number): string =>
  hashOf([path, rule, text, before].join('\n')).slice(0, 32);

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');
