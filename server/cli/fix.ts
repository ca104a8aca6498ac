// Applying fixes: only those that change nothing that anybody's safety hangs on.
import { parse } from '../../grammar/index.ts';
import type { Analysis } from '../editor/workspace.ts';
import type { Edit, Finding } from '../rules/index.ts';
import { changesSafety } from '../vocabulary/index.ts';
import { lineEndOf } from './write.ts';

/** One fix that was made. */
export interface Mended {
  readonly rule: string;
  readonly title: string;
}

export interface Fixed {
  readonly text: string;
  readonly mended: readonly Mended[];
}

/** A fix can bring up the next one; more rounds than this would be a rule that undoes another. */
const mostRounds = 20;

/** Applies the safe fixes until none is left. `judge` gives the findings of a text. */
export function fixAll(text: string, judge: (text: string) => Analysis): Fixed {
  const mended: Mended[] = [];
  const seen = new Set([text]);
  let now = text;
  for (let round = 0; round < mostRounds; round++) {
    const next = fixOnce(now, judge(now).findings);
    // What has been seen before would go round for ever; what breaks the text's shape is no fix.
    if (next === undefined || seen.has(next.text) || parse(next.text).problems.length > parse(now).problems.length) break;
    seen.add(next.text);
    mended.push(...next.mended);
    now = next.text;
  }
  return { text: now, mended };
}

/** Applies the first safe fix of every finding, save those that touch what another has changed. */
export function fixOnce(text: string, findings: readonly Finding[]): Fixed | undefined {
  const tree = parse(text);
  const taken: Edit[] = [];
  const mended: Mended[] = [];
  for (const finding of findings) {
    const fix = finding.fixes.find((one) => one.safe && !changesSafety(tree, [...one.edits].sort((a, b) => a.start - b.start)));
    if (fix === undefined || fix.edits.length === 0 || !fix.edits.every((edit) => isFree(edit, taken, text.length))) continue;
    taken.push(...fix.edits);
    mended.push({ rule: finding.rule, title: fix.title });
  }
  if (mended.length === 0) return undefined;
  const lineEnd = lineEndOf(text);
  let out = '';
  let at = 0;
  for (const edit of taken.sort((a, b) => a.start - b.start || a.end - b.end)) {
    out += text.slice(at, edit.start) + (lineEnd === '\n' ? edit.text : edit.text.replace(/\r?\n/g, lineEnd));
    at = edit.end;
  }
  return { text: out + text.slice(at), mended };
}

const isFree = (edit: Edit, taken: readonly Edit[], length: number): boolean =>
  edit.start >= 0 && edit.start <= edit.end && edit.end <= length && taken.every((other) => edit.end < other.start || edit.start > other.end);
