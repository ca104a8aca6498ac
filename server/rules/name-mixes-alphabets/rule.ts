import { characterInWords, scriptInWords } from '../../vocabulary/index.ts';
import { problemRule } from '../rule.ts';
import { quoted, withArticle } from '../words.ts';

export const rule = problemRule({
  name: 'name-mixes-alphabets',
  severity: 'error',
  title: 'A name mixes letters of alphabets that have letters which look alike.',
  why: 'Who types the name as it looks writes another one, and speaks of nothing, or of something else.',
  remedy: 'Write the whole name in the letters of one alphabet, here and wherever it is used.',
  source: {
    text: 'Unicode Technical Standard 39, Unicode Security Mechanisms, section 5: mixed-script detection, highly restrictive',
    standing: 'published',
  },
  acceptable: 'warnings',
  explain: ({ detail: { name, what, letter, of, other, isHidden } }) => ({
    severity: isHidden ? 'error' : 'warning',
    what: `The ${what} ${quoted(name)} mixes ${scriptInWords(of)} and ${scriptInWords(other)} letters: its “${letter}” is ${characterInWords(letter)} and looks like ${withArticle(scriptInWords(other))} one.`,
  }),
});
