// What a rule and a finding are. A rule is a folder with its code and its page; the page's examples are run as tests.

import type { Source } from '../figures/index.ts';
import type { Body, Installation } from '../model/index.ts';
import { type Bound, keeps } from './bounds.ts';
import type { Problem, ProblemKind } from './problems.ts';

/** Error: a person can be hurt, or it cannot work. Warning: it may. Note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** The graver, the more. */
export const graveness: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A change that mends a finding. A fix that changes a safety value is never safe and never applied in bulk. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly safe: boolean;
}

export interface Related {
  readonly message: string;
  /** The file, when it is another one. */
  readonly path?: string;
  readonly start: number;
  readonly end: number;
}

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** What is wrong: one sentence with the file's own names and numbers. */
  readonly what: string;
  /** Why that matters. */
  readonly why: string;
  /** What to do. */
  readonly remedy: string;
  readonly start: number;
  readonly end: number;
  readonly related: readonly Related[];
  readonly source: string;
  readonly fixes: readonly Fix[];
  readonly tag: 'unnecessary' | undefined;
  /** Words of lines that are missing in the block at whose head this stands. */
  readonly lacks: readonly string[];
}

/** What a rule says of one place. What it leaves out is taken from the rule. */
export interface Report {
  readonly at: { readonly start: number; readonly end: number };
  readonly what: string;
  readonly why?: string;
  readonly remedy?: string;
  /** May be milder than the rule's own, never graver. */
  readonly severity?: Severity;
  readonly related?: readonly Related[];
  readonly source?: Source;
  readonly fixes?: readonly Fix[];
  readonly unnecessary?: boolean;
  /** Words of lines of the block at whose head this stands: each of them would be one thing less to say. */
  readonly lacks?: readonly string[];
}

interface RuleBase {
  /** Whole words that say what is wrong; the folder has the same name. */
  readonly name: string;
  readonly severity: Severity;
  /** What is wrong in general, in one sentence, for lists. */
  readonly title: string;
  readonly why: string;
  readonly remedy: string;
  readonly source: Source;
  /** False where no local reason may overrule it. `warnings`: what it finds as an error cannot be accepted, the rest can. */
  readonly acceptable: boolean | 'warnings';
}

/**
 * Takes a number that a rule holds against a limit, kept or not, the place of which the rule speaks where it is not kept, and
 * what it says then; nothing where what it says of another number tells of this one too. Hovers, values and lenses show the same
 * bound as a margin, so the two can never disagree.
 */
export type Hold = (bound: Bound, at: Report['at'], say: () => Omit<Report, 'at'> | undefined) => void;

/** What a rule looks at: facts, each by itself (`check`), and numbers against limits (`holds`). */
interface Looks {
  /** `asOf` is the day of the verdict, YYYY-MM-DD, for what has a date. */
  readonly check: (installation: Installation, report: (report: Report) => void, asOf: string) => void;
  readonly holds: (installation: Installation, hold: Hold) => void;
}

/** The body of rules that a site has to be under for a rule to look at it. */
export type Under = 'anywhere' | 'north-america' | 'outside north-america';

interface Manner {
  readonly under: Under;
  /** `keystroke`: cheap enough to run at every edit. `idle`: run when the keys rest. */
  readonly cost: 'keystroke' | 'idle';
  /** `site`: only files with something of a site in them. `file`: libraries and empty files too. */
  readonly scope: 'site' | 'file';
}

/** A rule about the installation: it has a `check` or `holds`, or both. */
export interface InstallationRule extends RuleBase, Manner {
  readonly kind: 'installation';
  readonly check: Looks['check'] | undefined;
  readonly holds: Looks['holds'] | undefined;
}

/** A rule that explains what reading the file already found: problems of the kind that has its name. */
export interface ProblemRuleOf<Kind extends ProblemKind> extends RuleBase {
  readonly kind: 'problem';
  readonly name: Kind;
  readonly explain: (problem: Problem<Kind>, text: string) => Omit<Report, 'at'>;
}

export type ProblemRule = { [Kind in ProblemKind]: ProblemRuleOf<Kind> }[ProblemKind];

export type Rule = InstallationRule | ProblemRule;

/** All rules are objects of one shape: they are asked in turn for every file, and that is quick only where all are alike. */
export const installationRule = ({
  name,
  severity,
  title,
  why,
  remedy,
  source,
  acceptable,
  under = 'anywhere',
  cost = 'keystroke',
  scope = 'site',
  check,
  holds,
}: RuleBase & Partial<Manner> & ((Pick<Looks, 'check'> & Partial<Looks>) | (Pick<Looks, 'holds'> & Partial<Looks>))): InstallationRule => ({
  kind: 'installation',
  name,
  severity,
  title,
  why,
  remedy,
  source,
  acceptable,
  under,
  cost,
  scope,
  check,
  holds,
});

/** Speaks where what a rule holds against its limit is not kept. */
export const speaking =
  (report: (report: Report) => void): Hold =>
  (bound, at, say) => {
    const said = keeps(bound) ? undefined : say();
    if (said !== undefined) report({ ...said, at });
  };

/** Whether a rule looks at sites under that body of rules. */
export const isAsked = ({ under }: InstallationRule, body: Body): boolean =>
  under === 'anywhere' || (under === 'north-america') === (body === 'north-america');

/** Lets a rule look at an installation and say what it finds; `hold` speaks to the same `report`. */
export function look(
  { check, holds }: InstallationRule,
  installation: Installation,
  report: (report: Report) => void,
  hold: Hold,
  asOf: string,
): void {
  if (check !== undefined) check(installation, report, asOf);
  if (holds !== undefined) holds(installation, hold);
}

export const problemRule = <Kind extends ProblemKind>(
  rule: Omit<ProblemRuleOf<Kind>, 'kind' | 'source'> & { readonly source?: Source },
): ProblemRuleOf<Kind> => ({ source: ofTheLanguage, ...rule, kind: 'problem' });

/** The source of rules that follow from the language and not from the trade. */
export const ofTheLanguage: Source = { text: 'the language itself', standing: 'derived' };
export const ofTheModel: Source = { text: 'the model, which says what the product can do', standing: 'derived' };
export const commonPractice: Source = { text: 'common practice, no source', standing: 'common practice' };
