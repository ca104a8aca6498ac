// The shelf of a file: the models that it can see through its `use` lines, and through theirs.
import { type Blocks, type Entity, type ModelKind, modelKinds, type Reading } from '../vocabulary/index.ts';
import type { ModelOf, PanelModel, Terminal } from './installation.ts';
import { resolveUse, type UsePath } from './paths.ts';
import type { InstallationProblem, UseProblems } from './problems.ts';
import type { Steps } from './steps.ts';

/** The models of each kind by their names. */
export type Models = { readonly [Kind in ModelKind]: ReadonlyMap<string, ModelOf<Kind>> };
export type AnyModel = ModelOf<ModelKind>;

/** A file as other files see it. */
export interface Library {
  readonly path: string;
  readonly reading: Reading;
  readonly models: Models;
  /** All its models in one row: many files look through it, each to put it on a shelf of its own. */
  readonly row: readonly Named[];
  /** Where its own `use` lines lead, in their order. */
  readonly leads: readonly Lead[];
}

interface Named {
  readonly kind: ModelKind;
  readonly name: string;
  readonly model: AnyModel;
}

/** A `use` line: as it is written, and where it leads. */
interface Lead {
  readonly text: string;
  readonly target: UsePath;
}

/** A library, or why there is none: not there, behind a link that leaves the root, not readable, or still to be read. */
export type Lookup = (path: string) => Library | 'missing' | 'outside' | 'unreadable' | 'waiting';

/** Something wrong with the `use` line of that number. */
type Trouble = {
  [Kind in keyof UseProblems]: { readonly use: number; readonly kind: Kind; readonly detail: UseProblems[Kind] };
}[keyof UseProblems];

export interface Shelf {
  readonly models: Models;
  readonly troubles: readonly Trouble[];
  /** Every file that was looked at, found or not: a change of one may change this shelf. */
  readonly files: readonly string[];
  /** Which `use` line leads to a file. */
  readonly useOf: ReadonlyMap<string, number>;
}

/** A file's own models, and where its `use` lines lead. The first of two models of one name counts; `resolve` reports the second. */
export function libraryOf(path: string, reading: Reading, root: string): Library {
  const models = modelsOf(path, reading);
  const row = modelKinds.flatMap((kind) => [...models[kind]].map(([name, model]) => ({ kind, name, model })));
  return { path, reading, models, row, leads: leadsOf(path, reading, root) };
}

const leadsOf = (path: string, reading: Reading, root: string): Lead[] =>
  reading.uses.map((use) => ({ text: use.path, target: resolveUse(path, use.path, root) }));

function modelsOf(path: string, reading: Reading): Models {
  const models = noModels();
  for (const kind of modelKinds)
    for (const entity of reading.entities[kind]) {
      if (entity.name === '' || models[kind].has(entity.name)) continue;
      const model = { ...entity, path };
      models[kind].set(entity.name, kind === 'panel-model' ? withParts(model as PanelEntity) : (model as AnyModel));
    }
  return models as Models;
}

const noModels = () => Object.fromEntries(modelKinds.map((kind) => [kind, new Map()])) as Record<ModelKind, Map<string, AnyModel>>;

type PanelEntity = Entity<Blocks['panel-model']> & { readonly path: string };

function withParts(model: PanelEntity): PanelModel {
  const terminals = new Map<string, Terminal>();
  for (const terminal of model.facts.terminal) if (!terminals.has(terminal.name.text)) terminals.set(terminal.name.text, terminal);
  const selectors = new Map(model.blocks.selector.map((selector) => [selector.name, selector]));
  return { ...model, terminals, selectors, adjusters: model.blocks.adjuster };
}

/** True when a file has nothing of its own to bring to its shelf: then files with the same `use` lines share one. */
export function hasOwnModels(reading: Reading): boolean {
  return modelKinds.some((kind) => reading.entities[kind].length > 0);
}

/** The most files that the `use` lines of one file lead to, theirs included: so the work on many files grows as their number. */
export const mostLibraries = 1000;

/**
 * Follows the `use` lines of a file, and of what they lead to, depth first. Total: circles and missing files become troubles. A shelf
 * has at most one trouble of a kind for each `use` line and file or name, and one circle for each `use` line: whoever opens the files
 * that take part finds the others. In small steps, for whoever must not work long at a time: it yields after each file.
 */
export function* buildingShelf(path: string, reading: Reading, root: string, lookup: Lookup): Steps<Shelf> {
  const building = new Building(path, lookup);
  if (hasOwnModels(reading)) building.put(libraryOf(path, reading, root), -1);
  for (const lead of leadsOf(path, reading, root)) {
    building.follow(lead);
    while (building.goOn()) yield undefined;
  }
  return building.shelf();
}

/** A file whose `use` lines are being followed. */
interface Step {
  readonly path: string;
  readonly leads: readonly Lead[];
  /** The next of them. */
  next: number;
}

class Building {
  readonly #path: string;
  readonly #lookup: Lookup;
  readonly #found = noModels();
  readonly #troubles: Trouble[] = [];
  readonly #useOf = new Map<string, number>();
  readonly #told = new Set<string>();
  /** Files that a `use` line of the file itself names: naming one twice, however it is spelt, is worth a word. */
  readonly #named = new Set<string>();
  /** From the file itself down to where it has come: a row and not calls in calls, for a chain may be of any length. */
  readonly #way: Step[] = [];
  readonly #onWay = new Set<string>();
  /** The `use` line of the file itself that is followed. */
  #use = -1;
  /** Its troubles so far: told once for each line, however many files it leads to. */
  #hasCircle = false;
  #isFull = false;
  #firstBroken: { readonly library: string; readonly unfollowed: string | undefined } | undefined;
  readonly #broken = new Set<string>();

