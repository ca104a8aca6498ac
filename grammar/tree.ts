// The tree of one file: plain data with offsets, no meaning. Lines and columns are worked out on demand (see lines.ts).

/** A half-open stretch of text, in UTF-16 offsets from the start of the file. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * A bare word: a name, a choice, a keyword, a unit, or `..` standing alone by mistake. `text` is what is seen of it: characters that
 * show nothing are reported and left out.
 */
export interface WordValue extends Span {
  readonly kind: 'word';
  readonly text: string;
}

/** A number as written, with the word that follows it (a unit, unless the vocabulary says otherwise). */
export interface NumberValue extends Span {
  readonly kind: 'number';
  readonly text: string;
  readonly unit: WordValue | undefined;
  /** What follows `±`: a tolerance. */
  readonly plusMinus: NumberValue | undefined;
  /** What follows `..`: the upper end of a range. */
  readonly upTo: NumberValue | undefined;
}

/** A text in double quotes. `text` is what stands between them, escapes resolved. */
export interface TextValue extends Span {
  readonly kind: 'text';
  readonly text: string;
}

/** A date as written: YYYY-MM-DD, not yet checked against the calendar. */
export interface DateValue extends Span {
  readonly kind: 'date';
  readonly text: string;
}

/** `: name` after a block's own name: the model that it is one of. */
export interface ModelValue extends Span {
  readonly kind: 'model';
  readonly name: WordValue;
}

/** A comma between two values. Lists are read from it by the vocabulary. */
export interface CommaValue extends Span {
  readonly kind: 'comma';
}

export type Value = WordValue | NumberValue | TextValue | DateValue | ModelValue | CommaValue;

/** The braces of a block and what stands between them. */
export interface Body extends Span {
  readonly items: readonly Statement[];
}

/** One statement: a line, or a block's header with its body. */
export interface Statement extends Span {
  /** The word that says what it is; none when the line starts with something else. */
  readonly word: WordValue | undefined;
  /** Everything after the word, up to the body or the end of the line. */
  readonly values: readonly Value[];
  readonly body: Body | undefined;
}

/** A comment, from its `#` to the end of the line; `text` without characters that show nothing, as in words. */
export interface Comment extends Span {
  readonly text: string;
}

/** There is nothing more to say than where it is. */
export type Nothing = Readonly<Record<string, never>>;

/** What can be wrong with the shape of the text, by the name of the rule that explains it, with what that rule is told. */
export interface SyntaxProblems {
  readonly 'brace-missing': { readonly brace: '{' | '}' };
  readonly 'brace-stray': Nothing;
  readonly 'text-not-closed': Nothing;
  /** `within`: what it stands in; `line` where it is between words and signs. */
  readonly 'character-not-allowed': { readonly found: string; readonly within: 'word' | 'text' | 'comment' | 'line' };
  readonly 'line-without-word': Nothing;
  readonly 'sign-misplaced': { readonly found: string };
  readonly 'nested-too-deep': Nothing;
  readonly 'file-too-large': { readonly characters: number };
}

export type SyntaxProblem = {
  [Kind in keyof SyntaxProblems]: Span & { readonly kind: Kind; readonly detail: SyntaxProblems[Kind] };
}[keyof SyntaxProblems];

export interface Tree {
  readonly text: string;
  readonly items: readonly Statement[];
  readonly comments: readonly Comment[];
  /** Every text, wherever it stands, in the order of the file. */
  readonly texts: readonly TextValue[];
  readonly problems: readonly SyntaxProblem[];
}
