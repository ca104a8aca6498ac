import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'body-unexpected',
  severity: 'error',
  title: 'A line has braces behind it.',
  why: 'What stands in the braces is not read.',
  remedy: 'Remove the braces, and write what stood in them on lines of their own.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `${quoted(detail.word)} is a line and takes no braces; what stands in them is not read.` }),
});
