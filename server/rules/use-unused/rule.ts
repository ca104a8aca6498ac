import { removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-unused',
  severity: 'warning',
  title: 'No model of a used library is spoken of.',
  why: 'A reader looks in it for something that is not needed, and a mistake in it stops work for nothing.',
  remedy: 'Remove the line.',
  acceptable: true,
  explain: ({ detail, start, end }, text) => ({
    what: `Nothing in this file is one of the models in ${quoted(detail.path)}.`,
    unnecessary: true,
    fixes: removal('Remove this line', text, start, end, true),
  }),
});
