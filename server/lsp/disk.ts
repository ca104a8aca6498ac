// The disk, for the node entry: plain files inside a root and nothing else.
import { closeSync, constants, fstatSync, openSync, promises, readSync, realpathSync, statSync } from 'node:fs';
import { sep } from 'node:path';
import type { ReadResult } from '../engine/index.ts';
import { longestText } from '../engine/inside.ts';
import type { Disk } from './host.ts';
import { isInside } from './uris.ts';

const isWindows = sep === '\\';
const native = (path: string): string => (isWindows ? path.replace(/^\/(?=[A-Za-z]:)/, '') : path);
const generic = (path: string): string =>
  isWindows ? path.replaceAll('\\', '/').replace(/^([A-Za-z]):/, (_, drive: string) => `/${drive.toLowerCase()}:`) : path;

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

/** Folders that hold no sites, and are often very large. */
const passedOver = new Set(['node_modules', 'bower_components', '__pycache__']);
const isPassedOver = (name: string): boolean => name.startsWith('.') || passedOver.has(name);
const deepest = 24;
const mostFiles = 50_000;

/** Where a path stands, links resolved, seen from its root. */
interface Place {
  readonly real: string;
  readonly isOutside: boolean;
  /** A link leads into a folder that is never listed, and that the path itself does not name. */
  readonly isHidden: boolean;
}

function placeOf(path: string, root: string): Place | 'missing' | 'unreadable' {
  try {
    const real = generic(realpathSync.native(native(path)));
    const realRoot = generic(realpathSync.native(native(root === '' ? '/' : root)));
    if (!isInside(real, realRoot)) return { real, isOutside: true, isHidden: false };
    const named = path.slice(isInside(path, root) ? root.length : 0).split('/');
    const isHidden = real
      .slice(realRoot.length)
      .split('/')
      .some((part) => isPassedOver(part) && !named.includes(part));
    return { real, isOutside: false, isHidden };
  } catch (error) {
    return faultOf(error);
  }
}

function faultOf(error: unknown): 'missing' | 'unreadable' {
  const code = codeOf(error);
  return code === 'ENOENT' || code === 'ENOTDIR' ? 'missing' : 'unreadable';
}

function leaves(path: string, root: string): boolean {
  const place = placeOf(path, root);
  return typeof place !== 'string' && place.isOutside;
}

/** No UTF-8 text has more than three bytes for one UTF-16 unit. */
const mostBytes = 3 * longestText + 3;

function read(path: string, root: string): ReadResult {
  const place = placeOf(path, root);
  if (typeof place === 'string') return place;
  if (place.isOutside) return 'outside';
  if (place.isHidden) return 'unreadable';
  let handle: number | undefined;
  try {
    // Looked at before it is opened, opened without waiting, looked at again: a pipe or a device would hold the server for ever.
    if (!statSync(native(place.real)).isFile()) return 'unreadable';
    handle = openSync(native(place.real), constants.O_RDONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOFOLLOW ?? 0));
    const stats = fstatSync(handle);
    if (!stats.isFile() || stats.size > mostBytes) return 'unreadable';
    const bytes = readToEnd(handle, stats.size);
    return bytes === undefined ? 'unreadable' : { text: withoutMark(bytes.toString('utf8')) };
  } catch (error) {
    return faultOf(error);
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/** All bytes of a file; undefined where it goes on beyond what is read: some that the system makes up have no end. */
function readToEnd(handle: number, expected: number): Buffer | undefined {
  const pieces: Buffer[] = [];
  let length = 0;
  for (let room = expected + 1; ; room = 1 << 16) {
    const piece = Buffer.allocUnsafe(Math.min(room, mostBytes - length + 1));
    const count = readSync(handle, piece);
    if (count === 0) return pieces.length === 1 ? pieces[0] : Buffer.concat(pieces);
    pieces.push(piece.subarray(0, count));
    length += count;
    if (length > mostBytes) return undefined;
  }
}

/** Editors take the byte order mark off a text; so that places agree, so does this. */
const withoutMark = (text: string): string => (text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);

async function* list(folder: string): AsyncGenerator<readonly string[]> {
  const open: { readonly path: string; readonly depth: number }[] = [{ path: folder, depth: 0 }];
  let count = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { path, depth } = next;
    const found: string[] = [];
    try {
      for (const entry of await promises.readdir(native(path === '' ? '/' : path), { withFileTypes: true })) {
        if (entry.isDirectory() && depth < deepest && !isPassedOver(entry.name))
          open.push({ path: `${path}/${entry.name}`, depth: depth + 1 });
        else if (entry.isFile() && entry.name.endsWith('.gate')) found.push(`${path}/${entry.name}`);
      }
    } catch {
      // A folder that cannot be listed holds nothing for us.
    }
    count += found.length;
    if (found.length > 0) yield found.sort();
    if (count >= mostFiles) return;
  }
}

function stamp(path: string): string | undefined {
  try {
    const stats = statSync(native(path));
    return `${stats.mtimeMs} ${stats.size} ${stats.ino}`;
  } catch {
    return undefined;
  }
}

export const disk: Disk = { read, leaves, list, stamp };
