// Reading from disk: what stands in a file, and where it stands.
import { isUtf8 } from 'node:buffer';
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import { longestText } from '../engine/inside.ts';

/** A file to look at: its absolute path with forward slashes, and the path as people are shown it. */
export interface GateFile {
  readonly path: string;
  readonly shown: string;
}

/** Something that could not be read: its absolute path, the path as people are shown it, and the reason in words. */
export interface Trouble extends GateFile {
  readonly why: string;
}

export const withSlashes = (path: string): string => (sep === '\\' ? path.replaceAll('\\', '/') : path);

/** The absolute path of what was given, with forward slashes. */
export const absolute = (folder: string, given: string): string => withSlashes(resolve(folder, given));

/** Relative to the current folder where it lies below it, else absolute; always with forward slashes. */
export function shownFrom(folder: string, path: string): string {
  const short = relative(folder, path);
  return short === '' || short === '..' || short.startsWith('..' + sep) || isAbsolute(short) ? withSlashes(path) : withSlashes(short);
}

/** What there is at a path, links followed; or in words why that cannot be said. */
export function statOf(path: string): Stats | string {
  try {
    return statSync(path);
  } catch (error) {
    return inWords(error, path);
  }
}

export const nameUnfit = 'there is no such file or folder; if its name is not UTF-8, give it another: such names cannot be read';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'a part of the path is not a folder',
  EACCES: 'it may not be read (permission denied)',
  EPERM: 'it may not be read (permission denied)',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the path is too long',
  EAGAIN: 'it has nothing to read now',
  EMFILE: 'too many files are open',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk may not be written to',
  ERR_INVALID_ARG_VALUE: 'the path has a character that no path can have',
};

/** Why something on disk did not work, in words. `path`: what it was tried with, where that can say more. */
export function inWords(error: unknown, path = ''): string {
  const code = (error as { code?: unknown } | null)?.code;
  // Node puts this sign where the bytes of a name are no UTF-8, and then finds no file of that name.
  if (code === 'ENOENT' && path.includes('\ufffd')) return nameUnfit;
  return (typeof code === 'string' ? reasons[code] : undefined) ?? (typeof code === 'string' ? code : 'it could not be read');
}

/** What stands in a file. */
export interface FileText {
  /** Without its byte order mark. */
  readonly text: string;
  readonly mark: boolean;
  /** Something about the file itself that keeps it, or a part of it, from being read as text. */
  readonly flaw: Flaw | undefined;
}

export type Flaw =
  | { readonly kind: 'too-large'; readonly bytes: number; readonly orMore: boolean }
  | { readonly kind: 'utf-16' }
  /** A byte that does not belong to UTF-8; `at` is its place in the text. */
  | { readonly kind: 'not-utf-8'; readonly at: number; readonly byte: number };

// Without waiting: a pipe that nobody writes to would keep the whole run. Windows has no such flags, and no such pipes.
const flag = (name: 'O_NONBLOCK' | 'O_NOCTTY' | 'O_NOFOLLOW'): number => (constants[name] as number | undefined) ?? 0;
const forReading = constants.O_RDONLY | flag('O_NONBLOCK') | flag('O_NOCTTY') | flag('O_NOFOLLOW');

/** No UTF-8 text has more than three bytes for one UTF-16 unit, so more than this is surely longer than is read. */
export const mostBytes = 3 * longestText + 3;

/** Reads a file that no link leads to (`Roots.reach` follows them); gives the reason in words where that is not possible. */
export function readText(real: string): FileText | { readonly why: string } {
  const read = readBytes(real, mostBytes);
  if (!('beyond' in read)) return 'why' in read ? read : textOf(read.bytes);
  return { text: '', mark: false, flaw: { kind: 'too-large', bytes: read.beyond, orMore: read.orMore } };
}

/** `beyond`: it has more bytes than were allowed, this many; `orMore` where nobody read to its end. */
export interface TooLong {
  readonly beyond: number;
  readonly orMore: boolean;
}
export type Bytes = { readonly bytes: Buffer } | TooLong | { readonly why: string };

