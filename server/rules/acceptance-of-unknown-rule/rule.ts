import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-of-unknown-rule',
  severity: 'error',
  title: 'An acceptance speaks of a rule that does not exist.',
  why: 'It covers nothing, whatever its author had in mind.',
  remedy: 'Write the name of the rule as the finding shows it.',
  acceptable: false,
  explain: (problem) => {
    const { rule: name, meant } = problem.detail;
    return {
      what: `No rule is called ${quoted(name)}.`,
      remedy: `Write the name of the rule as the finding shows it.${perhaps(meant, name)}`,
      fixes: replaceBy(problem, meant, false),
    };
  },
});