  constructor(path: string, lookup: Lookup) {
    this.#path = path;
    this.#lookup = lookup;
    this.#onWay.add(path);
  }

  /** Begins with a `use` line of the file itself; `goOn` ends it before the next begins. */
  follow({ text, target }: Lead): void {
    this.#use++;
    this.#hasCircle = false;
    this.#isFull = false;
    this.#firstBroken = undefined;
    this.#broken.clear();
    const use = this.#use;
    if ('fault' in target) {
      const { fault } = target;
      if (fault === 'itself') this.#circleTo(this.#path);
      else if (fault === 'outside') this.#troubles.push({ use, kind: 'use-outside-root', detail: { path: text, isLink: false } });
      else this.#troubles.push({ use, kind: 'use-path-unfit', detail: { path: text, fault } });
      return;
    }
    if (this.#useOf.has(target.path)) {
      if (this.#named.has(target.path)) this.#troubles.push({ use, kind: 'use-repeated', detail: { path: text } });
      this.#named.add(target.path);
      return;
    }
    this.#named.add(target.path);
    const library = this.#reach(target.path);
    if (library === 'waiting' || library === 'too many') return;
    if (library === 'outside') this.#troubles.push({ use, kind: 'use-outside-root', detail: { path: text, isLink: true } });
    else if (typeof library === 'string') this.#troubles.push({ use, kind: 'use-missing-file', detail: { path: text, fault: library } });
    else this.#enter(library);
  }

  /** Goes on as far as the next file; false where the `use` line of the file itself leads to nothing more. */
  goOn(): boolean {
    for (let step = this.#way.at(-1); step !== undefined; step = this.#way.at(-1)) {
      const lead = step.leads[step.next++];
      if (lead !== undefined) {
        this.#lead(step, lead);
        return true;
      }
      this.#way.pop();
      this.#onWay.delete(step.path);
    }
    if (this.#firstBroken !== undefined) {
      const detail = { ...this.#firstBroken, others: this.#broken.size - 1 };
      this.#troubles.push({ use: this.#use, kind: 'library-has-errors', detail });
    }
    return false;
  }

  shelf(): Shelf {
    return { models: this.#found as Models, troubles: this.#troubles, files: [...this.#useOf.keys()], useOf: this.#useOf };
  }

  /** A `use` line of a library. */
  #lead(from: Step, { text, target }: Lead): void {
    if ('fault' in target) {
      if (target.fault === 'itself') this.#circleTo(from.path);
      else this.#isBroken(from.path, text);
      return;
    }
    if (this.#onWay.has(target.path)) {
      this.#circleTo(target.path);
      return;
    }
    if (this.#useOf.has(target.path)) return;
    const library = this.#reach(target.path);
    if (library === 'waiting' || library === 'too many') return;
    if (typeof library === 'string') this.#isBroken(from.path, text);
    else this.#enter(library);
  }

  #reach(path: string): ReturnType<Lookup> | 'too many' {
    if (this.#useOf.size >= mostLibraries) {
      if (!this.#isFull) this.#troubles.push({ use: this.#use, kind: 'use-leads-too-far', detail: { most: mostLibraries, first: path } });
      this.#isFull = true;
      return 'too many';
    }
    this.#useOf.set(path, this.#use);
    return this.#lookup(path);
  }

  #enter(library: Library): void {
    this.put(library, this.#use);
    if (library.reading.problems.length > 0) this.#isBroken(library.path, undefined);
    if (library.leads.length === 0) return;
    this.#way.push({ path: library.path, leads: library.leads, next: 0 });
    this.#onWay.add(library.path);
  }

  put(library: Library, use: number): void {
    for (const { kind, name, model } of library.row) {
      const first = this.#found[kind].get(name);
      if (first === undefined) this.#found[kind].set(name, model);
      else if (first.path !== model.path && !this.#told.has(kind + ' ' + name)) {
        this.#told.add(kind + ' ' + name);
        this.#troubles.push({ use, kind: 'model-repeated', detail: { name, kind, first: first.path, second: model.path } });
      }
    }
  }

  /** A file of the way is met again. */
  #circleTo(path: string): void {
    if (this.#hasCircle) return;
    this.#hasCircle = true;
    const round = [this.#path, ...this.#way.map((step) => step.path)];
    this.#troubles.push({ use: this.#use, kind: 'use-cycle', detail: { chain: [...round.slice(round.indexOf(path)), path] } });
  }

  #isBroken(library: string, unfollowed: string | undefined): void {
    this.#firstBroken ??= { library, unfollowed };
    this.#broken.add(library);
  }
}

/** What is wrong with a file's `use` lines, at those lines. */
export function shelfProblems(shelf: Shelf, reading: Reading): InstallationProblem[] {
  return shelf.troubles.map(({ use, ...trouble }) => {
    const line = reading.uses[Math.max(0, use)]?.line;
    const { start, end } = line?.values[0] ?? line ?? { start: 0, end: 0 };
    return { ...trouble, start, end };
  });
}
