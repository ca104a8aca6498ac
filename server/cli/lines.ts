// Lines of a file as they may be shown: logs are read by more people than the file.
import type { Finding } from '../engine/index.ts';
import { lineText } from '../engine/inside.ts';

export interface Secret {
  readonly start: number;
  readonly end: number;
}

/** What must not be repeated outside the file. */
export const secretsAmong = (findings: readonly Finding[]): readonly Secret[] =>
  findings.filter((finding) => finding.rule === 'secret-in-file');

/** A line of a text, counted from 0, with every secret in it blotted out; as long as the line itself. */
export function lineShown(text: string, starts: readonly number[], line: number, secrets: readonly Secret[]): string {
  const shown = lineText(text, starts, line);
  const from = starts[line] ?? text.length;
  let out = shown;
  for (const { start, end } of secrets) {
    const first = Math.max(0, start - from);
    const last = Math.min(shown.length, end - from);
    if (last > first) out = out.slice(0, first) + '•'.repeat(last - first) + out.slice(last);
  }
  return out;
}
