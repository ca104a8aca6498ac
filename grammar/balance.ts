// Braces that do not pair are mended here, before the parser, so that a mistake in one block does not change how the
// next is read. A block's header at the very start of a line is taken as a new block: that is how people write them.
import type { IToken } from 'chevrotain';
import { Close, deepestNesting, NewLine, Open, tokenOf } from './tokens.ts';
import type { SyntaxProblem } from './tree.ts';

interface OpenBlock {
  readonly header: IToken;
  readonly column: number;
}

/** True when every brace has its partner and nothing is nested too deep: almost every file, found in one cheap pass. */
export function isBalanced(tokens: readonly IToken[]): boolean {
  let depth = 0;
  for (let i = 0; i < tokens.length; i++) {
    const type = (tokens[i] as IToken).tokenType;
    if (type === Open) {
      if (++depth > deepestNesting) return false;
    } else if (type === Close && --depth < 0) return false;
  }
  return depth === 0;
}

/**
 * The tokens with every brace paired, and a problem for each that was not. Linear in the number of tokens.
 * Only called when `isBalanced` says no.
 */
export function balance(text: string, tokens: readonly IToken[], problems: SyntaxProblem[]): IToken[] {
  const out: IToken[] = [];
  const inserts: { readonly before: number; readonly token: IToken }[] = [];
  const open: OpenBlock[] = [];
  let startsStatement = true;
  let header: IToken | undefined;
  // The last line at the left edge that has no brace but is followed by indented lines: a header that lost its brace.
  let bare: { readonly line: IToken; readonly end: number; readonly endOffset: number } | undefined;
  let bareLine: IToken | undefined;

  const closeOne = (at: number): void => {
    const block = open.pop() as OpenBlock;
    problems.push({ kind: 'brace-missing', start: block.header.startOffset, end: endOf(block.header), detail: '}' });
    out.push(tokenOf(NewLine, '', at, at), tokenOf(Close, '', at, at), tokenOf(NewLine, '', at, at));
  };

  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    if (type === NewLine) {
      if (bareLine !== undefined && open.length === 0) {
        const next = tokens[i + 1];
        if (next !== undefined && next.tokenType !== Close && columnOf(text, next.startOffset) > 0)
          bare = { line: bareLine, end: out.length, endOffset: token.startOffset };
      }
      bareLine = undefined;
      startsStatement = true;
      out.push(token);
      continue;
    }
    if (startsStatement && type !== Close) {
      const column = columnOf(text, token.startOffset);
      if (column === 0 && open.length > 0 && lineOpensBlock(tokens, i)) {
        while (open.length > 0) closeOne(token.startOffset);
        bare = undefined;
      }
      header = token;
      if (column === 0 && open.length === 0) bareLine = token;
      startsStatement = false;
    }
    if (type === Open) {
      if (open.length >= deepestNesting) {
        const end = skipNested(tokens, i);
        if (!problems.some((problem) => problem.kind === 'nested-too-deep'))
          problems.push({ kind: 'nested-too-deep', start: token.startOffset, end: endOf(token), detail: '' });
        i = end;
        continue;
      }
      open.push({ header: header ?? token, column: columnOf(text, (header ?? token).startOffset) });
      bareLine = undefined;
      if (open.length === 1) bare = undefined;
      startsStatement = true;
      out.push(token);
      continue;
    }
    if (type === Close) {
      const column = startsStatement ? columnOf(text, token.startOffset) : -1;
      if (column === 0) while (open.length > 1 && (open[open.length - 1] as OpenBlock).column > 0) closeOne(token.startOffset);
      if (open.length > 0) {
        open.pop();
        out.push(token);
      } else if (bare !== undefined) {
        problems.push({ kind: 'brace-missing', start: bare.line.startOffset, end: endOf(bare.line), detail: '{' });
        inserts.push({ before: bare.end, token: tokenOf(Open, '', bare.endOffset, bare.endOffset) });
        bare = undefined;
        out.push(token);
      } else stray(text, token, problems);
      startsStatement = true;
      bareLine = undefined;
      continue;
    }
    out.push(token);
  }
  while (open.length > 0) closeOne(text.length);
  return inserts.length === 0 ? out : withInserts(out, inserts);
}

/** A brace that closes nothing. Several in a row are one mistake and one message. */
function stray(text: string, token: IToken, problems: SyntaxProblem[]): void {
  const last = problems[problems.length - 1];
  if (last?.kind === 'brace-stray' && token.startOffset - last.end < 80 && text.slice(last.end, token.startOffset).trim() === '')
    problems[problems.length - 1] = { ...last, end: endOf(token) };
  else problems.push({ kind: 'brace-stray', start: token.startOffset, end: endOf(token), detail: '' });
}

const endOf = (token: IToken): number => token.endOffset as number;

function withInserts(tokens: readonly IToken[], inserts: readonly { readonly before: number; readonly token: IToken }[]): IToken[] {
  const out: IToken[] = [];
  let next = 0;
  for (let i = 0; i <= tokens.length; i++) {
    while (next < inserts.length && (inserts[next] as { before: number }).before === i) out.push((inserts[next++] as { token: IToken }).token);
    if (i < tokens.length) out.push(tokens[i] as IToken);
  }
  return out;
}

/** How far the start of a token stands from the left edge of its line; tabs count as one. Stops looking at 1. */
function columnOf(text: string, offset: number): number {
  if (offset === 0) return 0;
  const before = text.charCodeAt(offset - 1);
  return before === 10 || before === 13 || (before === 0xfeff && offset === 1) ? 0 : 1;
}

function lineOpensBlock(tokens: readonly IToken[], from: number): boolean {
  for (let i = from; i < tokens.length; i++) {
    const type = (tokens[i] as IToken).tokenType;
    if (type === Open) return true;
    if (type === NewLine || type === Close) return false;
  }
  return false;
}

/** The index of the last token inside the braces that open at `from`, the closing brace included. */
function skipNested(tokens: readonly IToken[], from: number): number {
  let depth = 0;
  for (let i = from; i < tokens.length; i++) {
    const type = (tokens[i] as IToken).tokenType;
    if (type === Open) depth++;
    else if (type === Close && --depth === 0) return i;
  }
  return tokens.length - 1;
}
