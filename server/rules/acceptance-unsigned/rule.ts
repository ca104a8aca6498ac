import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-unsigned',
  severity: 'warning',
  title: 'Nobody has put their initials to an acceptance.',
  why: 'A risk is borne by a person; years later somebody has to be asked why.',
  remedy: 'Write “by” and the initials of who answers for it.',
  acceptable: false,
  explain: ({ detail }) => ({ what: `Nobody’s initials stand behind this acceptance of ${quoted(detail.rule)}.` }),
});
