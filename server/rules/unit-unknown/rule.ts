import { unitNamed } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { foreignLetter, perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'unit-unknown',
  severity: 'error',
  title: 'A unit is none that the language knows.',
  why: 'Without the unit the number says nothing, so the whole line is not read.',
  remedy: 'Write a unit that the language knows.',
  acceptable: false,
  explain: (problem) => {
    const { word, found, units, meant } = problem.detail;
    return {
      what: `${quoted(found)} in ${quoted(word)} is not a unit that is known here.`,
      remedy: `Write one of ${units.join(', ')}.${perhaps(meant, found) || foreignLetter(found)}`,
      fixes: replaceBy(problem, meant, meant !== undefined && isTheSame(found, meant)),
    };
  },
});

/** Whether a unit is only written out: “metres” for m. Two units can differ by a single capital, so no other guess is sure. */
function isTheSame(found: string, meant: string): boolean {
  const says = unitNamed(meant)?.says ?? '';
  const written = found.toLowerCase();
  return [says, says.replace('metre', 'meter')].some((word) => word === written || word === written + 's');
}
