import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'name-unfit',
  severity: 'error',
  title: 'A name does not start with a letter.',
  why: 'Names, numbers and signs could not be told apart in every place where a name may stand.',
  remedy: 'Write a name that starts with a letter.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `The name ${quoted(detail.name)} does not start with a letter.` }),
});
