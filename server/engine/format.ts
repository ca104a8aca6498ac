// The canonical form of a text.
import { lineEndIn, lineStarts, parse, positionAt, print } from '../../grammar/index.ts';

/** Why a text has no canonical form: its shape cannot be read. Lines and columns from 1. */
export interface Unformatted {
  readonly problem: string;
  readonly line: number;
  readonly column: number;
}

/** A text as the formatter writes it, with its own line ends. */
export function formatted(text: string): { readonly text: string } | Unformatted {
  const tree = parse(text);
  const [problem] = tree.problems;
  if (problem !== undefined) {
    const { line, column } = positionAt(lineStarts(text), problem.start);
    return { problem: problem.kind, line: line + 1, column: column + 1 };
  }
  const printed = print(tree);
  return { text: lineEndIn(text) === '\r\n' ? printed.replaceAll('\n', '\r\n') : printed };
}
