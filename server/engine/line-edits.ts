// The smallest changes of lines that turn one text into another: each line that stays keeps its own line end.
import { lineEndIn, type Span } from '../../grammar/index.ts';
import type { Edit } from '../rules/index.ts';

interface LineOfText {
  readonly start: number;
  readonly text: string;
  readonly end: string;
  /** The line without its blanks: what a formatter never changes. */
  readonly key: string;
}

function linesOf(text: string): LineOfText[] {
  const lines: LineOfText[] = [];
  const pattern = /([^\r\n]*)(\r\n|\r|\n|$)/g;
  for (let match = pattern.exec(text); match !== null && match[0] !== ''; match = pattern.exec(text)) {
    const line = match[1] ?? '';
    lines.push({ start: match.index, text: line, end: match[2] ?? '', key: line.replace(/\s+/g, '') });
  }
  return lines;
}

/**
 * The edits, in order and apart from each other, that turn `before` into `after`; a line that stays keeps its line end.
 * Those that reach out of `only` are left out.
 */
export function lineEdits(before: string, after: string, only: Span = { start: 0, end: before.length }): Edit[] {
  const edits: Edit[] = [];
  for (const edit of singleEdits(before, after)) {
    if (edit.start < only.start || edit.end > only.end) continue;
    const last = edits[edits.length - 1];
    if (last !== undefined && last.end === edit.start)
      edits[edits.length - 1] = { start: last.start, end: edit.end, text: last.text + edit.text };
    else edits.push(edit);
  }
  return edits;
}

/** The same, each change of a line or of its blanks by itself. */
export function singleEdits(before: string, after: string): Edit[] {
  const olds = linesOf(before);
  const news = linesOf(after);
  const lineEnd = lineEndIn(before);
  const edits: Edit[] = [];
  const put = (start: number, end: number, text: string): void => {
    if (start < end || text !== '') edits.push({ start, end, text });
  };
  const offsetOf = (index: number): number => olds[index]?.start ?? before.length;
  let oldAt = 0;
  let newAt = 0;
  const replaceUpTo = (oldEnd: number, newEnd: number): void => {
    const text = news
      .slice(newAt, newEnd)
      .map((line) => line.text + (line.end === '' ? '' : lineEnd))
      .join('');
    put(offsetOf(oldAt), offsetOf(oldEnd), text);
    oldAt = oldEnd;
    newAt = newEnd;
  };
  for (const [oldIndex, newIndex] of matches(
    olds.map((line) => line.key),
    news.map((line) => line.key),
  )) {
    if (oldIndex > oldAt || newIndex > newAt) replaceUpTo(oldIndex, newIndex);
    const from = olds[oldIndex] as LineOfText;
    const to = news[newIndex] as LineOfText;
    within(from, to, put);
    if (from.end === '' && to.end !== '') put(from.start + from.text.length, from.start + from.text.length, lineEnd);
    oldAt = oldIndex + 1;
    newAt = newIndex + 1;
  }
  if (oldAt < olds.length || newAt < news.length) replaceUpTo(olds.length, news.length);
  return edits;
}

/** The differing blanks of two lines that are equal but for blanks: one edit for each run of blanks. */
function within(from: LineOfText, to: LineOfText, put: (start: number, end: number, text: string) => void): void {
  if (from.text === to.text) return;
  let a = 0;
  let b = 0;
  const blankAt = (text: string, at: number): number => {
    let end = at;
    while (end < text.length && /\s/.test(text.charAt(end))) end++;
    return end;
  };
  while (a < from.text.length || b < to.text.length) {
    const endA = blankAt(from.text, a);
    const endB = blankAt(to.text, b);
    if (from.text.slice(a, endA) !== to.text.slice(b, endB)) put(from.start + a, from.start + endA, to.text.slice(b, endB));
    a = endA + 1;
    b = endB + 1;
  }
}

/** Pairs of equal entries, in order: a longest common subsequence (Myers 1986), given up for ends alone where it would cost too much. */
function matches(a: readonly string[], b: readonly string[]): (readonly [number, number])[] {
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
  const pairs: (readonly [number, number])[] = [];
  for (let i = 0; i < head; i++) pairs.push([i, i]);
  for (const [x, y] of middle(a.slice(head, a.length - tail), b.slice(head, b.length - tail))) pairs.push([x + head, y + head]);
  for (let i = tail; i > 0; i--) pairs.push([a.length - i, b.length - i]);
  return pairs;
}

/** Most differing lines that are searched for the smallest change. */
const mostChanges = 1500;

function middle(a: readonly string[], b: readonly string[]): (readonly [number, number])[] {
  const most = Math.min(a.length + b.length, mostChanges);
  const offset = most + 1;
  const reach = new Int32Array(2 * most + 3);
  const trail: Int32Array[] = [];
  for (let cost = 0; cost <= most; cost++) {
    trail.push(reach.slice());
    for (let k = -cost; k <= cost; k += 2) {
      const down = k === -cost || (k !== cost && (reach[offset + k - 1] as number) < (reach[offset + k + 1] as number));
      let x = down ? (reach[offset + k + 1] as number) : (reach[offset + k - 1] as number) + 1;
      let y = x - k;
      while (x < a.length && y < b.length && a[x] === b[y]) {
        x++;
        y++;
      }
      reach[offset + k] = x;
      if (x >= a.length && y >= b.length) return backwards(a.length, b.length, trail, offset);
    }
  }
  return [];
}

function backwards(aLength: number, bLength: number, trail: readonly Int32Array[], offset: number): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  let x = aLength;
  let y = bLength;
  for (let cost = trail.length - 1; cost >= 0; cost--) {
    const reach = trail[cost] as Int32Array;
    const k = x - y;
    const down = k === -cost || (k !== cost && (reach[offset + k - 1] as number) < (reach[offset + k + 1] as number));
    const previousK = down ? k + 1 : k - 1;
    const previousX = cost === 0 ? 0 : (reach[offset + previousK] as number);
    const previousY = cost === 0 ? 0 : previousX - previousK;
    while (x > previousX && y > previousY) {
      x--;
      y--;
      pairs.push([x, y]);
    }
    x = previousX;
    y = previousY;
  }
  return pairs.reverse();
}
