import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { clipped, listed, perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'model-unknown',
  severity: 'error',
  title: 'A block is said to be one of a model that is not known.',
  why: 'What the product can do is not known, so nothing that depends on it is checked.',
  remedy: 'Write the name of a model in the libraries that this file uses, or use the library that has it.',
  acceptable: false,
  explain: (problem) => {
    const { name, what, meant, known } = problem.detail;
    return {
      what: `No ${what} is called ${quoted(name)} in this file or in the libraries that it uses.`,
      remedy:
        known.length === 0
          ? `Write a “use” line for the library that has this ${what}.`
          : `Write one of ${clipped(listed(known))}, or a “use” line for the library that has it.${perhaps(meant, name)}`,
      fixes: replaceBy(problem, meant, false),
    };
  },
});
