import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'text-not-closed',
  severity: 'error',
  title: 'A text in quotation marks does not end on its line.',
  why: 'Everything up to the end of the line, a brace or a comment included, is taken as part of the text.',
  remedy: 'Write the closing quotation mark.',
  acceptable: false,
  explain: ({ start, end }, text) => {
    const written = text.slice(start, end).trimEnd();
    // A brace at the end was hardly meant as part of the text.
    const body = written.endsWith('{') ? written.slice(0, -1).trimEnd() : written;
    const at = start + body.length;
    const fixes = body.endsWith('\\')
      ? []
      : [{ title: 'Write the closing quotation mark', edits: [{ start: at, end: at, text: '"' }], safe: false }];
    return { what: `The text that starts with ${quoted(written.slice(1))} has no closing quotation mark on its line.`, fixes };
  },
});
