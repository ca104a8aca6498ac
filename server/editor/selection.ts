// What a growing selection takes in, step by step: a number, its quantity, the slot with its keyword, the line, the inside
// of the block, the block, the file.
import { holds, type Span, type Value } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { blockSpecOf, blocksAround, headEnd, innermost, lineSpecOf, type Part, partsOf, statementAt } from './places.ts';

/** The stretches around an offset, the smallest first; each holds the one before and is larger. The last is the whole text. */
export function selectionAt(analysis: Analysis, offset: number): Span[] {
  const { tree } = analysis.installation.reading;
  const { text } = analysis;
  const steps: Span[] = [];
  const comment = tree.comments.find((each) => offset > each.start && offset <= each.end);
  if (comment !== undefined) steps.push(comment);
  const found = comment === undefined ? statementAt(tree, offset) : undefined;
  if (found !== undefined) {
    const { statement, around } = found;
    const { spec, isTop } = innermost(around);
    const word = statement.word?.text ?? '';
    const line = statement.body !== undefined && blockSpecOf(spec, isTop, word) !== undefined ? undefined : lineSpecOf(spec, isTop, word);
    const value = statement.values.find((each) => each.kind !== 'comma' && holds(each, offset));
    if (statement.word !== undefined && holds(statement.word, offset)) steps.push(statement.word);
    if (value !== undefined) {
      steps.push(...insideOf(value, offset), value);
      if (line !== undefined) steps.push(...slotAround(partsOf(line, statement.values).parts, offset));
    }
    steps.push({ start: statement.start, end: headEnd(statement) }, statement);
  }
  for (const { statement } of blocksAround(tree, offset).reverse()) {
    const { body } = statement;
    if (body === undefined) continue;
    const first = body.items[0];
    const last = body.items[body.items.length - 1];
    if (first !== undefined && last !== undefined) steps.push({ start: first.start, end: last.end });
    steps.push(body, statement);
  }
  steps.push({ start: 0, end: text.length });

  const nested: Span[] = [];
  for (const { start, end } of steps) {
    const before = nested[nested.length - 1];
    if (start > offset || end < offset) continue;
    if (before === undefined || (start <= before.start && end >= before.end && end - start > before.end - before.start))
      nested.push({ start, end });
  }
  return nested.length === 0 ? [{ start: 0, end: text.length }] : nested;
}

/** The parts of one value: a number, its unit, what stands between quotes. */
function insideOf(value: Value, offset: number): Span[] {
  if (value.kind === 'text') return value.end - value.start > 2 ? [{ start: value.start + 1, end: value.end - 1 }] : [];
  if (value.kind === 'model') return [value.name];
  if (value.kind !== 'number') return [];
  const inner = [value.plusMinus, value.upTo].find((each) => each !== undefined && holds(each, offset));
  if (inner !== undefined) return [...insideOf(inner, offset), inner];
  const digits: Span = { start: value.start, end: value.start + value.text.length };
  const own: Span = { start: value.start, end: value.unit?.end ?? digits.end };
  return [...[digits, value.unit].filter((each): each is Span => each !== undefined && holds(each, offset)).slice(0, 1), own];
}

/** A slot with its keyword and all its values. */
function slotAround(parts: readonly Part[], offset: number): Span[] {
  const key = parts.find((part) => holds(part, offset))?.key;
  if (key === undefined) return [];
  const own = parts.filter((part) => part.key === key);
  return [{ start: Math.min(...own.map((part) => part.start)), end: Math.max(...own.map((part) => part.end)) }];
}
