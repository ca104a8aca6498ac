import { lineEndIn } from '../../../grammar/index.ts';
import { without } from '../fixes.ts';
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
    // Before a bare brace the new line would be taken as that block's first line.
    const fits = text.charAt(first) !== '{' && !/[\r\n]/.test(line);
    return {
      what: `${quoted(line)} stands below other lines.`,
      fixes: fits
        ? [
            {
              title: 'Move this line to the top',
              edits: [{ start: first, end: first, text: line + lineEndIn(text) }, without(text, start, end)],
              safe: true,
            },
          ]
        : [],
    };
  },
});

/** Offset of the first thing in a file that is neither blank nor comment. */
const firstFact = (text: string): number => text.length - text.replace(/^(?:[\s\ufeff]|#[^\r\n]*)*/, '').length;
