// What a problem rule is told: all that can be wrong with a file, by the name of the rule that explains it.
import type { InstallationProblems } from '../model/index.ts';
import type { ProblemOf } from '../vocabulary/index.ts';
import type { Severity } from './rule.ts';

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** `rule`: the one that an acceptance or a promise speaks of, as written. `line`: where the whole acceptance stands. */
export interface Problems extends InstallationProblems {
  readonly 'acceptance-of-unknown-rule': { readonly rule: string; readonly meant: string | undefined };
  /** `asError`: only what the rule finds as an error cannot be accepted. */
  readonly 'acceptance-not-allowed': { readonly rule: string; readonly line: Stretch; readonly asError: boolean };
  /** `still`: how many findings it would cover. */
  readonly 'acceptance-expired': { readonly rule: string; readonly line: Stretch; readonly until: string; readonly still: number };
  readonly 'acceptance-without-reason': { readonly rule: string };
  readonly 'acceptance-unsigned': { readonly rule: string };
  readonly 'acceptance-unused': { readonly rule: string; readonly line: Stretch };
  readonly 'expectation-not-met':
    | { readonly promised: 'finding'; readonly rule: string }
    | { readonly promised: 'finding of no rule'; readonly rule: string; readonly meant: string | undefined }
    /** Nothing so grave; `rule` finds the first of `count` all the same. */
    | { readonly promised: 'nothing'; readonly gravest: Severity; readonly rule: string; readonly count: number };
}

export type ProblemKind = keyof Problems;
export type Problem<Kind extends ProblemKind = ProblemKind> = ProblemOf<Problems, Kind>;
