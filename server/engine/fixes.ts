// Changes that findings offer. Only what a rule calls safe, and what changes no line that the vocabulary calls safety-critical, is
// ever applied in bulk.
import { firstIndex, lineEndIn, parse, type Span } from '../../grammar/index.ts';
import type { Edit, Finding, Fix } from '../rules/index.ts';
import { changesSafety } from '../vocabulary/index.ts';
import type { Analysis } from './analysis.ts';

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
    .flatMap((finding) => fixesOf(analysis, finding));
}

/** The fixes of one finding. */
export const fixesOf = (analysis: Analysis, finding: Finding): QuickFix[] =>
  finding.fixes.filter((fix) => fix.edits.length > 0).map((fix) => quickFix(analysis, finding, fix));

function quickFix(analysis: Analysis, finding: Finding, fix: Fix): QuickFix {
  const kind = classOf(analysis, fix);
  const title = kind === 'safety' ? `${fix.title} (changes a safety value: look at the gate)` : fix.title;
  return { title, edits: inOrder(fix.edits), class: kind, finding };
}

/** The class of a change, by what it changes and not only by what its rule says. */
export function classOf(analysis: Analysis, fix: Pick<Fix, 'edits' | 'safe'>): FixClass {
  if (changesSafety(analysis.installation.reading.tree, inOrder(fix.edits))) return 'safety';
  return fix.safe ? 'safe' : 'review';
}

/** One fix that was made, or is to be. */
export interface Mended {
  readonly rule: string;
  readonly title: string;
}

/** Every safe fix of a file at once; of two that touch the same text, the first. Undefined when there is none. */
export function safeFixes(analysis: Analysis): { readonly edits: readonly Edit[]; readonly mended: readonly Mended[] } | undefined {
  // In order and apart, but for those of one fix.
  const edits: Edit[] = [];
  const mended: Mended[] = [];
  for (const { rule, fixes: offered } of analysis.findings) {
    const fix = offered.find((one) => one.safe && one.edits.length > 0 && classOf(analysis, one) === 'safe');
    if (fix === undefined || fix.edits.some((edit) => touchesOne(edits, edit))) continue;
    for (const edit of inOrder(fix.edits)) edits.splice(placeOf(edits, edit), 0, edit);
    mended.push({ rule, title: fix.title });
  }
  return mended.length === 0 ? undefined : { edits, mended };
}

const placeOf = (edits: readonly Edit[], { start, end }: Edit): number =>
  firstIndex(edits, (other) => other.start > start || (other.start === start && other.end > end));

/** True where an edit touches one of those that are in order. */
function touchesOne(edits: readonly Edit[], { start, end }: Edit): boolean {
  const other = edits[firstIndex(edits, (one) => one.end >= start)];
  return other !== undefined && other.start <= end;
}

const inOrder = (edits: readonly Edit[]): Edit[] => [...edits].sort((a, b) => a.start - b.start || a.end - b.end);

/** A fix can bring up the next one; more rounds than this would be a rule that undoes another. */
const mostRounds = 20;

/** Applies the safe fixes until none is left; new lines end as those of the text do. `judge` judges a text. */
export function fixAll(text: string, judge: (text: string) => Analysis): { readonly text: string; readonly mended: readonly Mended[] } {
  const mended: Mended[] = [];
  const seen = new Set([text]);
  let now = text;
  for (let round = 0; round < mostRounds; round++) {
    const found = safeFixes(judge(now));
    if (found === undefined) break;
    const lineEnd = lineEndIn(now);
    const next = withEdits(
      now,
      lineEnd === '\n' ? found.edits : found.edits.map((edit) => ({ ...edit, text: edit.text.replace(/\r?\n/g, lineEnd) })),
    );
    // What has been seen before would go round for ever; what breaks the text's shape is no fix.
    if (seen.has(next) || parse(next).problems.length > parse(now).problems.length) break;
    seen.add(next);
    mended.push(...found.mended);
    now = next;
  }
  return { text: now, mended };
}

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
