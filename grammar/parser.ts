// The one parser: chevrotain, LL(1), actions embedded. It knows the generic shape of the language and no meaning.
import { EmbeddedActionsParser, EOF, type IToken, type TokenType } from 'chevrotain';
import { balance, isBalanced } from './balance.ts';
import {
  allTokens,
  Close,
  Colon,
  Comma,
  DateToken,
  Dots,
  longestText,
  NewLine,
  NumberToken,
  Open,
  PlusMinus,
  type ScannedNumber,
  type ScannedWord,
  scan,
  Text,
  Word,
} from './tokens.ts';
import type { Body, NumberValue, Statement, SyntaxProblem, TextValue, Tree, Value, WordValue } from './tree.ts';

type Alternatives = { ALT: () => unknown }[];

class GateParser extends EmbeddedActionsParser {
  problems: SyntaxProblem[] = [];
  texts: TextValue[] = [];
  /** The values of the statement being read, counted by `#count`: one row for all statements of a file. */
  row: Value[] = [];
  #count = 0;
  // Alternatives are built once and kept: chevrotain would make them anew at every visit.
  #inBody: Alternatives | undefined;
  #inLine: Alternatives | undefined;
  #signs: Alternatives | undefined;
  // The last item and value read, set by the alternatives above, which take no arguments.
  #item: Statement | undefined;
  #value: Value | undefined;
  #body: Body | undefined;

  constructor(skipValidations: boolean) {
    super(allTokens, { maxLookahead: 1, recoveryEnabled: false, skipValidations });
    this.performSelfAnalysis();
  }

