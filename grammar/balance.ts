// Braces that do not pair are mended here, before the parser, so that a mistake in one block does not change how the
// next is read. Braces alone cannot say which block lacks one; the indentation that people write can, so both are held
// against each other. Blocks whose braces and indentation agree are never touched.
import type { IToken } from 'chevrotain';
import { Close, deepestNesting, NewLine, Open, tokenOf } from './tokens.ts';
import type { SyntaxProblem } from './tree.ts';

/**
 * True when every brace has its partner and a header, and nothing is nested too deep: almost every file, found in one
 * cheap pass.
 */
export function isBalanced(tokens: readonly IToken[]): boolean {
  let depth = 0;
  for (let i = 0; i < tokens.length; i++) {
    const type = (tokens[i] as IToken).tokenType;
    if (type === Open) {
      const before = tokens[i - 1]?.tokenType;
      if (++depth > deepestNesting || before === undefined || before === NewLine || before === Open || before === Close) return false;
    } else if (type === Close && --depth < 0) return false;
  }
  return depth === 0;
}

/**
 * The tokens with every brace paired, and a problem for each that was not. Linear in the number of tokens.
 * Only called when `isBalanced` says no.
 */
export function balance(text: string, tokens: readonly IToken[], problems: SyntaxProblem[]): IToken[] {
  return new Mender(text, tokens, problems).mend();
}

/** What one pass over the tokens tells of each of them, by its index. */
interface Survey {
  /** How far a token stands from the left edge if it is the first of its line; -1 if it is not. A tab counts as one. */
  readonly column: Int32Array;
  /** The column of the first token of its line. */
  readonly indent: Int32Array;
  readonly line: Int32Array;
  /** For the first token of a statement: its opening brace, or -1. */
  readonly openOf: Int32Array;
  /** For an opening brace: its partner by counting alone, or -1. */
  readonly match: Int32Array;
  /** For an opening brace with a partner: levels of braces from it downwards. */
  readonly height: Int32Array;
}

function survey(text: string, tokens: readonly IToken[]): Survey {
  const size = tokens.length;
  const column = new Int32Array(size);
  const indent = new Int32Array(size);
  const line = new Int32Array(size);
  const openOf = new Int32Array(size).fill(-1);
  const match = new Int32Array(size).fill(-1);
  const height = new Int32Array(size);
  const open: number[] = [];
  let statement = -1;
  for (let i = 0; i < size; i++) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    const at = columnOf(text, tokens, i);
    column[i] = at;
    indent[i] = at >= 0 || i === 0 ? at : (indent[i - 1] as number);
    line[i] = (i === 0 ? 0 : (line[i - 1] as number)) + (at >= 0 ? 1 : 0);
    if (type === NewLine) {
      statement = -1;
      continue;
    }
    if (statement < 0 && type !== Close) statement = i;
    if (type === Open) {
      openOf[statement] = i;
      height[i] = 1;
      open.push(i);
      statement = -1;
    } else if (type === Close) {
      statement = -1;
      const partner = open.pop();
      if (partner === undefined) continue;
      match[partner] = i;
      const outer = open[open.length - 1];
      if (outer !== undefined) height[outer] = Math.max(height[outer] as number, (height[partner] as number) + 1);
    }
  }
  return { column, indent, line, openOf, match, height };
}

function columnOf(text: string, tokens: readonly IToken[], i: number): number {
  const token = tokens[i] as IToken;
  const before = tokens[i - 1];
  const from = before === undefined ? 0 : (before.endOffset as number);
  if (token.tokenType === NewLine) return -1;
  for (let at = token.startOffset - 1; at >= from; at--) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return token.startOffset - at - 1;
  }
  if (before !== undefined && before.tokenType !== NewLine) return -1;
  return token.startOffset - from - (from === 0 && text.charCodeAt(0) === 0xfeff ? 1 : 0);
}

/** A line without a brace that is followed by deeper ones: a header that has lost its opening brace. */
interface Bare {
  readonly line: IToken;
  readonly column: number;
  /** Where the line ends among the tokens put out; -1 until it has ended. */
  before: number;
  end: number;
  hasContent: boolean;
}

