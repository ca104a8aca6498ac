// Reading from disk: which files there are, and what stands in them.
import { isUtf8 } from 'node:buffer';
import { closeSync, constants, fstatSync, openSync, readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import { longestText } from '../engine/inside.ts';

/** A file to look at: its absolute path with forward slashes, and the path as people are shown it. */
export interface GateFile {
  readonly path: string;
  readonly shown: string;
}

/** Something that could not be read. */
export interface Trouble {
  readonly shown: string;
  readonly why: string;
}

export interface Search {
  /** Sorted by the path that is shown, each once. */
  readonly files: readonly GateFile[];
  readonly troubles: readonly Trouble[];
}

const withSlashes = (path: string): string => (sep === '\\' ? path.replaceAll('\\', '/') : path);

/** The absolute path of what was given, with forward slashes. */
export const absolute = (folder: string, given: string): string => withSlashes(resolve(folder, given));

/** Relative to the current folder where it lies below it, else absolute; always with forward slashes. */
export function shownFrom(folder: string, path: string): string {
  const short = relative(folder, path);
  return short === '' || short === '..' || short.startsWith('..' + sep) || isAbsolute(short) ? withSlashes(path) : withSlashes(short);
}

/** Every file that was given, and every `.gate` file in the folders that were given. */
export function findFiles(given: readonly string[], folder: string): Search {
  const files = new Map<string, GateFile>();
  const troubles: Trouble[] = [];
  const add = (path: string): void => {
    files.set(path, { path, shown: shownFrom(folder, path) });
  };
  for (const one of given) {
    const path = absolute(folder, one);
    const stats = statOf(path);
    if (typeof stats === 'string') troubles.push({ shown: one, why: stats });
    else if (stats.isDirectory()) searchFolder(path, add, (at, why) => troubles.push({ shown: shownFrom(folder, at), why }));
    else add(path);
  }
  return { files: [...files.values()].sort((a, b) => (a.shown < b.shown ? -1 : a.shown > b.shown ? 1 : 0)), troubles };
}

/** Links are followed after all that is not behind a link, and no folder is entered twice: so there are no circles. */
function searchFolder(start: string, add: (path: string) => void, trouble: (path: string, why: string) => void): void {
  const entered = new Set<string>();
  const waiting = [start];
  const behindLinks: string[] = [];
  for (;;) {
    const folder = waiting.pop() ?? behindLinks.shift();
    if (folder === undefined) return;
    try {
      const real = realpathSync.native(folder);
      if (entered.has(real)) continue;
      entered.add(real);
      for (const entry of readdirSync(folder, { withFileTypes: true })) {
        const path = folder === '/' ? '/' + entry.name : `${folder}/${entry.name}`;
        const isGate = entry.name.endsWith('.gate');
        if (entry.isSymbolicLink()) {
          const stats = statOf(path);
          if (typeof stats === 'string') {
            if (isGate) trouble(path, stats);
          } else if (stats.isDirectory()) {
            if (isSearched(entry.name)) behindLinks.push(path);
          } else if (isGate) add(path);
        } else if (entry.isDirectory()) {
          if (isSearched(entry.name)) waiting.push(path);
        } else if (isGate) add(path);
      }
    } catch (error) {
      trouble(folder, inWords(error));
    }
  }
}

const isSearched = (name: string): boolean => name !== 'node_modules' && !name.startsWith('.');

function statOf(path: string): Stats | string {
  try {
    return statSync(path);
  } catch (error) {
    return inWords(error);
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'a part of the path is not a folder',
  EACCES: 'it may not be read (permission denied)',
  EPERM: 'it may not be read (permission denied)',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the path is too long',
  EMFILE: 'too many files are open',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk may not be written to',
  ERR_INVALID_ARG_VALUE: 'the path has a character that no path can have',
};

/** Why something on disk did not work, in words. */
export function inWords(error: unknown): string {
  const code = (error as { code?: unknown } | null)?.code;
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
  | { readonly kind: 'too-large'; readonly bytes: number }
  | { readonly kind: 'utf-16' }
  /** A byte that does not belong to UTF-8; `at` is its place in the text. */
  | { readonly kind: 'not-utf-8'; readonly at: number; readonly byte: number };

// Without waiting: a pipe that nobody writes to would keep the whole run. Windows has no such flag, and no such pipes.
const forReading = constants.O_RDONLY | ((constants.O_NONBLOCK as number | undefined) ?? 0);

/** Reads a file; gives the reason in words where that is not possible. */
export function readText(path: string): FileText | { readonly why: string } {
  let handle: number | undefined;
  try {
    handle = openSync(path, forReading);
    const stats = fstatSync(handle);
    if (stats.isDirectory()) return { why: 'it is a folder' };
    if (!stats.isFile()) return { why: 'it is not a file' };
    // No UTF-8 text has more than three bytes for one UTF-16 unit, so this is surely longer than is read.
    if (stats.size > 3 * longestText + 3) return { text: '', mark: false, flaw: { kind: 'too-large', bytes: stats.size } };
    return textOf(readFileSync(handle));
  } catch (error) {
    return { why: inWords(error) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

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
      for (let below = dirname(file); below !== folder; below = dirname(below)) repositories.set(below, found);
      repositories.set(folder, found);
      return found === '' ? undefined : withSlashes(found);
    }
  }
}
const repositories = new Map<string, string>();

/** True when a path is a folder or lies below it. */
export const isWithin = (path: string, folder: string): boolean =>
  path === folder || path.startsWith(folder.endsWith('/') ? folder : folder + '/');

/** Where a path really is, all links followed; undefined when it is not there. */
export function realPath(path: string): string | undefined {
  try {
    return withSlashes(realpathSync.native(path));
  } catch {
    return undefined;
  }
}

/** The deepest folder that holds all paths. */
export function commonFolder(paths: readonly string[]): string {
  const [first, ...rest] = paths.map((path) => dirname(path).split(/[\\/]/));
  let parts = first ?? [''];
  for (const other of rest) {
    let same = 0;
    while (same < parts.length && parts[same] === other[same]) same++;
    parts = parts.slice(0, same);
  }
  return parts.join('/') || '/';
}
