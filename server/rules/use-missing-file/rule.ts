import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-missing-file',
  severity: 'error',
  title: 'A “use” line names a file that can’t be read.',
  why: 'Its models are not known, so nothing that depends on them is checked.',
  remedy: 'Correct the path, or put the file there.',
  acceptable: false,
  explain: ({ detail }) => {
    const path = quoted(detail.path);
    if (detail.fault === 'unreadable')
      return {
        what: `The file ${path} is there but can’t be read.`,
        remedy: 'See that it is a text file in UTF-8 and that you may read it.',
      };
    return {
      what: `There is no file ${path}.`,
      remedy: 'Correct the path, which starts at the folder of this file, or put the file there.',
    };
  },
});
