// The workspaces of a run: one for each root. A `use` line never leaves its root, not even through a link.
import { statSync } from 'node:fs';
import { Workspace, type Analysis, type ReadResult } from '../editor/workspace.ts';
import { absolute, commonFolder, isWithin, readText, realPath, repositoryOf, type GateFile } from './files.ts';
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

  judge(path: string, text: string, asOf: string): Analysis {
    return this.#workspace(this.rootOf(path)).judge(path, text, asOf);
  }

  #workspace(root: string): Workspace {
    let workspace = this.#workspaces.get(root);
    if (workspace === undefined) this.#workspaces.set(root, (workspace = new Workspace({ root, read: reader(root) })));
    return workspace;
  }
}

function reader(root: string): (path: string) => ReadResult {
  const realRoot = realPath(root) ?? root;
  return (path) => {
    const real = realPath(path);
    if (real === undefined) return 'missing';
    if (!isWithin(real, realRoot)) return 'outside';
    const file = readText(path);
    return 'why' in file || file.flaw !== undefined ? 'unreadable' : { text: file.text };
  };
}
