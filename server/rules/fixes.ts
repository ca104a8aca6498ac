// Edits that several rules offer.
import { type Body, firstIndex, lineEndIn, type Statement } from '../../grammar/index.ts';
import type { Edit, Fix } from './rule.ts';

const isBlank = (character: string): boolean => character === ' ' || character === '\t';
/** The ends of a text are those of a line too: there `charAt` gives nothing. */
const isLineEnd = (character: string): boolean => character === '' || character === '\n' || character === '\r';

/** Offset at which the line of `offset` starts. */
export function lineStartOf(text: string, offset: number): number {
  let at = offset;
  while (!isLineEnd(text.charAt(at - 1))) at--;
  return at;
}

/** Offset at which the line of `offset` ends, before its line end. */
export function lineEndOf(text: string, offset: number): number {
  let at = offset;
  while (!isLineEnd(text.charAt(at))) at++;
  return at;
}

/** Offset behind the last thing on the line that is neither blank nor comment, from `offset` on. */
export function factEndOf(text: string, offset: number): number {
  const end = lineEndOf(text, offset);
  let last = offset;
  let inText = false;
  for (let at = offset; at < end; at++) {
    const character = text.charAt(at);
    if (inText && character === '\\') at++;
    else if (character === '"') inText = !inText;
    else if (character === '#' && !inText) break;
    if (!isBlank(character)) last = Math.min(at + 1, end);
  }
  return last;
}

/** Takes a statement out: the whole line where it stands alone on it. A comment behind it stays. */
export function without(text: string, start: number, end: number): Edit {
  let from = start;
  while (isBlank(text.charAt(from - 1))) from--;
  let to = end;
  while (isBlank(text.charAt(to))) to++;
  const startsLine = isLineEnd(text.charAt(from - 1));
  if (startsLine && isLineEnd(text.charAt(to))) {
    if (text.charAt(to) === '\r' && text.charAt(to + 1) === '\n') to++;
    return { start: from, end: Math.min(to + 1, text.length), text: '' };
  }
  if (startsLine) return { start, end: to, text: '' };
  return { start: from, end, text: '' };
}

/** Offers the word that was probably meant, where one is near. */
export function replaceBy(at: { readonly start: number; readonly end: number }, meant: string | undefined, safe: boolean): Fix[] {
  return meant === undefined ? [] : [{ title: `Write “${meant}”`, edits: [{ start: at.start, end: at.end, text: meant }], safe }];
}

/** Offers to take out a statement of one line; one that runs over more may hold something that should stay. */
export function removal(title: string, text: string, start: number, end: number, safe: boolean): Fix[] {
  return /[\r\n]/.test(text.slice(start, end)) ? [] : [{ title, edits: [without(text, start, end)], safe }];
}

/** What the line of an offset begins with, if that is blank. */
export function indentAt(text: string, offset: number): string {
  const start = lineStartOf(text, offset);
  let end = start;
  while (isBlank(text.charAt(end))) end++;
  return text.slice(start, end);
}
/** The last line of one of the words in a body, looked for once: a block of thousands of lines may be offered thousands of fixes. */
function lastOf(body: Body, like: readonly string[]): Statement | undefined {
  let known = lasts.get(body);
  if (known === undefined) lasts.set(body, (known = new Map()));
  const key = like.join(' ');
  if (!known.has(key))
    known.set(
      key,
      body.items.findLast((item) => like.includes(item.word?.text ?? '')),
    );
  return known.get(key);
}
const lasts = new WeakMap<Body, Map<string, Statement | undefined>>();

/** Writes a line into a block, behind its last line of one of the `like` words or else behind its last line. */
export function addLine(text: string, block: Statement, line: string, like: readonly string[]): Edit {
  const newLine = lineEndIn(text);
  const { body } = block;
  if (body === undefined) return { start: block.end, end: block.end, text: ` {${newLine}  ${line}${newLine}}` };
  const behind = lastOf(body, like) ?? body.items.at(-1);
  const from = behind?.end ?? body.start + 1;
  const end = lineEndOf(text, from);
  const lineStart = behind === undefined ? 0 : lineStartOf(text, behind.start);
  const before = behind === undefined ? '' : text.slice(lineStart, behind.start);
  const indent = behind !== undefined && before.trim() === '' ? before : `${indentAt(text, block.start)}  `;
  // The closing brace, or another line, may stand on the same line: then the new line goes right behind the old one.
  const next = body.items[firstIndex(body.items, (item) => item.start >= from)];
  const alone = end < body.end && !(next !== undefined && next.start < end);
  const at = alone ? end : from;
  return { start: at, end: at, text: newLine + indent + line + (alone ? '' : newLine) };
}
