// What protects people at this gate: which sensors the panel heeds, which of them it proves, and in which ways the gate
// is commanded. Shared by the rules about safeguarding; no rule of its own.
import { forceRecordsOf } from '../figures/force-records/records.ts';
import { type Control, type Drive, type Installation, type Leaf, type Panel, perSubject, type Sensor, type Terminal, type Wire } from '../model/index.ts';

export type Movement = 'closing' | 'opening' | 'pedestrian';
export type Measure = 'C' | 'D' | 'E';

/** The terminals of a panel, commons apart, that a link bridges; undefined where there is none. */
const bridgedOf = perSubject((panel: Panel): ReadonlySet<string> | undefined => {
  let bridged: Set<string> | undefined;
  for (const link of panel.links)
    for (const { at, terminal } of link.ends) if (terminal !== undefined && terminal.role !== 'common') (bridged ??= new Set()).add(at.text);
  return bridged;
});

/** True when a link on the panel bridges one of the wire's terminals: the device can then never stop the gate. */
function isBridged(wire: Wire): boolean {
  const bridged = bridgedOf(wire.panel);
  if (bridged === undefined) return false;
  for (const { at } of wire.ends) if (bridged.has(at.text)) return true;
  return false;
}

const inputFor = { 'two-wire': 'two-wire-input', relay: 'safety-input', resistive: 'edge-input' } as const;

/** The wire that brings the sensor's report to an input that can read it, and that nothing bridges. */
function reportingWire(sensor: Sensor): Wire | undefined {
  const output = sensor.model?.facts.output?.value;
  if (output === undefined) return undefined;
  for (const wire of sensor.wires) {
    if (wire.part !== 'signal' || isBridged(wire)) continue;
    for (const { terminal } of wire.ends)
      if (terminal !== undefined && (terminal.role === inputFor[output] || (output === 'relay' && terminal.role === 'stop-input'))) return isHidden(wire, terminal) ? undefined : wire;
  }
  return undefined;
}

/** True when another contact lies side by side with it on an input that expects a closed one: it stays closed when this one opens. */
function isHidden(wire: Wire, terminal: Terminal): boolean {
  if (terminal.role === 'two-wire-input' || terminal.role === 'edge-input' || terminal.contact === 'normally-open') return false;
  for (const other of wire.panel.wires)
    if (other.part === 'signal' && other.fact.device.text !== wire.fact.device.text) for (const end of other.ends) if (end.terminal === terminal) return true;
  return false;
}

/** The wire through which a sensor reports: its own, or that of the edge whose chain it is part of. */
function wireOf(sensor: Sensor): Wire | undefined {
  const own = reportingWire(sensor);
  if (own !== undefined || sensor.model?.facts.output?.value !== 'resistive') return own;
  for (const other of sensor.installation.sensors) {
    if (other.next === undefined) continue;
    let link: Sensor | undefined = other;
    // Only resistive edges carry a loop on.
    for (let steps = 0; link?.model?.facts.output?.value === 'resistive' && steps < sensor.installation.sensors.length; steps++, link = link.next)
      if (link === sensor) {
        const wire = reportingWire(other);
        if (wire !== undefined) return wire;
      }
  }
  return undefined;
}

export interface Heeding {
  readonly wire: Wire;
  /** True when a fault of the sensor or its line is found before the next movement that relies on it. */
  readonly tested: boolean;
  /** Why it is not tested; empty when it is. */
  readonly because: string;
}

/** How the panel heeds a sensor; undefined when it does not, so that the sensor protects nobody. */
export const heedingOf = perSubject((sensor: Sensor): Heeding | undefined => {
  const wire = wireOf(sensor);
  const output = sensor.model?.facts.output?.value;
  if (wire === undefined || output === undefined) return undefined;
  const model = wire.panel.model;
  if (output === 'two-wire') {
    if (model?.facts['registers-sensors'] !== undefined && !isLearntBy(wire.panel, sensor)) return undefined;
    return { wire, tested: true, because: '' };
  }
  // A loop without a terminator is not heeded as tested: a cut cable would look like a healthy one.
  if (output === 'resistive') {
    const tested = hasTerminator(sensor);
    return { wire, tested, because: tested ? '' : 'its loop has no terminator, so a cut cable goes unseen' };
  }
  if (sensor.model?.facts.testable === undefined) return { wire, tested: false, because: 'it has no test input' };
  if (model?.facts['tests-relay-outputs'] === undefined) return { wire, tested: false, because: `${model?.name ?? 'the panel'} cannot test a relay output` };
  // Nothing says that a panel tries its stop inputs: what reports there stops the gate, but may fail unseen.
  if (!wire.ends.some((end) => end.terminal?.role === 'safety-input')) return { wire, tested: false, because: 'it reports to a stop input, and a panel tests what reports to its safety inputs' };
  if (!hasTestWire(sensor, wire.panel)) return { wire, tested: false, because: 'its test input is not wired to a test output' };
  return { wire, tested: true, because: '' };
});

