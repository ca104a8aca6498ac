// The outline of a file: its blocks, the named parts of models, and nothing else.
import { parse, type Span, type Statement, type Tree } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import type { BlockSpec } from '../vocabulary/index.ts';
import { blockSpecOf, headEnd, lineSpecOf } from './places.ts';

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

export const symbols = (analysis: Analysis): Symbol[] => symbolsOf(analysis.installation.reading.tree);

/** The same of a tree alone: no names need be looked up for it, and nothing judged. */
export const symbolsOf = (tree: Tree): Symbol[] => symbolsIn(tree.items, undefined, true, { count: mostSymbols });

/** A symbol of some file, with what it stands in. */
export interface Indexed {
  readonly name: string;
  readonly word: string;
  readonly detail: string;
  /** The names of what is around it, outermost first. */
  readonly container: string;
  readonly head: Span;
}

/** All symbols of a text in one list, for a search over many files; read by its shape alone. */
export function indexOf(text: string): Indexed[] {
  const found: Indexed[] = [];
  const put = (list: readonly Symbol[], container: string): void => {
    for (const { name, word, detail, head, children } of list) {
      found.push({ name, word, detail, container, head });
      put(children, container === '' ? name : `${container} › ${name}`);
    }
  };
  put(symbolsOf(parse(text)), '');
  return found;
}

/**
 * How well a name answers what somebody typed, letters in order and capitals counting for nothing; undefined where it does
 * not. Smaller is better: the name itself, its beginning, the beginning of a part of it, anywhere, scattered letters.
 */
export function likenessTo(query: string, name: string): number | undefined {
  const wanted = query.toLowerCase();
  const own = name.toLowerCase();
  if (wanted === own) return 0;
  const at = own.indexOf(wanted);
  if (at === 0) return 1;
  if (at > 0) return /[^\p{L}\p{N}]/u.test(own.charAt(at - 1)) ? 2 : 3;
  let from = 0;
  for (const letter of wanted) {
    const next = own.indexOf(letter, from);
    if (next < 0) return undefined;
    from = next + letter.length;
  }
  return 4 + (from - wanted.length) / (own.length + 1);
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
    const rest =
      spec === undefined
        ? statement.values
            .filter((value) => value !== first && value.kind === 'word')
            .map((value) => (value.kind === 'word' ? value.text : ''))
        : [];
    found.push({
      name: named?.text ?? word,
      word,
      detail: [named === undefined ? '' : word, model === undefined ? '' : `: ${model.name.text}`, title?.text ?? '', rest[0] ?? '']
        .filter((part) => part !== '')
        .join(' '),
      whole: { start: statement.start, end: statement.end },
      head:
        named === undefined
          ? { start: statement.start, end: Math.min(headEnd(statement), statement.start + word.length) }
          : { start: named.start, end: named.end },
      children: spec === undefined || statement.body === undefined ? [] : symbolsIn(statement.body.items, spec, false, left),
    });
  }
  return found;
}
