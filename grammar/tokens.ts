// The tokens of the language and the scanner that finds them.
// The scanner is ours and not chevrotain's lexer: it is total (every text gives tokens, whatever stands in it), linear,
// and measurably faster than the same tokens as regular expressions. The token types are chevrotain's, so the parser is too.
import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain';
import type { Comment, NumberValue, SyntaxProblem, SyntaxProblems, WordValue } from './tree.ts';
import { isUnseenPair, unseenRanges, withoutUnseen } from './unseen.ts';

const token = (name: string, label: string): TokenType => createToken({ name, label, pattern: Lexer.NA });

export const NewLine = token('NewLine', 'end of line');
export const Open = token('Open', '{');
export const Close = token('Close', '}');
export const Colon = token('Colon', ':');
export const Comma = token('Comma', ',');
export const Text = token('Text', 'text');
export const NumberToken = token('Number', 'number');
export const DateToken = token('Date', 'date');
export const Word = token('Word', 'word');
export const PlusMinus = token('PlusMinus', '±');
export const Dots = token('Dots', '..');

export const allTokens: TokenType[] = [NewLine, Open, Close, Colon, Comma, Text, NumberToken, DateToken, Word, PlusMinus, Dots];

/** Deepest nesting that is read; the language itself needs three levels. */
export const deepestNesting = 16;
/** Longest text that is read, in UTF-16 units. A site is some kilobytes; this is room for thousands of them. */
export const longestText = 4_000_000;

type Within = SyntaxProblems['character-not-allowed']['within'];

export interface Scan {
  readonly tokens: IToken[];
  readonly comments: Comment[];
  readonly problems: SyntaxProblem[];
}

/** `Part` is part of a word too, unless it begins `..` or `+-`. Word and digit come first, so that one look tells both. */
const Class = { Word: 0, Digit: 1, Part: 2, Blank: 3, LineEnd: 4, Sign: 5, Bad: 6, Unseen: 7 } as const;

const classes = new Uint8Array(65536);
for (let code = 0; code < 32; code++) classes[code] = Class.Bad;
for (const code of [9, 11, 12, 32, 0xa0, 0x1680, 0x202f, 0x205f, 0x3000]) classes[code] = Class.Blank;
for (let code = 0x2000; code <= 0x200a; code++) classes[code] = Class.Blank;
classes[10] = classes[13] = Class.LineEnd;
for (const sign of '{}":,#±') classes[sign.charCodeAt(0)] = Class.Sign;
for (let code = 48; code < 58; code++) classes[code] = Class.Digit;
classes[43] = classes[46] = Class.Part;
classes[127] = Class.Bad;
for (let code = 0x80; code < 0xa0; code++) classes[code] = Class.Bad;
// Surrogates are looked at in pairs.
for (let code = 0xd800; code < 0xe000; code++) classes[code] = Class.Bad;
for (const code of [0x2028, 0x2029, 0xfffe, 0xffff]) classes[code] = Class.Bad;
for (const [from, to] of unseenRanges) for (let code = from; code <= to && code <= 0xffff; code++) classes[code] = Class.Unseen;

const classAt = (text: string, at: number): number => classes[text.charCodeAt(at)] as number;
const byteOrderMark = 0xfeff;
const isDigit = (code: number): boolean => code >= 48 && code < 58;
const isPair = (text: string, at: number): boolean =>
  (text.charCodeAt(at) & 0xfc00) === 0xd800 && (text.charCodeAt(at + 1) & 0xfc00) === 0xdc00;
/** The same for one that shows something: it is part of a word. */
const isSeenPair = (text: string, at: number): boolean => isPair(text, at) && !isUnseenPair(text.codePointAt(at) as number);