/** True where the panel itself has learnt the sensor; that another one has does not count. */
export function isLearntBy(panel: Panel, sensor: Sensor): boolean {
  if (!sensor.registered || sensor.installation.panels.length < 2) return sensor.registered;
  return panel.facts.registered.some((line) => line.sensors.some((word) => word.text === sensor.name));
}

/** True when the panel that hears the sensor can test it: by its test input, or by switching its supply. */
function hasTestWire(sensor: Sensor, panel: Panel): boolean {
  for (const wire of sensor.wires) if (wire.part !== 'signal' && wire.panel === panel) for (const end of wire.ends) if (end.terminal?.role === 'test-output') return true;
  return false;
}

function hasTerminator(sensor: Sensor): boolean {
  let link: Sensor | undefined = sensor;
  for (let steps = 0; link !== undefined && steps <= sensor.installation.sensors.length; steps++, link = link.next) if (link.facts.terminator !== undefined) return true;
  return false;
}

/** True when the sensor is meant for that movement of that leaf, and no other panel than the one that hears it drives the leaf. */
export function guards(sensor: Sensor, leaf: Leaf, movement: Movement): boolean {
  return isMeantFor(sensor, leaf, movement) && reaches(sensor, leaf);
}

/** False where a panel heeds the sensor that does not drive the leaf: a panel stops what it drives. Where nobody says what drives it, any may. */
export function reaches(sensor: Sensor, leaf: Leaf): boolean {
  if (leaf.installation.panels.length < 2) return true;
  const heard = heedingOf(sensor)?.wire.panel;
  return heard === undefined || stoppingPanelsOf(leaf)?.includes(heard) !== false;
}

/** The panels that stop every drive of a leaf; undefined where it is not said what drives it. */
const stoppingPanelsOf = perSubject((leaf: Leaf): readonly Panel[] | undefined => {
  let stopping: readonly Panel[] | undefined;
  for (const drive of leaf.drives) {
    const driving = panelsByDrive(leaf.installation).get(drive);
    if (driving !== undefined) stopping = stopping === undefined ? driving : stopping.filter((panel) => driving.includes(panel));
  }
  return stopping;
});

/** The panels that each drive is wired to. */
const panelsByDrive = perSubject(({ panels }: Installation): ReadonlyMap<Drive, readonly Panel[]> => {
  const byDrive = new Map<Drive, Panel[]>();
  for (const panel of panels)
    for (const { device } of panel.wires) {
      if (device?.kind !== 'drive') continue;
      const driving = byDrive.get(device.it);
      if (driving === undefined) byDrive.set(device.it, [panel]);
      else if (!driving.includes(panel)) driving.push(panel);
    }
  return byDrive;
});

/** True when the sensor is meant for that movement of that leaf. One that sits on no leaf guards the whole opening. */
export function isMeantFor(sensor: Sensor, leaf: Leaf, movement: Movement): boolean {
  const watches = sensor.facts.watches?.movements;
  if (watches === undefined || !watches.includes(movement)) return false;
  const on = sensor.facts.on;
  if (on === undefined) return isNoEdge(sensor);
  if (sensor.leaf !== leaf) return false;
  if (movement !== 'opening') return on.edge === 'closing-edge';
  // A sliding leaf has no hinge.
  return on.edge === 'opening-edge' || (on.edge === 'hinge-edge' && leaf.facts.slides === undefined);
}

/** True when a sensor that sits on no leaf watches the movement; an edge would have to sit on one. */
const watchesOpening = (sensor: Sensor, movement: Movement): boolean => sensor.facts.watches?.movements.includes(movement) === true && isNoEdge(sensor);
const isNoEdge = (sensor: Sensor): boolean => sensor.model?.facts.kind?.value !== 'edge';

export interface Measures {
  C: boolean;
  D: boolean;
  E: boolean;
}

/** What guards one leaf, by movement: every measure, and those that are tested. */
type Guarding = Readonly<Record<Movement, { readonly all: Measures; readonly tested: Measures }>>;

