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
    const { detail } = problem;
    const word = detail['word'] ?? '';
    const meant = detail['meant'] ?? '';
    const elsewhere = detail['elsewhere'] ?? '';
    const where = detail['where'] ?? '';
    const place = where === 'a file' ? 'outside all blocks' : `in ${withArticle(where.slice('a '.length))}`;
    return {
      what: elsewhere === '' ? `${quoted(word)} is not a word that may stand ${place}.` : `${quoted(word)} may not stand ${place}; its place is ${placesIn(elsewhere)}.`,
      remedy: meant === '' ? `Write one of the words that may stand here: ${listed(detail['known'] ?? '')}.` : `Write a word that may stand here.${perhaps(meant)}`,
      // The same word but for its capitals says the same; any other guess could state a fact that nobody stated.
      fixes: replaceBy(problem, meant, meant.toLowerCase() === word.toLowerCase()),
    };
  },
});

/** “in a leaf, in a cable or outside all blocks”, from the words of the blocks. */
function placesIn(elsewhere: string): string {
  const places = elsewhere.replace('the file itself, ', '').split(', ');
  return places.map((place) => (place === 'outside all blocks' ? place : `in ${withArticle(place)}`)).join(', ').replace(/, ([^,]*)$/, ' or $1');
}
