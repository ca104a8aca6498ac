import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'block-without-body',
  severity: 'error',
  title: 'A block has no braces.',
  why: 'Without them nothing can be said in it, and the lines below stand outside of it.',
  remedy: 'Write its facts in braces behind it.',
  acceptable: false,
  explain: ({ detail, start, end }, text) => ({
    what: `${quoted(text.slice(start, end))} opens no block: no “{” follows it.`,
    remedy: `Write the facts of this ${detail.word} in braces behind it.`,
  }),
});
