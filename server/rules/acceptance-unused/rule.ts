import { removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-unused',
  severity: 'warning',
  title: 'An acceptance matches nothing.',
  why: 'It waits for a finding that nobody has looked at yet, and will hide it when it comes.',
  remedy: 'Remove the line.',
  acceptable: false,
  explain: ({ detail }, text) => ({
    what: `Nothing is found here that this acceptance of ${quoted(detail.rule)} could cover.`,
    unnecessary: true,
    fixes: removal('Remove this acceptance', text, detail.line.start, detail.line.end, false),
  }),
});
