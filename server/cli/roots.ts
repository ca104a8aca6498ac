// Which folder a file belongs to, its root, and what may be read from there. A link in a folder that somebody else has
// written can point anywhere on the machine, and what it points at would stand in the report: so nothing is read that
// leads out of the root, and through no link what nobody named.
import { lstatSync, readlinkSync, realpathSync } from 'node:fs';
import { basename, dirname, parse, resolve } from 'node:path';
import { looseRoot } from '../engine/inside.ts';
import { absolute, type FileText, inWords, isWithin, readText, repositoryOf, statOf, withSlashes } from './files.ts';
import { WrongUse } from './terminal.ts';

/** Where a path really leads, all links followed; or why it is not followed there. */
export type Reach = { readonly real: string } | { readonly fault: 'missing' | 'outside' | 'hidden'; readonly why: string };

const leadsOut = 'it leads out of the root through a link, so it is not read; --root FOLDER names a wider root';
const leadsIntoHidden = (name: string): string => `it leads through a link into “${name}”, which is read only where it is named`;

export class Roots {
  readonly #folder: string;
  readonly #given: string | undefined;
  /** Folders that were named, the widest first. */
  readonly #named: readonly string[];
  readonly #real = new Map<string, string>();

  /** `folder`: the current one. `given`: the folder named by `--root`. `paths`: what the command was called with. */
  constructor(folder: string, given: string | undefined, paths: readonly string[]) {
    this.#folder = absolute(folder, '.');
    this.#given = given === undefined ? undefined : absolute(folder, given);
    if (this.#given !== undefined && !isFolder(this.#given)) throw new WrongUse(`“--root ${given}” is not a folder.`);
    this.#named = paths.flatMap((path) => folderNamed(absolute(folder, path))).sort((a, b) => a.length - b.length);
  }

  /**
   * The root of a file: a matter of the file, and of the folder that was named and holds it, never of others. The top of a disk is one only where it is named: everything on the machine, other programs' secrets
   * too, would else be inside.
   */
  of(path: string): string {
    const known = this.#given ?? repositoryOf(path);
    if (known !== undefined) return known;
    const own = [this.#folder, ...this.#named, looseRoot(path)].find((folder) => !isTop(folder) && isWithin(path, folder));
    return own ?? withSlashes(dirname(path));
  }

  /** The folder that a file may see: its root, or its own folder where it lies outside a root that was named. */
  homeOf(path: string): string {
    const root = this.of(path);
    return isWithin(path, root) ? root : withSlashes(dirname(path));
  }

  /**
   * What the paths of a report are seen from: the root of its files, or the folder that their roots have in common. It does not
   * hang on the current folder where that is not the root, and no two files have one path.
   */
  baseOf(paths: readonly string[]): string {
    return commonFolder([...new Set(paths.map((path) => this.homeOf(path)))]);
  }

  /** Follows a path from `home`, and no farther: what is named must lie in there, or in the folder of `--root`. */
  reach(path: string, home = this.homeOf(path)): Reach {
    try {
      return this.#judged(path, withSlashes(realpathSync.native(path)), home);
    } catch (error) {
      return { fault: 'missing', why: inWords(error, path) };
    }
  }

  /** The same for a file that is to be written and may not be there yet. */
  reachNew(path: string): Reach {
    try {
      return this.#judged(path, whereIsNew(path), this.homeOf(path));
    } catch (error) {
      return { fault: 'missing', why: inWords(error, path) };
    }
  }

  /** What stands in a file, or why it is not read. */
  read(path: string, home?: string): FileText | { readonly why: string } {
    const reached = this.reach(path, home);
    return 'why' in reached ? reached : readText(reached.real);
  }

  #judged(path: string, real: string, home: string): Reach {
    const around = [home, ...(this.#given === undefined ? [] : [this.#given])].find((folder) => isWithin(real, this.#realOf(folder)));
    if (around === undefined) return { fault: 'outside', why: leadsOut };
    // A hidden folder is named where the path itself passes through it.
    const named = (isWithin(path, home) ? path.slice(home.length) : path).split('/');
    const hidden = real
      .slice(this.#realOf(around).length)
      .split('/')
      .find((part) => !isSearched(part) && !named.includes(part));
    return hidden === undefined ? { real } : { fault: 'hidden', why: leadsIntoHidden(hidden) };
  }

  #realOf(folder: string): string {
    let real = this.#real.get(folder);
    if (real === undefined) {
      if (this.#real.size > mostKept) this.#real.clear();
      this.#real.set(folder, (real = withSlashes(realpathSync.native(folder))));
    }
    return real;
  }
}

const mostKept = 1000;

/** False for folders that are read only where they are named. */
export const isSearched = (name: string): boolean => name !== 'node_modules' && !name.startsWith('.');

const isTop = (folder: string): boolean => /^([A-Za-z]:)?\/?$/.test(folder) || withSlashes(parse(folder).root) === folder;

function isFolder(path: string): boolean {
  const stats = statOf(path);
  return typeof stats !== 'string' && stats.isDirectory();
}

/** The folder that is named; one behind a link is not its own root, or nothing could lead out of it. */
const folderNamed = (path: string): string[] =>
  isFolder(path) ? [lstatSync(path).isSymbolicLink() ? withSlashes(dirname(path)) : path] : [];

/** Where a file would come to stand. A link that leads to nothing yet is followed once. */
function whereIsNew(path: string): string {
  const stats = lstatSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return besideReal(path);
  try {
    return withSlashes(realpathSync.native(path));
  } catch (error) {
    if (!stats.isSymbolicLink() || (error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    const target = besideReal(resolve(dirname(path), readlinkSync(path)));
    if (lstatSync(target, { throwIfNoEntry: false }) !== undefined) throw error;
    return target;
  }
}

function besideReal(path: string): string {
  const folder = withSlashes(realpathSync.native(dirname(path)));
  return `${folder.endsWith('/') ? folder : folder + '/'}${basename(path)}`;
}

/** The deepest folder that holds all of these; the top where nothing else does. */
export function commonFolder(folders: readonly string[]): string {
  const [first, ...rest] = folders.map((folder) => folder.split('/'));
  let parts = first ?? [''];
  for (const other of rest) {
    let same = 0;
    while (same < parts.length && parts[same] === other[same]) same++;
    parts = parts.slice(0, same);
  }
  return parts.join('/') || '/';
}
