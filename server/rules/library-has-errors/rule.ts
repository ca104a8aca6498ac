import { problemRule } from '../rule.ts';
import { quoted, shortPath } from '../words.ts';

export const rule = problemRule({
  name: 'library-has-errors',
  severity: 'error',
  title: 'A library that the file uses has mistakes in it.',
  why: 'What its models can do may not be read as it was meant, and this file is judged by them.',
  remedy: 'Open the library and mend what is found there.',
  acceptable: false,
  explain: ({ detail }) => {
    const library = quoted(shortPath(detail.library));
    const others =
      detail.others === 0
        ? ''
        : ` So ${detail.others === 1 ? 'has one more file' : `have ${detail.others} more files`} that this line leads to.`;
    if (detail.unfollowed === undefined) return { what: `The library ${library} has mistakes in it.${others}` };
    return { what: `The library ${library} has a mistake in it: its own use of “${detail.unfollowed}” cannot be followed.${others}` };
  },
});
