// The disk, for the node entry: plain files inside a root and nothing else.
import { closeSync, constants, fstatSync, openSync, promises, readFileSync, realpathSync, statSync } from 'node:fs';
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
const deepest = 24;
const mostFiles = 50_000;

const realRoots = new Map<string, string>();

function realRoot(root: string): string {
  const known = realRoots.get(root);
  if (known !== undefined) return known;
  let real = root;
  try {
    real = generic(realpathSync(native(root === '' ? '/' : root)));
  } catch {
    // A root that is not there has no files either.
  }
  realRoots.set(root, real);
  return real;
}

function leaves(path: string, root: string): boolean {
  try {
    return !isInside(generic(realpathSync(native(path))), realRoot(root));
  } catch {
    return false;
  }
}

function read(path: string, root: string): ReadResult {
  if (leaves(path, root)) return 'outside';
  let handle: number | undefined;
  try {
    // Opened without waiting and looked at before it is read: a pipe or a device would hold the server for ever.
    handle = openSync(native(path), constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const stats = fstatSync(handle);
    if (!stats.isFile() || stats.size > 4 * longestText) return 'unreadable';
    return { text: withoutMark(readFileSync(handle, 'utf8')) };
  } catch (error) {
    const code = codeOf(error);
    return code === 'ENOENT' || code === 'ENOTDIR' ? 'missing' : 'unreadable';
  } finally {
    if (handle !== undefined) closeSync(handle);
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
        if (entry.isDirectory() && depth < deepest && !entry.name.startsWith('.') && !passedOver.has(entry.name))
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
