import { lineEndIn } from '../../../grammar/index.ts';
import { lineStartOf } from '../fixes.ts';
import { problemRule } from '../rule.ts';

export const rule = problemRule({
  name: 'language-missing',
  severity: 'error',
  title: 'The file does not say which version of the language it is written in.',
  why: 'Words may mean something else in another version, so a file that is read years from now has to say which one it means.',
  remedy: 'Write “language 1” on the first line.',
  acceptable: false,
  explain: ({ detail }, text) => {
    const { at, version } = detail;
    const line = `language ${version}`;
    const start = lineStartOf(text, at);
    // Before a bare brace the new line would be taken for the head of its block, and behind one for a line of it.
    const fits = text.charAt(at) !== '{' && text.slice(start, at).trim() === '';
    return {
      what: 'No line says which version of the language this file is written in.',
      remedy: `Write “${line}” on the first line.`,
      fixes: fits ? [{ title: `Write “${line}” first`, edits: [{ start, end: start, text: line + lineEndIn(text) }], safe: true }] : [],
    };
  },
});
