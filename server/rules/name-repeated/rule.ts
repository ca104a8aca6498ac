import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'name-repeated',
  severity: 'error',
  title: 'Two things have the same name.',
  why: 'A line that speaks of the name means the first one only, whichever its author had in mind.',
  remedy: 'Give one of them another name.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `Another ${detail.what} is already called ${quoted(detail.name)}.` }),
});