/** The bytes of a plain file, if there are at most `most`. What is no plain file is not even opened: devices act on that. */
export function readBytes(real: string, most: number): Bytes {
  let handle: number | undefined;
  try {
    const kind = wrongKind(statSync(real));
    if (kind !== undefined) return { why: kind };
    handle = openSync(real, forReading);
    const stats = fstatSync(handle);
    const kindNow = wrongKind(stats);
    if (kindNow !== undefined) return { why: kindNow };
    return stats.size > most ? { beyond: stats.size, orMore: false } : readAll(handle, most, stats.size);
  } catch (error) {
    return { why: inWords(error, real) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

const wrongKind = (stats: Stats): string | undefined =>
  stats.isDirectory() ? 'it is a folder' : stats.isFile() ? undefined : 'it is not a file';

/** Reads to the end and not beyond `most`: files that the system makes up say a size of 0, and some have no end. Throws what reading throws. */
export function readAll(handle: number, most: number, expected = 0): { readonly bytes: Buffer } | TooLong {
  const pieces: Buffer[] = [];
  let length = 0;
  for (let room = expected + 1; ; room = 1 << 16) {
    const piece = Buffer.allocUnsafe(Math.min(room, most - length + 1));
    const read = readSome(handle, piece);
    if (read === 0) return { bytes: pieces.length === 1 ? (pieces[0] as Buffer) : Buffer.concat(pieces) };
    pieces.push(piece.subarray(0, read));
    length += read;
    if (length > most) return { beyond: length, orMore: true };
  }
}

/** Waits where there is nothing to read yet, as on a terminal that another program has set not to wait. */
function readSome(handle: number, into: Buffer): number {
  for (;;)
    try {
      return readSync(handle, into);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN' || fstatSync(handle).isFile()) throw error;
      rest();
    }
}

/** Waits some milliseconds, with nothing else to do meanwhile. */
export const rest = (): void => void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);

/** Bytes to text. Bytes that are not UTF-8 become U+FFFD, and the first of them is told. */
export function textOf(bytes: Uint8Array): FileText {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if ((buffer[0] === 0xff && buffer[1] === 0xfe) || (buffer[0] === 0xfe && buffer[1] === 0xff))
    return { text: '', mark: false, flaw: { kind: 'utf-16' } };
  const all = buffer.toString('utf8');
  const mark = all.charCodeAt(0) === 0xfeff;
  const text = mark ? all.slice(1) : all;
  return { text, mark, flaw: isUtf8(buffer) ? undefined : firstBadByte(buffer, text, mark ? 3 : 0) };
}

function firstBadByte(buffer: Buffer, text: string, start: number): Flaw {
  let byte = start;
  let from = 0;
  for (let at = text.indexOf('\ufffd'); at >= 0; at = text.indexOf('\ufffd', from)) {
    byte += Buffer.byteLength(text.slice(from, at));
    if (!(buffer[byte] === 0xef && buffer[byte + 1] === 0xbf && buffer[byte + 2] === 0xbd))
      return { kind: 'not-utf-8', at, byte: buffer[byte] ?? 0 };
    byte += 3;
    from = at + 1;
  }
  return { kind: 'not-utf-8', at: 0, byte: 0 };
}

/** The nearest folder above a file that holds `.git`. */
export function repositoryOf(file: string): string | undefined {
  for (let folder = dirname(file); ; folder = dirname(folder)) {
    const known = repositories.get(folder);
    if (known !== undefined) return known === '' ? undefined : known;
    const found =
      typeof statOf(folder === '/' ? '/.git' : folder + '/.git') !== 'string' ? folder : dirname(folder) === folder ? '' : undefined;
    if (found !== undefined) {
      if (repositories.size > mostKept) repositories.clear();
      for (let below = dirname(file); below !== folder; below = dirname(below)) repositories.set(below, found);
      repositories.set(folder, found);
      return found === '' ? undefined : withSlashes(found);
    }
  }
}
const mostKept = 10_000;
const repositories = new Map<string, string>();

/** True when a path is a folder or lies below it. */
export const isWithin = (path: string, folder: string): boolean =>
  path === folder || path.startsWith(folder.endsWith('/') ? folder : folder + '/');
