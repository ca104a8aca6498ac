// Writing to disk: a file is replaced whole or not at all, and not where it is no longer what was read.
import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  linkSync,
  lstatSync,
  openSync,
  readFileSync,
  renameSync,
  type Stats,
  unlinkSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { type FileText, inWords } from './files.ts';
import { besideOf } from './leftovers.ts';
import type { Roots } from './roots.ts';

/**
 * Gives a file another text; gives the reason in words where that is not possible, and then the file is as it was. `read`:
 * what was read of it. A link is followed, but not out of the root.
 */
export function writeText(path: string, read: FileText, text: string, roots: Roots): string | undefined {
  const reached = roots.reach(path);
  return 'why' in reached ? reached.why : writeWhole(reached.real, bytesOf(read.mark, text), bytesOf(read.mark, read.text));
}

const bytesOf = (mark: boolean, text: string): Buffer => Buffer.from((mark ? '\ufeff' : '') + text);

const changedMeanwhile = 'it was changed by somebody else meanwhile, so it stays as it is; run again';

/**
 * Writes a file that no link leads to; gives the reason in words where that is not possible. `before`: what stood in it when it
 * was read; undefined where it was not there. Mode and owner stay, and so do its other names, if it has hard links.
 */
export function writeWhole(target: string, content: Buffer, before: Buffer | undefined): string | undefined {
  try {
    return before === undefined ? create(target, content) : replace(target, content, before);
  } catch (error) {
    return inWords(error, target).replace('may not be read', 'may not be written');
  }
}

function create(target: string, content: Buffer): string | undefined {
  return withBeside(target, content, undefined, (beside) => {
    try {
      // Unlike a rename, this takes no other file's place.
      linkSync(beside, target);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST' || lstatSync(target, { throwIfNoEntry: false }) !== undefined)
        return changedMeanwhile;
      // A disk without hard links.
      renameSync(beside, target);
    }
    return undefined;
  });
}

function replace(target: string, content: Buffer, before: Buffer): string | undefined {
  const stats = lstatSync(target);
  accessSync(target, constants.W_OK);
  return withBeside(target, content, stats, (beside, isAlike) => {
    if (!isAlike || stats.nlink > 1) return copyOver(target, content, before);
    // Asked at the very last: what is changed between this and the next line is lost.
    if (!isStill(target, before)) return changedMeanwhile;
    renameSync(beside, target);
    return undefined;
  });
}

/** Makes the new file beside the target, whole and safe on the disk, and removes what is left of it in the end. */
function withBeside(
  target: string,
  content: Buffer,
  like: Stats | undefined,
  use: (beside: string, isAlike: boolean) => string | undefined,
): string | undefined {
  const beside = besideOf(target, 'tmp');
  let made = false;
  try {
    const handle = openSync(beside, 'wx', like === undefined ? 0o666 : 0o600);
    made = true;
    let isAlike = true;
    try {
      writeFileSync(handle, content);
      if (like !== undefined) isAlike = makeAlike(handle, like);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    return use(beside, isAlike);
  } finally {
    if (made) removeQuietly(beside);
  }
}

/** False where it cannot have the same owner: only the system's administrator may give a file to somebody else. */
function makeAlike(handle: number, like: Stats): boolean {
  const now = fstatSync(handle);
  if (now.uid !== like.uid || now.gid !== like.gid)
    try {
      fchownSync(handle, like.uid, like.gid);
    } catch {
      return false;
    }
  fchmodSync(handle, like.mode & 0o7777);
  return true;
}

const isStill = (target: string, before: Buffer): boolean =>
  lstatSync(target).size === before.length && readFileSync(target).equals(before);

/**
 * Writes over the file itself: its other names and its owner would not follow to another one. That is not one step, so the new
 * text stands whole beside it until it is done; `sweep` looks after it where the run is stopped meanwhile.
 */
function copyOver(target: string, content: Buffer, before: Buffer): string | undefined {
  const beside = besideOf(target, 'new', before);
  const kept = openSync(beside, 'wx', 0o600);
  try {
    writeFileSync(kept, content);
    fsyncSync(kept);
  } finally {
    closeSync(kept);
  }
  let isBegun = false;
  try {
    if (!isStill(target, before)) return changedMeanwhile;
    const handle = openSync(target, constants.O_WRONLY | ((constants.O_NOFOLLOW as number | undefined) ?? 0));
    try {
      isBegun = true;
      for (let at = 0; at < content.length; ) at += writeSync(handle, content, at, content.length - at, at);
      ftruncateSync(handle, content.length);
      fsyncSync(handle);
      isBegun = false;
    } finally {
      closeSync(handle);
    }
    return undefined;
  } finally {
    if (!isBegun) removeQuietly(beside);
  }
}

function removeQuietly(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It has taken its place, or somebody else removed it.
  }
}
