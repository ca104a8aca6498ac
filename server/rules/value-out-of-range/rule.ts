import { unitsOf } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import type { Problem } from '../problems.ts';
import { problemRule } from '../rule.ts';
import { perhaps, quoted, rounded } from '../words.ts';

export const rule = problemRule({
  name: 'value-out-of-range',
  severity: 'error',
  title: 'A number is so small or so large that it is surely a slip of the pen.',
  why: 'Worked out with such a number, every figure that depends on it would be wrong by as much.',
  remedy: 'Correct the number or its unit.',
  acceptable: false,
  explain: (problem) => {
    const { word, found, limits } = problem.detail;
    if (limits.of === 'range')
      return {
        what: `The range ${quoted(found)} in ${quoted(word)} does not run from a smaller to a greater value.`,
        remedy: 'Write the smaller end first and the greater one behind it.',
      };
    const fits = limits.of === 'quantity' ? unitsThatFit(limits) : [];
    return {
      what: `${quoted(found)} in ${quoted(word)} can hardly be meant; it takes ${inWords(limits)}.`,
      remedy: `Correct the number or its unit.${perhaps(fits[0], found)}`,
      fixes: fits.slice(0, 3).flatMap((meant) => replaceBy(problem, meant, false)),
    };
  },
});

type Limits = Exclude<Problem<'value-out-of-range'>['detail']['limits'], { readonly of: 'range' }>;
type QuantityLimits = Extract<Limits, { readonly of: 'quantity' }>;

function inWords(limits: Limits): string {
  const { least, most } = limits;
  if (limits.of === 'count') return `a whole number from ${rounded(least)} to ${rounded(most)}`;
  const { unit } = limits;
  return `from ${rounded(unit.fromSi(least))} ${unit.name} to ${rounded(unit.fromSi(most))} ${unit.name}`;
}

/** The quantity as written but in other units, where that lands inside the limits; the most usual unit first. */
function unitsThatFit({ least, most, unit, amount, digits }: QuantityLimits): string[] {
  if (digits === undefined) return [];
  return unitsOf(unit.dimension)
    .filter((other) => other !== unit && other.toSi(amount) >= least && other.toSi(amount) <= most)
    .map((other) => `${digits} ${other.name}`);
}
