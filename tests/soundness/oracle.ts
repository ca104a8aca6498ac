// What the published tables ask of an installation, worked out of the truth of what was generated. Written from the tables
// themselves, in the shape in which they are printed; shares nothing with the rules that it judges.
import type { ControlMade, LeafMade, Letter, Made, Movement, Protection, Users } from './generate.ts';

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
  /** The part opening for people on foot, if there is one. */
  readonly pedestrian: Verdict | undefined;
}

export function judge(made: Made, truth: readonly Protection[]): Judgement {
  return {
    leaves: new Map(
      made.leaves.map((leaf) => [leaf.name, made.rules === 'europe' ? byTable(made, truth, leaf) : byTwoMeans(made, truth, leaf)]),
    ),
    controls: new Map(made.controls.map((control) => [control.name, made.rules === 'europe' ? heldRightly(control, made.users) : 'sound'])),
    pedestrian: made.pedestrian === undefined ? undefined : made.rules === 'europe' ? onFoot(made, truth, made.pedestrian) : 'sound',
  };
}

/** The rows of the table by which the gate is commanded; one that closes by itself is automatic, whatever else it has. */
function rowsIn(made: Made): Row[] {
  const ways = made.controls.map((control): Row => {
    if (control.acts === 'automatic') return 'automatic';
    if (control.acts === 'hold-to-run') return 'held';
    return (control.sight ?? made.sight) === 'full' ? 'impulse in view' : 'impulse unseen';
  });
  return made.dwell === undefined ? ways : [...ways, 'automatic'];
}

/** What is pressed has touched somebody, so it is no E; what only sees limits no force, so it is no C. */
const can = (kind: string, letter: Letter): boolean => (letter === 'C' ? kind === 'edge' : letter === 'D' || kind !== 'edge');

/**
 * The measures that protect a leaf in a movement; with `hopeful`, doubtful ones too; with `tested`, only those whose faults are found in
 * time.
 */
function lettersFor(truth: readonly Protection[], leaf: string, movement: Movement, hopeful: boolean, tested: boolean): Set<Letter> {
  const counts = (it: string): boolean => it === 'yes' || (hopeful && it === 'doubtful');
  const letters = new Set<Letter>();
  for (const one of truth)
    if (
      one.leaf === leaf &&
      one.movement === movement &&
      counts(one.stops) &&
      (!tested || counts(one.found)) &&
      one.sensor.letter !== undefined &&
      can(one.sensor.kind, one.sensor.letter)
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
    // Where a gate moves with nobody by, only a sensor that is proven before each movement can be relied on.
    ways.every(
      (row) => row === 'held' || isEnough(cell(row, made.users), lettersFor(truth, leaf.name, 'closing', hopeful, row === 'automatic')),
    );
  // Whether a control may be held there is judged with the control.
  return meets(false) ? 'sound' : meets(true) ? 'miswired' : 'unsafe';
}

function heldRightly({ acts, by }: ControlMade, users: Users): Verdict {
  if (acts !== 'hold-to-run') return 'sound';
  const asked = cell('held', users);
  return asked === '-' || (asked === 'B' && by !== 'key-switch') ? 'unsafe' : 'sound';
}

function onFoot(made: Made, truth: readonly Protection[], { leaf, dwell }: NonNullable<Made['pedestrian']>): Verdict {
  if (made.leaves.find((one) => one.name === leaf)?.drive === undefined) return 'open';
  // Closing by itself it is automatic; else it closes when it is told to. Whether a clock tells it to, nobody says.
  const told = dwell === undefined ? rowsIn({ ...made, dwell: undefined }) : (['automatic'] as const);
  const surely = dwell === undefined ? told.filter((row) => row !== 'automatic') : told;
  if (told.length === 0) return 'open';
  const meets = (ways: readonly Row[], hopeful: boolean): boolean =>
    ways.every(
      (row) => row === 'held' || isEnough(cell(row, made.users), lettersFor(truth, leaf, 'pedestrian', hopeful, row === 'automatic')),
    );
  if (meets(told, false)) return 'sound';
  if (!meets(surely, true)) return 'unsafe';
  return meets(surely, false) ? 'open' : 'miswired';
}

/** Two means of different kinds in each direction, each monitored. */
function byTwoMeans(made: Made, truth: readonly Protection[], leaf: LeafMade): Verdict {
  if (leaf.drive === undefined) return 'sound';
  const { senses, limits } = leaf.drive;
  const held = made.dwell === undefined && made.controls.length > 0 && made.controls.every((control) => control.acts === 'hold-to-run');
  const kinds = (movement: Movement, hopeful: boolean, remembered: boolean): Set<string> => {
    const counts = (it: string): boolean => it === 'yes' || (hopeful && it === 'doubtful');
    const found = new Set<string>();
    if (senses) found.add('A');
    if (limits) found.add('C');
    if (held) found.add('D');
    for (const one of truth)
      if (one.leaf === leaf.name && one.movement === movement && counts(one.stops) && counts(one.found))
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

/** That a control which is held counts at all is from memory. */
const onlyHeld = (kinds: ReadonlySet<string>): boolean => kinds.size === 1 && kinds.has('D');
