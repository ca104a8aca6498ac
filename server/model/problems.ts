// What looking up the names and the libraries of a file can find wrong, by the name of the rule that explains it.
import type { Mixture, ModelKind, ProblemOf, ReadingProblems } from '../vocabulary/index.ts';
import type { UsePath } from './paths.ts';

/** A name that leads nowhere: what was looked for, and some of the names that are there. */
interface Unknown<What> {
  readonly name: string;
  readonly what: What;
  readonly meant: string | undefined;
  readonly known: readonly string[];
}

type Fault = Extract<UsePath, { readonly fault: unknown }>['fault'];

/** `path`: of a `use` line, as it is written there. */
export interface UseProblems {
  readonly 'model-repeated': { readonly name: string; readonly kind: ModelKind; readonly first: string; readonly second: string };
  /** The files in the order of their use; the last is one that was met before. */
  readonly 'use-cycle': { readonly chain: readonly string[] };
  readonly 'use-outside-root': { readonly path: string; readonly isLink: boolean };
  readonly 'use-path-unfit': { readonly path: string; readonly fault: Exclude<Fault, 'outside' | 'itself'> };
  readonly 'use-missing-file': { readonly path: string; readonly fault: 'missing' | 'unreadable' };
  readonly 'use-repeated': { readonly path: string };
  /**
   * The first library with mistakes that a `use` line leads to. `unfollowed`: the path of its own `use` line that leads nowhere, where
   * that is its mistake. `others`: how many more there are.
   */
  readonly 'library-has-errors': { readonly library: string; readonly unfollowed: string | undefined; readonly others: number };
  /** More files than `most` are used, directly or by what is used; `first`: the first that was left out. */
  readonly 'use-leads-too-far': { readonly most: number; readonly first: string };
}

export interface InstallationProblems extends ReadingProblems, UseProblems {
  readonly 'name-unknown': Unknown<string>;
  readonly 'model-unknown': Unknown<ModelKind>;
  readonly 'name-repeated': { readonly name: string; readonly what: string };
  /** `what`: of what it is the name. `library`: the file that declares the other one, where it is not this one. */
  readonly 'name-looks-like-another': {
    readonly name: string;
    readonly what: string;
    readonly other: string;
    readonly library: string | undefined;
  };
  readonly 'name-mixes-alphabets': Mixture & { readonly name: string; readonly what: string };
  /** `ring`: further leaves stand between the two, so that only all together cover each other. */
  readonly 'overlap-circular': { readonly leaf: string; readonly other: string; readonly ring: boolean };
  readonly 'use-unused': { readonly path: string };
}

export type InstallationProblem = ProblemOf<InstallationProblems>;
