// The canonical form of a text.
import { lineEndIn, lineStarts, parse, positionAt, print } from '../../grammar/index.ts';
import type { Edit } from '../rules/index.ts';
import { withEdits } from './fixes.ts';
import { lineEdits } from './line-edits.ts';

/** Why a text has no canonical form: its shape cannot be read. Lines and columns from 1. */
export interface Unformatted {
  readonly problem: string;
  readonly line: number;
  readonly column: number;
}

/** A text as the formatter writes it: each line keeps its own line end, and one that is new ends as most others do. */
export function formatted(text: string): { readonly text: string } | Unformatted {
  const tree = parse(text);
  const [problem] = tree.problems;
  if (problem !== undefined) {
    const { line, column } = positionAt(lineStarts(text), problem.start);
    return { problem: problem.kind, line: line + 1, column: column + 1 };
  }
  return { text: withEdits(text, canonicalEdits(text, print(tree))) };
}

/** The edits that bring a text into its canonical form, which is given: lines that stay keep their line ends. */
export function canonicalEdits(text: string, canonical: string): readonly Edit[] {
  const edits = lineEdits(text, canonical);
  if (withEdits(text, edits).replace(/\r\n?/g, '\n') === canonical) return edits;
  // What stood between a `\r` and a `\n` has gone, and the two are one now: such a text gets line ends of one kind.
  return [{ start: 0, end: text.length, text: canonical.replaceAll('\n', lineEndIn(text)) }];
}