/** All tokens of a text, its comments apart, and what cannot be read. Never throws; linear in the text's length. */
export function scan(text: string): Scan {
  const tokens: IToken[] = [];
  const comments: Comment[] = [];
  const problems: SyntaxProblem[] = [];
  const length = text.length;
  let at = text.charCodeAt(0) === byteOrderMark ? 1 : 0;
  let lastType: TokenType = NewLine;

  while (at < length) {
    const code = text.charCodeAt(at);
    const start = at;
    const known = problems.length;
    let type: TokenType;
    switch (classes[code]) {
      case Class.Blank:
        do at++;
        while (at < length && classAt(text, at) === Class.Blank);
        continue;
      case Class.LineEnd:
        at++;
        // A brace may stand on the line below its header, so line ends before it are dropped when it comes.
        if (lastType !== NewLine) {
          tokens.push(tokenOf(NewLine, '\n', start, at));
          lastType = NewLine;
        }
        continue;
      case Class.Bad:
      case Class.Unseen:
        if (!isSeenPair(text, at)) {
          at = endOfRefused(text, at, 'line', problems);
          continue;
        }
        at = endOfWord(text, at, problems);
        type = Word;
        break;
      case Class.Sign:
        if (code === 35) {
          at = endOfComment(text, at, problems);
          comments.push({ start, end: at, text: seen(text.slice(start, at), problems.length > known) });
          continue;
        }
        if (code === 34) {
          at = endOfText(text, at, problems);
          type = Text;
        } else {
          at++;
          type = code === 123 ? Open : code === 125 ? Close : code === 58 ? Colon : code === 44 ? Comma : PlusMinus;
          if (type === Open && lastType === NewLine && tokens.length > 1 && beforeLineEndIsHeader(tokens)) tokens.pop();
        }
        break;
      case Class.Digit:
        at = endOfDateOrNumber(text, at);
        type = at - start === 10 && text.charCodeAt(start + 4) === 45 ? DateToken : NumberToken;
        break;
      default:
        if (isSignOfNumber(text, at)) {
          at = endOfNumber(text, at + 1);
          type = NumberToken;
        } else if (code === 46 && text.charCodeAt(at + 1) === 46) {
          at += text.charCodeAt(at + 2) === 46 ? 3 : 2;
          type = Dots;
        } else if (code === 43 && text.charCodeAt(at + 1) === 45) {
          at += 2;
          type = PlusMinus;
        } else {
          at = endOfWord(text, at, problems);
          type = Word;
        }
    }
    const image = seen(text.slice(start, at), problems.length > known);
    tokens.push(
      type === Word
        ? new ScannedWord(image, start, at)
        : type === NumberToken
          ? new ScannedNumber(image, start, at)
          : tokenOf(type, image, start, at),
    );
    lastType = type;
  }
  return { tokens, comments, problems };
}

/** What cannot be seen is reported, and the rest is read as it is seen. */
const seen = (image: string, hasFaults: boolean): string => (hasFaults ? withoutUnseen(image) : image);

const wordType = Word.tokenTypeIdx as number;
const numberType = NumberToken.tokenTypeIdx as number;

/**
 * A word as token and as value: the object that is scanned is the one that stands in the tree, so the commonest thing of a
 * file is made once. It holds what a `WordValue` holds and nothing else; what the parser asks of a token is worked out.
 */
export class ScannedWord implements WordValue, IToken {
  readonly kind = 'word';
  readonly text: string;
  readonly start: number;
  readonly end: number;

  constructor(text: string, start: number, end: number) {
    this.text = text;
    this.start = start;
    this.end = end;
  }

  get image(): string {
    return this.text;
  }
  get startOffset(): number {
    return this.start;
  }
  get endOffset(): number {
    return this.end;
  }
  get tokenType(): TokenType {
    return Word;
  }
  get tokenTypeIdx(): number {
    return wordType;
  }
}

/** A number as token and as value; the parser adds what follows it, and moves its end there. */
export class ScannedNumber implements NumberValue, IToken {
  readonly kind = 'number';
  readonly text: string;
  unit: WordValue | undefined = undefined;
  plusMinus: NumberValue | undefined = undefined;
  upTo: NumberValue | undefined = undefined;
  readonly start: number;
  end: number;

  constructor(text: string, start: number, end: number) {
    this.text = text;
    this.start = start;
    this.end = end;
  }

  get image(): string {
    return this.text;
  }
  get startOffset(): number {
    return this.start;
  }
  /** Of the number alone. */
  get endOffset(): number {
    return this.start + this.text.length;
  }
  get tokenType(): TokenType {
    return NumberToken;
  }
  get tokenTypeIdx(): number {
    return numberType;
  }
}

/** Any other token, with all that the parser reads of it. `endOffset` is half-open here, unlike chevrotain's own lexer's. */
export function tokenOf(type: TokenType, image: string, start: number, end: number): IToken {
  return { image, startOffset: start, endOffset: end, tokenTypeIdx: type.tokenTypeIdx as number, tokenType: type };
}

