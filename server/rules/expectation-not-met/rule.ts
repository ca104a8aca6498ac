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
    const { rule: name = '', meant, gravest, count } = problem.detail;
    if (gravest !== undefined) return { what: `This file promises no ${gravest}${gravest === 'note' ? '' : ' or worse'}; ${count === '1' ? 'there is one' : `there are ${count}`}, first of ${quoted(name)}.` };
    if (meant !== undefined) return { what: `No rule is called ${quoted(name)}, so it can find nothing.`, remedy: `Write the name of the rule as a finding shows it.${perhaps(meant)}`, fixes: replaceBy(problem, meant, false) };
    return { what: `This file promises that ${quoted(name)} finds something here, and it finds nothing.` };
  },
});