/** A block that is open, or the file itself. */
interface Frame {
  readonly header: IToken | undefined;
  readonly column: number;
  /** The column of the opening brace, if that stands first on its line; else -1. */
  readonly braceColumn: number;
  readonly line: number;
  hasContent: boolean;
  /** A block stands in it. */
  hasBlock: boolean;
  /** Its braces are sound; it is only too deep. */
  readonly trusted: boolean;
  /** Indentation says nothing about where it ends: its lines are not indented, or its braces are sound. */
  flat: boolean;
  /** The first place where something stands no deeper than the header: where the block ends, if nothing else says so. */
  outdent: number | undefined;
  /** A closing brace in an unusual place: the block's own if no better one comes, else a stray. */
  doubtful: { readonly token: IToken; readonly before: number } | undefined;
  bare: Bare | undefined;
}

class Mender {
  readonly #text: string;
  readonly #tokens: readonly IToken[];
  readonly #problems: SyntaxProblem[];
  readonly #survey: Survey;
  readonly #out: IToken[] = [];
  /** Tokens to be put in between those of `#out`, once all is known. */
  readonly #inserts: { readonly before: number; readonly tokens: readonly IToken[] }[] = [];
  readonly #file: Frame = {
    header: undefined,
    column: -1,
    braceColumn: -1,
    line: -1,
    trusted: true,
    hasContent: false,
    hasBlock: false,
    flat: false,
    outdent: undefined,
    doubtful: undefined,
    bare: undefined,
  };
  readonly #open: Frame[] = [];
  #toldOfDepth = false;

  constructor(text: string, tokens: readonly IToken[], problems: SyntaxProblem[]) {
    this.#text = text;
    this.#tokens = tokens;
    this.#problems = problems;
    this.#survey = survey(text, tokens);
  }

  mend(): IToken[] {
    const { column, indent, line, openOf, match, height } = this.#survey;
    let startsStatement = true;
    let statement = 0;
    // The block that opens next is sound, though too deep.
    let trusted = false;
    for (let i = 0; i < this.#tokens.length; i++) {
      const token = this.#tokens[i] as IToken;
      const type = token.tokenType;
      if (type === NewLine) {
        this.#endLine();
        this.#out.push(token);
        startsStatement = true;
        continue;
      }
      if (type === Close) {
        this.#close(token, i);
        startsStatement = true;
        continue;
      }
      if (type === Open && startsStatement && this.#isStrayOpen(i)) {
        oneProblem(this.#text, 'line-without-word', token, this.#problems);
        continue;
      }
      if (startsStatement) {
        startsStatement = false;
        statement = i;
        trusted = false;
        if ((column[i] as number) >= 0) {
          const open = openOf[i] as number;
          this.#statement(token, column[i] as number, open >= 0 && open !== i);
          trusted = open >= 0 && this.#isSound(i, open);
          if (trusted && this.#open.length + (height[open] as number) <= deepestNesting) {
            const end = match[open] as number;
            (this.#top ?? this.#file).hasBlock = true;
            for (; i <= end; i++) this.#out.push(this.#tokens[i] as IToken);
            i = end;
            startsStatement = true;
            continue;
          }
        }
      }
      if (type === Open) {
        startsStatement = true;
        if (this.#open.length >= deepestNesting) {
          if (!this.#toldOfDepth) this.#problems.push({ kind: 'nested-too-deep', start: token.startOffset, end: endOf(token), detail: {} });
          this.#toldOfDepth = true;
          const end = match[i] as number;
          if (end >= 0 && (line[end] === line[i] || column[end] === indent[i])) i = end;
          continue;
        }
        this.#push(statement, i, trusted);
      }
      this.#out.push(token);
    }
    while (this.#open.length > 0) this.#closeMissing();
    return this.#finish();
  }

  get #top(): Frame | undefined {
    return this.#open[this.#open.length - 1];
  }

  #push(statement: number, open: number, trusted: boolean): void {
    const { column, indent, line } = this.#survey;
    const outer = this.#top;
    if (outer !== undefined) outer.hasContent = outer.hasBlock = true;
    this.#open.push({
      header: this.#tokens[statement] as IToken,
      // What begins behind something else stands at least as deep as the block that it is in.
      column:
        (column[statement] as number) >= 0 ? (column[statement] as number) : Math.max(indent[statement] as number, outer?.column ?? -1),
      braceColumn: (column[open] as number) >= (indent[statement] as number) ? (column[open] as number) : -1,
      line: line[open] as number,
      trusted,
      hasContent: trusted,
      hasBlock: false,
      flat: trusted,
      outdent: undefined,
      doubtful: undefined,
      bare: undefined,
    });
  }

  /** A statement that is the first of its line: its column tells where the blocks around it may have ended. */
  #statement(token: IToken, column: number, opens: boolean): void {
    // As many unclosed blocks as can be nested, and this one stands beside the first of them: none of them was meant to hold it.
    const bottom = this.#open[0];
    if (opens && this.#open.length >= deepestNesting && bottom !== undefined && !bottom.trusted && column <= bottom.column)
      while (this.#open.length > 0) this.#closeMissing();
    const frame = this.#top ?? this.#file;
    if (!frame.hasContent) {
      frame.hasContent = true;
      frame.flat = column <= frame.column;
    }
    for (let i = this.#open.length - 1; i >= 0; i--) {
      const outer = this.#open[i] as Frame;
      if (column > outer.column || (outer.flat && !opens)) break;
      outer.outdent ??= this.#out.length;
    }
    const { bare } = frame;
    if (bare !== undefined && column > bare.column) {
      if (!bare.hasContent && !followsClosely(this.#text.slice(bare.end, token.startOffset), bare.column)) frame.bare = undefined;
      bare.hasContent = true;
    } else frame.bare = opens ? undefined : { line: token, column, before: -1, end: 0, hasContent: false };
  }

  #endLine(): void {
    const bare = (this.#top ?? this.#file).bare;
    if (bare === undefined || bare.before >= 0) return;
    bare.before = this.#out.length;
    bare.end = endOf(this.#out[this.#out.length - 1] ?? bare.line);
  }

  /** Whether braces and indentation agree that the block begins and ends here. */
  #isSound(start: number, open: number): boolean {
    const { column, line, match, openOf } = this.#survey;
    const end = match[open] as number;
    if (end < 0) return false;
    const own = column[start] as number;
    const endColumn = column[end] as number;
    let next = this.#next(end);
    if (next !== undefined && (column[next] as number) > own) return false;
    if (line[end] === line[start] || endColumn === own || (endColumn >= own && endColumn === column[open])) return true;
    if (endColumn >= 0 && endColumn < own) return false;
    // It ends in an unusual place, behind a line or with others on one: then what follows that line must stand further out.
    while (next !== undefined && line[next] === line[end] && (this.#tokens[next] as IToken).tokenType === Close) next = this.#next(next);
    if (next !== undefined) {
      const nextColumn = column[next] as number;
      if (nextColumn < 0 || nextColumn > own || ((this.#tokens[next] as IToken).tokenType === Close && nextColumn === own)) return false;
    }
    for (let i = open + 1; i < end; i++)
      if ((openOf[i] as number) >= 0 && (column[i] as number) >= 0 && (column[i] as number) <= own) return false;
    return true;
  }

  /** An opening brace with no header before it, and nothing that shows where it would end. */
  #isStrayOpen(i: number): boolean {
    const column = this.#survey.column[i] as number;
    if ((this.#survey.match[i] as number) < 0) return true;
    return column >= 0 && (column <= (this.#top ?? this.#file).column || !this.#isSound(i, i));
  }

  /** The index of the next token that is not an end of line. */
  #next(from: number): number | undefined {
    for (let i = from + 1; i < this.#tokens.length; i++) if ((this.#tokens[i] as IToken).tokenType !== NewLine) return i;
    return undefined;
  }

  #close(token: IToken, i: number): void {
    const { line } = this.#survey;
    const column = this.#survey.column[i] as number;
    const top = this.#top;
    if (column < 0) {
      if (top === undefined) oneProblem(this.#text, 'brace-stray', token, this.#problems);
      else if (top.line === line[i]) {
        this.#open.pop();
        this.#out.push(token);
      } else this.#doubt(top, token);
      return;
    }
    let found = this.#open.length - 1;
    while (found >= 0 && this.#open[found]?.column !== column && this.#open[found]?.braceColumn !== column) found--;
    if (found >= 0) {
      // It may as well be a stray in the innermost block.
      if (this.#betterComes(i, column) && (found < this.#open.length - 1 || this.#goesOn(i, this.#open[found] as Frame))) {
        oneProblem(this.#text, 'brace-stray', token, this.#problems);
        return;
      }
      while (this.#open.length > found + 1) this.#closeMissing();
      const doubtful = this.#open.pop()?.doubtful;
      if (doubtful !== undefined) oneProblem(this.#text, 'brace-stray', doubtful.token, this.#problems);
      this.#out.push(token);
      return;
    }
    const frame = top ?? this.#file;
    const { bare } = frame;
    if (bare?.hasContent === true && bare.column === column && bare.before >= 0) {
      this.#problems.push({ kind: 'brace-missing', start: bare.line.startOffset, end: endOf(bare.line), detail: { brace: '{' } });
      this.#inserts.push({ before: bare.before, tokens: [tokenOf(Open, '', bare.end, bare.end)] });
      frame.bare = undefined;
      this.#out.push(token);
    } else if (top !== undefined) this.#doubt(top, token);
    else oneProblem(this.#text, 'brace-stray', token, this.#problems);
  }

  /** Whether deeper lines follow, and then a closing brace in the same column: the one at `from` is then the odd one. */
  #betterComes(from: number, column: number): boolean {
    for (let i = from + 1; i < this.#tokens.length; i++) {
      const at = this.#survey.column[i] as number;
      if (at >= 0 && at <= column) return at === column && i !== this.#next(from) && (this.#tokens[i] as IToken).tokenType === Close;
    }
    return false;
  }

  /** Whether a block goes on behind the brace at `i`: with one more inner block, or with no line left free. */
  #goesOn(i: number, frame: Frame): boolean {
    const next = this.#next(i);
    if (next === undefined) return false;
    const opens = this.#survey.openOf[next] as number;
    const gap = this.#text.slice(endOf(this.#tokens[i] as IToken), (this.#tokens[next] as IToken).startOffset);
    return (frame.hasBlock && opens >= 0 && opens !== next) || /^[^\S\r\n]*(\r\n?|\n)[^\S\r\n]*$/.test(gap);
  }

  #doubt(frame: Frame, token: IToken): void {
    if (frame.doubtful === undefined) frame.doubtful = { token, before: this.#out.length };
    else oneProblem(this.#text, 'brace-stray', token, this.#problems);
  }

  /** Ends the innermost block where it most likely should have ended. */
  #closeMissing(): void {
    const frame = this.#open.pop() as Frame;
    if (frame.doubtful !== undefined) {
      this.#inserts.push({ before: frame.doubtful.before, tokens: [frame.doubtful.token] });
      return;
    }
    const header = frame.header as IToken;
    this.#problems.push({ kind: 'brace-missing', start: header.startOffset, end: endOf(header), detail: { brace: '}' } });
    const before = frame.outdent ?? this.#out.length;
    const at = endOf(lastBefore(this.#out, before) ?? header);
    this.#inserts.push({ before, tokens: [tokenOf(NewLine, '', at, at), tokenOf(Close, '', at, at), tokenOf(NewLine, '', at, at)] });
  }

  #finish(): IToken[] {
    if (this.#inserts.length === 0) return this.#out;
    const inserts = this.#inserts.sort((a, b) => a.before - b.before);
    const out: IToken[] = [];
    let next = 0;
    for (let i = 0; i <= this.#out.length; i++) {
      for (; next < inserts.length && inserts[next]?.before === i; next++) out.push(...(inserts[next]?.tokens ?? []));
      if (i < this.#out.length) out.push(this.#out[i] as IToken);
    }
    return out;
  }
}

/** Several of the same kind with nothing between them are one mistake and one message. */
function oneProblem(text: string, kind: 'brace-stray' | 'line-without-word', token: IToken, problems: SyntaxProblem[]): void {
  const last = problems[problems.length - 1];
  if (
    last?.kind === kind &&
    token.startOffset >= last.end &&
    token.startOffset - last.end < 80 &&
    text.slice(last.end, token.startOffset).trim() === ''
  )
    problems[problems.length - 1] = { ...last, end: endOf(token) };
  else problems.push({ kind, start: token.startOffset, end: endOf(token), detail: {} });
}

const endOf = (token: IToken): number => token.endOffset as number;

/** Whether what stands between a line and the deeper one after it lets the first be the header of the second. */
function followsClosely(gap: string, column: number): boolean {
  const between = gap.split(/\r\n?|\n/).slice(1, -1);
  const blank = between.filter((line) => line.trim() === '').length;
  return blank < 2 && between.every((line) => line.search(/\S/) > column || line.trim() === '');
}

/** The last of the tokens before an index that is not an end of line. */
function lastBefore(tokens: readonly IToken[], before: number): IToken | undefined {
  for (let i = before - 1; i >= 0; i--) if ((tokens[i] as IToken).tokenType !== NewLine) return tokens[i];
  return undefined;
}
