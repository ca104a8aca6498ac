// What protects people at this gate: which measures hold for each movement of a leaf, and in which ways the gate is commanded.
// Shared by the rules about safeguarding; no rule of its own.
import { guards, heedingOf, isEdge, measureOf, movements, panelsFor, sensorsHeardBy, watches, type Measure, type Movement } from '../circuits/index.ts';
import { forceRecordsOf } from '../figures/force-records/records.ts';
import { perSubject, type Control, type Installation, type Leaf, type Panel, type Sensor } from '../model/index.ts';

export interface Measures {
  C: boolean;
  D: boolean;
  E: boolean;
}

/** What guards one leaf, by movement: every measure, and those that are tested. */
type Guarding = Readonly<Record<Movement, { readonly all: Measures; readonly tested: Measures }>>;

/** What the sensors of the opening guard that a panel heeds: the same for every leaf. */
const openingGuardingOf = perSubject((panel: Panel): Guarding | undefined => {
  const sensors = sensorsHeardBy(panel);
  if (sensors === undefined) return undefined;
  const guarding = noGuarding();
  for (const sensor of sensors) for (const movement of movements) if (watches(sensor, movement) && !isEdge(sensor)) count(sensor, guarding[movement]);
  return guarding;
});

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
