// Messages out of a stream of bytes: headers, an empty line, and as many bytes as the headers say. Where headers are wrong
// nobody can tell where the next message begins, so nothing more is read: the stream is at an end.
import { AbstractMessageReader, type DataCallback, type Disposable } from 'vscode-languageserver/node';
import { notJson } from './gate.ts';

/** Longest headers of a message, in bytes. */
const longestHeaders = 4096;
/** Longest body of a message, in bytes: a text of the greatest length that is read, in JSON, many times over. */
const longestBody = 256 * 1024 * 1024;

const field = /^([!#$%&'*+.^_`|~0-9A-Za-z-]+)[ \t]*:[ \t]*(.*?)[ \t]*$/;

/** The length of the body that headers announce, in bytes; or why they cannot be followed. */
function lengthIn(headers: string): number | string {
  let length: string | undefined;
  for (const line of headers.split('\r\n')) {
    const [, name = '', value = ''] = field.exec(line) ?? [];
    if (name === '' || line.includes('\n')) return 'A line before the message is no header.';
    if (name.toLowerCase() === 'content-type' && !/charset="?utf-?8"?|^[^;]*$/i.test(value)) return 'The message is not in UTF-8.';
    if (name.toLowerCase() !== 'content-length') continue;
    if (length !== undefined) return 'Two headers say how long the message is.';
    length = value;
  }
  if (length === undefined) return 'No header says how long the message is: Content-Length is missing.';
  if (!/^\d{1,15}$/.test(length)) return 'Content-Length is no number of bytes.';
  return Number(length) > longestBody ? `The message is longer than ${longestBody} bytes.` : Number(length);
}

/** Cuts a stream into the bodies of its messages. */
export class Frames {
  #chunks: Buffer[] = [];
  #size = 0;
  /** Bytes of the body that is being read; undefined between messages. */
  #wanted: number | undefined;
  /** Why nothing more can be read. */
  fault: string | undefined;

  /** The bodies that are complete with these bytes. */
  push(bytes: Buffer): Buffer[] {
    const bodies: Buffer[] = [];
    if (this.fault !== undefined) return bodies;
    this.#chunks.push(bytes);
    this.#size += bytes.length;
    for (;;) {
      if (this.#wanted === undefined && !this.#readHeaders()) return bodies;
      const wanted = this.#wanted;
      if (wanted === undefined || this.#size < wanted) return bodies;
      bodies.push(this.#take(wanted));
      this.#wanted = undefined;
    }
  }

  #whole(): Buffer {
    const [first] = this.#chunks;
    const whole = first !== undefined && this.#chunks.length === 1 ? first : Buffer.concat(this.#chunks);
    this.#chunks = [whole];
    return whole;
  }

  #take(count: number): Buffer {
    const whole = this.#whole();
    this.#chunks = whole.length === count ? [] : [whole.subarray(count)];
    this.#size -= count;
    return whole.subarray(0, count);
  }

  #readHeaders(): boolean {
    if (this.#size === 0) return false;
    const start = this.#whole().subarray(0, longestHeaders);
    const end = start.indexOf('\r\n\r\n');
    if (end >= 0) {
      const length = lengthIn(start.subarray(0, end).toString('latin1'));
      if (typeof length === 'string') this.fault = length;
      else {
        this.#take(end + 4);
        this.#wanted = length;
      }
    } else if (start.length === longestHeaders || /^[^A-Za-z]|[^\r]\n/.test(start.toString('latin1')))
      this.fault = 'What stands where a message begins is no header.';
    return this.fault === undefined && end >= 0;
  }
}

/** Reads messages from a stream. What is not JSON is handed on as `notJson`; wrong headers are an error, and the last thing read. */
export class FramedReader extends AbstractMessageReader {
  readonly #stream: NodeJS.ReadableStream;
  readonly #frames = new Frames();

  constructor(stream: NodeJS.ReadableStream) {
    super();
    this.#stream = stream;
  }

  listen(callback: DataCallback): Disposable {
    let isOver = false;
    const end = (): void => {
      if (!isOver) this.fireClose();
      isOver = true;
    };
    const read = (chunk: Buffer | string): void => {
      for (const body of this.#frames.push(typeof chunk === 'string' ? Buffer.from(chunk) : chunk)) callback(parsed(body) as never);
      if (this.#frames.fault === undefined || isOver) return;
      isOver = true;
      this.fireError(new Error(this.#frames.fault));
    };
    const fail = (error: Error): void => this.fireError(error);
    this.#stream.on('data', read).on('end', end).on('close', end).on('error', fail);
    return {
      dispose: () => void this.#stream.off('data', read).off('end', end).off('close', end).off('error', fail),
    };
  }
}

function parsed(body: Buffer): unknown {
  try {
    return JSON.parse(body.toString('utf8'));
  } catch {
    return notJson;
  }
}
