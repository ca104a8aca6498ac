import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'language-unknown',
  severity: 'error',
  title: 'The file is written in a version of the language that this Pintle does not read.',
  why: 'Words may mean something else in that version, so what is read of the file may be wrong.',
  remedy: 'Use a Pintle that reads this version, or correct the number.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `The file says that it is written in version ${quoted(String(detail.found))} of the language; this Pintle reads version ${detail.version}.`,
  }),
});
