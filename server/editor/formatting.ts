// The canonical form of a file, or of some lines of it, as the smallest changes to its lines. A file whose shape is broken is
// left alone; so are, while somebody types, all lines but those that were just ended or closed.
import { parse, print, type Span, type Statement } from '../../grammar/index.ts';
import { type Analysis, withEdits } from '../engine/index.ts';
import type { Edit } from '../rules/index.ts';
import { blocksAround } from './places.ts';

export type Formatting =
  | { readonly edits: readonly Edit[] }
  | { readonly refused: string; readonly at: { readonly start: number; readonly end: number } };

/** The edits that bring a text into its canonical form; none when it is there already. Line ends stay as the file has them. */
export function formatting(text: string): Formatting {
  const tree = parse(text);
  const problem = tree.problems[0];
  if (problem !== undefined) {
    const more = tree.problems.length - 1;
    const line = text.slice(0, problem.start).split(/\r\n|\r|\n/).length;
    return {
      refused: `Not formatted: the shape of the text is broken at line ${line}${more === 0 ? '' : ` and ${more} more ${more === 1 ? 'place' : 'places'}`}. Mend that first; what cannot be read cannot be laid out.`,
      at: { start: problem.start, end: problem.end },
    };
  }
  return { edits: lineEdits(text, print(tree)) };
}

/** The same for the lines that a range touches; all others stay as they are. */
export function rangeFormatting(text: string, range: Span): Formatting {
  const found = formatting(text);
  if ('refused' in found) return found;
  const canonical = print(parse(text));
  return { edits: sound(text, canonical, lineEdits(text, canonical, linesAround(text, range))) };
}

/** Edits that are a part of those to the canonical form, where by themselves they change no fact either; else none. */
const sound = (text: string, canonical: string, edits: readonly Edit[]): readonly Edit[] =>
  edits.length === 0 || print(parse(withEdits(text, edits))) === canonical ? edits : [];

/**
 * From the start of the first line of a range to the start of the line behind its last; a range that ends where a line starts does not
 * touch that line.
 */
function linesAround(text: string, range: Span): Span {
  const isEnd = (at: number): boolean => text.charAt(at) === '\n' || text.charAt(at) === '\r';
  let { start, end } = range;
  while (start > 0 && !isEnd(start - 1)) start--;
  if (end > range.start && isEnd(end - 1) && !(text.charAt(end - 1) === '\r' && text.charAt(end) === '\n')) return { start, end };
  while (end < text.length && !isEnd(end)) end++;
  if (text.charAt(end) === '\r' && text.charAt(end + 1) === '\n') end++;
  return { start, end: Math.min(text.length, end + 1) };
}

/**
 * While somebody types: behind a `}` the block that it closes, behind a line end the line that was just ended and the blanks
 * in front of the new one. Only blanks within lines change: no line comes, goes or moves, and what is not yet whole stays.
 */
export function typedFormatting(analysis: Analysis, offset: number, typed: string): readonly Edit[] {
  const { tree } = analysis.installation.reading;
  // Where braces do not pair, how deep a line stands is a guess.
  if (tree.problems.some((problem) => problem.kind.startsWith('brace') || problem.kind === 'nested-too-deep')) return [];
  if (typed === '}') return ofClosed(analysis, offset);
  return /^[\r\n]+$/.test(typed) ? ofEnded(analysis, offset) : [];
}

/** Lays out the block that ends at an offset. */
function ofClosed({ text, installation }: Analysis, offset: number): readonly Edit[] {
  const { tree } = installation.reading;
  const around = blocksAround(tree, offset - 1);
  const closed = around[around.length - 1]?.statement;
  if (closed?.body === undefined || closed.body.end !== offset) return [];
  const lines = { start: linesAround(text, { start: closed.start, end: closed.start }).start, end: offset };
  // Another statement on its first line is somebody else's.
  if (text.slice(lines.start, closed.start).trim() !== '') return [];
  if (tree.problems.some((problem) => problem.start < lines.end && problem.end > lines.start)) return [];
  const canonical = print(tree);
  return sound(text, canonical, blanksOnly(text, canonical, lines));
}

/** Lays out the line before the one in which an offset stands, and sets the blanks in front of that one while it is empty. */
function ofEnded({ text, installation }: Analysis, offset: number): readonly Edit[] {
  const { tree } = installation.reading;
  const here = linesAround(text, { start: offset, end: offset });
  if (here.start === 0) return [];
  let ended = here.start - 1;
  if (text.charAt(ended) === '\n' && text.charAt(ended - 1) === '\r') ended--;
  const before = { start: linesAround(text, { start: ended, end: ended }).start, end: ended };
  const isBroken = tree.problems.some((problem) => problem.start <= before.end && problem.end >= before.start);
  const canonical = isBroken ? '' : print(tree);
  const edits = isBroken ? [] : [...sound(text, canonical, blanksOnly(text, canonical, before))];
  const inFront = /^[ \t]*/.exec(text.slice(here.start, here.end))?.[0] ?? '';
  const isEmpty = /^[ \t]*[\r\n]*$/.test(text.slice(here.start, here.end));
  const wanted = '  '.repeat(blocksAround(tree, here.start).filter(({ statement }) => isOpenBefore(statement, here.start)).length);
  const inPlace = { start: here.start, end: here.start + inFront.length, text: wanted };
  if (isEmpty && inFront !== wanted && !joins(text, inPlace)) edits.push(inPlace);
  return edits;
}

const isOpenBefore = ({ body }: Statement, offset: number): boolean => body !== undefined && body.start < offset && body.end > offset;

/** Of the changes that lead to the canonical form, those of blanks within these lines; none that makes or takes a line. */
const blanksOnly = (before: string, after: string, lines: Span): readonly Edit[] =>
  singleEdits(before, after).filter(
    (edit) =>
      edit.start >= lines.start &&
      edit.end <= lines.end &&
      /^[ \t]*$/.test(edit.text + before.slice(edit.start, edit.end)) &&
      !joins(before, edit),
  );

/** Whether two line ends would become one: a blank is all that keeps `\r` and `\n` apart in a text that mixes them. */
const joins = (text: string, { start, end, text: put }: Edit): boolean =>
  put === '' && text.charAt(start - 1) === '\r' && text.charAt(end) === '\n';

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

/** The line end that most lines of a text have. */
function usualLineEnd(lines: readonly LineOfText[]): string {
  const counts = new Map<string, number>();
  for (const line of lines) if (line.end !== '') counts.set(line.end, (counts.get(line.end) ?? 0) + 1);
  let usual = '\n';
  for (const [end, count] of counts) if (count > (counts.get(usual) ?? 0)) usual = end;
  return usual;
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
function singleEdits(before: string, after: string): Edit[] {
  const olds = linesOf(before);
  const news = linesOf(after);
  const lineEnd = usualLineEnd(olds);
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
