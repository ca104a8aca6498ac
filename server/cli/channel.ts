// Standard output and standard error: written at once and in order, so that nothing gathers in memory while a reader is slow.
import { writeSync } from 'node:fs';
import { inWords, rest } from './files.ts';
import { WrongUse } from './terminal.ts';

/** Characters that are gathered before they are written. */
const piece = 1 << 16;

export class Channel {
  readonly #handle: number;
  readonly #room: number;
  #waiting: string[] = [];
  #length = 0;
  #isGone = false;

  /** `atOnce`: a person is watching, and every text is written as it comes. */
  constructor(handle: number, atOnce: boolean) {
    this.#handle = handle;
    this.#room = atOnce ? 0 : piece;
  }

  /** Throws WrongUse where what is written cannot be kept: the disk is full, say. A reader that has seen enough is no mistake. */
  write(text: string): void {
    if (this.#isGone) return;
    this.#waiting.push(text);
    this.#length += text.length;
    if (this.#length > this.#room) this.flush();
  }

  flush(): void {
    if (this.#length === 0 || this.#isGone) return;
    const bytes = Buffer.from(this.#waiting.join(''));
    this.#waiting = [];
    this.#length = 0;
    try {
      writeFully(this.#handle, bytes);
    } catch (error) {
      this.#isGone = true;
      const { code } = error as NodeJS.ErrnoException;
      // Windows says EOF of a pipe that nobody reads any longer.
      if (code !== 'EPIPE' && code !== 'EOF') throw new WrongUse(`The output could not be written: ${inWords(error)}.`);
    }
  }
}

/** Waits where a pipe is full and another program has set it not to wait. */
function writeFully(handle: number, bytes: Buffer): void {
  for (let at = 0; at < bytes.length; )
    try {
      at += writeSync(handle, bytes, at);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
      rest();
    }
}
