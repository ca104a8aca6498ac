// Findings as an editor shows them: a place that can be seen, one text, and the places that take part.
import type { Span } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import type { Finding, Severity } from '../rules/index.ts';

export interface Diagnostic {
  readonly start: number;
  readonly end: number;
  readonly severity: Severity;
  readonly rule: string;
  /** What, why, and what to do, a line each. */
  readonly message: string;
  readonly unnecessary: boolean;
  /** Offsets are in the text of `path`. */
  readonly related: readonly { readonly path: string; readonly start: number; readonly end: number; readonly message: string }[];
}

export function diagnostics(analysis: Analysis): Diagnostic[] {
  return analysis.findings.map((finding) => {
    const place = visible(analysis.text, finding);
    return {
      start: place.start,
      end: place.end,
      severity: finding.severity,
      rule: finding.rule,
      message: messageOf(finding),
      unnecessary: finding.tag === 'unnecessary',
      related: finding.related.map(({ path, start, end, message }) => ({ path: path ?? analysis.path, start, end, message })),
    };
  });
}

/** The three sentences of a finding, each on its line with its lead word. */
export function messageOf(finding: Pick<Finding, 'what' | 'why' | 'remedy'>): string {
  return [finding.what, finding.why === '' ? '' : `Why: ${finding.why}`, finding.remedy === '' ? '' : `What to do: ${finding.remedy}`]
    .filter((line) => line !== '')
    .join('\n');
}

/** A place inside the text and at least one character wide, so that it can be seen; an empty text has only its start. */
export function visible(text: string, place: Span): Span {
  let start = Math.max(0, Math.min(place.start, text.length));
  let end = Math.max(start, Math.min(place.end, text.length));
  if (start < end) return { start, end };
  if (isLineEnd(text.charCodeAt(end))) {
    if (start > 0 && !isLineEnd(text.charCodeAt(start - 1))) start--;
  } else if (end < text.length) end++;
  // Never half of a pair of surrogates.
  if (isLow(text.charCodeAt(start))) start--;
  if (isLow(text.charCodeAt(end)) && !isLow(text.charCodeAt(start))) end++;
  return { start: Math.max(0, start), end: Math.min(end, text.length) };
}

const isLineEnd = (code: number): boolean => code === 10 || code === 13 || Number.isNaN(code);
const isLow = (code: number): boolean => (code & 0xfc00) === 0xdc00;