function beforeLineEndIsHeader(tokens: readonly IToken[]): boolean {
  const type = (tokens[tokens.length - 2] as IToken).tokenType;
  return type !== Open && type !== Close && type !== NewLine;
}

/** Behind the characters that are refused from `from` on, which are reported as one; the same place where there is none. */
function endOfRefused(text: string, from: number, within: Within, problems: SyntaxProblem[]): number {
  let at = from;
  for (;;) {
    const kind = at < text.length ? classAt(text, at) : Class.Blank;
    if (kind < Class.Bad || (kind === Class.Bad && isSeenPair(text, at))) break;
    at += isPair(text, at) ? 2 : 1;
  }
  if (at > from) problems.push({ kind: 'character-not-allowed', start: from, end: at, detail: { found: text.slice(from, at), within } });
  return at;
}

/** Marks that turn the reading direction can make a comment look like a fact, and the rest deceives who reviews it. */
function endOfComment(text: string, from: number, problems: SyntaxProblem[]): number {
  let at = from;
  while (at < text.length) {
    const kind = classAt(text, at);
    if (kind === Class.LineEnd) break;
    if (kind < Class.Bad) at++;
    else at = isSeenPair(text, at) ? at + 2 : endOfRefused(text, at, 'comment', problems);
  }
  return at;
}

function endOfText(text: string, from: number, problems: SyntaxProblem[]): number {
  let at = from + 1;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (code === 34) return at + 1;
    if (code === 10 || code === 13) break;
    if ((classes[code] as number) >= Class.Bad) {
      at = isSeenPair(text, at) ? at + 2 : endOfRefused(text, at, 'text', problems);
      continue;
    }
    if (code === 92) {
      // Only these two mean something else behind a backslash: any other character is looked at as ever.
      const next = text.charCodeAt(at + 1);
      if (next === 34 || next === 92) at++;
    }
    at++;
  }
  problems.push({ kind: 'text-not-closed', start: from, end: at, detail: {} });
  return at;
}

function endOfWord(text: string, from: number, problems: SyntaxProblem[]): number {
  let at = from;
  for (;;) {
    while (at < text.length && classAt(text, at) <= Class.Digit) at++;
    if (at >= text.length) return at;
    const kind = classAt(text, at);
    if (kind === Class.Part) {
      if (isDouble(text, at)) return at;
      at++;
    } else if (kind < Class.Bad) return at;
    else if (isSeenPair(text, at)) at += 2;
    else {
      const end = endOfUnseen(text, at);
      if (end === at || !isOfWord(text, end)) return at;
      at = endOfRefused(text, at, 'word', problems);
    }
  }
}

/** Two points, or a plus and a hyphen: signs of their own. */
const isDouble = (text: string, at: number): boolean => text.charCodeAt(at + 1) === (text.charCodeAt(at) === 46 ? 46 : 45);

function endOfUnseen(text: string, from: number): number {
  let at = from;
  for (;;) {
    if (at < text.length && classAt(text, at) === Class.Unseen) at++;
    else if (isPair(text, at) && !isSeenPair(text, at)) at += 2;
    else return at;
  }
}

/** Whether the character at a place can go on with a word. */
function isOfWord(text: string, at: number): boolean {
  if (at >= text.length) return false;
  const kind = classAt(text, at);
  return kind <= Class.Digit || (kind === Class.Part && !isDouble(text, at)) || (kind === Class.Bad && isSeenPair(text, at));
}

function endOfDateOrNumber(text: string, from: number): number {
  const whole = endOfDigits(text, from);
  if (whole - from === 4 && text.charCodeAt(whole) === 45) {
    const month = endOfDigits(text, whole + 1);
    if (month - whole === 3 && text.charCodeAt(month) === 45) {
      const day = endOfDigits(text, month + 1);
      if (day - month === 3) return day;
    }
  }
  return endOfNumber(text, from);
}

function endOfDigits(text: string, from: number): number {
  let at = from;
  while (isDigit(text.charCodeAt(at))) at++;
  return at;
}

function endOfNumber(text: string, from: number): number {
  const whole = endOfDigits(text, from);
  return text.charCodeAt(whole) === 46 && isDigit(text.charCodeAt(whole + 1)) ? endOfDigits(text, whole + 1) : whole;
}

/** A plus, a hyphen or a true minus sign right before a digit. */
function isSignOfNumber(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return (code === 45 || code === 43 || code === 0x2212) && isDigit(text.charCodeAt(at + 1));
}
