// The files of one workspace, and what is known of each. Everything is worked out at most once for each text; a change
// of a library makes anew only what can see it. No reading of disks here: `read` is given by the rooms that do it.
import { parse } from '../../grammar/index.ts';
import {
  buildingShelf,
  folderOf,
  hasOwnModels,
  type Installation,
  inOneGo,
  type Library,
  libraryOf,
  resolve,
  type Shelf,
} from '../model/index.ts';
import { evaluate, judging, type Verdict } from '../rules/index.ts';
import { type Reading, readFile } from '../vocabulary/index.ts';
import { type Analysis, Judged, type Phase, type Steps } from './analysis.ts';

/** The text of a file, or why there is none. `waiting`: it will come later, and `changed` will be called. */
export type ReadResult = { readonly text: string } | 'missing' | 'outside' | 'unreadable' | 'waiting';

export interface WorkspaceOptions {
  /** Absolute path (or URI) of the folder that no `use` may leave; forward slashes. */
  readonly root: string;
  readonly read: (path: string) => ReadResult;
}

/** What is kept beside texts, by what it takes in memory compared with a character of a text that is kept read. */
const weights = { shelf: 500, place: 5, lookup: 100 };

interface Kept {
  readonly text: string;
  readonly reading: Reading;
}

export class Workspace {
  readonly root: string;
  readonly #read: (path: string) => ReadResult;
  readonly #libraries = new Map<string, Library | Exclude<ReadResult, { text: string }>>();
  readonly #shelves = new Map<string, Shelf>();
  /** Shelves of open files that no other file can share: those that bring models of their own, or lead back to themselves. */
  readonly #ownShelves = new Map<string, { readonly reading: Reading; readonly shelf: Shelf }>();
  #age = 0;
  #weight = 0;
  readonly #kept = new Map<string, Kept>();
  readonly #analyses = new Map<
    string,
    { readonly reading: Reading; readonly shelf: Shelf; readonly asOf: string; readonly analysis: Analysis }
  >();

  constructor(options: WorkspaceOptions) {
    this.root = options.root;
    this.#read = options.read;
  }

  /** Judges a text once and keeps nothing of it: for the command line, which sees each file one time. */
  judge(path: string, text: string, asOf: string): Analysis {
    const reading = readFile(parse(text));
    return this.#analyse(path, text, reading, inOneGo(this.#shelving(path, reading)), asOf);
  }

