// The canonical form of a file, or of some lines of it, as the smallest changes to its lines. A file whose shape is broken is
// left alone; so are, while somebody types, all lines but those that were just ended or closed.
import { parse, print, type Span, type Statement } from '../../grammar/index.ts';
import { type Analysis, withEdits } from '../engine/index.ts';
import { canonicalEdits, lineEdits, singleEdits } from '../engine/inside.ts';
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
  return { edits: canonicalEdits(text, print(tree)) };
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
