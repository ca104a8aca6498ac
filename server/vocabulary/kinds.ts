// What kinds of block there are, as each block itself says (words/): lists and types, so that nobody keeps them by hand.
import type { BlockSpec } from './spec.ts';
import { blocks } from './words/all.ts';

export type Blocks = typeof blocks;
export type BlockWord = keyof Blocks;
type WordsOf<Trait> = { [Word in BlockWord]: Blocks[Word] extends Trait ? Word : never }[BlockWord];

export type SiteWord = WordsOf<{ belongs: 'site' }>;
export type ModelKind = WordsOf<{ belongs: 'model' }>;
export type DeviceWord = WordsOf<{ device: true }>;
/** What has a name of its own in a file. Devices share the space of their names; two blocks of other words may have one name. */
export type NameSpace = Exclude<WordsOf<{ belongs: 'site'; named: true }>, DeviceWord> | 'device';

const words = Object.keys(blocks) as BlockWord[];

/** The blocks of a site, in the order of the manual. */
export const siteWords = words.filter((word): word is SiteWord => blocks[word].belongs === 'site');
/** The blocks that say what a product can do, in the order of the manual. */
export const modelKinds = words.filter((word): word is ModelKind => blocks[word].belongs === 'model');

const kinds: ReadonlySet<string> = new Set(modelKinds);
export const isModelKind = (word: string): word is ModelKind => kinds.has(word);

/** The kind of model that `: name` points at in such a block; undefined where it takes none. */
export const modelKindOf = ({ model }: BlockSpec): ModelKind | undefined => (model !== undefined && isModelKind(model) ? model : undefined);

/** The space in which the name of a block is looked up; none for words whose blocks have no name, and for models. */
export const nameSpaceOf: ReadonlyMap<string, NameSpace> = new Map(
  siteWords
    .filter((word) => blocks[word].named)
    .map((word) => [word, 'device' in blocks[word] ? 'device' : (word as Exclude<NameSpace, 'device'>)]),
);

/** Something by what its name stands for, in a sentence. */
export const nameSpaceInWords = (space: NameSpace | ModelKind): string => (space === 'device' ? 'sensor, drive or control' : space);

/** The version of the language that these words make up. */
export const languageVersion = 1;
