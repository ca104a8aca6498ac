import { slotInWords } from '../../vocabulary/index.ts';
import { problemRule } from '../rule.ts';
import { listed, quoted } from '../words.ts';

export const rule = problemRule({
  name: 'value-missing',
  severity: 'error',
  title: 'A line says less than it must.',
  why: 'Without this value the whole line says nothing, and what depends on it is not worked out.',
  remedy: 'Write the value that is missing.',
  acceptable: false,
  explain: ({ detail: { word, slot, example } }) => ({
    what: `${quoted(word)} lacks ${slot.after === undefined ? '' : `“${slot.after}” and `}${slotInWords(slot, listed)}.`,
    remedy: `Write the line as in “${example}”.`,
  }),
});
