// Names that read alike and are not the same, and names that hide which alphabet they are of.
import type { WordValue } from '../../grammar/index.ts';
import {
  areConfusable,
  type Entity,
  hasUnusual,
  isModelKind,
  type ModelKind,
  mixtureIn,
  modelKinds,
  nameSpaceInWords,
  nameSpaceOf,
  type Reading,
  skeleton,
} from '../vocabulary/index.ts';
import type { Panel } from './installation.ts';
import type { InstallationProblem } from './problems.ts';
import type { AnyModel, Models } from './shelf.ts';

/** A name where it is declared. */
interface Declared {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  /** What it is the name of, in a sentence. */
  readonly what: string;
  /** The file that declares it, where it is another one. */
  readonly library?: string | undefined;
}

/** Names of one space, by what they look like. */
class Space {
  readonly #byLook = new Map<string, Declared[]>();

  /** The first one of another spelling that can be taken for it. */
  like(name: string): Declared | undefined {
    for (const look of looksOf(name)) {
      const found = this.#byLook.get(look)?.find((one) => areConfusable(one.name, name));
      if (found !== undefined) return found;
    }
    return undefined;
  }

  add(declared: Declared): void {
    for (const look of looksOf(declared.name)) {
      const known = this.#byLook.get(look);
      if (known === undefined) this.#byLook.set(look, [declared]);
      else if (known.length < mostOfOneLook && known.every(({ name }) => name !== declared.name)) known.push(declared);
    }
  }
}

/** Spellings of one look that are held against each other; a file with more is in ruins. */
const mostOfOneLook = 20;

const looksOf = (name: string): ReadonlySet<string> => new Set([skeleton(name), name.normalize('NFKC')]);

/** Says of every name of a file what it is taken for, and of its names of models, terminals and selectors too where it uses them. */
export function checkLookalikes(
  path: string,
  reading: Reading,
  models: Models,
  panels: readonly Panel[],
  problems: InstallationProblem[],
): void {
  const unusual = modelKinds.filter((kind) => spaceOf(models[kind], kind) !== undefined);
  if (unusual.length > 0 || hasUnusual(reading.tree.text)) checkDeclared(path, reading, models, problems);
  for (const kind of unusual) checkModelsUsed(kind, reading, models, problems);
  checkPartsUsed(path, panels, problems);
}

function checkDeclared(path: string, reading: Reading, models: Models, problems: InstallationProblem[]): void {
  const spaces = new Map<string, Space>();
  for (const { space: key, ...declared } of declaredIn(reading)) {
    let space = spaces.get(key);
    if (space === undefined) {
      spaces.set(key, (space = new Space()));
      if (isModelKind(key))
        for (const model of models[key].values())
          if (model.path !== path) space.add({ name: model.name, what: key, start: 0, end: 0, library: model.path });
    }
    const other = space.like(declared.name);
    space.add(declared);
    if (other !== undefined) problems.push(likeAnother(declared, other));
    else sayMixture(declared, problems);
  }
}

function sayMixture({ name, what, start, end }: Declared, problems: InstallationProblem[]): void {
  const mixture = mixtureIn(name);
  if (mixture !== undefined) problems.push({ kind: 'name-mixes-alphabets', start, end, detail: { name, what, ...mixture } });
}

function likeAnother({ name, what, start, end }: Declared, { name: other, library, ...first }: Declared): InstallationProblem {
  const problem = { kind: 'name-looks-like-another', start, end, detail: { name, what, other, library } } as const;
  if (library !== undefined) return problem;
  return { ...problem, related: [{ start: first.start, end: first.end, note: 'the one that it looks like' }] };
}

/** Every name that a file declares, in the order of its blocks, each with the space that it has to be told apart in. */
function* declaredIn({ entities, uses }: Reading): Generator<Declared & { readonly space: string }> {
  const of = (space: string, what: string, { text, start, end }: WordValue) => ({ space, what, name: text, start, end });
  for (const { line, path } of uses) {
    const { start, end } = line.values[0] ?? line;
    // What a file is a file of stands in Latin letters behind a point; it is no part of its name.
    yield { space: 'use', what: 'library', name: path.replace(/\.[a-z]+$/, ''), start, end };
  }
  for (const [word, all] of Object.entries(entities) as [string, readonly Entity[]][]) {
    const space = nameSpaceOf.get(word);
    const what = space === undefined ? word : nameSpaceInWords(space);
    for (const entity of all) {
      if (entity.nameAt !== undefined) yield of(space ?? word, what, entity.nameAt);
      const within = `${word} ${entity.at.start}`;
      for (const [inner, nested] of Object.entries(entity.blocks))
        for (const block of nested as readonly Entity[])
          if (block.nameAt !== undefined) yield of(`${within} ${inner}`, inner, block.nameAt);
    }
  }
  for (const model of entities['panel-model']) {
    for (const { name } of model.facts.terminal) yield of(`terminal ${model.at.start}`, 'terminal', name);
    for (const selector of model.blocks.selector)
      for (const { name } of selector.facts.option) yield of(`option ${selector.at.start}`, 'position', name);
  }
}

/** Spaces of what other files declare, each made once: of the models of a shelf, and of the parts of one of them. */
const spacesOf = new WeakMap<object, Space | null>();

function spaceOf(names: ReadonlyMap<string, unknown>, what: string): Space | undefined {
  let space = spacesOf.get(names);
  if (space === undefined) {
    space = null;
    for (const name of names.keys())
      if (hasUnusual(name)) {
        space = new Space();
        for (const each of names.keys()) space.add({ name: each, what, start: 0, end: 0 });
        break;
      }
    spacesOf.set(names, space);
  }
  return space ?? undefined;
}

/** A model of another file that is spoken of, and that looks like another one. */
function checkModelsUsed(kind: ModelKind, reading: Reading, models: Models, problems: InstallationProblem[]): void {
  const known = models[kind] as ReadonlyMap<string, AnyModel>;
  const declared = new Set(reading.entities[kind].map(({ name }) => name));
  for (const { model: at } of Object.values(reading.entities).flat() as readonly Entity[]) {
    if (at === undefined || !known.has(at.text)) continue;
    const other = spaceOf(known, kind)?.like(at.text);
    // Where the file declares one of the two, it is said there.
    if (other === undefined || declared.has(at.text) || declared.has(other.name)) continue;
    const { start, end } = at;
    problems.push(likeAnother({ name: at.text, what: kind, start, end }, { ...other, library: known.get(other.name)?.path }));
  }
}

/** A terminal or a selector of a panel of another file that is spoken of, and that looks like another one. */
function checkPartsUsed(path: string, panels: readonly Panel[], problems: InstallationProblem[]): void {
  for (const { model, wires, links, selections } of panels) {
    if (model === undefined || model.path === path) continue;
    const say = (space: Space | undefined, names: ReadonlyMap<string, unknown>, { text: name, start, end }: WordValue): void => {
      const other = names.has(name) ? space?.like(name) : undefined;
      if (other !== undefined) problems.push(likeAnother({ name, what: other.what, start, end }, { ...other, library: model.path }));
    };
    const terminals = spaceOf(model.terminals, 'terminal');
    const selectors = spaceOf(model.selectors, 'selector');
    if (terminals !== undefined)
      for (const { ends } of [...wires, ...links]) for (const { at } of ends) say(terminals, model.terminals, at);
    if (selectors !== undefined) for (const { fact } of selections) say(selectors, model.selectors, fact.selector);
  }
}
