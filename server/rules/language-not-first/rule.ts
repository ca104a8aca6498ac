import { lineEndIn, without } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'language-not-first',
  severity: 'error',
  title: 'The version of the language does not stand first.',
  why: 'Whoever reads the file should know how to read it before the first fact, and so should every other program.',
  remedy: 'Move the line to the top of the file.',
  acceptable: false,
  explain: ({ start, end }, text) => {
    const line = text.slice(start, end);
    const first = firstFact(text);
    const fits = first < start && text.charAt(first) !== '{' && !/[\r\n]/.test(line);
    return {
      what: `${quoted(line)} stands below other lines.`,
      fixes: fits ? [{ title: 'Move this line to the top', edits: [{ start: first, end: first, text: line + lineEndIn(text) }, without(text, start, end)], safe: true }] : [],
    };
  },
});

/** Offset of the first thing in a file that is neither blank nor comment. */
function firstFact(text: string): number {
  const before = /^(?:[\s\ufeff]|#[^\r\n]*)*/.exec(text);
  return before === null ? 0 : before[0].length;
}
