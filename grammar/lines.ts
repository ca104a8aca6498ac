import { firstIndex } from './search.ts';
import type { Span } from './tree.ts';

/** A place in a text; both count from 0, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Offsets at which each line of a text starts. `\n`, `\r\n` and a lone `\r` end a line. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
  }
  return starts;
}

/** The position of an offset, by binary search in what `lineStarts` gave. */
export function positionAt(starts: readonly number[], offset: number): Position {
  const line = Math.max(0, firstIndex(starts, (start) => start > offset) - 1);
  return { line, column: Math.max(0, offset - (starts[line] as number)) };
}

/** The text of the line that holds `offset`, without its line end. */
export function lineText(text: string, starts: readonly number[], line: number): string {
  const start = starts[line] ?? text.length;
  const end = starts[line + 1] ?? text.length;
  return text.slice(start, end).replace(/[\r\n]+$/, '');
}

/** True when the span holds the offset; the end counts, so that a caret behind a word still stands on it. */
export function holds(span: Span, offset: number): boolean {
  return offset >= span.start && offset <= span.end;
}

type LineEnd = '\n' | '\r\n' | '\r';

/** The text that was asked about last: many edits are made of one text. */
let last: { readonly text: string; readonly lineEnd: LineEnd } = { text: '', lineEnd: '\n' };

/** The line end that most lines of a text have, and of as many the first. */
export function lineEndIn(text: string): LineEnd {
  if (last.text !== text) last = { text, lineEnd: usualIn(text) };
  return last.lineEnd;
}

function usualIn(text: string): LineEnd {
  const counts = new Map<LineEnd, number>();
  for (const [end] of text.matchAll(/\r\n|\r|\n/g)) counts.set(end as LineEnd, (counts.get(end as LineEnd) ?? 0) + 1);
  let usual: LineEnd = '\n';
  let most = 0;
  for (const [end, count] of counts) if (count > most) [usual, most] = [end, count];
  return usual;
}