/** The sensors that sit on no leaf and guard the whole opening, by the panel that heeds them. */
const openingSensorsOf = perSubject((installation: Installation): ReadonlyMap<Panel, readonly Sensor[]> => {
  const byPanel = new Map<Panel, Sensor[]>();
  for (const sensor of installation.sensors) {
    const panel = sensor.facts.on === undefined ? heedingOf(sensor)?.wire.panel : undefined;
    if (panel === undefined) continue;
    const list = byPanel.get(panel);
    if (list === undefined) byPanel.set(panel, [sensor]);
    else list.push(sensor);
  }
  return byPanel;
});

/** The panels by which a sensor of the opening can stop a leaf. */
const panelsFor = (leaf: Leaf): Iterable<Panel> => (leaf.installation.panels.length < 2 ? undefined : stoppingPanelsOf(leaf)) ?? openingSensorsOf(leaf.installation).keys();

/** The sensors that can guard a leaf, in the order of the text: those on it, and those of the opening that a panel heeds which stops it. */
export const sensorsFor = perSubject((leaf: Leaf): readonly Sensor[] => {
  const sensors = [...leaf.sensors];
  for (const panel of panelsFor(leaf)) sensors.push(...(openingSensorsOf(leaf.installation).get(panel) ?? none));
  return sensors.sort((a, b) => a.at.start - b.at.start);
});

/** What the sensors of the opening guard that a panel heeds: the same for every leaf. */
const openingGuardingOf = perSubject((panel: Panel): Guarding | undefined => {
  const sensors = openingSensorsOf(panel.installation).get(panel);
  if (sensors === undefined) return undefined;
  const guarding = noGuarding();
  for (const sensor of sensors) for (const movement of movements) if (watchesOpening(sensor, movement)) count(sensor, guarding[movement]);
  return guarding;
});

/**
 * What a sensor counts as; undefined where its model claims nothing, or what no such device can do. A loop in the ground feels
 * vehicles, not people; what has to see a person limits no force, and what has to be pressed has touched somebody already.
 */
export function measureOf(sensor: Sensor): Measure | undefined {
  const { kind, measure } = sensor.model?.facts ?? {};
  if (measure === undefined || kind?.value === 'loop') return undefined;
  if (measure.value === 'C' && (kind?.value === 'beam' || kind?.value === 'curtain')) return undefined;
  return measure.value === 'E' && kind?.value === 'edge' ? undefined : measure.value;
}

/** Counts what a sensor does, unless the panel does not heed it. */
function count(sensor: Sensor, guarding: Guarding[Movement]): void {
  const heeding = heedingOf(sensor);
  const letter = measureOf(sensor);
  if (heeding === undefined || letter === undefined) return;
  guarding.all[letter] = true;
  if (heeding.tested) guarding.tested[letter] = true;
}

const guardingOf = perSubject((leaf: Leaf): Guarding => {
  const guarding = noGuarding();
  for (const sensor of leaf.sensors) for (const movement of movements) if (guards(sensor, leaf, movement)) count(sensor, guarding[movement]);
  for (const panel of panelsFor(leaf)) {
    const opening = openingGuardingOf(panel);
    if (opening !== undefined) for (const movement of movements) add(guarding[movement], opening[movement]);
  }
  if (forcesProven(leaf)) {
    guarding.closing.all.C = guarding.pedestrian.all.C = true;
    if (limitsItself(leaf)) guarding.closing.tested.C = guarding.pedestrian.tested.C = true;
  }
  return guarding;
});

function add(to: Guarding[Movement], more: Guarding[Movement]): void {
  for (const letter of letters) {
    to.all[letter] ||= more.all[letter];
    to.tested[letter] ||= more.tested[letter];
  }
}

/**
 * True when the drive limits its own force and measured forces show that the closing edge keeps to the limits of EN 12453:
 * complete, within the limits, with a calibrated instrument. That is force limitation (C) without an edge. Of a drive that
 * has no limit of its own the records show what an edge did on that day, and taking the edge away would leave nothing; other
 * bodies of rules do not count records at all.
 */
export function forcesProven(leaf: Leaf): boolean {
  return countsRecords(leaf) && forceRecordsOf(leaf)?.closingProven === true;
}

/** The same for the opening movement: whoever is pressed against what stands behind the leaf is pressed no harder than the limits allow. */
export function openingForcesProven(leaf: Leaf): boolean {
  return countsRecords(leaf) && forceRecordsOf(leaf)?.openingProven === true;
}

