import { factEndOf, lineStartOf, removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-repeated',
  severity: 'warning',
  title: 'A library is used twice.',
  why: 'The second line adds nothing; whoever removes one of them wonders why nothing changes.',
  remedy: 'Remove one of the lines.',
  acceptable: true,
  explain: ({ detail, start, end }, text) => {
    const from = start - (/use[ \t]*$/.exec(text.slice(lineStartOf(text, start), start))?.[0].length ?? 0);
    // What else stands behind the path is told by itself, and would be left alone on its line.
    const isWhole = from < start && factEndOf(text, end) === end;
    return {
      what: `A line above already uses ${quoted(detail.path)}.`,
      unnecessary: true,
      fixes: isWhole ? removal('Remove this line', text, from, end, true) : [],
    };
  },
});
