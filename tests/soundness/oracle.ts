// What the published tables ask of an installation, worked out of the truth of what was generated. Written from the tables
// themselves, in the shape in which they are printed; shares nothing with the rules that it judges.
import {
  type ControlMade,
  declaresTooLittle,
  heardOf,
  type LeafMade,
  type Letter,
  type Made,
  type Movement,
  type Protection,
  type SensorMade,
  spans,
  type Users,
} from './generate.ts';

/**
 * EN 12453:2000, 5.5.1, Table 1: least protection of the closing edge, by the way of control (rows) and by who may be near
 * (columns). `A`: held; `B`: held by a key; `-`: not allowed.
 */
const table1 = `
  control            | trained | limited | public
  held               | A       | B       | -
  impulse in view    | C or E  | C or E  | CD or E
  impulse unseen     | C or E  | CD or E | CD or E
  automatic          | CD or E | CD or E | CD or E
`;

/**
 * UL 325 as restated by DASMA TDS 353 (from memory): kinds of protection that count, by how the leaf moves. Two of different kinds in each
 * direction.
 */
const kindsAllowed = `
  slides | A B1 B2 D
  swings | A B1 B2 C D
`;

type Row = 'held' | 'impulse in view' | 'impulse unseen' | 'automatic';

const rowsOf = (text: string): string[][] =>
  text
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()));
const [heads, ...rows] = rowsOf(table1) as [string[], ...string[][]];
const allowed = new Map(rowsOf(kindsAllowed).map(([moves, kinds]) => [moves, (kinds ?? '').split(' ')]));

/** A cell of the table as the sets of measures that are enough, or the words of one that asks for none. */
export function cell(row: Row, users: Users): string {
  return rows.find(([name]) => name === row)?.[heads.indexOf(users)] ?? '';
}
const isEnough = (asked: string, letters: ReadonlySet<Letter>): boolean =>
  asked.split(' or ').some((way) => [...way].every((letter) => letters.has(letter as Letter)));

/**
 * What must be said. `unsafe`: an error about it there must be. `miswired`: it is unsafe, by a fault of wiring; an error about
 * safeguarding or about that wiring there must be. `sound`: no error about safeguarding there may be. `open`: the tables do
 * not decide it.
 */
export type Verdict = 'unsafe' | 'miswired' | 'sound' | 'open';

export interface Judgement {
  /** By the name of the leaf: how it is protected as the whole gate moves. */
  readonly leaves: ReadonlyMap<string, Verdict>;
  /** By the name of the control: whether one that is held may be used there. */
  readonly controls: ReadonlyMap<string, Verdict>;
  /** By the name of a leaf that swings: whether it may open as it is commanded to. */
  readonly openings: ReadonlyMap<string, Verdict>;
  /** By the name of a sensor or panel: whether it is declared at enough for what people rely on. */
  readonly levels: ReadonlyMap<string, Verdict>;
  /** The part opening for people on foot, if there is one. */
  readonly pedestrian: Verdict | undefined;
}

export function judge(made: Made, truth: readonly Protection[]): Judgement {
  return {
    leaves: new Map(
      made.leaves.map((leaf) => [leaf.name, made.rules === 'europe' ? byTable(made, truth, leaf) : byTwoMeans(made, truth, leaf)]),
    ),
    controls: new Map(made.controls.map((control) => [control.name, heldRightly(made, truth, control)])),
    openings: new Map(made.leaves.map((leaf) => [leaf.name, made.rules === 'europe' ? opened(made, truth, leaf) : 'sound'])),
    levels: levelsIn(made),
    pedestrian: made.pedestrian === undefined ? undefined : made.rules === 'europe' ? onFoot(made, truth, made.pedestrian) : 'sound',
  };
}

/**
 * Whoever uses it sees the whole gate: it is fixed to a place, and from there the gate is in view. A transmitter or a telephone may be
 * anywhere; at a loop or a clock nobody stands.
 */
const seen = (made: Made, { by, sight }: ControlMade): boolean =>
  (by === 'push-button' || by === 'key-switch' || by === 'keypad') && (sight ?? made.sight) === 'full';

/** A loop in the ground on an input for commands moves the gate for a vehicle. */
const loopCommands = (made: Made): boolean => made.sensors.some(({ kind, signal }) => kind === 'loop' && signal?.input === 'K1');

