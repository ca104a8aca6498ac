// Files that stand beside the one that is being written, for as long as that takes; and those that a run left behind
// which was stopped meanwhile.
import { createHash, randomBytes } from 'node:crypto';
import { lstatSync, readdirSync, readFileSync, readlinkSync, statSync, unlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';

/**
 * `tmp`: takes the place of its file in one step, so that until then it is worth nothing. `new`: is copied over a file that
 * must stay what it is (it has other names), so that it may be the only whole copy.
 */
type Kind = 'tmp' | 'new';

/**
 * A name beside the target that nobody else has: it says on which machine, by which process, for which file and of which text
 * (`before`) this is the next one.
 */
export const besideOf = (target: string, kind: Kind, before: Uint8Array = nothing): string =>
  join(
    dirname(target),
    `.pintle-${machine()}-${process.pid}-${randomBytes(8).toString('hex')}-${digest(basename(target))}-${digest(before)}.${kind}`,
  );

const nothing = new Uint8Array();
const pattern = /^\.pintle-([0-9a-f]{8})-(\d{1,10})-[0-9a-f]{16}-([0-9a-f]{8})-([0-9a-f]{8})\.(tmp|new)$/;
const digest = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex').slice(0, 8);

/** Writing a file takes milliseconds; who was stopped for longer finds its file gone, says so, and has changed nothing. */
const longestLife = 3_600_000;

/** Removes from a folder what stopped runs left there; gives the names of files that may hold what their own file lost. */
export function sweep(folder: string): string[] {
  const kept: string[] = [];
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return kept;
  }
  for (const name of names) {
    const [, of, id, target, before = '', kind] = pattern.exec(name) ?? [];
    if (of === undefined) continue;
    const path = join(folder, name);
    try {
      if (!lstatSync(path).isFile() || !isLeft(path, of, Number(id))) continue;
      const isFor = (other: string): boolean => digest(other) === target;
      if (kind === 'new' && !isWhole(names.filter(isFor), folder, [before, digest(readFileSync(path))])) kept.push(name);
      else unlinkSync(path);
    } catch {
      // Another run sweeps as well, or it is not ours to remove.
    }
  }
  return kept;
}

/** True when the run that made it is over. Numbers of processes mean something on their own machine only. */
function isLeft(path: string, of: string, id: number): boolean {
  return (of === machine() && !isAlive(id)) || Date.now() - statSync(path).mtimeMs > longestLife;
}

/** This very process has nothing under way while it sweeps: its number is that of an earlier one. */
function isAlive(id: number): boolean {
  if (id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}

/** True where a file holds one of these texts, and no mixture of them. */
const isWhole = (names: readonly string[], folder: string, digests: readonly string[]): boolean =>
  names.some((name) => lstatSync(join(folder, name)).isFile() && digests.includes(digest(readFileSync(join(folder, name)))));

let known: string | undefined;
/** One name for each machine since its start, and for each container on it. */
const machine = (): string =>
  (known ??= digest(
    [
      hostname(),
      quietly(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8')),
      quietly(() => readlinkSync('/proc/self/ns/pid')),
    ].join('\n'),
  ));

function quietly(read: () => string): string {
  try {
    return read();
  } catch {
    return '';
  }
}
