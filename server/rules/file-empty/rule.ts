import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'file-empty',
  severity: 'warning',
  title: 'The file says nothing.',
  why: 'A check that passes because there is nothing to check proves nothing.',
  remedy: 'Write “language 1” and what is to be said below it, or remove the file.',
  acceptable: false,
  explain: () => ({ what: 'The file is empty.' }),
});
