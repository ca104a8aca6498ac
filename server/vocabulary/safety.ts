// Whether a change of a text changes a fact that somebody's safety hangs on. Nobody's program decides that by itself.
import { parse, printValue, type Span, type Statement, type Tree } from '../../grammar/index.ts';
import type { BlockSpec, LineSpec } from './spec.ts';
import { blocks } from './words/all.ts';

interface Change extends Span {
  readonly text: string;
}

const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined => (Object.hasOwn(table, key) ? table[key] : undefined);

/** The lines that the vocabulary calls safety-critical, each with the blocks that it stands in, as they would be printed. */
function safetyLines(items: readonly Statement[], around: string, spec: BlockSpec | undefined, into: Set<string>): Set<string> {
  for (const item of items) {
    const word = item.word?.text ?? '';
    const head = [word, ...item.values.filter((value) => value.kind !== 'comma').map(printValue)].join(' ');
    const line = spec === undefined ? undefined : own<LineSpec>(spec.lines, word);
    if (line?.safety === true) into.add(`${around}\n${head}`);
    const block = spec === undefined ? own<BlockSpec>(blocks, word) : own(spec.blocks, word);
    if (item.body !== undefined && block !== undefined) safetyLines(item.body.items, `${around}\n${head}`, block, into);
  }
  return into;
}

/**
 * True where the edits, which are in order and apart from each other, add, remove or change a line that the vocabulary calls
 * safety-critical. A line that stands twice and loses its double is not changed.
 */
export function changesSafety({ text, items }: Tree, edits: readonly Change[]): boolean {
  const first = edits[0];
  const last = edits[edits.length - 1];
  if (first === undefined || last === undefined) return false;
  // Only the blocks that are touched need be looked at.
  let start = first.start;
  let end = last.end;
  for (const item of items)
    if (item.end >= first.start && item.start <= last.end) {
      start = Math.min(start, item.start);
      end = Math.max(end, item.end);
    }
  let after = '';
  let at = start;
  for (const edit of edits) {
    after += text.slice(at, edit.start) + edit.text;
    at = Math.max(at, edit.end);
  }
  const was = safetyLines(parse(text.slice(start, end)).items, '', undefined, new Set());
  const is = safetyLines(parse(after + text.slice(at, end)).items, '', undefined, new Set());
  return was.size !== is.size || [...was].some((line) => !is.has(line));
}
