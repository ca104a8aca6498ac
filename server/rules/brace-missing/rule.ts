import { lineEndIn } from '../../../grammar/index.ts';
import { factEndOf, lineEndOf, lineStartOf } from '../fixes.ts';
import { type Edit, problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'brace-missing',
  severity: 'error',
  title: 'A block has no opening or no closing brace.',
  why: 'Without it nobody can tell for sure where the block ends, and a fact may be read as part of another block.',
  remedy: 'Write the brace that is missing.',
  acceptable: false,
  explain: ({ detail, start }, text) => {
    const end = factEndOf(text, start);
    if (detail.brace === '{')
      return {
        what: `The block that starts with ${quoted(text.slice(start, end))} has a closing brace but no opening one.`,
        remedy: 'Write “{” at the end of its first line.',
        fixes: [{ title: 'Write “{” at the end of this line', edits: [{ start: end, end, text: ' {' }], safe: false }],
      };
    const brace = braceFrom(text, start);
    const edit = closing(text, start, brace);
    return {
      what: `The block that starts with ${quoted(text.slice(start, Math.min(end, brace)).trimEnd())} is not closed.`,
      remedy: 'Write “}” below its last line.',
      fixes: edit === undefined ? [] : [{ title: 'Write “}” below the last line of this block', edits: [edit], safe: false }],
    };
  },
});

/** Offset of the first opening brace from `from` on that stands in no text and no comment; the end where there is none. */
function braceFrom(text: string, from: number): number {
  const before = /(?:"(?:\\.|[^"\\\r\n])*"?|#[^\r\n]*|[^"#{]+)*/uy;
  before.lastIndex = from;
  before.test(text);
  return before.lastIndex;
}

/**
 * A closing brace below the last line that belongs to the block at `start`, by its indentation, which is where reading takes
 * the block to end; where its lines are not indented, above the next block. None where the lines do not tell.
 */
function closing(text: string, start: number, brace: number): Edit | undefined {
  const indent = text.slice(lineStartOf(text, start), start).replace('\ufeff', '');
  if (indent.trim() !== '') return undefined;
  let last = lineEndOf(text, brace);
  let isFlat: boolean | undefined;
  for (let at = last + 1; at < text.length; at = lineEndOf(text, at) + 1) {
    const line = text.slice(at, factEndOf(text, at));
    if (line === '') continue;
    const isOutside = line.search(/\S/u) <= indent.length;
    isFlat ??= isOutside;
    if (isOutside && (!isFlat || braceFrom(line, 0) < line.length)) {
      // The first line of that block is above its brace, and was taken for one of this.
      if (line.trimStart().startsWith('{')) return undefined;
      break;
    }
    last = lineEndOf(text, at);
  }
  return { start: last, end: last, text: lineEndIn(text) + indent + '}' };
}
