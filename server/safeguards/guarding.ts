// Which measures hold for each movement of a leaf: of devices those that a panel heeds which stops it, and proven forces.
import {
  guards,
  heedingOf,
  isEdge,
  type Measure,
  type Movement,
  measureOf,
  missesPeople,
  movements,
  panelsFor,
  sensorsHeardBy,
  watches,
} from '../circuits/index.ts';
import { type Leaf, type Panel, perSubject, regimeOf, type Sensor } from '../model/index.ts';
import { commandsOf, heldInView } from './commands.ts';
import { forcesProven, limitsItself } from './forces.ts';

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
  for (const sensor of sensors)
    for (const movement of movements) if (watches(sensor, movement) && !isEdge(sensor)) count(sensor, guarding[movement]);
  return guarding;
});

/** Counts what a sensor does, unless the panel does not heed it. */
function count(sensor: Sensor, guarding: Guarding[Movement]): void {
  const heeding = heedingOf(sensor);
  const letter = measureOf(sensor);
  if (heeding === undefined || letter === undefined || missesPeople(sensor)) return;
  guarding.all[letter] = true;
  if (heeding.tested) guarding.tested[letter] = true;
}

const guardingOf = perSubject((leaf: Leaf): Guarding => {
  const guarding = noGuarding();
  for (const sensor of leaf.sensors)
    for (const movement of movements) if (guards(sensor, leaf, movement)) count(sensor, guarding[movement]);
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

const letters: readonly Measure[] = ['C', 'D', 'E'];
const noGuarding = (): Guarding => ({ closing: noMeasures(), opening: noMeasures(), pedestrian: noMeasures() });
const noMeasures = (): { all: Measures; tested: Measures } => ({
  all: { C: false, D: false, E: false },
  tested: { C: false, D: false, E: false },
});

/** The measures that hold for a movement of a leaf; with `testedOnly`, those that are proven before it. */
export function measuresFor(leaf: Leaf, movement: Movement, testedOnly: boolean): Readonly<Measures> {
  const guarding = guardingOf(leaf)[movement];
  return testedOnly ? guarding.tested : guarding.all;
}

/** True where forces are to be measured: under European rules, unless the gate is only ever held or the leaf can touch nobody. */
export function needsForceTest(leaf: Leaf): boolean {
  return (
    leaf.drives.length > 0 &&
    regimeOf(leaf.installation).asksForForceTests &&
    !heldInView(leaf.installation) &&
    !measuresFor(leaf, 'closing', false).E
  );
}

/**
 * True where nobody but a record says that the force limits are kept, and nobody need be looking: anybody may be near, or the gate moves
 * by itself. Of a draft the record is still to come.
 */
export function owesForceTest({ installation }: Leaf): boolean {
  const { stage, users } = installation.site?.facts ?? nothing;
  return stage?.value !== 'draft' && (users?.value === 'public' || commandsOf(installation).some(({ kind }) => kind === 'automatic'));
}

const nothing = { stage: undefined, users: undefined };
