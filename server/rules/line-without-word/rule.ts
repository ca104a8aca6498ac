import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'line-without-word',
  severity: 'error',
  title: 'A line does not start with a word.',
  why: 'The first word of a line says what its values are; without one, nothing can be made of them.',
  remedy: 'Start the line with the word that says what it is.',
  acceptable: false,
  explain: ({ start, end }, text) => ({
    what:
      text.charAt(start) === '{'
        ? 'A block opens here and no word before it says of what.'
        : `This line starts with ${quoted(text.slice(start, end))} and not with a word.`,
  }),
});