  readonly items = this.RULE('items', (): Statement[] => {
    const items: Statement[] = [];
    this.MANY(() => {
      if (this.#startsWithWord()) {
        // Nearly every item starts with a word. They are taken in a row, and only what is left asks the alternatives.
        do {
          items.push(this.#statement());
          if (this.LA(1).tokenType === NewLine) this.CONSUME2(NewLine);
        } while (this.#startsWithWord());
        return;
      }
      this.#item = undefined;
      this.OR(
        (this.#inBody ??= [
          { ALT: () => this.CONSUME(NewLine) },
          { ALT: () => (this.#item = this.#statement()) },
          { ALT: () => (this.#item = this.SUBRULE(this.orphan)) },
        ]),
      );
      if (this.#item === undefined) return;
      items.push(this.#item);
      if (!this.RECORDING_PHASE && this.LA(1).tokenType === NewLine) this.CONSUME2(NewLine);
    });
    return items;
  });

  #startsWithWord(): boolean {
    return !this.RECORDING_PHASE && this.LA(1).tokenType === Word;
  }

  /** Part of the rule `items` and not a rule of its own, like `#number`: calling a rule costs as much as reading a line. */
  #statement(): Statement {
    const start = this.LA(1).startOffset;
    this.#count = 0;
    // Words and numbers are nearly all there is: they are taken as they come, and only what is left asks the alternatives.
    let next = this.LA(1).tokenType;
    while (!this.RECORDING_PHASE && (next === Word || next === NumberToken)) {
      this.row[this.#count++] = next === Word ? wordOf(this.CONSUME(Word)) : this.#number();
      next = this.LA(1).tokenType;
    }
    if (this.RECORDING_PHASE || !endsLine(next))
      this.AT_LEAST_ONE(() => {
        this.OR2((this.#inLine ??= this.#valueAlternatives()));
        if (this.#value !== undefined) this.row[this.#count++] = this.#value;
      });
    const first = this.#count === 0 ? undefined : this.row[0];
    const word = first?.kind === 'word' ? first : undefined;
    const values = stretchOf(this.row, word === undefined ? 0 : 1, this.#count);
    let body: Body | undefined;
    if (this.RECORDING_PHASE || this.LA(1).tokenType === Open) {
      this.OPTION(() => {
        this.#body = this.SUBRULE(this.body);
      });
      body = this.#body;
    }
    return this.#finish(word, values, body, start, this.LA(0).endOffset as number);
  }

  /** A body with no header before it: kept, so that what stands in it is still looked at. */
  readonly orphan = this.RULE('orphan', (): Statement => {
    const body = this.SUBRULE(this.body);
    return this.#finish(undefined, [], body, body.start, body.end);
  });

  readonly body = this.RULE('body', (): Body => {
    const open = this.CONSUME(Open);
    const items = this.SUBRULE(this.items);
    const close = this.CONSUME(Close);
    return { start: open.startOffset, end: close.endOffset as number, items };
  });

  #valueAlternatives(): Alternatives {
    return [
      { ALT: () => (this.#value = wordOf(this.CONSUME(Word))) },
      { ALT: () => (this.#value = this.#number()) },
      {
        ALT: () => {
          const text = textOf(this.CONSUME(Text));
          this.#value = text;
          if (!this.RECORDING_PHASE) this.texts.push(text);
        },
      },
      {
        ALT: () => {
          const token = this.CONSUME(DateToken);
          this.#value = { kind: 'date', text: token.image, start: token.startOffset, end: token.endOffset as number };
        },
      },
      {
        ALT: () => {
          const token = this.CONSUME(Comma);
          this.#value = { kind: 'comma', start: token.startOffset, end: token.endOffset as number };
        },
      },
      {
        ALT: () => {
          const colon = this.CONSUME(Colon);
          this.#value = undefined;
          if (this.RECORDING_PHASE || this.LA(1).tokenType === Word) {
            const name = wordOf(this.CONSUME4(Word));
            this.#value = { kind: 'model', name, start: colon.startOffset, end: name.end };
          } else this.#misplaced(colon);
        },
      },
      {
        ALT: () => {
          this.#value = undefined;
          this.#misplaced(this.CONSUME2(PlusMinus));
        },
      },
      {
        ALT: () => {
          this.#value = undefined;
          this.#misplaced(this.CONSUME2(Dots));
        },
      },
    ];
  }

  /** A number with its unit, and with what follows `±` or `..`. Part of the rule `items` too: a third of all values are numbers. */
  #number(): NumberValue {
    const number = this.CONSUME(NumberToken) as unknown as ScannedNumber;
    if (this.RECORDING_PHASE) this.OPTION2(() => this.CONSUME2(Word));
    else if (this.LA(1).tokenType === Word) number.end = (number.unit = wordOf(this.CONSUME2(Word))).end;
    if (this.RECORDING_PHASE || isSign(this.LA(1).tokenType)) this.#behindNumber(number);
    return number;
  }

  #behindNumber(number: ScannedNumber): void {
    let sign: IToken | undefined;
    let second: ScannedNumber | undefined;
    this.OPTION3(() => {
      sign = this.OR3((this.#signs ??= [{ ALT: () => this.CONSUME(PlusMinus) }, { ALT: () => this.CONSUME(Dots) }])) as IToken;
      this.OPTION4(() => {
        second = this.CONSUME2(NumberToken) as unknown as ScannedNumber;
        this.OPTION5(() => {
          const unit = wordOf(this.CONSUME3(Word));
          if (second !== undefined && !this.RECORDING_PHASE) second.end = (second.unit = unit).end;
        });
      });
    });
    if (sign === undefined || this.RECORDING_PHASE) return;
    if (second === undefined) return this.#misplaced(sign);
    if (sign.tokenType === PlusMinus) number.plusMinus = second;
    else number.upTo = second;
    number.end = second.end;
  }

  #misplaced(sign: IToken): void {
    if (!this.RECORDING_PHASE)
      this.problems.push({ kind: 'sign-misplaced', start: sign.startOffset, end: sign.endOffset as number, detail: { found: sign.image } });
  }

  #finish(word: WordValue | undefined, values: readonly Value[], body: Body | undefined, start: number, end: number): Statement {
    if (word === undefined && !this.RECORDING_PHASE && (values.length > 0 || body !== undefined))
      this.problems.push({ kind: 'line-without-word', start, end: values[0]?.end ?? start + 1, detail: {} });
    return { word, values, body, start, end };
  }
}

const endsLine = (type: TokenType): boolean => type === NewLine || type === Open || type === Close || type === EOF;
const isSign = (type: TokenType): boolean => type === PlusMinus || type === Dots;

/** The scanner made the token so that it is the value too. */
const wordOf = (token: IToken): WordValue => token as unknown as ScannedWord;

/** A part of a row as a row of its own, no longer than it has to be: one that grows by itself would hold room for 17. */
function stretchOf(row: readonly Value[], from: number, to: number): readonly Value[] {
  const first = row[from] as Value;
  switch (to - from) {
    case 0:
      return none;
    case 1:
      return [first];
    case 2:
      return [first, row[from + 1] as Value];
    case 3:
      return [first, row[from + 1] as Value, row[from + 2] as Value];
    default:
      return row.slice(from, to);
  }
}

const none: readonly never[] = [];

function textOf(token: IToken): TextValue {
  const raw = token.image;
  const closed = raw.length > 1 && raw.endsWith('"');
  const inner = raw.slice(1, closed ? -1 : undefined);
  const text = inner.includes('\\') ? inner.replace(/\\(.)/gu, '$1') : inner;
  return { kind: 'text', text, start: token.startOffset, end: token.endOffset as number };
}

let parser: GateParser | undefined;

/** The grammar checked in full by chevrotain itself; a test calls it, so that a start need not. */
export function validateGrammar(): void {
  new GateParser(false);
}

/**
 * The tree of a text, and all that is wrong with its shape. Total: any text whatever gives a tree; it never throws.
 * A text longer than `longestText` is not read: its tree is empty and says so.
 */
export function parse(text: string): Tree {
  if (text.length > longestText)
    return {
      text,
      items: [],
      comments: [],
      texts: [],
      problems: [{ kind: 'file-too-large', start: 0, end: 0, detail: { characters: text.length } }],
    };
  const { tokens, comments, problems } = scan(text);
  const paired = isBalanced(tokens) ? tokens : balance(text, tokens, problems);
  parser ??= new GateParser(true);
  parser.input = paired;
  const texts: TextValue[] = [];
  parser.problems = problems;
  parser.texts = texts;
  // A fresh one, because what is put into old memory has to be noted for the next collection of garbage.
  parser.row = [];
  const items = parser.items();
  // Balanced tokens always fit the grammar; what follows is for a fault of ours, not for a user's.
  const error = parser.errors[0];
  if (error !== undefined && !problems.some((problem) => problem.kind.startsWith('brace')))
    problems.push({
      kind: 'sign-misplaced',
      start: offsetOf(error.token, text),
      end: offsetOf(error.token, text),
      detail: { found: error.token.image },
    });
  return { text, items: items ?? [], comments, texts, problems };
}

const offsetOf = (token: IToken, text: string): number =>
  token.tokenType === EOF || Number.isNaN(token.startOffset) ? text.length : token.startOffset;
