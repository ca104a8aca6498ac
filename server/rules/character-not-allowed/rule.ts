import { problemRule } from '../rule.ts';
import { characterCode } from '../words.ts';

const names: Readonly<Record<string, string>> = {
  'U+0000': 'null',
  'U+0008': 'backspace',
  'U+001B': 'escape',
  'U+007F': 'delete',
  'U+061C': 'Arabic letter mark',
  'U+200B': 'space without width',
  'U+200E': 'left-to-right mark',
  'U+200F': 'right-to-left mark',
  'U+2028': 'line separator',
  'U+2029': 'paragraph separator',
  'U+202A': 'left-to-right embedding',
  'U+202B': 'right-to-left embedding',
  'U+202C': 'end of a change of direction',
  'U+202D': 'left-to-right override',
  'U+202E': 'right-to-left override',
  'U+2066': 'left-to-right isolate',
  'U+2067': 'right-to-left isolate',
  'U+2068': 'first strong isolate',
  'U+2069': 'end of an isolate',
};

export const rule = problemRule({
  name: 'character-not-allowed',
  severity: 'error',
  title: 'A character stands here that cannot be seen or that changes the order in which a line is read.',
  why: 'A reader sees another text than the one that is checked; with some of these characters a line even shows its words in another order.',
  remedy: 'Remove the character, or write what was meant by it anew.',
  acceptable: false,
  explain: ({ detail, start, end }) => {
    const characters = [...new Set(detail.found)].slice(0, 4);
    const said = characters
      .map((one) => characterCode(one) + (names[characterCode(one)] === undefined ? '' : ` (${names[characterCode(one)]})`))
      .join(', ');
    return {
      what: characters.length > 1 ? `Characters that are not allowed stand here: ${said}.` : `The character ${said} is not allowed here.`,
      fixes: [
        {
          title: characters.length > 1 ? 'Remove these characters' : 'Remove this character',
          edits: [{ start, end, text: '' }],
          safe: false,
        },
      ],
    };
  },
});
