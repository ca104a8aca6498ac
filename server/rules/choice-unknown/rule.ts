import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { listed, perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'choice-unknown',
  severity: 'error',
  title: 'A word is none of those that may stand here.',
  why: 'The choice can’t be read, so the whole line says nothing.',
  remedy: 'Write one of the words that may stand here.',
  acceptable: false,
  explain: (problem) => {
    const { word, found, choices, meant } = problem.detail;
    return {
      what: `${quoted(found)} in ${quoted(word)} is none of the words that may stand there.`,
      remedy: `Write one of ${listed(choices, 20)}.${perhaps(meant, found)}`,
      fixes: replaceBy(problem, meant, meant?.toLowerCase() === found.toLowerCase()),
    };
  },
});
