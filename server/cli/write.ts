// Writing to disk: a file is replaced whole or not at all.
import {
  accessSync,
  chmodSync,
  chownSync,
  closeSync,
  constants,
  fsyncSync,
  openSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { inWords } from './files.ts';
import type { Roots } from './roots.ts';

/**
 * Replaces a file's content; gives the reason in words where that is not possible, and then the file is as it was.
 * Keeps its mode, and its owner where that is allowed. A link is followed, but not out of the root.
 */
export function writeText(path: string, text: string, mark: boolean, roots: Roots): string | undefined {
  const reached = roots.reach(path);
  return 'why' in reached ? reached.why : writeWhole(reached.real, (mark ? '\ufeff' : '') + text);
}

/** Writes a file next to its place and puts it there in one step. It need not exist yet. */
export function writeWhole(target: string, content: string): string | undefined {
  const temporary = join(dirname(target), `.${basename(target).slice(0, 100)}.${process.pid}.tmp`);
  let made = false;
  try {
    const before = statSync(target, { throwIfNoEntry: false });
    if (before !== undefined) accessSync(target, constants.W_OK);
    const handle = openSync(temporary, 'wx', before === undefined ? 0o666 : 0o600);
    made = true;
    try {
      writeFileSync(handle, content);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    if (before !== undefined) {
      keepOwner(temporary, before.uid, before.gid);
      chmodSync(temporary, before.mode & 0o7777);
    }
    renameSync(temporary, target);
    return undefined;
  } catch (error) {
    if (made) removeQuietly(temporary);
    return inWords(error).replace('may not be read', 'may not be written');
  }
}

function keepOwner(path: string, uid: number, gid: number): void {
  const now = statSync(path);
  if (now.uid === uid && now.gid === gid) return;
  try {
    chownSync(path, uid, gid);
  } catch {
    // Only the system's administrator may give a file to somebody else.
  }
}

function removeQuietly(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // Somebody else removed it.
  }
}
