import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { clipped, listed, perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'name-unknown',
  severity: 'error',
  title: 'A name leads nowhere.',
  why: 'What the line says of it is lost: a sensor that is not wired, a leaf that nothing moves.',
  remedy: 'Write the name of something that is there, or write the block that it names.',
  acceptable: false,
  explain: (problem) => {
    const { name, what, meant, known } = problem.detail;
    return {
      what: `No ${what} is called ${quoted(name)}.`,
      remedy:
        known.length === 0
          ? `Write the block of that ${what}, or remove the line.`
          : `Write one of the names that are there: ${clipped(listed(known))}.${perhaps(meant, name)}`,
      fixes: replaceBy(problem, meant, false),
    };
  },
});
