// The grammar room: text to tree and back. It knows shapes, not meanings.

export { holds, lineEndIn, lineStarts, lineText, type Position, positionAt } from './lines.ts';
export { parse, validateGrammar } from './parser.ts';
export { print, printValue } from './printer.ts';
export { firstIndex } from './search.ts';
export { longestText, scan } from './tokens.ts';
export type {
  Body,
  CommaValue,
  Comment,
  DateValue,
  ModelValue,
  Nothing,
  NumberValue,
  Span,
  Statement,
  SyntaxProblem,
  SyntaxProblems,
  TextValue,
  Tree,
  Value,
  WordValue,
} from './tree.ts';
export { unseenRanges, withoutUnseen } from './unseen.ts';
