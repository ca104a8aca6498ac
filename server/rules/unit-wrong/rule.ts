import { problemRule } from '../rule.ts';
import { quoted, withArticle } from '../words.ts';

export const rule = problemRule({
  name: 'unit-wrong',
  severity: 'error',
  title: 'A unit measures something else than the line states.',
  why: 'A mass can’t be a width; one of the number, the unit and the line is wrong, and nobody can tell which.',
  remedy: 'Write a unit of what the line states.',
  acceptable: false,
  explain: ({ detail: { word, found, measures = 'nothing known here', dimensions, units } }) => ({
    what: `${quoted(found)} in ${quoted(word)} is a unit of ${measures}; ${withArticle(dimensions.join(' or '))} is expected.`,
    remedy: `Write one of ${units.join(', ')}, or write the quantity on the line that it belongs to.`,
  }),
});