/** The row of the table by which a control commands; none where it only stops. */
export function rowOf(made: Made, control: ControlMade): Row | undefined {
  const { acts, by } = control;
  if (acts === 'stop') return undefined;
  if (acts === 'automatic' || by === 'clock') return 'automatic';
  if (acts === 'impulse') return seen(made, control) ? 'impulse in view' : 'impulse unseen';
  if (by === 'loop') return 'automatic';
  // Held where nobody may see the gate, it is let go of no sooner than an impulse is.
  return seen(made, control) ? 'held' : 'impulse unseen';
}

/** The rows of the table by which the gate is commanded; one that closes by itself is automatic, whatever else it has. */
export function rowsIn(made: Made): Row[] {
  const ways = made.controls.flatMap((control): Row[] => {
    const row = rowOf(made, control);
    return row === undefined ? [] : [row];
  });
  const itself =
    made.dwell !== undefined ||
    made.pedestrian?.dwell !== undefined ||
    loopCommands(made) ||
    made.panels.some(({ position }) => position === 'closes-alone');
  return itself ? [...ways, 'automatic'] : ways;
}

/** What is pressed has touched somebody; what sees limits no force; one ray is passed behind and over; a loop feels vehicles. */
const kindsThatCan: Readonly<Record<Letter, readonly SensorMade['kind'][]>> = { C: ['edge'], D: ['beam', 'curtain'], E: ['curtain'] };
const can = ({ kind }: SensorMade, letter: Letter): boolean => kindsThatCan[letter].includes(kind);

/**
 * The measures that protect a leaf in a movement; with `hopeful`, doubtful ones too. What has failed unseen protects nobody, however the
 * gate is commanded: only those count whose faults are found in time.
 */
function lettersFor(made: Made, truth: readonly Protection[], leaf: string, movement: Movement, hopeful: boolean): Set<Letter> {
  const counts = (it: string): boolean => it === 'yes' || (hopeful && it === 'doubtful');
  const letters = new Set<Letter>();
  for (const one of truth)
    if (
      one.leaf === leaf &&
      one.movement === movement &&
      counts(one.stops) &&
      counts(one.found) &&
      one.sensor.letter !== undefined &&
      can(one.sensor, one.sensor.letter) &&
      spans(made, one.sensor)
    )
      letters.add(one.sensor.letter);
  return letters;
}

function byTable(made: Made, truth: readonly Protection[], leaf: LeafMade): Verdict {
  // Nothing drives it: nothing to protect from.
  if (leaf.drive === undefined) return 'sound';
  const ways = rowsIn(made);
  if (ways.length === 0) return 'open';
  const meets = (hopeful: boolean): boolean =>
    ways.every((row) => row === 'held' || isEnough(cell(row, made.users), lettersFor(made, truth, leaf.name, 'closing', hopeful)));
  // Whether a control may be held there is judged with the control.
  return meets(false) ? 'sound' : meets(true) ? 'miswired' : 'unsafe';
}

function heldRightly(made: Made, truth: readonly Protection[], control: ControlMade): Verdict {
  if (control.acts !== 'hold-to-run') return 'sound';
  const asked = made.rules === 'europe' ? cell('held', made.users) : 'A';
  const isAllowed = asked !== '-' && (asked !== 'B' || control.by === 'key-switch');
  if (isAllowed && seen(made, control)) return 'sound';
  // Where everything is protected as if nobody held anything, nobody relies on it.
  const driven = made.leaves.filter(({ drive }) => drive !== undefined);
  const full = (hopeful: boolean): boolean =>
    driven.length > 0 &&
    driven.every(({ name }) => isEnough(cell('automatic', made.users), lettersFor(made, truth, name, 'closing', hopeful)));
  return full(false) ? 'sound' : full(true) ? 'open' : 'unsafe';
}

/** Onto the public, or with nobody beside it, a leaf opens only before something proven that watches it. */
function opened(made: Made, truth: readonly Protection[], leaf: LeafMade): Verdict {
  if (leaf.drive === undefined || leaf.moves === 'slides') return 'sound';
  const rows = rowsIn(made);
  if (rows.length > 0 && rows.every((row) => row === 'held')) return 'sound';
  const ontoPublic = leaf.opens === 'outward' && made.users === 'public';
  const unwatched =
    loopCommands(made) ||
    made.controls.some(({ acts, by }) => acts !== 'stop' && (acts === 'automatic' || by === 'clock' || by === 'loop'));
  if (!ontoPublic && !unwatched) return 'sound';
  if (lettersFor(made, truth, leaf.name, 'opening', false).size > 0) return 'sound';
  return lettersFor(made, truth, leaf.name, 'opening', true).size > 0 ? 'open' : 'unsafe';
}

