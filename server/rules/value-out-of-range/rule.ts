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
      remedy: `Correct the number or its unit.${perhaps(fits[0] ?? '')}`,
      fixes: fits.slice(0, 3).map((meant) => ({ title: `Write “${meant}”`, edits: [{ start: problem.start, end: problem.end, text: meant }], safe: false })),
    };
  },
});

const inFourDigits = (limit: string): string => limit.replace(/^\S+/, (number) => rounded(Number(number)));

/** The quantity as written but in other units, where that lands inside the limits; the most usual unit first. */
function unitsThatFit(found: string, least: string, most: string): string[] {
  const [, digits = '', name = ''] = /^([-+\u2212]?[\d.]+)\s*(\S*)$/.exec(found) ?? [];
  const unit = unitNamed(name);
  if (unit === undefined) return [];
  const given = Number(digits.replace('\u2212', '-'));
  const [from, to] = [least, most].map((limit) => unit.toSi(Number.parseFloat(limit))).sort((a, b) => a - b) as [number, number];
  return unitsOf(unit.dimension)
    .filter((other) => other !== unit && other.toSi(given) >= from && other.toSi(given) <= to)
    .map((other) => `${digits} ${other.name}`);
}
