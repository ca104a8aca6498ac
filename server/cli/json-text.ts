// JSON written piece by piece, for reports of any size; laid out like `JSON.stringify(…, null, 2)`.

interface Level {
  readonly close: string;
  hasAny: boolean;
}

export class JsonText {
  readonly #send: (text: string) => void;
  readonly #open: Level[] = [];

  constructor(send: (text: string) => void) {
    this.#send = send;
  }

  /** Opens an object or an array; `key` inside of an object. */
  begin(bracket: '{' | '[', key?: string): void {
    this.#lead(key);
    this.#send(bracket);
    this.#open.push({ close: bracket === '{' ? '}' : ']', hasAny: false });
  }

  /** Closes the innermost that is open; the text is done with the last one. */
  end(): void {
    const { close, hasAny } = this.#open.pop() as Level;
    this.#send((hasAny ? '\n' + this.#indent() : '') + close + (this.#open.length === 0 ? '\n' : ''));
  }

  /** One whole value. */
  value(value: unknown, key?: string): void {
    this.#lead(key);
    this.#send(jsonOf(value).replaceAll('\n', '\n' + this.#indent()));
  }

  #lead(key: string | undefined): void {
    const inner = this.#open.at(-1);
    let text = inner === undefined ? '' : `${inner.hasAny ? ',' : ''}\n${this.#indent()}`;
    if (inner !== undefined) inner.hasAny = true;
    if (key !== undefined) text += `${jsonOf(key)}: `;
    this.#send(text);
  }

  #indent(): string {
    return '  '.repeat(this.#open.length);
  }
}

/**
 * A value as JSON in which nothing drives a terminal, turns the direction of reading, ends a line or is a command to a build server
 * whose log it is written to: all of that is escaped, and is what it was for whoever reads it as JSON.
 */
export const jsonOf = (value: unknown): string => JSON.stringify(value, null, 2).replace(active, escaped);

const active =
  /[\u007f-\u009f\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufff9-\ufffb]|#(?=#(?:vso)?\[)/gi;
const escaped = (character: string): string => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
