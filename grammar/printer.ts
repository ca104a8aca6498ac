// The canonical form: two spaces a level, one space between values, at most one blank line, comments where they stood.
// Nothing is reordered, aligned or spelt anew, so a change of one fact stays a change of one line.
import type { Body, Comment, NumberValue, Statement, Tree, Value } from './tree.ts';

/** The canonical text of a tree without problems. Printing what it prints changes nothing. */
export function print(tree: Tree): string {
  const printer = new Printer(tree);
  printer.items(tree.items, 0, tree.text.length);
  return printer.finish();
}

class Printer {
  readonly #tree: Tree;
  readonly #lines: string[] = [];
  #nextComment = 0;
  /** Where in the source the last printed thing ended: what lies between it and the next decides on a blank line. */
  #lastEnd = 0;
  #atBlockStart = true;

  constructor(tree: Tree) {
    this.#tree = tree;
  }

  items(items: readonly Statement[], depth: number, end: number): void {
    for (const item of items) {
      this.#commentsBefore(item.start, depth);
      this.#statement(item, depth);
    }
    this.#commentsBefore(end, depth);
  }

  finish(): string {
    return this.#lines.length === 0 ? '' : this.#lines.join('\n') + '\n';
  }

  #statement(item: Statement, depth: number): void {
    const indent = '  '.repeat(depth);
    const header = headerOf(item, this.#tree.text);
    this.#blankLineBefore(item.start);
    if (item.body === undefined) {
      this.#lines.push(indent + header);
      this.#moveTo(item.end);
      this.#commentBehind(item.end);
      return;
    }
    // A comment between the header and its brace would part them; it goes above.
    const early = this.#takeComments(item.body.start);
    for (const comment of early) this.#lines.push(indent + comment.text.trimEnd());
    this.#lines.push(indent + (header === '' ? '{' : header + ' {'));
    this.#moveTo(item.body.start + 1);
    this.#body(item.body, depth);
    this.#lines.push(indent + '}');
    this.#moveTo(item.end);
    this.#commentBehind(item.end);
  }

  #body(body: Body, depth: number): void {
    this.#commentBehind(body.start + 1);
    this.#atBlockStart = true;
    this.items(body.items, depth + 1, body.end - 1);
    this.#atBlockStart = false;
  }

  #moveTo(end: number): void {
    this.#lastEnd = end;
    this.#atBlockStart = false;
  }

  /** Keeps one blank line where the author left one or more; none at the start of a block. */
  #blankLineBefore(start: number): void {
    if (!this.#atBlockStart && this.#lines.length > 0 && lineEndsIn(this.#tree.text, this.#lastEnd, start) > 1) this.#lines.push('');
    this.#atBlockStart = false;
  }

  /** Comments on lines of their own, before `end`. */
  #commentsBefore(end: number, depth: number): void {
    for (const comment of this.#takeComments(end)) {
      this.#blankLineBefore(comment.start);
      this.#lines.push('  '.repeat(depth) + comment.text.trimEnd());
      this.#moveTo(comment.end);
    }
  }

  /** A comment on the same line as what was just printed stays there. */
  #commentBehind(end: number): void {
    const comment = this.#tree.comments[this.#nextComment];
    if (comment === undefined || comment.start < end || lineEndsIn(this.#tree.text, end, comment.start) > 0) return;
    if (this.#tree.text.slice(end, comment.start).trim() !== '') return;
    this.#nextComment++;
    this.#lines[this.#lines.length - 1] += ' ' + comment.text.trimEnd();
    this.#lastEnd = comment.end;
  }

  #takeComments(end: number): Comment[] {
    const taken: Comment[] = [];
    for (;;) {
      const comment = this.#tree.comments[this.#nextComment];
      if (comment === undefined || comment.start >= end) return taken;
      taken.push(comment);
      this.#nextComment++;
    }
  }
}

function headerOf(item: Statement, text: string): string {
  let out = item.word?.text ?? '';
  let before: Value | undefined;
  for (const value of item.values) {
    if (value.kind !== 'comma' && out !== '' && !isTight(text, before, value)) out += ' ';
    out += printValue(value);
    before = value;
  }
  return out;
}

/**
 * True between figures that touch, and behind a comma in the midst of them: what stands there is one number to its writer, and is told
 * of as one. Parted, it would be two.
 */
function isTight(text: string, before: Value | undefined, value: Value): boolean {
  if (before?.end !== value.start || (value.kind !== 'number' && value.kind !== 'date')) return false;
  // A true minus is printed as a hyphen, and could make a date of what is none.
  if (text.charCodeAt(value.start) === 0x2212) return false;
  const behindFigure = isDigit(text.charCodeAt(before.end - 1));
  if (before.kind === 'comma') return isDigit(text.charCodeAt(before.start - 1)) && isDigit(text.charCodeAt(value.start));
  return behindFigure && (before.kind === 'number' || before.kind === 'date');
}

const isDigit = (code: number): boolean => code >= 48 && code < 58;

/** One value in its canonical form. */
export function printValue(value: Value): string {
  switch (value.kind) {
    case 'word':
    case 'date':
      return value.text;
    case 'number':
      return printNumber(value);
    case 'text':
      return '"' + value.text.replace(/["\\]/g, '\\$&') + '"';
    case 'model':
      return ': ' + value.name.text;
    case 'comma':
      return ',';
  }
}

function printNumber(value: NumberValue): string {
  // A true minus sign and a hyphen mean the same; the canonical form has the one on the keyboard.
  let out = value.text.replace('\u2212', '-');
  if (value.unit !== undefined) out += ' ' + value.unit.text;
  if (value.plusMinus !== undefined) out += ' ± ' + printNumber(value.plusMinus);
  if (value.upTo !== undefined) out += ' .. ' + printNumber(value.upTo);
  return out;
}

function lineEndsIn(text: string, start: number, end: number): number {
  let count = 0;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) count++;
  }
  return count;
}
