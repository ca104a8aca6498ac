// The outline of a file: its blocks, the named parts of models, and nothing else.
import type { Span, Statement } from '../../grammar/index.ts';
import { blockSpecOf, headEnd, lineSpecOf } from './places.ts';
import type { Analysis } from './workspace.ts';
import type { BlockSpec } from '../vocabulary/index.ts';

export interface Symbol {
  readonly name: string;
  /** The word of the block or line: `leaf`, `terminal`. */
  readonly word: string;
  /** The model it is one of, or its title. */
  readonly detail: string;
  readonly whole: Span;
  readonly head: Span;
  readonly children: readonly Symbol[];
}

/** Symbols told at most; an outline of more is no outline. */
const mostSymbols = 5000;

export function symbols(analysis: Analysis): Symbol[] {
  const left = { count: mostSymbols };
  return symbolsIn(analysis.installation.reading.tree.items, undefined, true, left);
}

function symbolsIn(items: readonly Statement[], within: BlockSpec | undefined, isTop: boolean, left: { count: number }): Symbol[] {
  const found: Symbol[] = [];
  for (const statement of items) {
    const word = statement.word?.text;
    if (word === undefined) continue;
    const spec = statement.body === undefined ? undefined : blockSpecOf(within, isTop, word);
    const line = spec === undefined ? lineSpecOf(within, isTop, word) : undefined;
    const declares = line !== undefined && Object.values(line.slots).some((slot) => slot.kind === 'name');
    if ((spec === undefined && !declares) || left.count-- <= 0) continue;
    const first = statement.values.find((value) => value.kind === 'word');
    const model = statement.values.find((value) => value.kind === 'model');
    const title = statement.values.find((value) => value.kind === 'text');
    const named = spec === undefined || spec.named ? first : undefined;
    const rest = spec === undefined ? statement.values.filter((value) => value !== first && value.kind === 'word').map((value) => (value.kind === 'word' ? value.text : '')) : [];
    found.push({
      name: named?.text ?? word,
      word,
      detail: [named === undefined ? '' : word, model === undefined ? '' : `: ${model.name.text}`, title?.text ?? '', rest[0] ?? ''].filter((part) => part !== '').join(' '),
      whole: { start: statement.start, end: statement.end },
      head: named === undefined ? { start: statement.start, end: Math.min(headEnd(statement), statement.start + word.length) } : { start: named.start, end: named.end },
      children: spec === undefined || statement.body === undefined ? [] : symbolsIn(statement.body.items, spec, false, left),
    });
  }
  return found;
}
