import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { perhaps, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'expectation-not-met',
  severity: 'error',
  title: 'A file promises a finding, or that there is none, and it is not so.',
  why: 'The file is there to show or to test this; whoever relies on it learns something wrong.',
  remedy: 'Mend what the file says, or take the promise back.',
  acceptable: false,
  explain: (problem) => {
    const { detail } = problem;
    const name = quoted(detail.rule);
    switch (detail.promised) {
      case 'finding':
        return { what: `This file promises that ${name} finds something here, and it finds nothing.` };
      case 'finding of no rule':
        return {
          what: `No rule is called ${name}, so it can find nothing.`,
          remedy: `Write the name of the rule as a finding shows it.${perhaps(detail.meant, detail.rule)}`,
          fixes: replaceBy(problem, detail.meant, false),
        };
      case 'nothing': {
        const promise = `no ${detail.gravest}${detail.gravest === 'note' ? '' : ' or worse'}`;
        return {
          what: `This file promises ${promise}; ${detail.count === 1 ? 'there is one' : `there are ${detail.count}`}, first of ${name}.`,
        };
      }
    }
  },
});
