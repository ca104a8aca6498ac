import { removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-not-allowed',
  severity: 'error',
  title: 'An acceptance speaks of a rule that no local reason can overrule.',
  why: 'It changes nothing: what the rule finds is shown all the same.',
  remedy: 'Remove the line, and mend what the rule finds.',
  acceptable: false,
  explain: ({ detail }, text) => ({
    what: `What ${quoted(detail.rule)} finds${detail.asError ? ' here as an error' : ''} can’t be accepted.`,
    fixes: removal('Remove this acceptance', text, detail.line.start, detail.line.end, false),
  }),
});
