// What the rules hold against a limit, for hovers, values and lenses: how much of each limit is used.
import { idOf } from '../figures/index.ts';
import { type Installation, perSubject, regimeOf } from '../model/index.ts';
import { allRules } from './all.ts';
import { type Bound, type Held, keeps } from './bounds.ts';
import { type InstallationRule, isAsked } from './rule.ts';

export interface Margin {
  readonly rule: InstallationRule;
  readonly held: Held;
  readonly subject: string;
  /** Id of the figure that it is about; undefined where what is held is stated. */
  readonly figure: string | undefined;
  readonly value: number;
  readonly limit: number;
  /** False exactly where the rule speaks. */
  readonly kept: boolean;
  /** What is left to the limit, in the unit of both; not below 0 where it is kept, not above where it is not. */
  readonly left: number;
  /** Share of the limit that is used: 1 is all of it. Undefined for a limit that is not above 0. */
  readonly used: number | undefined;
  /** The place of which the rule speaks. */
  readonly at: { readonly start: number; readonly end: number };
}

const holding: readonly InstallationRule[] = allRules.filter(
  (rule) => rule.kind === 'installation' && rule.holds !== undefined,
) as InstallationRule[];

/** Everything that a rule holds against a limit in this installation, in the order of the rules. */
export const marginsOf = perSubject((installation: Installation): readonly Margin[] => {
  const margins: Margin[] = [];
  if (installation.kind !== 'site') return margins;
  const { body } = regimeOf(installation);
  for (const rule of holding) if (isAsked(rule, body)) rule.holds?.(installation, (bound, at) => margins.push(marginOf(rule, bound, at)));
  return margins;
});

function marginOf(rule: InstallationRule, bound: Bound, at: Margin['at']): Margin {
  const { held, subject, value, limit } = bound;
  const isKept = keeps(bound);
  const left = held.way === 'most' ? limit - value : value - limit;
  const share = !(limit > 0)
    ? undefined
    : held.way === 'most'
      ? Math.max(0, value / limit)
      : value > 0
        ? limit / value
        : Number.POSITIVE_INFINITY;
  return {
    rule,
    held,
    subject,
    figure: held.figure === undefined ? undefined : idOf(held.figure, subject),
    value,
    limit,
    kept: isKept,
    // Within the slack of the rule nothing is left, and nothing is lacking.
    left: isKept ? Math.max(0, left) : left,
    used: share === undefined ? undefined : isKept ? Math.min(1, share) : share,
    at,
  };
}

/** The margins about one figure, by its id. */
export function marginsAbout(installation: Installation, figure: string): readonly Margin[] {
  return byFigure(installation).get(figure) ?? none;
}

const none: readonly Margin[] = [];

const byFigure = perSubject((installation: Installation): ReadonlyMap<string, readonly Margin[]> => {
  const found = new Map<string, Margin[]>();
  for (const margin of marginsOf(installation)) {
    if (margin.figure === undefined) continue;
    const known = found.get(margin.figure);
    if (known === undefined) found.set(margin.figure, [margin]);
    else known.push(margin);
  }
  return found;
});
