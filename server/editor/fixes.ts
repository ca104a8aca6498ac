// Quick fixes: the changes that findings offer. Only what a rule calls safe is ever applied in bulk.
import type { Span } from '../../grammar/index.ts';
import type { Edit, Finding } from '../rules/index.ts';
import type { Analysis } from './workspace.ts';

export interface QuickFix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** True where it changes no fact of the installation: it may be applied without a look. */
  readonly safe: boolean;
  readonly finding: Finding;
}

/** The fixes of the findings that touch a stretch of the text. */
export function fixes(analysis: Analysis, range: Span): QuickFix[] {
  return analysis.findings
    .filter((finding) => finding.start <= range.end && finding.end >= range.start)
    .flatMap((finding) => finding.fixes.filter((fix) => fix.edits.length > 0).map((fix) => ({ title: fix.title, edits: inOrder(fix.edits), safe: fix.safe, finding })));
}

/** Every safe fix of a file at once; of two that touch the same text, the first. Undefined when there is none. */
export function fixAll(analysis: Analysis): { readonly edits: readonly Edit[]; readonly count: number } | undefined {
  const edits: Edit[] = [];
  let count = 0;
  for (const finding of analysis.findings) {
    const fix = finding.fixes.find((candidate) => candidate.safe && candidate.edits.length > 0);
    if (fix === undefined || fix.edits.some((edit) => edits.some((other) => touch(edit, other)))) continue;
    edits.push(...fix.edits);
    count++;
  }
  return count === 0 ? undefined : { edits: inOrder(edits), count };
}

const touch = (a: Edit, b: Edit): boolean => a.start <= b.end && b.start <= a.end;
const inOrder = (edits: readonly Edit[]): Edit[] => [...edits].sort((a, b) => a.start - b.start || a.end - b.end);

/** A text with edits made that do not overlap. */
export function withEdits(text: string, edits: readonly Edit[]): string {
  let out = '';
  let at = 0;
  for (const edit of inOrder(edits)) {
    if (edit.start < at) continue;
    out += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return out + text.slice(at);
}
