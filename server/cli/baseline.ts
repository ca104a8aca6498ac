// A baseline: how many findings of each rule each file may still have. It lets a fleet of old files be checked from
// today on; it can only shrink.
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { absolute, isWithin, readBytes, shownFrom } from './files.ts';
import type { Roots } from './roots.ts';
import { WrongUse } from './terminal.ts';
import { writeWhole } from './write.ts';

/** Counts by path, seen from the baseline's own folder, and by rule. */
export type Counts = Readonly<Record<string, Readonly<Record<string, number>>>>;

const shapeVersion = 1;

export class Baseline {
  readonly path: string;
  readonly #shown: string;
  readonly #folder: string;
  /** Undefined when the file is not there yet. */
  readonly counts: Counts | undefined;
  /** What stood in it. */
  readonly #before: Buffer | undefined;

  readonly #real: string;
  /** What is found in this run. */
  readonly #now = new Map<string, Readonly<Record<string, number>>>();

  /** `folder`: the current one. Throws WrongUse when the file is no baseline. */
  constructor(given: string, folder: string, roots: Roots) {
    this.path = absolute(folder, given);
    this.#shown = given;
    this.#folder = absolute(dirname(this.path), '.');
    const reached = roots.reachNew(this.path);
    if ('why' in reached) throw new WrongUse(`The baseline “${given}” could not be read: ${reached.why}.`);
    this.#real = reached.real;
    this.#before = existsSync(reached.real) ? readBaseline(reached.real, given) : undefined;
    this.counts = this.#before === undefined ? undefined : countsIn(this.#before.toString(), given);
  }

  /** Of what was found in a file, in its order: what is over its counts, and what the baseline holds back. Keeps how many there are. */
  split<Found extends Named>(path: string, found: readonly Found[]): { readonly over: readonly Found[]; readonly held: readonly Found[] } {
    const key = this.#key(path);
    if (found.length > 0 || this.counts?.[key] !== undefined) this.#now.set(key, countRules(found));
    if (this.counts === undefined) return { over: found, held: [] };
    const allowed = new Map(Object.entries(this.counts[key] ?? {}));
    const held: Found[] = [];
    const over = found.filter((finding) => {
      const left = allowed.get(finding.rule) ?? 0;
      if (left < 1) return true;
      allowed.set(finding.rule, left - 1);
      held.push(finding);
      return false;
    });
    return { over, held };
  }

  /** Writes what was found as the baseline. */
  write(): void {
    this.#save(Object.fromEntries([...this.#now].filter(([, rules]) => Object.keys(rules).length > 0)));
  }

  /** How many findings less there are than the baseline allows, in the files that were looked at and those that are gone. */
  slack(): number {
    const before = this.counts ?? {};
    return total(before) - total(this.#shrunk(before));
  }

  /** Lowers every count to what is found now. Never raises one, never adds one. */
  shrink(): void {
    this.#save(this.#shrunk(this.counts ?? {}));
  }

  #shrunk(before: Counts): Counts {
    const after: Record<string, Record<string, number>> = {};
    for (const [key, rules] of Object.entries(before)) {
      const now = this.#now.get(key) ?? (existsSync(absolute(this.#folder, key)) ? rules : {});
      const kept = Object.entries(rules).flatMap(([rule, count]) =>
        Math.min(count, now[rule] ?? 0) > 0 ? [[rule, Math.min(count, now[rule] ?? 0)] as const] : [],
      );
      if (kept.length > 0) after[key] = Object.fromEntries(kept);
    }
    return after;
  }

  #key(path: string): string {
    return isWithin(path, this.#folder) ? shownFrom(this.#folder, path) : path;
  }

  #save(counts: Counts): void {
    const files = Object.fromEntries(
      Object.keys(counts)
        .sort()
        .map((path) => [path, Object.fromEntries(Object.entries(counts[path] ?? {}).sort(([a], [b]) => (a < b ? -1 : 1)))]),
    );
    const why = writeWhole(this.#real, Buffer.from(JSON.stringify({ version: shapeVersion, files }, null, 2) + '\n'), this.#before);
    if (why !== undefined) throw new WrongUse(`The baseline “${this.#shown}” could not be written: ${why}.`);
  }
}

interface Named {
  readonly rule: string;
}

function countRules(found: readonly Named[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { rule } of found) counts[rule] = (counts[rule] ?? 0) + 1;
  return counts;
}

const total = (counts: Counts): number =>
  Object.values(counts).reduce((sum, rules) => sum + Object.values(rules).reduce((all, one) => all + one, 0), 0);

/** Bytes of the largest baseline that is read: some hundred for each of a million files. */
const mostBytes = 1 << 28;

function readBaseline(real: string, given: string): Buffer {
  const content = readBytes(real, mostBytes);
  if ('bytes' in content) return content.bytes;
  throw new WrongUse(`The baseline “${given}” could not be read: ${'why' in content ? content.why : 'it is too large'}.`);
}

function countsIn(content: string, given: string): Counts {
  let read: unknown;
  try {
    read = JSON.parse(content);
  } catch {
    throw new WrongUse(`The baseline “${given}” is not JSON. Remove it to have it written anew.`);
  }
  const { version, files } = isRecord(read) ? read : {};
  const sound =
    version === shapeVersion &&
    isRecord(files) &&
    Object.values(files).every(
      (rules) => isRecord(rules) && Object.values(rules).every((count) => Number.isInteger(count) && (count as number) > 0),
    );
  if (!sound) throw new WrongUse(`The baseline “${given}” is not a baseline that this version of Pintle can read.`);
  return files as Counts;
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
