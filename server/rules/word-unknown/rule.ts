import { replaceBy } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { listed, perhaps, quoted, withArticle } from '../words.ts';

export const rule = problemRule({
  name: 'word-unknown',
  severity: 'error',
  title: 'A word is not part of the language, or not in this place.',
  why: 'The line is not read, so nothing that it says is taken into account.',
  remedy: 'Write a word that may stand here.',
  acceptable: false,
  explain: (problem) => {
    const { word, block, known, meant, elsewhere } = problem.detail;
    const place = block === undefined ? outside : `in ${withArticle(block)}`;
    const homes = [...elsewhere.blocks.map((home) => `in ${withArticle(home)}`), ...(elsewhere.outside ? [outside] : [])];
    return {
      what:
        homes.length === 0
          ? `${quoted(word)} is not a word that may stand ${place}.`
          : `${quoted(word)} may not stand ${place}; its place is ${homes.join(', ').replace(/, ([^,]*)$/, ' or $1')}.`,
      remedy:
        meant === undefined
          ? `Write one of the words that may stand here: ${listed(known)}.`
          : `Write a word that may stand here.${perhaps(meant, word)}`,
      // The same word but for its capitals says the same; any other guess could state a fact that nobody stated.
      fixes: replaceBy(problem, meant, meant?.toLowerCase() === word.toLowerCase()),
    };
  },
});

const outside = 'outside all blocks';
