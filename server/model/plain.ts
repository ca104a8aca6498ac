// What a file says as plain data: no places in its text, no nodes of its tree, nothing that leads round in a circle.
import type { Statement, WordValue } from '../../grammar/index.ts';
import type { Blocks, Entity, Facts } from '../vocabulary/index.ts';
import type { Installation } from './installation.ts';

/** A fact or a value of one without its place: words are texts, quantities numbers in SI (angles in radians). */
export type Plain<T> = T extends WordValue
  ? string
  : T extends readonly (infer E)[]
    ? readonly Plain<E>[]
    : T extends object
      ? { readonly [K in keyof T as T[K] extends Statement ? never : K]: Plain<T[K]> }
      : T;

/** The blocks of a word, each with its name, title, model and facts, and the blocks inside it. */
export interface PlainBlock<B extends keyof Blocks = keyof Blocks> {
  readonly name: string;
  readonly title: string | undefined;
  /** The name of its model; undefined where it has none. */
  readonly model: string | undefined;
  readonly facts: Plain<Facts<Blocks[B]>>;
  readonly blocks: Readonly<Record<string, readonly PlainBlock[]>>;
}

/** All blocks of a file by their words. */
export type PlainSite = { readonly [B in keyof Blocks]: readonly PlainBlock<B>[] };

/** What the file itself says; of what it takes from libraries only the names. */
export function plainSite({ reading }: Installation): PlainSite {
  const { entities } = reading;
  return Object.fromEntries(Object.entries(entities).map(([word, all]) => [word, all.map(plainBlock)])) as unknown as PlainSite;
}

function plainBlock({ name, title, model, facts, blocks }: Entity): PlainBlock {
  return {
    name,
    title,
    model: model?.text,
    facts: plain(facts) as PlainBlock['facts'],
    blocks: Object.fromEntries(Object.entries(blocks).map(([word, all]) => [word, all.map(plainBlock)])),
  };
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  if (isWord(value)) return value.text;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) => (key === 'line' || inner === undefined ? [] : [[key, plain(inner)]])),
  );
}

const isWord = (value: object): value is WordValue =>
  'kind' in value && value.kind === 'word' && 'text' in value && typeof value.text === 'string';
