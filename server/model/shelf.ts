// The shelf of a file: the models that it can see through its `use` lines, and through theirs.
import type { ModelKind, Problem, Reading } from '../vocabulary/index.ts';
import type { CableModel, DriveModel, PanelModel, SensorModel, Terminal } from './installation.ts';
import { resolveUse } from './paths.ts';

export interface Models {
  readonly 'panel-model': ReadonlyMap<string, PanelModel>;
  readonly 'drive-model': ReadonlyMap<string, DriveModel>;
  readonly 'sensor-model': ReadonlyMap<string, SensorModel>;
  readonly 'cable-model': ReadonlyMap<string, CableModel>;
}
export type AnyModel = PanelModel | DriveModel | SensorModel | CableModel;

/** A file as other files see it. */
export interface Library {
  readonly path: string;
  readonly reading: Reading;
  readonly models: Models;
}

/** A library, or why there is none: not there, behind a link that leaves the root, not readable, or still to be read. */
export type Lookup = (path: string) => Library | 'missing' | 'outside' | 'unreadable' | 'waiting';

/** Something wrong with the `use` line of that number. */
interface Trouble {
  readonly use: number;
  readonly kind: string;
  readonly detail: Readonly<Record<string, string>>;
}

export interface Shelf {
  readonly models: Models;
  readonly troubles: readonly Trouble[];
  /** Every file that was looked at, found or not: a change of one may change this shelf. */
  readonly files: readonly string[];
  /** Which `use` line leads to a file. */
  readonly useOf: ReadonlyMap<string, number>;
}

const kinds: readonly ModelKind[] = ['panel-model', 'drive-model', 'sensor-model', 'cable-model'];

/** A file's own models. The first of two of one name counts; `resolve` reports the second. */
export function libraryOf(path: string, reading: Reading): Library {
  return { path, reading, models: modelsOf(path, reading) };
}

function modelsOf(path: string, reading: Reading): Models {
  const own = <E extends { name: string }, M>(entities: readonly E[], model: (entity: E) => M): Map<string, M> => {
    const map = new Map<string, M>();
    for (const entity of entities) if (entity.name !== '' && !map.has(entity.name)) map.set(entity.name, model(entity));
    return map;
  };
  const { entities } = reading;
  const plain = <E extends object>(entity: E): E & { path: string } => ({ ...entity, path });
  return {
    'panel-model': own(entities['panel-model'], (entity) => {
      const terminals = new Map<string, Terminal>();
      for (const terminal of entity.facts.terminal) if (!terminals.has(terminal.name.text)) terminals.set(terminal.name.text, terminal);
      const selectors = new Map(entity.blocks.selector.map((selector) => [selector.name, selector]));
      return { ...plain(entity), terminals, selectors, adjusters: entity.blocks.adjuster };
    }),
    'drive-model': own(entities['drive-model'], plain),
    'sensor-model': own(entities['sensor-model'], plain),
    'cable-model': own(entities['cable-model'], plain),
  };
}

/** True when a file has nothing of its own to bring to its shelf: then files with the same `use` lines share one. */
export function hasOwnModels(reading: Reading): boolean {
  return kinds.some((kind) => reading.entities[kind].length > 0);
}

/** Follows the `use` lines of a file, and of what they lead to. Total: cycles and missing files become troubles. */
export function buildShelf(path: string, uses: readonly string[], root: string, lookup: Lookup, own?: Library): Shelf {
  const found = { 'panel-model': new Map<string, PanelModel>(), 'drive-model': new Map<string, DriveModel>(), 'sensor-model': new Map<string, SensorModel>(), 'cable-model': new Map<string, CableModel>() };
  const troubles: Trouble[] = [];
  const useOf = new Map<string, number>();
  const files: string[] = [];
  const told = new Set<string>();
  // Files that a `use` line of this very file names: naming one twice, however it is spelt, is worth a word.
  const named = new Set<string>();

  const put = (library: Library, use: number): void => {
    for (const kind of kinds)
      for (const [name, model] of library.models[kind] as ReadonlyMap<string, AnyModel>) {
        const first = found[kind].get(name);
        if (first === undefined) (found[kind] as Map<string, AnyModel>).set(name, model);
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
      if (target.fault === 'itself') troubles.push({ use, kind: 'use-cycle', detail: { chain: [...chain, from].join('\n') } });
      else if (direct) troubles.push({ use, kind: target.fault === 'outside' ? 'use-outside-root' : 'use-path-unfit', detail: { path: text, fault: target.fault, root } });
      else troubles.push({ use, kind: 'library-has-errors', detail: { library: from, what: `its own use of “${text}” cannot be followed` } });
      return;
    }
    if (chain.includes(target.path)) {
      troubles.push({ use, kind: 'use-cycle', detail: { chain: [...chain.slice(chain.indexOf(target.path)), target.path].join('\n') } });
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
      const kind = library === 'outside' ? 'use-outside-root' : 'use-missing-file';
      if (direct) troubles.push({ use, kind, detail: { path: text, fault: library === 'outside' ? 'link' : library, root } });
      else troubles.push({ use, kind: 'library-has-errors', detail: { library: from, what: `its own use of “${text}” cannot be followed` } });
      return;
    }
    put(library, use);
    const broken = library.reading.problems[0];
    if (broken !== undefined) troubles.push({ use, kind: 'library-has-errors', detail: { library: target.path, what: '' } });
    for (const next of library.reading.uses) follow(target.path, next.path, use, [...chain, target.path]);
  };
  uses.forEach((text, use) => follow(path, text, use, [path]));
  return { models: found, troubles, files, useOf };
}

/** What is wrong with a file's `use` lines, at those lines. */
export function shelfProblems(shelf: Shelf, reading: Reading): Problem[] {
  return shelf.troubles.map((trouble) => {
    const line = reading.uses[Math.max(0, trouble.use)]?.line;
    const at = line?.values[0] ?? line ?? { start: 0, end: 0 };
    return { kind: trouble.kind, start: at.start, end: at.end, detail: trouble.detail };
  });
}
