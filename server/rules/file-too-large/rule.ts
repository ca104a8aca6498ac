import { problemRule } from '../rule.ts';
import { rounded } from '../words.ts';

export const rule = problemRule({
  name: 'file-too-large',
  severity: 'error',
  title: 'The file is larger than is read.',
  why: 'Nothing of it is read, so nothing in it is checked.',
  remedy: 'Write one file for each site, and put models into library files.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `The file has about ${rounded(detail.characters / 1e6)} million characters; no more than 4 million are read.`,
  }),
});
