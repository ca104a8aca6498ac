import { problemRule } from '../rule.ts';
import { quoted, shortPath, unlike } from '../words.ts';

export const rule = problemRule({
  name: 'name-looks-like-another',
  severity: 'error',
  title: 'Two names look the same and are written in other letters.',
  why: 'Nobody can see which of the two a line speaks of: the leaf that is watched may not be the one that is meant.',
  remedy: 'Write one name in both places, or give one of them a name that can be told from the other.',
  source: {
    text: 'Unicode Technical Standard 39, Unicode Security Mechanisms, section 4: confusable detection',
    standing: 'published',
  },
  acceptable: false,
  explain: ({ detail: { name, what, other, library } }) => ({
    what:
      library === undefined
        ? `Another ${what} has a name that looks like this one: ${unlike(name, other)}.`
        : `The ${what} ${quoted(name)} looks like another one of ${quoted(shortPath(library))}: ${unlike(name, other)}.`,
  }),
});
