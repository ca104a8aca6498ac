import { problemRule } from '../rule.ts';
import { quoted, shortPath } from '../words.ts';

export const rule = problemRule({
  name: 'use-leads-too-far',
  severity: 'error',
  title: 'The file uses more files than are read.',
  why: 'The models of the files that are left out are not known, so nothing that depends on them is checked.',
  remedy: 'Use only files whose models are named here, and let libraries use few others.',
  acceptable: false,
  explain: ({ detail: { most, first } }) => ({
    what: `This line leads to more files than are read: with ${quoted(shortPath(first))} there are more than ${most}, all “use” lines taken together.`,
  }),
});