  /** Looks up the names of a text and judges nothing: for what is asked of names alone, in many files. Nothing is found in it. */
  named(path: string, text: string): Analysis {
    const reading = readFile(parse(text));
    const shelf = inOneGo(this.#shelving(path, reading));
    return new Judged(path, this.root, text, resolve(path, reading, shelf), shelf, { findings: [], accepted: [] }, 'named');
  }

  /** The same as `judge` in small steps, for whoever must not work long at a time. */
  *judging(path: string, text: string, asOf: string): Steps {
    const tree = parse(text);
    yield undefined;
    const reading = readFile(tree);
    yield undefined;
    const shelf = yield* this.#shelving(path, reading);
    const installation = resolve(path, reading, shelf);
    yield undefined;
    const steps = judging(installation, asOf);
    for (;;) {
      const step = steps.next();
      if (step.done === true) return new Judged(path, this.root, text, installation, shelf, step.value, 'whole');
      yield undefined;
    }
  }

  /** Judges a text that is open in an editor; the same text is judged once. */
  open(path: string, text: string, asOf: string): Analysis {
    return inOneGo(this.opening(path, text, asOf));
  }

  /**
   * The same in small steps, for whoever must not work long at a time: between them it may be left, and what was worked
   * out so far is kept. Before the rules that take long it yields an analysis without them.
   */
  *opening(path: string, text: string, asOf: string): Steps {
    let kept = this.#kept.get(path);
    if (kept?.text !== text) {
      const tree = parse(text);
      yield undefined;
      kept = this.#keep(path, text, readFile(tree));
      yield undefined;
    }
    const { reading } = kept;
    const shelf = yield* this.#shelvingOpen(path, reading);
    const keep = (installation: Installation, verdict: Verdict, phase: Phase): Analysis => {
      const analysis = new Judged(path, this.root, text, installation, shelf, verdict, phase);
      this.#analyses.set(path, { reading, shelf, asOf, analysis });
      return analysis;
    };
    const known = this.#analyses.get(path);
    const isSame = known !== undefined && known.reading === reading && known.shelf === shelf && known.asOf === asOf;
    if (isSame && known.analysis.phase === 'whole') return known.analysis;
    const installation = isSame ? known.analysis.installation : resolve(path, reading, shelf);
    yield isSame ? known.analysis : undefined;
    const steps = judging(installation, asOf);
    for (;;) {
      const step = steps.next();
      if (step.done === true) return keep(installation, step.value, 'whole');
      yield step.value === undefined ? undefined : keep(installation, step.value, 'quick');
    }
  }

  /**
   * How much is kept of other files, in characters of their texts: whoever judges very many files and keeps none of them begins with a
   * new workspace when it is too much.
   */
  get weight(): number {
    return this.#weight;
  }

  /** Counts what can change an analysis: while it is the same, an analysis of the same text is. */
  get age(): number {
    return this.#age;
  }

  /** Forgets what is known of a file, because its text changed or it is gone; what can see it is worked out anew. */
  changed(path: string): void {
    this.#age++;
    this.#kept.delete(path);
    this.#analyses.delete(path);
    this.#libraries.delete(path);
    this.#ownShelves.delete(path);
    for (const [key, shelf] of this.#shelves) if (shelf.useOf.has(path)) this.#shelves.delete(key);
    for (const [key, own] of this.#ownShelves) if (own.shelf.useOf.has(path)) this.#ownShelves.delete(key);
  }

  /** Forgets an open file that is closed now. What other files see of it stays. */
  close(path: string): void {
    this.#kept.delete(path);
    this.#analyses.delete(path);
    this.#ownShelves.delete(path);
  }

  /** The file as other files see it; undefined when it cannot be read, or not yet. */
  library(path: string): Library | undefined {
    const found = this.#lookup(path);
    return typeof found === 'string' ? undefined : found;
  }

  /** Every file that was looked at for its models, whether or not it was there. */
  lookedAt(): string[] {
    return [...this.#libraries.keys()];
  }

  /** Those of an analysis's libraries whose text is still to come. */
  waitingFor(analysis: Analysis): string[] {
    return analysis.shelf.files.filter((path) => this.#libraries.get(path) === 'waiting');
  }

  #keep(path: string, text: string, reading: Reading): Kept {
    const fresh: Kept = { text, reading };
    if (this.#kept.has(path)) this.changed(path);
    this.#kept.set(path, fresh);
    return fresh;
  }

  #analyse(path: string, text: string, reading: Reading, shelf: Shelf, asOf: string): Analysis {
    const installation = resolve(path, reading, shelf);
    const verdict = evaluate(installation, asOf);
    return new Judged(path, this.root, text, installation, shelf, verdict, 'whole');
  }

  /** Files in one folder with the same `use` lines and no models of their own share a shelf. */
  *#shelving(path: string, reading: Reading): Generator<undefined, Shelf> {
    const build = (): Generator<undefined, Shelf> => buildingShelf(path, reading, this.root, this.#lookup);
    if (hasOwnModels(reading)) return yield* build();
    // As data and not as a text: one empty `use` line is not the same as none.
    const key = JSON.stringify([folderOf(path), ...reading.uses.map((use) => use.path)]);
    const known = this.#shelves.get(key);
    if (known !== undefined && !known.useOf.has(path)) return known;
    const age = this.#age;
    const shelf = yield* build();
    // A file that leads back to itself is the one case that is not the same for all files of a folder.
    if (!isRound(shelf) && age === this.#age) {
      this.#shelves.set(key, shelf);
      this.#weight += weights.shelf + shelf.files.length * weights.place;
    }
    return shelf;
  }

  *#shelvingOpen(path: string, reading: Reading): Generator<undefined, Shelf> {
    const own = this.#ownShelves.get(path);
    if (own !== undefined && own.reading === reading) return own.shelf;
    const age = this.#age;
    const shelf = yield* this.#shelving(path, reading);
    if ((hasOwnModels(reading) || isRound(shelf)) && age === this.#age) this.#ownShelves.set(path, { reading, shelf });
    return shelf;
  }

  readonly #lookup = (path: string): Library | Exclude<ReadResult, { text: string }> => {
    const known = this.#libraries.get(path);
    if (known !== undefined) return known;
    const result = this.#read(path);
    this.#weight += weights.lookup + (typeof result === 'string' ? 0 : result.text.length);
    const library = typeof result === 'string' ? result : libraryOf(path, readFile(parse(result.text)), this.root);
    this.#libraries.set(path, library);
    return library;
  };
}

const isRound = (shelf: Shelf): boolean => shelf.troubles.some((trouble) => trouble.kind === 'use-cycle');
