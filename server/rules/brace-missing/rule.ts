import { factEndOf, lineEndIn, lineEndOf, lineStartOf } from '../fixes.ts';
import { problemRule, type Edit } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'brace-missing',
  severity: 'error',
  title: 'A block has no opening or no closing brace.',
  why: 'Without it nobody can tell for sure where the block ends, and a fact may be read as part of another block.',
  remedy: 'Write the brace that is missing.',
  acceptable: false,
  explain: ({ detail, start }, text) => {
    const word = quoted(text.slice(start, factEndOf(text, start)).replace(/\s*\{.*$/su, ''));
    if (detail['found'] === '{')
      return {
        what: `The block that starts with ${word} has a closing brace but no opening one.`,
        remedy: 'Write “{” at the end of its first line.',
        fixes: [{ title: 'Write “{” at the end of this line', edits: [opening(text, start)], safe: false }],
      };
    const edit = closing(text, start);
    return {
      what: `The block that starts with ${word} is not closed.`,
      remedy: 'Write “}” below its last line.',
      fixes: edit === undefined ? [] : [{ title: 'Write “}” below the last line of this block', edits: [edit], safe: false }],
    };
  },
});

/** An opening brace behind what stands on the line of `start`, before its comment. */
function opening(text: string, start: number): Edit {
  const at = factEndOf(text, start);
  return { start: at, end: at, text: ' {' };
}

/**
 * A closing brace below the last line that belongs to the block at `start`, by its indentation; at the left edge, by the
 * next block that opens there, which is where reading takes the block to end. None where the lines do not tell.
 */
function closing(text: string, start: number): Edit | undefined {
  const lineStart = lineStartOf(text, start);
  const indent = text.slice(lineStart, start).replace('\ufeff', '');
  if (indent.trim() !== '') return undefined;
  let last = lineEndOf(text, start);
  // The opening brace may stand on a line of its own.
  const below = /^\s*\{/.exec(text.slice(last));
  if (below !== null && !text.slice(start, last).includes('{')) last = lineEndOf(text, last + below[0].length);
  for (let at = nextLine(text, last); at !== undefined; at = nextLine(text, lineEndOf(text, at))) {
    const line = text.slice(at, lineEndOf(text, at));
    const inner = line.trimStart();
    if (inner === '' || inner.startsWith('#')) continue;
    const depth = line.length - inner.length;
    if (indent === '' ? depth === 0 && !inner.startsWith('}') && line.slice(0, factEndOf(text, at) - at).includes('{') : depth <= indent.length) break;
    last = at + line.length;
  }
  return { start: last, end: last, text: lineEndIn(text) + indent + '}' };
}

function nextLine(text: string, lineEnd: number): number | undefined {
  if (lineEnd >= text.length) return undefined;
  return text.charAt(lineEnd) === '\r' && text.charAt(lineEnd + 1) === '\n' ? lineEnd + 2 : lineEnd + 1;
}
