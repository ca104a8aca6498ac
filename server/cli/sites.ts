// The workspaces of a run: one for each root. A `use` line never leaves its root, not even through a link.
import { type Analysis, type ReadResult, Workspace } from '../engine/index.ts';
import type { FileText } from './files.ts';
import type { Roots } from './roots.ts';

export class Sites {
  readonly #roots: Roots;
  readonly #workspaces = new Map<string, Workspace>();

  constructor(roots: Roots) {
    this.#roots = roots;
  }

  /** What stands in a file, or why it is not read. */
  read(path: string): FileText | { readonly why: string } {
    return this.#roots.read(path);
  }

  /**
   * Judges a file. The core sees every path from the root on, so that no message tells where on this machine the root
   * lies: the same files give the same bytes everywhere. `related` paths are made whole again by `wholePath`.
   */
  judge(path: string, text: string, asOf: string): Analysis {
    const prefix = this.#prefixOf(path);
    let workspace = this.#workspaces.get(prefix);
    if (workspace === undefined) this.#workspaces.set(prefix, (workspace = new Workspace({ root: '', read: this.#reader(prefix) })));
    return workspace.judge(path.slice(prefix.length), text, asOf);
  }

  /** The absolute path of what the core calls `inside` when it speaks of a file. */
  wholePath(file: string, inside: string): string {
    return this.#prefixOf(file) + inside;
  }

  /** What is cut off in front. A file outside the root sees only what lies in its own folder. */
  #prefixOf(path: string): string {
    const home = this.#roots.homeOf(path);
    return home.endsWith('/') ? home.slice(0, -1) : home;
  }

  /** A `use` line that passes through a hidden folder names it; a link does not. */
  #reader(prefix: string): (inside: string) => ReadResult {
    const home = prefix === '' ? '/' : prefix;
    return (inside) => {
      const path = prefix + inside;
      const reached = this.#roots.reach(path, home);
      if ('fault' in reached) return reached.fault === 'hidden' ? 'unreadable' : reached.fault;
      const file = this.#roots.read(path, home);
      return 'why' in file || file.flaw !== undefined ? 'unreadable' : { text: file.text };
    };
  }
}
