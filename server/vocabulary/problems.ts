// What reading a file can find wrong, by the name of the rule that explains it, with what that rule is told.
import type { Nothing, Span, SyntaxProblems } from '../../grammar/index.ts';
import type { Home } from './guesses.ts';
import type { Slot } from './spec.ts';
import type { Dimension, Unit } from './units.ts';

/** Something wrong in one place, of any kind in a table of kinds; `Kind` may be some of them. */
export type ProblemOf<Kinds, Kind extends keyof Kinds = keyof Kinds> = {
  [K in Kind]: Span & {
    readonly kind: K;
    readonly detail: Kinds[K];
    readonly related?: readonly (Span & { readonly note: string })[];
    /** How many there are of this kind in the file, at the last one that is told of too many. */
    readonly ofAll?: number;
  };
}[Kind];

/** Between what a number of a line must lie. */
type Limits =
  | { readonly of: 'count'; readonly least: number; readonly most: number }
  /** Limits in SI; `digits` as written, where the value is nothing but a number and its unit. */
  | {
      readonly of: 'quantity';
      readonly least: number;
      readonly most: number;
      readonly unit: Unit;
      readonly amount: number;
      readonly digits: string | undefined;
    }
  /** The two ends of a range, of which the first must be the smaller. */
  | { readonly of: 'range' };

/**
 * `word`: the line or block that it is found in. `found`: as it is written. `meant`: what was probably meant, where that can be
 * guessed.
 */
export interface ReadingProblems extends SyntaxProblems {
  readonly 'file-empty': Nothing;
  readonly 'language-missing': { readonly version: number /** Where the line should be. */; readonly at: number };
  readonly 'language-unknown': { readonly found: number; readonly version: number };
  readonly 'language-not-first': Nothing;
  /** `block`: the word of the block that it stands in; none outside all blocks. */
  readonly 'word-unknown': {
    readonly word: string;
    readonly block: string | undefined;
    readonly known: readonly string[];
    readonly meant: string | undefined;
    readonly elsewhere: Home;
  };
  readonly 'block-without-body': { readonly word: string };
  readonly 'body-unexpected': { readonly word: string };
  readonly 'fact-repeated': { readonly word: string };
  readonly 'name-missing': { readonly word: string; readonly example: string };
  readonly 'name-unfit': { readonly name: string };
  readonly 'value-unexpected': { readonly word: string; readonly found: string; readonly shape: string };
  readonly 'value-unfit': { readonly word: string; readonly found: string; readonly slot: Slot; readonly shape: string };
  readonly 'value-missing': { readonly word: string; readonly slot: Slot; readonly example: string };
  readonly 'value-out-of-range': { readonly word: string; readonly found: string; readonly limits: Limits };
  readonly 'choice-unknown': {
    readonly word: string;
    readonly found: string;
    readonly choices: readonly string[];
    readonly meant: string | undefined;
  };
  readonly 'date-impossible': { readonly found: string };
  readonly 'decimal-comma': Nothing;
  /** `unit`: the one that is likely. */
  readonly 'unit-missing': {
    readonly word: string;
    readonly found: string;
    readonly dimensions: readonly Dimension[];
    readonly units: readonly string[];
    readonly unit: string | undefined;
  };
  readonly 'unit-unknown': {
    readonly word: string;
    readonly found: string;
    readonly units: readonly string[];
    readonly meant: string | undefined;
  };
  /** `measures`: what the unit that was found is a unit of. */
  readonly 'unit-wrong': {
    readonly word: string;
    readonly found: string;
    readonly measures: Dimension | undefined;
    readonly dimensions: readonly Dimension[];
    readonly units: readonly string[];
  };
}

export type ReadingProblem = ProblemOf<ReadingProblems>;

/** What reading finds wrong, in the order in which it meets it, and the text in which it does. */
export class ProblemList {
  readonly problems: ReadingProblem[];
  readonly text: string;

  constructor(text: string, problems: readonly ReadingProblem[]) {
    this.text = text;
    this.problems = [...problems];
  }

  add<Kind extends keyof ReadingProblems>(kind: Kind, at: Span, detail: ReadingProblems[Kind]): undefined {
    this.problems.push({ kind, start: at.start, end: at.end, detail } as ReadingProblem);
    return undefined;
  }

  /** A fact or a block that may stand once stands again. */
  addRepeated(word: string, at: Span, first: Span): void {
    const related = [{ start: first.start, end: first.end, note: 'it stands here first' }];
    this.problems.push({ kind: 'fact-repeated', start: at.start, end: at.end, detail: { word }, related });
  }

  /** A piece of the text as it is written. */
  source(at: Span): string {
    return this.text.slice(at.start, at.end);
  }
}

/** Most problems of one kind, of those that reading finds, that are told one by one; a file in ruins is not made clearer by more. */
export const mostTold = 100;
