// The workspaces of a run: one for each root. A `use` line never leaves its root, not even through a link.
import { statSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Analysis, type ReadResult, Workspace } from '../engine/index.ts';
import { absolute, commonFolder, type GateFile, isWithin, readText, realPath, repositoryOf } from './files.ts';
import { WrongUse } from './terminal.ts';

export class Sites {
  readonly #folder: string;
  readonly #given: string | undefined;
  readonly #common: string;
  readonly #workspaces = new Map<string, Workspace>();

  /** `given`: the folder named by `--root`. `files`: all that take part; they decide the root where nothing else does. */
  constructor(folder: string, given: string | undefined, files: readonly GateFile[]) {
    this.#folder = absolute(folder, '.');
    this.#given = given === undefined ? undefined : absolute(folder, given);
    if (this.#given !== undefined && statSync(this.#given, { throwIfNoEntry: false })?.isDirectory() !== true)
      throw new WrongUse(`“--root ${given}” is not a folder.`);
    this.#common = commonFolder(files.map((file) => file.path));
  }

  /** The folder that the `use` lines of a file may not leave. */
  rootOf(path: string): string {
    return this.#given ?? repositoryOf(path) ?? (isWithin(path, this.#folder) ? this.#folder : this.#common);
  }

  /**
   * Judges a file. The core sees every path from the root on, so that no message tells where on this machine the root
   * lies: the same files give the same bytes everywhere. `related` paths are made whole again by `wholePath`.
   */
  judge(path: string, text: string, asOf: string): Analysis {
    const prefix = this.#prefixOf(path);
    let workspace = this.#workspaces.get(prefix);
    if (workspace === undefined) this.#workspaces.set(prefix, (workspace = new Workspace({ root: '', read: reader(prefix) })));
    return workspace.judge(path.slice(prefix.length), text, asOf);
  }

  /** The absolute path of what the core calls `inside` when it speaks of a file. */
  wholePath(file: string, inside: string): string {
    return this.#prefixOf(file) + inside;
  }

  /** What is cut off in front. A file outside the root sees only what lies in its own folder. */
  #prefixOf(path: string): string {
    const root = this.rootOf(path);
    const folder = isWithin(path, root) ? root : dirname(path);
    return folder.endsWith('/') ? folder.slice(0, -1) : folder;
  }
}

function reader(prefix: string): (path: string) => ReadResult {
  const realRoot = realPath(prefix === '' ? '/' : prefix) ?? prefix;
  return (inside) => {
    const path = prefix + inside;
    const real = realPath(path);
    if (real === undefined) return 'missing';
    if (!isWithin(real, realRoot)) return 'outside';
    const file = readText(path);
    return 'why' in file || file.flaw !== undefined ? 'unreadable' : { text: file.text };
  };
}
