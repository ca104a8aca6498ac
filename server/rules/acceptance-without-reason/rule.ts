import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-without-reason',
  severity: 'error',
  title: 'An acceptance gives no reason.',
  why: 'Years later somebody has to judge whether the reason still holds; where there is none, nothing was weighed, so nothing is accepted.',
  remedy: 'Write behind “because” why it is acceptable here, or remove the line.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `This acceptance of ${quoted(detail.rule)} gives no reason.` }),
});
