import { problemRule } from '../rule.ts';
import { quotedUnlessSecret } from '../secret-in-file/secrets.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'value-unexpected',
  severity: 'error',
  title: 'A line says more than it can.',
  why: 'What stands too many on a line is not read, so the line may mean something else than it seems to.',
  remedy: 'Remove what does not belong here.',
  acceptable: false,
  explain: ({ detail, start }, text) => ({
    what: `${quotedUnlessSecret(detail.found, text, start)} has no place in ${quoted(detail.word)} here.`,
    remedy: `Remove it, or write the line as “${detail.shape}”.`,
  }),
});
