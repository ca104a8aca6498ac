// The grammar room: text to tree and back. It knows shapes, not meanings.
export { parse, validateGrammar } from './parser.ts';
export { print, printValue } from './printer.ts';
export { holds, lineEndIn, lineStarts, lineText, positionAt, type Position } from './lines.ts';
export { firstIndex } from './search.ts';
export { longestText, scan } from './tokens.ts';
export type {
  Body,
  Comment,
  CommaValue,
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
