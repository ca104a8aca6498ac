// Runs that write first clear away what stopped ones have left in the same folders.
import { dirname } from 'node:path';
import { visiblePath } from './display.ts';
import { shownFrom } from './files.ts';
import { sweep } from './leftovers.ts';
import type { Roots } from './roots.ts';
import type { Terminal } from './terminal.ts';

export class Sweeper {
  readonly #roots: Roots;
  readonly #terminal: Terminal;
  readonly #swept = new Set<string>();

  constructor(roots: Roots, terminal: Terminal) {
    this.#roots = roots;
    this.#terminal = terminal;
  }

  /** Sweeps the folder that a file really stands in, once. */
  beside(path: string): void {
    const reached = this.#roots.reachNew(path);
    if ('why' in reached) return;
    const folder = dirname(reached.real);
    if (this.#swept.has(folder)) return;
    this.#swept.add(folder);
    for (const name of sweep(folder))
      this.#terminal.err(
        `pintle: ${visiblePath(shownFrom(this.#terminal.folder, `${folder}/${name}`))}: a run was stopped while it wrote a file of this folder; this is what the file was to be\n`,
      );
  }
}
