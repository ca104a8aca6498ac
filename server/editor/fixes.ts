// Quick fixes: the changes that findings offer. Only what a rule calls safe, and what changes no line that the vocabulary
// calls safety-critical, is ever applied in bulk.
import type { Span } from '../../grammar/index.ts';
import type { Edit, Finding, Fix } from '../rules/index.ts';
import { changesSafety } from '../vocabulary/index.ts';
import type { Analysis } from './workspace.ts';

/**
 * How far a change can be trusted. `safe`: it changes no fact, and may be applied without a look, also together with others.
 * `review`: it changes what the file says. `safety`: it changes what somebody's safety hangs on, so the gate is looked at too.
 */
export type FixClass = 'safe' | 'review' | 'safety';

export interface QuickFix {
  /** What it does; of a change of class `safety` it says so. */
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly class: FixClass;
  readonly finding: Finding;
}

/** The fixes of the findings that touch a stretch of the text. */
export function fixes(analysis: Analysis, range: Span): QuickFix[] {
  return analysis.findings
    .filter((finding) => finding.start <= range.end && finding.end >= range.start)
    .flatMap((finding) =>
      finding.fixes
        .filter((fix) => fix.edits.length > 0)
        .map((fix) => {
          const kind = classOf(analysis, fix);
          return { title: kind === 'safety' ? `${fix.title} (changes a safety value: look at the gate)` : fix.title, edits: inOrder(fix.edits), class: kind, finding };
        }),
    );
}

/** The class of a change, by what it changes and not only by what its rule says. */
export const classOf = ({ installation }: Analysis, fix: Pick<Fix, 'edits' | 'safe'>): FixClass => (changesSafety(installation.reading.tree, inOrder(fix.edits)) ? 'safety' : fix.safe ? 'safe' : 'review');

/** Every safe fix of a file at once; of two that touch the same text, the first. Undefined when there is none. */
export function fixAll(analysis: Analysis): { readonly edits: readonly Edit[]; readonly count: number } | undefined {
  const edits: Edit[] = [];
  let count = 0;
  for (const finding of analysis.findings) {
    const fix = finding.fixes.find((candidate) => candidate.safe && candidate.edits.length > 0 && classOf(analysis, candidate) === 'safe');
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