const countsRecords = (leaf: Leaf): boolean => leaf.forces.length > 0 && leaf.installation.site?.facts.rules?.value !== 'north-america' && limitsForce(leaf);

const limitsForce = (leaf: Leaf): boolean =>
  leaf.drives.length > 0 && leaf.drives.every(({ model }) => model?.facts['limits-force'] !== undefined || model?.facts['senses-obstacles'] !== undefined);

/** True when the own sensing of the drives, proven by their maker, limits the force: it is at work in every movement. Of a leaf that has one. */
const limitsItself = (leaf: Leaf): boolean => leaf.drives.every((drive) => drive.model?.facts['senses-obstacles'] !== undefined);

const movements: readonly Movement[] = ['closing', 'opening', 'pedestrian'];
const none: readonly never[] = [];
const letters: readonly Measure[] = ['C', 'D', 'E'];
const noGuarding = (): Guarding => ({ closing: noMeasures(), opening: noMeasures(), pedestrian: noMeasures() });
const noMeasures = (): { all: Measures; tested: Measures } => ({ all: { C: false, D: false, E: false }, tested: { C: false, D: false, E: false } });

/** The measures that hold for a movement of a leaf; with `testedOnly`, those that are proven before it. */
export function measuresFor(leaf: Leaf, movement: Movement, testedOnly: boolean): Readonly<Measures> {
  const guarding = guardingOf(leaf)[movement];
  return testedOnly ? guarding.tested : guarding.all;
}

/** The ways in which EN 12453 tells controls apart. */
export type ControlKind = 'hold-to-run' | 'hold-to-run by key' | 'impulse, gate in view' | 'impulse, gate not in view' | 'automatic';

export interface Command {
  readonly kind: ControlKind;
  /** Where the file says so. */
  readonly at: { readonly start: number; readonly end: number };
  /** In words, with the file's own name. */
  readonly says: string;
}

/** True when every way to command the gate is hold-to-run: somebody watches, and lets go. */
export function onlyHeld(installation: Installation): boolean {
  const commands = commandsOf(installation);
  if (commands.length === 0) return false;
  for (const command of commands) if (command.kind !== 'hold-to-run' && command.kind !== 'hold-to-run by key') return false;
  return true;
}

/** The same, and whoever holds it sees the whole gate: only then does letting go protect anybody. Sight that is not stated is none. */
export function heldInView(installation: Installation): boolean {
  if (!onlyHeld(installation)) return false;
  const ofSite = installation.site?.facts.sight?.value;
  return installation.controls.every(({ facts }) => facts.acts === undefined || (facts.sight?.value ?? ofSite) === 'full');
}

/** True where forces are to be measured: under European rules, unless the gate is only ever held or the leaf can touch nobody. */
export function needsForceTest(leaf: Leaf): boolean {
  return leaf.drives.length > 0 && leaf.installation.site?.facts.rules?.value === 'europe' && !onlyHeld(leaf.installation) && !measuresFor(leaf, 'closing', false).E;
}

/** All the ways in which the gate is commanded. A gate that closes by itself is automatic, whatever else it has. */
export const commandsOf = perSubject((installation: Installation): readonly Command[] => {
  const commands: Command[] = [];
  for (const control of installation.controls) {
    const { acts } = control.facts;
    if (acts === undefined) continue;
    const kind = kindOf(control, acts.value);
    commands.push({ kind, at: acts.line, says: `“${control.name}” (${kind})` });
  }
  const dwell = installation.motion?.facts.dwell;
  if (dwell !== undefined) commands.push({ kind: 'automatic', at: dwell.line, says: 'closing by itself after the dwell' });
  return commands;
});

function kindOf(control: Control, acts: NonNullable<Control['facts']['acts']>['value']): ControlKind {
  if (acts === 'automatic') return acts;
  // Nobody watches beside a clock, and a vehicle on a loop does not let go in time.
  if (control.facts.by?.value === 'clock' || (control.facts.by?.value === 'loop' && acts === 'hold-to-run')) return 'automatic';
  if (acts === 'hold-to-run') return control.facts.by?.value === 'key-switch' ? 'hold-to-run by key' : 'hold-to-run';
  const sight = control.facts.sight?.value ?? control.installation.site?.facts.sight?.value ?? 'none';
  return sight === 'full' ? 'impulse, gate in view' : 'impulse, gate not in view';
}
