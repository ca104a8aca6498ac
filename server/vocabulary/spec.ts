// What an entry of the vocabulary table is made of. From these entries come how a file is read, the types of the installation,
// completion, hover, the manual, the snippets and the highlighting; nothing else says what a word means.
import type { Statement, WordValue } from '../../grammar/index.ts';
import type { Dimension } from './units.ts';

interface SlotOptions {
  readonly doc: string;
  /** The keyword that stands before the value; slots with one may come in any order. */
  readonly after?: string;
  readonly optional?: boolean;
  /** Takes one value or more. */
  readonly many?: boolean;
}

export interface QuantitySlot extends SlotOptions {
  readonly kind: 'quantity';
  readonly dimension: Dimension;
  /** Least and greatest value that can be meant, in SI. */
  readonly min: number;
  readonly max: number;
  /** What holds when it is not stated, in SI. */
  readonly fallback?: number;
}
/** `±` behind the quantity of the slot before it. */
export interface ToleranceSlot extends SlotOptions {
  readonly kind: 'tolerance';
  readonly fallback?: number;
}
export interface RangeSlot extends SlotOptions {
  readonly kind: 'range';
  readonly dimensions: readonly Dimension[];
}
export interface CountSlot extends SlotOptions {
  readonly kind: 'count';
  readonly min: number;
  readonly max: number;
}
export interface ChoiceSlot<Option extends string = string> extends SlotOptions {
  readonly kind: 'choice';
  /** Each word that may stand here, with what it means. */
  readonly options: Readonly<Record<Option, string>>;
  readonly fallback?: Option;
}
/** A name that this line declares. */
export interface NameSlot extends SlotOptions {
  readonly kind: 'name';
  /** What is printed on a product: where it does not begin with a letter it stands in quotation marks. */
  readonly asPrinted?: boolean;
}
/** What a name can point at. */
export type Target = 'leaf' | 'drive' | 'sensor' | 'control' | 'cable' | 'device' | 'load' | 'terminal' | 'selector' | 'option' | 'rule';
export interface RefSlot extends SlotOptions {
  readonly kind: 'ref';
  readonly to: Target;
}
export interface TextSlot extends SlotOptions {
  readonly kind: 'text';
}
export interface DateSlot extends SlotOptions {
  readonly kind: 'date';
}
export type Slot = QuantitySlot | ToleranceSlot | RangeSlot | CountSlot | ChoiceSlot | NameSlot | RefSlot | TextSlot | DateSlot;

export interface LineSpec {
  readonly doc: string;
  readonly slots: Readonly<Record<string, Slot>>;
  readonly example: string;
  /** May stand more than once in a block. */
  readonly many?: boolean;
  /** Must stand in every such block. */
  readonly required?: boolean;
  /** What it says decides whether somebody can be hurt: editors mark it, and a fix that changes it is never safe. */
  readonly safety?: boolean;
  /** Where the meaning or the limits come from; without one it is common practice. */
  readonly source?: string;
  /** What it was called in earlier versions: where that still stands, this word is what is meant. */
  readonly formerly?: readonly string[];
}

export interface BlockSpec {
  readonly doc: string;
  /** Whether the block has a name of its own. */
  readonly named: boolean;
  /** The word of the models that `: name` points at. */
  readonly model?: `${string}-model`;
  readonly title?: boolean;
  /** At most one in a file. */
  readonly single?: boolean;
  readonly lines: Readonly<Record<string, LineSpec>>;
  readonly blocks: Readonly<Record<string, BlockSpec>>;
  /** A whole block, as the manual shows it. */
  readonly example: string;
}

/** A block that stands in a file by itself. What kind of block it is stands here alone; see kinds.ts. */
export interface BlockOfFile extends BlockSpec {
  /** Its place among the blocks in lists and in the manual: the smaller first. */
  readonly place: number;
  /** A site has it, or it says what a product can do. */
  readonly belongs: 'site' | 'model';
  /** It can be wired to a panel; the names of all devices of a file differ. */
  readonly device?: true;
}

/** The two ends of a range in SI, and what it measures. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly dimension: Dimension;
}

type One<S> = S extends { kind: 'quantity' | 'tolerance' | 'count' }
  ? number
  : S extends { kind: 'range' }
    ? Range
    : S extends { kind: 'choice'; options: Readonly<Record<infer Option, string>> }
      ? Option
      : S extends { kind: 'name' | 'ref' }
        ? WordValue
        : string;
type SlotValue<S> = S extends { many: true }
  ? readonly One<S>[]
  : S extends { fallback: unknown }
    ? One<S>
    : S extends { optional: true } | { kind: 'tolerance' }
      ? One<S> | undefined
      : One<S>;

/** A line as read: its slots by name, quantities in SI, and the statement it stands in. */
export type Line<L extends LineSpec> = { readonly line: Statement } & { readonly [K in keyof L['slots']]: SlotValue<L['slots'][K]> };

/** All lines of a block by their word. */
export type Facts<B extends BlockSpec> = {
  readonly [K in keyof B['lines']]: B['lines'][K] extends { many: true } ? readonly Line<B['lines'][K]>[] : Line<B['lines'][K]> | undefined;
};

/** A block as read. */
export interface Entity<B extends BlockSpec = BlockSpec> {
  /** The block's word: `leaf`, `drive-model`. */
  readonly kind: string;
  readonly name: string;
  readonly nameAt: WordValue | undefined;
  readonly title: string | undefined;
  readonly model: WordValue | undefined;
  readonly at: Statement;
  readonly facts: Facts<B>;
  readonly blocks: { readonly [K in keyof B['blocks']]: readonly Entity<B['blocks'][K]>[] };
  /** Words of lines that stand here but could not be read: their absence is not reported again. */
  readonly unread: readonly string[];
  /** Results kept for this reading of this block; see model/memo.ts. */
  readonly memo: unknown[];
}

const infinity = Number.POSITIVE_INFINITY;

type Given<O> = O & { readonly doc: string };

export const quantity = <const D extends Dimension, const O extends object>(dimension: D, min: number, max: number, options: Given<O>) =>
  ({ kind: 'quantity', dimension, min, max, ...options }) as const;
export const tolerance = <const O extends object>(options: Given<O>) => ({ kind: 'tolerance', ...options }) as const;
export const range = <const O extends object>(dimensions: readonly Dimension[], options: Given<O>) =>
  ({ kind: 'range', dimensions, ...options }) as const;
export const count = <const O extends object>(min: number, max: number, options: Given<O>) =>
  ({ kind: 'count', min, max, ...options }) as const;
export const choice = <const C extends string, const O extends object>(options: Readonly<Record<C, string>>, rest: Given<O>) =>
  ({ kind: 'choice', options, ...rest }) as const;
export const name = <const O extends object>(options: Given<O>) => ({ kind: 'name', ...options }) as const;
export const ref = <const T extends Target, const O extends object>(to: T, options: Given<O>) => ({ kind: 'ref', to, ...options }) as const;
export const text = <const O extends object>(options: Given<O>) => ({ kind: 'text', ...options }) as const;
export const date = <const O extends object>(options: Given<O>) => ({ kind: 'date', ...options }) as const;
export const anyAmount = infinity;
