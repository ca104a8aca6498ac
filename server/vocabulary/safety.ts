// Whether a change of a text changes a fact that somebody's safety hangs on. Nobody's program decides that by itself.
import { type Body, firstIndex, parse, printValue, type Span, type Statement, type Tree } from '../../grammar/index.ts';
import type { BlockSpec, LineSpec } from './spec.ts';
import { blocks } from './words/all.ts';

interface Change extends Span {
  readonly text: string;
}

const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined => (Object.hasOwn(table, key) ? table[key] : undefined);

/** Safety-critical lines, each with the blocks that it stands in, as they would be printed; and how often each stands there. */
type SafetyLines = Map<string, number>;

function safetyLines(items: readonly Statement[], around = '', spec?: BlockSpec, into: SafetyLines = new Map()): SafetyLines {
  for (const item of items) {
    const word = item.word?.text ?? '';
    const head = [word, ...item.values.filter((value) => value.kind !== 'comma').map(printValue)].join(' ');
    const line = spec === undefined ? undefined : own<LineSpec>(spec.lines, word);
    const named = `${around}\n${head}`;
    if (line?.safety === true) into.set(named, (into.get(named) ?? 0) + 1);
    const block = spec === undefined ? own<BlockSpec>(blocks, word) : own(spec.blocks, word);
    if (item.body !== undefined && block !== undefined) safetyLines(item.body.items, named, block, into);
  }
  return into;
}

/** Those of a block of the file, counted once for all changes of it. */
function linesOf(block: Statement): SafetyLines {
  let lines = counted.get(block);
  if (lines === undefined) counted.set(block, (lines = safetyLines([block])));
  return lines;
}
const counted = new WeakMap<Statement, SafetyLines>();

/**
 * True where the edits, which are in order and apart from each other, add, remove or change a line that the vocabulary calls
 * safety-critical. A line that stands twice and loses its double is not changed.
 */
export function changesSafety({ text, items }: Tree, edits: readonly Change[]): boolean {
  const first = edits[0];
  const last = edits[edits.length - 1];
  if (first === undefined || last === undefined) return false;
  const change = { start: first.start, end: last.end };
  // Only the blocks that are touched need be looked at; of a long one, only the lines that are.
  const touched = touchedBy(items, change);
  const block = touched.length === 1 ? touched[0] : undefined;
  const { body } = block ?? {};
  if (block !== undefined && body !== undefined && change.start > body.start && change.end < body.end) {
    const lines = wholeLines(text, around(change, touchedBy(body.items, change)), body);
    const [open, close] = [`${text.slice(block.start, body.start)}{\n`, '\n}'];
    const was = safetyLines(parse(open + text.slice(lines.start, lines.end) + close).items);
    const is = safetyLines(parse(open + edited(text, lines, edits) + close).items);
    const all = linesOf(block);
    return [...was.keys(), ...is.keys()].some((line) => {
      const before = all.get(line) ?? 0;
      return before > 0 !== before - (was.get(line) ?? 0) + (is.get(line) ?? 0) > 0;
    });
  }
  const stretch = around(change, touched);
  const was = safetyLines(parse(text.slice(stretch.start, stretch.end)).items);
  const is = safetyLines(parse(edited(text, stretch, edits)).items);
  return was.size !== is.size || [...was.keys()].some((line) => !is.has(line));
}

/** The statements that a stretch touches; they stand in the order of the text. */
function touchedBy(items: readonly Statement[], { start, end }: Span): Statement[] {
  const touched: Statement[] = [];
  for (let i = firstIndex(items, (item) => item.end >= start); i < items.length; i++) {
    const item = items[i] as Statement;
    if (item.start > end) break;
    touched.push(item);
  }
  return touched;
}

/** A stretch with the statements that it touches. */
const around = ({ start, end }: Span, touched: readonly Statement[]): Span => ({
  start: Math.min(start, touched[0]?.start ?? start),
  end: Math.max(end, touched[touched.length - 1]?.end ?? end),
});

/** A stretch within a body from the beginning of its first line to the end of its last one, with all that stands on them. */
function wholeLines(text: string, stretch: Span, { start: first, end: last, items }: Body): Span {
  let { start, end } = stretch;
  for (;;) {
    while (start > first + 1 && !isLineEnd(text.charAt(start - 1))) start--;
    while (end < last - 1 && !isLineEnd(text.charAt(end))) end++;
    const wider = around({ start, end }, touchedBy(items, { start, end }));
    if (wider.start === start && wider.end === end) return wider;
    ({ start, end } = wider);
  }
}

const isLineEnd = (character: string): boolean => character === '\n' || character === '\r';

/** A stretch of a text with the edits made in it. */
function edited(text: string, { start, end }: Span, edits: readonly Change[]): string {
  let after = '';
  let at = start;
  for (const edit of edits) {
    after += text.slice(at, edit.start) + edit.text;
    at = Math.max(at, edit.end);
  }
  return after + text.slice(at, end);
}
