// The shelf of a file: the models that it can see through its `use` lines, and through theirs.
import { type Blocks, type Entity, type ModelKind, modelKinds, type Reading } from '../vocabulary/index.ts';
import type { ModelOf, PanelModel, Terminal } from './installation.ts';
import { resolveUse } from './paths.ts';
import type { InstallationProblem, UseProblems } from './problems.ts';

/** The models of each kind by their names. */
export type Models = { readonly [Kind in ModelKind]: ReadonlyMap<string, ModelOf<Kind>> };
export type AnyModel = ModelOf<ModelKind>;

/** A file as other files see it. */
export interface Library {
  readonly path: string;
  readonly reading: Reading;
  readonly models: Models;
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

/** A file's own models. The first of two of one name counts; `resolve` reports the second. */
export function libraryOf(path: string, reading: Reading): Library {
  return { path, reading, models: modelsOf(path, reading) };
}

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

/** Follows the `use` lines of a file, and of what they lead to. Total: cycles and missing files become troubles. */
export function buildShelf(path: string, uses: readonly string[], root: string, lookup: Lookup, own?: Library): Shelf {
  const found = noModels();
  const troubles: Trouble[] = [];
  const useOf = new Map<string, number>();
  const files: string[] = [];
  const told = new Set<string>();
  // Files that a `use` line of this very file names: naming one twice, however it is spelt, is worth a word.
  const named = new Set<string>();

  const put = (library: Library, use: number): void => {
    for (const kind of modelKinds)
      for (const [name, model] of library.models[kind]) {
        const first = found[kind].get(name);
        if (first === undefined) found[kind].set(name, model);
        else if (first.path !== model.path && !told.has(kind + ' ' + name)) {
          told.add(kind + ' ' + name);
          troubles.push({ use, kind: 'model-repeated', detail: { name, kind, first: first.path, second: model.path } });
        }
      }
  };
  if (own !== undefined) put(own, -1);

  const follow = (from: string, text: string, use: number, chain: readonly string[]): void => {
    const target = resolveUse(from, text, root);
    const direct = chain.length === 1;
    if ('fault' in target) {
      if (target.fault === 'itself') troubles.push({ use, kind: 'use-cycle', detail: { chain: [...chain, from] } });
      else if (!direct) troubles.push({ use, kind: 'library-has-errors', detail: { library: from, unfollowed: text } });
      else if (target.fault === 'outside') troubles.push({ use, kind: 'use-outside-root', detail: { path: text, isLink: false } });
      else troubles.push({ use, kind: 'use-path-unfit', detail: { path: text, fault: target.fault } });
      return;
    }
    if (chain.includes(target.path)) {
      troubles.push({ use, kind: 'use-cycle', detail: { chain: [...chain.slice(chain.indexOf(target.path)), target.path] } });
      return;
    }
    const again = direct && named.has(target.path);
    if (direct) named.add(target.path);
    if (useOf.has(target.path)) {
      if (again) troubles.push({ use, kind: 'use-repeated', detail: { path: text } });
      return;
    }
    useOf.set(target.path, use);
    files.push(target.path);
    const library = lookup(target.path);
    if (typeof library === 'string') {
      if (library === 'waiting') return;
      if (!direct) troubles.push({ use, kind: 'library-has-errors', detail: { library: from, unfollowed: text } });
      else if (library === 'outside') troubles.push({ use, kind: 'use-outside-root', detail: { path: text, isLink: true } });
      else troubles.push({ use, kind: 'use-missing-file', detail: { path: text, fault: library } });
      return;
    }
    put(library, use);
    const broken = library.reading.problems[0];
    if (broken !== undefined) troubles.push({ use, kind: 'library-has-errors', detail: { library: target.path, unfollowed: undefined } });
    for (const next of library.reading.uses) follow(target.path, next.path, use, [...chain, target.path]);
  };
  uses.forEach((text, use) => follow(path, text, use, [path]));
  return { models: found as Models, troubles, files, useOf };
}

/** What is wrong with a file's `use` lines, at those lines. */
export function shelfProblems(shelf: Shelf, reading: Reading): InstallationProblem[] {
  return shelf.troubles.map(({ use, ...trouble }) => {
    const line = reading.uses[Math.max(0, use)]?.line;
    const { start, end } = line?.values[0] ?? line ?? { start: 0, end: 0 };
    return { ...trouble, start, end };
  });
}
