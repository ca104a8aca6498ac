import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'date-impossible',
  severity: 'error',
  title: 'A date is not in the calendar.',
  why: 'Nobody can tell which day was meant, so nothing can be held against it.',
  remedy: 'Write a day that exists, year first: 2026-11-25.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `${quoted(detail.found)} is not a day in the calendar.` }),
});
