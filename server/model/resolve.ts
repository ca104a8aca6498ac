// From what a file says to the installation: names are looked up, and those that lead nowhere are reported once.
import type { WordValue } from '../../grammar/index.ts';
import {
  type BlockWord,
  type ModelKind,
  modelKinds,
  mostTold,
  type NameSpace,
  nameSpaceInWords,
  nearest,
  type Reading,
  siteWords,
} from '../vocabulary/index.ts';
import type {
  Cable,
  Control,
  Device,
  Drive,
  Installation,
  Leaf,
  Load,
  ModelOf,
  Panel,
  SafetyFunction,
  Selection,
  Sensor,
  TerminalLink,
  TerminalUse,
  Wire,
} from './installation.ts';
import { checkLookalikes } from './lookalikes.ts';
import { newCable, newControl, newDrive, newFunction, newLeaf, newPanel, newSensor } from './parts.ts';
import type { InstallationProblem, InstallationProblems } from './problems.ts';
import { type AnyModel, type Models, type Shelf, shelfProblems } from './shelf.ts';

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** The installation that a file describes, by its own reading and its shelf. Total; never throws. */
export function resolve(path: string, reading: Reading, shelf: Shelf): Installation {
  const { entities } = reading;
  const problems: InstallationProblem[] = [...reading.problems];
  if (shelf.troubles.length > 0) problems.push(...shelfProblems(shelf, reading));
  const leaves: Leaf[] = [];
  const drives: Drive[] = [];
  const sensors: Sensor[] = [];
  const controls: Control[] = [];
  const panels: Panel[] = [];
  const cables: Cable[] = [];
  const functions: SafetyFunction[] = [];
  const isThere = (word: BlockWord): boolean => entities[word].length > 0;
  const installation: Writable<Installation> = {
    path,
    reading,
    kind: siteWords.some(isThere) ? 'site' : modelKinds.some(isThere) ? 'library' : 'empty',
    site: entities.site[0],
    motion: entities.motion[0],
    leaves,
    drives,
    sensors,
    controls,
    panels,
    cables,
    functions,
    accepts: reading.accepts,
    problems,
    libraries: shelf.files,
    memo: [],
  };
  const unknown = new Unknown(problems);
  const names = new Names(problems, unknown, shelf.models);

  for (const entity of entities.leaf) {
    const leaf = newLeaf(entity, installation);
    leaves.push(leaf);
    names.declare('leaf', leaf);
  }
  for (const entity of entities.drive) {
    const drive = newDrive(entity, installation, names.model('drive-model', entity));
    drives.push(drive);
    names.declare('device', drive, { kind: 'drive', it: drive });
  }
  for (const entity of entities.sensor) {
    const sensor = newSensor(entity, installation, names.model('sensor-model', entity));
    sensors.push(sensor);
    names.declare('device', sensor, { kind: 'sensor', it: sensor });
  }
  for (const entity of entities.control) {
    const control = newControl(entity, installation);
    controls.push(control);
    names.declare('device', control, { kind: 'control', it: control });
  }
  for (const entity of entities.panel) {
    const panel = newPanel(entity, installation, names.model('panel-model', entity));
    panels.push(panel);
    names.declare('panel', panel);
  }
  for (const entity of entities.cable) {
    const cable = newCable(entity, installation, names.model('cable-model', entity));
    cables.push(cable);
    names.declare('cable', cable);
    if (entity.facts.feeds !== undefined) cable.load = names.load(entity.facts.feeds.device);
  }

  for (const leaf of leaves) tieLeaf(leaf, names, problems);
  breakRings(leaves, problems);
  for (const drive of drives) {
    const moves = drive.facts.moves;
    drive.leaf = moves === undefined ? undefined : names.leaf(moves.leaf);
    drive.leaf?.drives.push(drive);
  }
  for (const sensor of sensors) tieSensor(sensor, names);
  for (const panel of panels) tiePanel(panel, names);
  for (const order of installation.motion?.facts.order ?? []) for (const word of order.leaves) names.leaf(word);
  if (installation.motion?.facts.pedestrian !== undefined) names.leaf(installation.motion.facts.pedestrian.leaf);
  for (const measured of entities.measured)
    for (const fact of measured.facts.force) {
      const leaf = names.leaf(fact.leaf);
      if (leaf !== undefined) leaf.forces.push({ fact, measured });
    }
  for (const entity of entities.function) {
    const parts = entity.facts.parts?.parts.map((at) => ({ at, it: names.load(at) })) ?? [];
    const it = newFunction(entity, installation, parts);
    functions.push(it);
    names.declare('function', it);
  }
  for (const kind of modelKinds) for (const entity of entities[kind]) names.declare(kind, entity);
  checkPanelModels(reading, problems, unknown);
  checkLookalikes(path, reading, shelf.models, panels, problems);
  if (installation.kind === 'site') checkUnusedUses(reading, shelf, names.filesUsed, problems);
  return installation;
}

