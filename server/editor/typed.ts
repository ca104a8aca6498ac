// What has been typed of a statement up to the caret: its finished part, and the piece that is still being written.
import { parse, type Span, type Statement, scan } from '../../grammar/index.ts';

type Token = ReturnType<typeof scan>['tokens'][number];

/** The line before the caret and its tokens behind the last brace: those belong to the statement. */
interface LineBefore {
  readonly start: number;
  readonly line: string;
  readonly own: readonly Token[];
  readonly last: Token | undefined;
  /** The caret stands inside a text that is not closed. */
  readonly inText: boolean;
  /** The last token ends at the caret. */
  readonly touches: boolean;
}

function lineBefore(text: string, offset: number): LineBefore | undefined {
  let start = offset;
  while (start > 0 && !/[\r\n]/.test(text.charAt(start - 1))) start--;
  const line = text.slice(start, offset);
  const { tokens, comments, problems } = scan(line);
  if (comments.length > 0) return undefined;
  let from = 0;
  for (let i = 0; i < tokens.length; i++) if (tokens[i]?.tokenType.name === 'Open' || tokens[i]?.tokenType.name === 'Close') from = i + 1;
  const own = tokens.slice(from);
  const last = own[own.length - 1];
  const inText = last !== undefined && problems.some((problem) => problem.kind === 'text-not-closed');
  return { start, line, own, last, inText, touches: last !== undefined && last.endOffset === line.length && !inText };
}

/** The statement as it stands before the caret, with what is still being typed; undefined in a comment and at the start of a line. */
export function statementBefore(
  text: string,
  offset: number,
): { readonly statement: Statement; readonly isTyping: boolean; readonly tail: string } | undefined {
  const found = lineBefore(text, offset);
  const first = found?.own[0];
  if (found === undefined || first === undefined) return undefined;
  const statement = parse(found.line.slice(first.startOffset)).items[0];
  return statement === undefined
    ? undefined
    : { statement, isTyping: found.touches || found.inText, tail: found.last?.tokenType.name ?? '' };
}

/** The part of a line before the caret that belongs to the same statement, and the piece that is being typed. */
export interface Typed {
  /** The finished part, read as a statement of its own; none at the start of a line. */
  readonly before: Statement | undefined;
  /** Where the statement starts in the file. */
  readonly start: number;
  readonly partial: string;
  readonly replace: Span;
  /** The piece stands inside an open text. */
  readonly inText: boolean;
  /** The finished part ends with a colon: a model follows. */
  readonly afterColon: boolean;
  /** The finished part ends with `±`. */
  readonly afterSign: boolean;
  /** The number that the piece is the unit of, or that ends right before the blank. */
  readonly number: { readonly amount: number; readonly isRange: boolean } | undefined;
}

export function typedBefore(text: string, offset: number): Typed | undefined {
  const found = lineBefore(text, offset);
  if (found === undefined) return undefined;
  const { start, line, own, last, inText, touches } = found;
  const isPiece = touches && last?.tokenType.name === 'Word';
  if (touches && !isPiece && ['Number', 'Date', 'Text'].includes(last?.tokenType.name ?? '')) return undefined;
  // A number that is being typed: its point, or its sign.
  const ahead = own[own.length - 2];
  if (
    isPiece &&
    (/^[+\u2212-]$/.test(last?.image ?? '') ||
      (last?.image.startsWith('.') === true && ahead?.tokenType.name === 'Number' && ahead.endOffset === last.startOffset))
  )
    return undefined;
  const pieceStart = last === undefined || !(inText || isPiece) ? line.length : inText ? last.startOffset + 1 : last.startOffset;
  const finished = inText || isPiece ? own.slice(0, -1) : own;
  const first = finished[0];
  const end = finished[finished.length - 1];
  const source = first === undefined || end === undefined ? '' : line.slice(first.startOffset, end.endOffset);
  const before = parse(source).items[0];
  const tail = finished[finished.length - 1]?.tokenType.name;
  const previous = finished[finished.length - 2]?.tokenType.name;
  return {
    before,
    start: start + (own[0]?.startOffset ?? line.length),
    partial: line.slice(pieceStart),
    replace: { start: start + pieceStart, end: endOfPiece(text, offset, inText) },
    inText,
    afterColon: tail === 'Colon',
    afterSign: tail === 'PlusMinus',
    number:
      tail === 'Number'
        ? {
            amount: Number(finished[finished.length - 1]?.image.replace('\u2212', '-')),
            isRange: previous === 'Dots' || previous === 'PlusMinus',
          }
        : undefined,
  };
}

/** The rest of the word or text that the caret stands in: it is replaced too. */
function endOfPiece(text: string, offset: number, inText: boolean): number {
  let end = offset;
  const stop = inText ? /["\r\n]/ : /[\s{}":,#±]/;
  while (end < text.length && !stop.test(text.charAt(end))) end++;
  return inText && text.charAt(end) !== '"' ? offset : end;
}
