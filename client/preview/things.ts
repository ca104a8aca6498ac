// From the cursor to what is drawn.
import type { ThingAnswer } from '../../server/lsp/requests.ts';

export interface Place {
  readonly line: number;
  readonly character: number;
}
type Range = ThingAnswer['range'];

const before = (a: Place, b: Place): number => a.line - b.line || a.character - b.character;

export const holds = (range: Range, place: Place): boolean => before(range.start, place) <= 0 && before(place, range.end) <= 0;

/** Negative where `a` is the smaller of two ranges; of two that are as large, the one that starts later. */
function bySize(a: Range, b: Range): number {
  const lines = (range: Range): number => range.end.line - range.start.line;
  const characters = (range: Range): number => range.end.character - range.start.character;
  return lines(a) - lines(b) || (lines(a) === 0 ? characters(a) - characters(b) : 0) || before(b.start, a.start);
}

/**
 * The things that stand at a place of the text, the innermost first; `first` goes before all others where it starts there,
 * for it was just clicked and several things may start at one place.
 */
export function thingsAt(things: readonly ThingAnswer[], place: Place, first?: string): string[] {
  const found = things.filter((thing) => holds(thing.range, place)).sort((a, b) => bySize(a.range, b.range));
  const clicked = found.find((thing) => thing.id === first && before(thing.range.start, place) === 0);
  return [...(clicked === undefined ? [] : [clicked.id]), ...found.filter((thing) => thing !== clicked).map((thing) => thing.id)];
}

/** Things in the order of the file, those left out that a drawing does not show. */
export const inFileOrder = (things: readonly ThingAnswer[], shown: { has(id: string): boolean }): ThingAnswer[] =>
  things
    .filter((thing) => shown.has(thing.id))
    .sort((a, b) => before(a.range.start, b.range.start) || -bySize(a.range, b.range) || (a.id < b.id ? -1 : 1));
