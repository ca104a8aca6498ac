// All places of a name: in its own file, and in every other file that is given.

import type { Analysis } from '../engine/index.ts';
import { isShared, keyOf, type Meaning, mentionAt, mentionsOf } from './names.ts';

export interface Reference {
  readonly path: string;
  readonly start: number;
  readonly end: number;
  readonly declares: boolean;
}

/** What stands at an offset, if it can be referred to, and whether other files can speak of it too. */
export function referent(
  analysis: Analysis,
  offset: number,
): { readonly meaning: Meaning; readonly name: string; readonly shared: boolean } | undefined {
  const meaning = mentionAt(analysis, offset)?.meaning;
  if (meaning === undefined) return undefined;
  const name = 'name' in meaning ? meaning.name : meaning.path.slice(meaning.path.lastIndexOf('/') + 1);
  return { meaning, name, shared: isShared(meaning) };
}

/** All places in one file that speak of a meaning, in the order of the text. */
export function referencesTo(analysis: Analysis, meaning: Meaning): Reference[] {
  const key = keyOf(meaning);
  return mentionsOf(analysis)
    .filter((mention) => mention.meaning.kind === meaning.kind && keyOf(mention.meaning) === key)
    .map(({ start, end, declares }) => ({ path: analysis.path, start, end, declares }));
}

/** The places of the name at an offset in the same file: for highlighting. */
export function highlight(analysis: Analysis, offset: number): Reference[] {
  const mention = mentionAt(analysis, offset);
  return mention === undefined ? [] : referencesTo(analysis, mention.meaning);
}
