// The workspaces of a run: one for each root. A `use` line never leaves its root, not even through a link.
import { type Analysis, type ReadResult, Workspace } from '../engine/index.ts';
import type { FileText } from './files.ts';
import type { Roots } from './roots.ts';

/** What a workspace may keep of libraries and shelves before it is made anew, in characters: a hundred megabytes or so. */
const mostWeight = 1_000_000;
/** Roots whose workspaces are kept. Files come sorted, so those of one root come nearly all in a row. */
const mostRoots = 8;

export class Sites {
  readonly #roots: Roots;
  readonly #kept = new Map<string, Workspace>();

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
    return this.#workspaceFor(prefix).judge(path.slice(prefix.length), text, asOf);
  }

  /** A workspace keeps libraries and shelves for as long as it lives, and there can be files in more folders than memory holds. */
  #workspaceFor(prefix: string): Workspace {
    const kept = this.#kept.get(prefix);
    if (kept !== undefined && kept.weight <= mostWeight) return kept;
    this.#kept.delete(prefix);
    const [oldest] = this.#kept.keys();
    if (oldest !== undefined && this.#kept.size >= mostRoots) this.#kept.delete(oldest);
    const workspace = new Workspace({ root: '', read: this.#reader(prefix) });
    this.#kept.set(prefix, workspace);
    return workspace;
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