/** What people rely on, and the panel that stops the gate for it, are declared at PL c or category 2 at least. */
function levelsIn(made: Made): ReadonlyMap<string, Verdict> {
  const levels = new Map<string, Verdict>();
  const tell = (name: string, verdict: Verdict): void => {
    const known = levels.get(name);
    if (known === undefined || known === 'sound' || (known === 'open' && verdict === 'unsafe')) levels.set(name, verdict);
  };
  for (const sensor of made.sensors) {
    const { panel: name, heard } = heardOf(made, sensor);
    const counts = made.rules === 'europe' && sensor.letter !== undefined && can(sensor, sensor.letter) && heard !== 'no';
    const panel = made.panels.find((one) => one.name === name);
    for (const one of [sensor, ...(panel === undefined ? [] : [panel])])
      tell(one.name, !counts || !declaresTooLittle(one.declares) ? 'sound' : heard === 'doubtful' ? 'open' : 'unsafe');
  }
  return levels;
}

function onFoot(made: Made, truth: readonly Protection[], { leaf, dwell }: NonNullable<Made['pedestrian']>): Verdict {
  if (made.leaves.find((one) => one.name === leaf)?.drive === undefined) return 'open';
  // Closing by itself it is automatic; else it closes when it is told to. Whether a clock tells it to, nobody says.
  const told = dwell === undefined ? rowsIn({ ...made, dwell: undefined }) : (['automatic'] as const);
  const surely = dwell === undefined ? told.filter((row) => row !== 'automatic') : told;
  if (told.length === 0) return 'open';
  const meets = (ways: readonly Row[], hopeful: boolean): boolean =>
    ways.every((row) => row === 'held' || isEnough(cell(row, made.users), lettersFor(made, truth, leaf, 'pedestrian', hopeful)));
  if (meets(told, false)) return 'sound';
  if (!meets(surely, true)) return 'unsafe';
  return meets(surely, false) ? 'open' : 'miswired';
}

/** Two means of different kinds in each direction, each monitored. */
function byTwoMeans(made: Made, truth: readonly Protection[], leaf: LeafMade): Verdict {
  if (leaf.drive === undefined) return 'sound';
  const { senses, limits } = leaf.drive;
  const rows = rowsIn(made);
  const held = rows.length > 0 && rows.every((row) => row === 'held');
  const kinds = (movement: Movement, hopeful: boolean, remembered: boolean): Set<string> => {
    const counts = (it: string): boolean => it === 'yes' || (hopeful && it === 'doubtful');
    const found = new Set<string>();
    if (senses) found.add('A');
    if (limits) found.add('C');
    if (held) found.add('D');
    for (const one of truth)
      if (one.leaf === leaf.name && one.movement === movement && counts(one.stops) && counts(one.found) && reachesOver(made, one.sensor))
        found.add(one.sensor.kind === 'edge' ? 'B2' : 'B1');
    // Which kinds count for which leaf is from memory: what hangs on that alone decides no error.
    return remembered ? found : new Set([...found].filter((kind) => allowed.get(leaf.moves)?.includes(kind)));
  };
  // Behind a swing leaf that opens there is not always a risk.
  const sure: readonly Movement[] = leaf.moves === 'slides' ? ['closing', 'opening'] : ['closing'];
  if ((['closing', 'opening'] as const).every((movement) => kinds(movement, false, false).size >= 2)) return 'sound';
  if (sure.some((movement) => kinds(movement, true, true).size < 2 && !onlyHeld(kinds(movement, true, true)))) return 'unsafe';
  return sure.some((movement) => kinds(movement, false, true).size < 2 && !onlyHeld(kinds(movement, false, true))) ? 'miswired' : 'open';
}

/** How low a ray has to be there is from memory: only one that spans nothing is surely none. */
const reachesOver = (made: Made, sensor: SensorMade): boolean => spans(made, { ...sensor, height: undefined });

/** That a control which is held counts at all is from memory. */
const onlyHeld = (kinds: ReadonlySet<string>): boolean => kinds.size === 1 && kinds.has('D');
