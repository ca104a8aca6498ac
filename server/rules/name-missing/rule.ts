import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'name-missing',
  severity: 'error',
  title: 'A block has no name.',
  why: 'Nothing can speak of a block without a name: no drive can move it, no wire can lead to it, no paper can list it.',
  remedy: 'Write a name behind the word that opens the block.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `This ${detail.word} has no name.`,
    remedy: `Write a name behind ${quoted(detail.word)}, as in ${quoted(detail.example.replace(/ \{$/, ''))}.`,
  }),
});
