// The files of one workspace, and what is known of each. Everything is worked out at most once for each text; a change
// of a library makes anew only what can see it. No reading of disks here: `read` is given by the rooms that do it.
import { lineStarts, parse } from '../../grammar/index.ts';
import { figuresOf, type Figure } from '../figures/index.ts';
import { buildShelf, folderOf, hasOwnModels, libraryOf, resolve, type Installation, type Library, type Shelf } from '../model/index.ts';
import { evaluate, type Finding } from '../rules/index.ts';
import { readFile, type Reading } from '../vocabulary/index.ts';

/** The text of a file, or why there is none. `waiting`: it will come later, and `changed` will be called. */
export type ReadResult = { readonly text: string } | 'missing' | 'outside' | 'unreadable' | 'waiting';

export interface WorkspaceOptions {
  /** Absolute path (or URI) of the folder that no `use` may leave; forward slashes. */
  readonly root: string;
  readonly read: (path: string) => ReadResult;
}

/** All that is known of one file. */
export interface Analysis {
  readonly path: string;
  readonly text: string;
  readonly installation: Installation;
  readonly findings: readonly Finding[];
  readonly accepted: readonly Finding[];
  readonly figures: readonly Figure[];
  readonly lineStarts: readonly number[];
}

interface Kept {
  readonly text: string;
  readonly reading: Reading;
  library?: Library;
}

export class Workspace {
  readonly root: string;
  readonly #read: (path: string) => ReadResult;
  readonly #libraries = new Map<string, Library | Exclude<ReadResult, { text: string }>>();
  readonly #shelves = new Map<string, Shelf>();
  readonly #kept = new Map<string, Kept>();
  readonly #analyses = new Map<string, { readonly reading: Reading; readonly shelf: Shelf; readonly asOf: string; readonly analysis: Analysis }>();

  constructor(options: WorkspaceOptions) {
    this.root = options.root;
    this.#read = options.read;
  }

  /** Judges a text once and keeps nothing of it: for the command line, which sees each file one time. */
  judge(path: string, text: string, asOf: string): Analysis {
    const reading = readFile(parse(text));
    return this.#analyse(path, text, reading, this.#shelf(path, reading), asOf);
  }

  /** Judges a text that is open in an editor; the same text is judged once. */
  open(path: string, text: string, asOf: string): Analysis {
    const kept = this.#keep(path, text);
    const shelf = this.#shelf(path, kept.reading);
    const known = this.#analyses.get(path);
    if (known !== undefined && known.reading === kept.reading && known.shelf === shelf && known.asOf === asOf) return known.analysis;
    const analysis = this.#analyse(path, text, kept.reading, shelf, asOf);
    this.#analyses.set(path, { reading: kept.reading, shelf, asOf, analysis });
    return analysis;
  }

  /** Forgets what is known of a file, because its text changed or it is gone. Says which open files may see that. */
  changed(path: string): void {
    this.#kept.delete(path);
    this.#analyses.delete(path);
    this.#libraries.delete(path);
    for (const [key, shelf] of this.#shelves) if (shelf.files.includes(path)) this.#shelves.delete(key);
  }

  #keep(path: string, text: string): Kept {
    const kept = this.#kept.get(path);
    if (kept !== undefined && kept.text === text) return kept;
    const fresh: Kept = { text, reading: readFile(parse(text)) };
    if (kept !== undefined) this.changed(path);
    this.#kept.set(path, fresh);
    return fresh;
  }

  #analyse(path: string, text: string, reading: Reading, shelf: Shelf, asOf: string): Analysis {
    const installation = resolve(path, reading, shelf);
    const verdict = evaluate(installation, asOf);
    let starts: readonly number[] | undefined;
    return {
      path,
      text,
      installation,
      findings: verdict.findings,
      accepted: verdict.accepted,
      get figures() {
        return figuresOf(installation);
      },
      get lineStarts() {
        return (starts ??= lineStarts(text));
      },
    };
  }

  /** Files in one folder with the same `use` lines and no models of their own share a shelf. */
  #shelf(path: string, reading: Reading): Shelf {
    if (hasOwnModels(reading)) return buildShelf(path, usesOf(reading), this.root, this.#lookup, libraryOf(path, reading));
    const uses = usesOf(reading);
    const key = folderOf(path) + '\n' + uses.join('\n');
    let shelf = this.#shelves.get(key);
    // A file that leads back to itself is the one case that is not the same for all files of a folder.
    if (shelf === undefined || shelf.files.includes(path)) {
      shelf = buildShelf(path, uses, this.root, this.#lookup);
      this.#shelves.set(key, shelf);
    }
    return shelf;
  }

  readonly #lookup = (path: string): Library | Exclude<ReadResult, { text: string }> => {
    const known = this.#libraries.get(path);
    if (known !== undefined) return known;
    const result = this.#read(path);
    const library = typeof result === 'string' ? result : libraryOf(path, readFile(parse(result.text)));
    this.#libraries.set(path, library);
    return library;
  };
}

const usesOf = (reading: Reading): string[] => reading.uses.map((use) => use.path);
