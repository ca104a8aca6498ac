import { unitNamed, unitsOf } from '../../vocabulary/index.ts';
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
    const { detail } = problem;
    const found = detail['found'] ?? '';
    const word = detail['word'] ?? '';
    if ((detail['least'] ?? '') === '')
      return { what: `The range ${quoted(found)} in ${quoted(word)} does not run from a smaller to a greater value.`, remedy: 'Write the smaller end first and the greater one behind it.' };
    const limits = `from ${inFourDigits(detail['least'] ?? '')} to ${inFourDigits(detail['most'] ?? '')}`;
    const fits = unitsThatFit(found, detail['least'] ?? '', detail['most'] ?? '');
    return {
      what: `${quoted(found)} in ${quoted(word)} can hardly be meant; it takes ${detail['what'] === 'a whole number' ? 'a whole number ' : ''}${limits}.`,
      remedy: `Correct the number or its unit.${fits[0] === undefined ? '' : perhaps(fits[0])}`,
      fixes: fits.slice(0, 3).map((meant) => ({ title: `Write “${meant}”`, edits: [{ start: problem.start, end: problem.end, text: meant }], safe: false })),
    };
  },
});

interface Amount {
  readonly value: number;
  readonly unit: string;
}

function amountIn(text: string): Amount | undefined {
  const parts = /^([-+\u2212]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)\s*(\S*)$/.exec(text);
  return parts === null ? undefined : { value: Number((parts[1] as string).replace('\u2212', '-')), unit: parts[2] ?? '' };
}

function inFourDigits(text: string): string {
  const amount = amountIn(text);
  return amount === undefined ? text : `${rounded(amount.value)}${amount.unit === '' ? '' : ' ' + amount.unit}`;
}

/** The quantity as written but in other units, where that lands inside the limits; the most usual unit first. */
function unitsThatFit(found: string, least: string, most: string): string[] {
  const [given, low, high] = [amountIn(found), amountIn(least), amountIn(most)];
  const unit = given === undefined ? undefined : unitNamed(given.unit);
  if (given === undefined || low === undefined || high === undefined || unit === undefined) return [];
  const [from, to] = [unit.toSi(low.value), unit.toSi(high.value)].sort((a, b) => a - b) as [number, number];
  return unitsOf(unit.dimension)
    .filter((other) => other !== unit && other.toSi(given.value) >= from && other.toSi(given.value) <= to)
    .map((other) => `${found.slice(0, found.length - given.unit.length).trimEnd()} ${other.name}`);
}
