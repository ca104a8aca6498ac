import { problemRule } from '../rule.ts';
import { listed, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'value-missing',
  severity: 'error',
  title: 'A line says less than it must.',
  why: 'Without this value the whole line says nothing, and what depends on it is not worked out.',
  remedy: 'Write the value that is missing.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `${quoted(detail['word'] ?? '')} lacks ${listed(detail['wanted'] ?? 'a value')}.`,
    remedy: `Write the line as in “${detail['example']}”.`,
  }),
});