function tieLeaf(leaf: Leaf, names: Names, problems: InstallationProblem[]): void {
  const closes = leaf.facts.closes;
  if (closes === undefined) return;
  const other = names.leaf(closes.onto);
  if (other === undefined) return;
  if (other === leaf || other.covers === leaf) {
    const { start, end } = closes.onto;
    problems.push({ kind: 'overlap-circular', start, end, detail: { leaf: leaf.name, other: other.name, ring: false } });
    return;
  }
  leaf.covers = other;
  other.coveredBy = leaf;
}

/** Leaves that cover each other in a ring of three or more: none can open first. The last of them in the text covers none then. */
function breakRings(leaves: readonly Leaf[], problems: InstallationProblem[]): void {
  const seen = new Map<Leaf, number>();
  for (const [walk, from] of leaves.entries()) {
    let last = from;
    for (let leaf: Leaf | undefined = from; leaf !== undefined && !seen.has(leaf); leaf = leaf.covers) {
      seen.set(leaf, walk);
      last = leaf;
    }
    const again = last.covers;
    const closes = last.facts.closes;
    // What an earlier walk has seen leads into no ring that is still whole.
    if (again === undefined || closes === undefined || seen.get(again) !== walk) continue;
    const { start, end } = closes.onto;
    problems.push({ kind: 'overlap-circular', start, end, detail: { leaf: last.name, other: again.name, ring: true } });
    last.covers = undefined;
    again.coveredBy = undefined;
  }
}

function tieSensor(sensor: Sensor, names: Names): void {
  const { on, 'chains-into': chain } = sensor.facts;
  if (on !== undefined) {
    sensor.leaf = names.leaf(on.leaf);
    sensor.leaf?.sensors.push(sensor);
  }
  if (chain !== undefined) {
    const next = names.device(chain.next, 'sensor');
    if (next?.kind === 'sensor') sensor.next = next.it;
  }
}

function tiePanel(panel: Panel, names: Names): void {
  const { facts, model } = panel;
  const end = (at: WordValue): TerminalUse => ({ at, terminal: model?.terminals.get(at.text) });
  for (const fact of facts.wire) {
    const device = names.device(fact.device);
    const series = fact.series === undefined ? undefined : names.device(fact.series);
    const wire: Wire = { fact, panel, device, part: fact.part ?? 'signal', ends: fact.to.map(end), series };
    panel.wires.push(wire);
    if (device !== undefined && device.kind !== 'drive') device.it.wires.push(wire);
  }
  for (const fact of facts.link) panel.links.push({ fact, ends: fact.terminals.map(end) } satisfies TerminalLink);
  for (const fact of facts.select) panel.selections.push({ fact, selector: model?.selectors.get(fact.selector.text) } satisfies Selection);
  for (const fact of facts.registered)
    for (const word of fact.sensors) {
      const device = names.device(word, 'sensor');
      if (device?.kind === 'sensor') device.it.registered = true;
    }
}

/** Names inside a panel model: terminals and their commons. */
function checkPanelModels(reading: Reading, problems: InstallationProblem[], unknown: Unknown): void {
  for (const entity of reading.entities['panel-model']) {
    const seen = new Map<string, WordValue>();
    const check = (at: WordValue): void => {
      if (!seen.has(at.text)) unknown.report('name-unknown', 'terminal', at, () => seen.keys());
    };
    for (const terminal of entity.facts.terminal) {
      const first = seen.get(terminal.name.text);
      if (first === undefined) seen.set(terminal.name.text, terminal.name);
      else problems.push(repeated('terminal', terminal.name, first));
    }
    for (const terminal of entity.facts.terminal) if (terminal.common !== undefined) check(terminal.common);
    for (const output of entity.facts.output) for (const at of output.terminals) check(at);
    for (const window of entity.facts.window) check(window.terminal);
    for (const measures of entity.facts.measures) check(measures.terminal);
  }
}

/** A `use` line none of whose models is spoken of. Only said when every model is known: else it may be the very one. */
function checkUnusedUses(reading: Reading, shelf: Shelf, used: ReadonlySet<string>, problems: InstallationProblem[]): void {
  if (shelf.troubles.length > 0 || problems.some((problem) => problem.kind === 'model-unknown')) return;
  const live = new Set<number>();
  for (const path of used) {
    const use = shelf.useOf.get(path);
    if (use !== undefined) live.add(use);
  }
  for (let i = 0; i < reading.uses.length; i++) {
    const use = reading.uses[i] as Reading['uses'][number];
    if (!live.has(i)) problems.push({ kind: 'use-unused', start: use.line.start, end: use.line.end, detail: { path: use.path } });
  }
}

