import { lineStartOf, removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-repeated',
  severity: 'warning',
  title: 'A library is used twice.',
  why: 'The second line adds nothing; whoever removes one of them wonders why nothing changes.',
  remedy: 'Remove one of the lines.',
  acceptable: true,
  explain: ({ detail, end }, text) => {
    const start = lineStartOf(text, end);
    return {
      what: `A line above already uses ${quoted(detail['path'] ?? '')}.`,
      unnecessary: true,
      fixes: removal('Remove this line', text, start + (/^[ \t\ufeff]*/.exec(text.slice(start, end))?.[0].length ?? 0), end, true),
    };
  },
});
