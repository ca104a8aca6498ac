// The texts that are open in the client. Edits are applied here by offsets; there is no other copy of a text.
import { lineStarts, positionAt } from '../engine/index.ts';
import { pathOf } from './uris.ts';

export interface ProtocolPosition {
  readonly line: number;
  readonly character: number;
}
export interface ProtocolRange {
  readonly start: ProtocolPosition;
  readonly end: ProtocolPosition;
}

export interface Document {
  readonly uri: string;
  readonly path: string;
  text: string;
  version: number;
  /** When it was last edited or asked about; the greatest is the active one. */
  touched: number;
}

/** A text with its lines: positions of the protocol to offsets and back. */
export class Lines {
  readonly text: string;
  #starts: readonly number[] | undefined;

  constructor(text: string, starts?: readonly number[]) {
    this.text = text;
    this.#starts = starts;
  }

  get starts(): readonly number[] {
    return (this.#starts ??= lineStarts(this.text));
  }

  /** The offset of a position; one that is outside the text is moved to its nearest place inside, as the protocol asks. */
  offset(position: ProtocolPosition): number {
    const { starts, text } = this;
    const { line, character } = position;
    if (!(line >= 0)) return 0;
    const start = starts[Math.trunc(line)];
    if (start === undefined) return text.length;
    let end = starts[Math.trunc(line) + 1] ?? text.length;
    while (end > start && (text.charCodeAt(end - 1) === 10 || text.charCodeAt(end - 1) === 13)) end--;
    return Math.min(start + Math.max(0, Math.trunc(character) || 0), end);
  }

  position(offset: number): ProtocolPosition {
    const { line, column } = positionAt(this.starts, Math.max(0, Math.min(offset, this.text.length)));
    return { line, character: column };
  }

  range(span: { readonly start: number; readonly end: number }): ProtocolRange {
    return { start: this.position(span.start), end: this.position(span.end) };
  }
}

export interface Change {
  readonly text: string;
  readonly range?: ProtocolRange;
}

/** A text after changes, each made to the outcome of the one before. */
export function changed(text: string, changes: readonly Change[]): string {
  let now = text;
  for (const change of changes) {
    if (change.range === undefined) {
      now = change.text;
      continue;
    }
    const lines = new Lines(now);
    const one = lines.offset(change.range.start);
    const other = lines.offset(change.range.end);
    now = now.slice(0, Math.min(one, other)) + change.text + now.slice(Math.max(one, other));
  }
  return now;
}

export class Documents {
  readonly #byUri = new Map<string, Document>();
  readonly #byPath = new Map<string, Document>();
  #clock = 0;

  open(uri: string, version: number, text: string): Document {
    const document: Document = { uri, path: pathOf(uri), text, version, touched: ++this.#clock };
    this.#byUri.set(uri, document);
    this.#byPath.set(document.path, document);
    return document;
  }

  /** Applies an edit. */
  change(document: Document, version: number, changes: readonly Change[]): void {
    document.text = changed(document.text, changes);
    document.version = version;
    document.touched = ++this.#clock;
  }

  close(document: Document): void {
    this.#byUri.delete(document.uri);
    if (this.#byPath.get(document.path) === document) this.#byPath.delete(document.path);
  }

  get(uri: string): Document | undefined {
    return this.#byUri.get(uri) ?? this.#byPath.get(pathOf(uri));
  }

  at(path: string): Document | undefined {
    return this.#byPath.get(path);
  }

  touch(document: Document): void {
    document.touched = ++this.#clock;
  }

  isOpen(document: Document): boolean {
    return this.#byUri.get(document.uri) === document;
  }

  /** All open texts, the active one first. */
  byUse(): Document[] {
    return [...this.#byUri.values()].sort((a, b) => b.touched - a.touched);
  }
}