const repeated = (what: string, at: WordValue, first: WordValue): InstallationProblem => ({
  kind: 'name-repeated',
  start: at.start,
  end: at.end,
  detail: { name: at.text, what },
  related: [{ start: first.start, end: first.end, note: 'the first one of that name' }],
});

/** Most of the names that are there that are told of where one leads nowhere. */
const mostKnown = 12;

/** The names that lead nowhere, as they are met. */
class Unknown {
  readonly #problems: InstallationProblem[];
  readonly #counts = { 'name-unknown': 0, 'model-unknown': 0 };

  constructor(problems: InstallationProblem[]) {
    this.#problems = problems;
  }

  /** Reports one. What may be meant is guessed for as many as are told one by one: it takes a look at every name there is. */
  report<Kind extends 'name-unknown' | 'model-unknown'>(
    kind: Kind,
    what: InstallationProblems[Kind]['what'],
    { text, start, end }: WordValue,
    known: () => Iterable<string>,
  ): void {
    const names = this.#counts[kind]++ < mostTold ? [...known()] : [];
    const detail = { name: text, what, meant: nearest(text, names), known: names.slice(0, mostKnown) };
    this.#problems.push({ kind, start, end, detail } as InstallationProblem);
  }
}

interface Declared {
  readonly name: string;
  readonly nameAt: WordValue | undefined;
}

/** The names of one file. A name that leads nowhere is reported where it stands. */
class Names {
  readonly #problems: InstallationProblem[];
  readonly #unknown: Unknown;
  readonly #models: Models;
  readonly #spaces = new Map<NameSpace | ModelKind, Map<string, Declared>>();
  readonly #devices = new Map<string, Device>();
  /** Files of which a model was named. */
  readonly filesUsed = new Set<string>();

  constructor(problems: InstallationProblem[], unknown: Unknown, models: Models) {
    this.#problems = problems;
    this.#unknown = unknown;
    this.#models = models;
  }

  declare(space: NameSpace | ModelKind, it: Declared, device?: Device): void {
    if (it.nameAt === undefined) return;
    let names = this.#spaces.get(space);
    if (names === undefined) this.#spaces.set(space, (names = new Map()));
    const first = names.get(it.name);
    if (first !== undefined) {
      if (first.nameAt !== undefined) this.#problems.push(repeated(nameSpaceInWords(space), it.nameAt, first.nameAt));
      return;
    }
    names.set(it.name, it);
    if (device !== undefined) this.#devices.set(it.name, device);
  }

  leaf(at: WordValue): Leaf | undefined {
    const leaf = this.#spaces.get('leaf')?.get(at.text) as Leaf | undefined;
    if (leaf === undefined) this.#unknown.report('name-unknown', 'leaf', at, () => this.#spaces.get('leaf')?.keys() ?? []);
    return leaf;
  }

  device(at: WordValue, wanted?: 'sensor'): Device | undefined {
    const device = this.#devices.get(at.text);
    if (device !== undefined && (wanted === undefined || device.kind === wanted)) return device;
    this.#unknown.report('name-unknown', wanted ?? nameSpaceInWords('device'), at, () =>
      [...this.#devices].flatMap(([name, it]) => (wanted === undefined || it.kind === wanted ? [name] : [])),
    );
    return undefined;
  }

  /** What a cable feeds: a device, or else the panel of that name. */
  load(at: WordValue): Load | undefined {
    const device = this.#devices.get(at.text);
    if (device !== undefined) return device;
    const panels = this.#spaces.get('panel');
    const panel = panels?.get(at.text) as Panel | undefined;
    if (panel !== undefined) return { kind: 'panel', it: panel };
    this.#unknown.report('name-unknown', 'sensor, drive, control or panel', at, () => [...this.#devices.keys(), ...(panels?.keys() ?? [])]);
    return undefined;
  }

  model<K extends ModelKind>(kind: K, entity: { readonly model: WordValue | undefined }): ModelOf<K> | undefined {
    if (entity.model === undefined) return undefined;
    const models = this.#models[kind] as ReadonlyMap<string, AnyModel>;
    const model = models.get(entity.model.text);
    if (model === undefined) this.#unknown.report('model-unknown', kind, entity.model, () => models.keys());
    else this.filesUsed.add(model.path);
    return model as ModelOf<K> | undefined;
  }
}
