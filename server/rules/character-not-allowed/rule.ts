import { withoutUnseen } from '../../../grammar/index.ts';
import type { Problem } from '../problems.ts';
import { problemRule } from '../rule.ts';
import { characterCode } from '../words.ts';

const names: Readonly<Record<string, string>> = {
  'U+0000': 'null',
  'U+0008': 'backspace',
  'U+001B': 'escape',
  'U+007F': 'delete',
  'U+00AD': 'soft hyphen',
  'U+034F': 'grapheme joiner',
  'U+061C': 'Arabic letter mark',
  'U+115F': 'Hangul filler',
  'U+1160': 'Hangul filler',
  'U+200B': 'space without width',
  'U+200C': 'non-joiner without width',
  'U+200D': 'joiner without width',
  'U+200E': 'left-to-right mark',
  'U+200F': 'right-to-left mark',
  'U+2028': 'line separator',
  'U+2029': 'paragraph separator',
  'U+202A': 'left-to-right embedding',
  'U+202B': 'right-to-left embedding',
  'U+202C': 'end of a change of direction',
  'U+202D': 'left-to-right override',
  'U+202E': 'right-to-left override',
  'U+2060': 'word joiner',
  'U+2066': 'left-to-right isolate',
  'U+2067': 'right-to-left isolate',
  'U+2068': 'first strong isolate',
  'U+2069': 'end of an isolate',
  'U+2800': 'braille pattern without dots',
  'U+3164': 'Hangul filler',
  'U+FEFF': 'byte order mark',
  'U+FFA0': 'Hangul filler',
};

function nameOf(character: string): string | undefined {
  if (/[\ufe00-\ufe0f\u{e0100}-\u{e01ef}]/u.test(character)) return 'variation selector';
  if (/[\u{e0000}-\u{e007f}]/u.test(character)) return 'tag';
  return names[characterCode(character)];
}

const sayOne = (character: string): string => {
  const name = nameOf(character);
  return characterCode(character) + (name === undefined ? '' : ` (${name})`);
};

/** Most characters that are told by name. */
const most = 4;

export const rule = problemRule({
  name: 'character-not-allowed',
  severity: 'error',
  title: 'A character stands here that cannot be seen or that changes the order in which a line is read.',
  why: 'A reader sees another text than the one that is checked; with some of these characters a line even shows its words in another order.',
  remedy: 'Remove the character, or write what was meant by it anew.',
  acceptable: false,
  source: {
    text: 'the language itself; the characters that show nothing: Unicode Standard, Default_Ignorable_Code_Point',
    standing: 'published',
  },
  explain: (problem, text) => {
    const { start, end } = problem;
    const characters = [...new Set(problem.detail.found)].slice(0, most);
    const said = characters.map(sayOne).join(', ');
    const isOne = characters.length === 1;
    return {
      what: isOne ? `The character ${said} is not allowed here.` : `Characters that are not allowed stand here: ${said}.`,
      fixes: [
        {
          title: isOne ? 'Remove this character' : 'Remove these characters',
          edits: [{ start, end, text: '' }],
          safe: isReadAlikeWithout(problem, text),
        },
      ],
    };
  },
});

/** Marks that turn the direction: without them the line shows another order, which somebody should look at. */
const turning = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

/** True where the text is read and seen as before once the characters are gone. */
function isReadAlikeWithout({ detail: { found, within }, start, end }: Problem<'character-not-allowed'>, text: string): boolean {
  if (withoutUnseen(found) !== '' || turning.test(found)) return false;
  switch (within) {
    case 'comment':
      return true;
    case 'text':
      // Behind a backslash the quote that ends the text would become a part of it.
      return text.charAt(start - 1) !== '\\';
    case 'word':
      // Signs could become a sign of their own, or a number, with what stands behind.
      return /[\p{L}\p{M}]$/u.test(text.slice(Math.max(0, start - 2), start));
    case 'line':
      return /^\s?$/.test(text.charAt(start - 1)) || /^\s?$/.test(text.charAt(end));
  }
}
