// Whole installations made by chance, from a seed: as plain objects, as `.gate` text, and with the truth of what was made:
// which device physically stops which leaf in which movement, and whether a fault of it would be found before the movement.
// The truth is reckoned from how things are wired, never by asking the rules: this file and the oracle import nothing of theirs.

export type Movement = 'closing' | 'opening' | 'pedestrian';
export type Letter = 'C' | 'D' | 'E';
export type Users = 'trained' | 'limited' | 'public';
export type Edge = 'closing-edge' | 'receiving-edge' | 'opening-edge' | 'hinge-edge' | 'bottom-edge' | 'post-edge';
export type Place = 'hinge' | 'underside' | 'opening-side';
/** What a maker declares for functional safety; undefined where nothing is declared. */
export type Declared =
  | 'performance-level a'
  | 'performance-level b'
  | 'performance-level c'
  | 'performance-level d'
  | 'category 1'
  | 'category 2'
  | 'pfhd 2900 FIT'
  | 'pfhd 3100 FIT'
  | undefined;

export interface LeafMade {
  readonly name: string;
  readonly moves: 'swings' | 'slides';
  /** Of a leaf that swings: to which side. */
  readonly opens: 'inward' | 'outward';
  /** Nothing drives a leaf that is moved by hand. */
  readonly drive: { readonly panel: string; readonly wired: boolean; readonly senses: boolean; readonly limits: boolean } | undefined;
  /** Metres behind the open leaf, if stated. */
  readonly room: number | undefined;
}

export interface SensorMade {
  readonly name: string;
  readonly kind: 'beam' | 'edge' | 'curtain' | 'loop';
  readonly output: 'two-wire' | 'relay' | 'resistive';
  readonly contact: 'normally-closed' | 'normally-open';
  readonly testable: boolean;
  readonly letter: Letter | undefined;
  readonly declares: Declared;
  /** Of a beam or curtain: its lowest ray above the ground, and how far its maker says that it reaches, metres. */
  readonly height: number | undefined;
  readonly reach: number | undefined;
  /** Places of a leaf that its field is said to lie on. */
  readonly liesOn: { readonly leaf: string; readonly places: readonly Place[] } | undefined;
  readonly watches: readonly Movement[];
  readonly place: { readonly leaf: string; readonly edge: Edge } | undefined;
  /** The panel at which its signal, its test and its supply end. */
  readonly panel: string;
  /** The input that its signal ends on; undefined where the signal is not wired. `back` is where the other conductor ends. */
  readonly signal:
    | { readonly input: string; readonly back: 'own common' | 'other common' | 'nowhere'; readonly turned: boolean }
    | undefined;
  /** How it is tested: by a wire to the test output, by switching its supply, not at all, or by a wire that leads to something else. */
  readonly test: 'wire' | 'supply' | 'none' | 'wire to lamp' | 'wire to other panel';
  /** Panels that have learnt it. */
  readonly learntBy: readonly string[];
  readonly terminator: boolean;
  /** The sensor whose far end this one is wired to. */
  readonly behind: string | undefined;
}

export interface ControlMade {
  readonly name: string;
  readonly acts: 'hold-to-run' | 'impulse' | 'automatic' | 'stop';
  readonly by: 'push-button' | 'key-switch' | 'keypad' | 'intercom' | 'transmitter' | 'loop' | 'clock' | undefined;
  readonly sight: 'full' | 'none' | undefined;
}

export interface PanelMade {
  readonly name: string;
  readonly testsRelays: boolean;
  readonly learns: boolean;
  readonly declares: Declared;
  /** The position of its selector, which its model says the meaning of; undefined where nobody says. */
  readonly position: 'steps' | 'closes-alone' | 'held' | undefined;
  /** Inputs that a link bridges; `way`: together with a second link, by way of an unused input. */
  readonly bridges: readonly { readonly input: string; readonly by: 'link' | 'way' }[];
  /** True where unused inputs that expect a closed contact have their link. */
  readonly tidy: boolean;
}

export interface Made {
  readonly rules: 'europe' | 'north-america';
  readonly users: Users;
  readonly sight: 'full' | 'none' | undefined;
  readonly leaves: readonly LeafMade[];
  readonly sensors: readonly SensorMade[];
  readonly controls: readonly ControlMade[];
  readonly panels: readonly PanelMade[];
  readonly dwell: number | undefined;
  readonly pedestrian: { readonly leaf: string; readonly dwell: number | undefined } | undefined;
  /** True where the models stand in a library of their own. */
  readonly library: boolean;
  /** Decides the order of the blocks. */
  readonly shuffle: number;
}

type Role =
  | 'motor'
  | 'command-input'
  | 'stop-input'
  | 'safety-input'
  | 'edge-input'
  | 'two-wire-input'
  | 'supply-out'
  | 'test-output'
  | 'lamp-output';
interface Terminal {
  readonly role: Role;
  readonly common?: string;
  readonly contact?: 'normally-closed' | 'normally-open';
}

/** The terminals of every panel made here. */
const terminals: Readonly<Record<string, Terminal>> = {
  LA1: { role: 'motor' },
  LA2: { role: 'motor' },
  LB1: { role: 'motor' },
  LB2: { role: 'motor' },
  LC1: { role: 'motor' },
  LC2: { role: 'motor' },
  K1: { role: 'command-input', common: 'K0', contact: 'normally-open' },
  H1: { role: 'stop-input', common: 'H0', contact: 'normally-closed' },
  // Where controls that stop the gate are wired.
  H2: { role: 'stop-input', common: 'H0', contact: 'normally-closed' },
  G1: { role: 'safety-input', common: 'G0', contact: 'normally-closed' },
  G2: { role: 'safety-input', common: 'G0', contact: 'normally-closed' },
  G3: { role: 'safety-input', common: 'G0', contact: 'normally-closed' },
  G4: { role: 'safety-input', common: 'G0', contact: 'normally-open' },
  E1: { role: 'edge-input', common: 'E0' },
  E2: { role: 'edge-input', common: 'E0' },
  E3: { role: 'edge-input', common: 'E0' },
  T1: { role: 'two-wire-input', common: 'T0' },
  V1: { role: 'supply-out' },
  X1: { role: 'test-output' },
  W1: { role: 'lamp-output' },
};
const commons = ['K0', 'H0', 'G0', 'E0', 'T0', 'V0'];
const inputsFor: Readonly<Record<SensorMade['output'], readonly string[]>> = {
  relay: ['G1', 'G2', 'G3', 'G4', 'H1'],
  resistive: ['E1', 'E2', 'E3'],
  'two-wire': ['T1'],
};

// ---- chance ----

/** Numbers from 0 to 1, the same ones for the same seed. */
function chanceFrom(seed: number): () => number {
  let state = (seed ^ 0x9e3779b9) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x7feb352d);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x846ca68b);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
  };
}

const low = ['performance-level a', 'performance-level b', 'category 1', 'pfhd 3100 FIT'] as const;
const enough = ['performance-level c', 'performance-level d', 'category 2', 'pfhd 2900 FIT'] as const;

/** One installation; the same seed gives the same one. */
export function make(seed: number): Made {
  const next = chanceFrom(seed);
  for (let i = 0; i < 4; i++) next();
  const often = (share: number): boolean => next() < share;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  const some = <T>(list: readonly T[], share: number): T[] => list.filter(() => often(share));
  /** How much goes wrong at this site: nothing, a little, a lot. */
  const slip = pick([0, 0, 0.04, 0.15, 0.4]);

  const twoPanels = often(0.12);
  const panelNames = twoPanels ? ['main', 'second'] : ['main'];
  const bodyOfRules = often(0.75) ? 'europe' : 'north-america';
  const leaves = ['west', 'east', 'side'].slice(0, pick([1, 1, 1, 2, 2, 2, 3])).map((name): LeafMade => {
    const american = bodyOfRules === 'north-america';
    const drive = {
      panel: pick(panelNames),
      wired: twoPanels || often(0.9),
      senses: often(american ? 0.6 : 0.3),
      limits: often(american ? 0.4 : 0.3),
    };
    return {
      name,
      moves: often(0.6) ? 'swings' : 'slides',
      opens: often(0.8) ? 'inward' : 'outward',
      drive: often(0.06) ? undefined : drive,
      room: often(0.3) ? pick([0.2, 0.4, 0.6, 1.5]) : undefined,
    };
  });

  const sensors: SensorMade[] = [];
  const taken = new Set<string>();
  const panelOf = (leaf: LeafMade | undefined): string => (leaf?.drive === undefined || often(slip) ? pick(panelNames) : leaf.drive.panel);
  const add = (
    kind: SensorMade['kind'],
    letter: Letter | undefined,
    outputs: readonly SensorMade['output'][],
    leaf: LeafMade | undefined,
    edge: Edge,
  ): void => {
    const output = pick(outputs);
    const panel = panelOf(leaf ?? leaves[0]);
    const contact = often(0.8) ? 'normally-closed' : 'normally-open';
    const free = inputsFor[output].filter((input) => output === 'two-wire' || !taken.has(panel + input));
    const fit = free.filter((input) => terminals[input]?.contact === undefined || terminals[input]?.contact === contact);
    let input = pick(fit.length > 0 ? fit : free);
    if (input !== undefined && often(slip / 3)) input = pick(inputsFor[output]);
    if (often(slip / 2))
      input = pick(
        Object.keys(terminals).filter((name) => terminals[name]?.common !== undefined || terminals[name]?.role === 'lamp-output'),
      );
    const back = often(slip / 5) ? pick(['other common', 'nowhere'] as const) : ('own common' as const);
    const signal = input === undefined || often(slip / 2) ? undefined : { input, back, turned: often(0.2) };
    if (signal !== undefined) taken.add(panel + signal.input);
    const watches = often(slip)
      ? some(['closing', 'opening', 'pedestrian'] as const, 0.4)
      : (['closing', ...some(['opening', 'pedestrian'] as const, 0.7)] as const);
    const place =
      leaf === undefined || often(slip / 3)
        ? undefined
        : {
            leaf: leaf.name,
            edge: often(slip / 2)
              ? pick(['closing-edge', 'receiving-edge', 'opening-edge', 'hinge-edge', 'bottom-edge', 'post-edge'] as const)
              : edge === 'closing-edge' && kind === 'edge' && often(0.15)
                ? 'receiving-edge'
                : edge,
          };
    // An edge may hang on the far end of one that is there already, on the same leaf or on another.
    const heads =
      output !== 'resistive'
        ? []
        : sensors.filter(
            (other) =>
              other.panel === panel &&
              !sensors.some((one) => one.behind === other.name) &&
              (other.output === 'resistive' || often(slip / 2)),
          );
    const behind = heads.length > 0 && often(0.4) ? pick(heads).name : undefined;
    const made: SensorMade = {
      name: `${kind}-${sensors.length + 1}`,
      kind,
      output,
      contact,
      letter,
      declares: often(0.25 + slip) ? (often(slip) ? pick(low) : pick(enough)) : undefined,
      height: kind !== 'beam' && kind !== 'curtain' ? undefined : often(slip) ? pick([undefined, 0.301, 0.6, 2]) : pick([0.2, 0.3]),
      reach: kind !== 'beam' && kind !== 'curtain' ? undefined : often(slip / 2) ? pick([1.5, 3]) : pick([undefined, 6, 12]),
      liesOn:
        kind === 'curtain' && often(0.2)
          ? { leaf: pick(leaves).name, places: some(['hinge', 'underside', 'opening-side'] as const, 0.6) }
          : undefined,
      place,
      panel,
      testable: often(0.75),
      watches: watches.length === 0 ? ['closing'] : watches,
      signal: behind === undefined || often(slip / 4) ? signal : undefined,
      test: often(0.75)
        ? pick(['wire', 'wire', 'wire', 'supply'] as const)
        : often(slip)
          ? pick(['wire to lamp', 'wire to other panel'] as const)
          : 'none',
      learntBy: often(1 - slip) ? [panel] : some(panelNames, 0.3),
      terminator: output === 'resistive' && !often(slip / 2),
      behind,
    };
    // With a chain the terminator goes to its new end.
    if (behind !== undefined && !often(slip / 3)) {
      const at = sensors.findIndex((one) => one.name === behind);
      sensors[at] = { ...(sensors[at] as SensorMade), terminator: false };
    }
    sensors.push(made);
  };
  for (const leaf of leaves) {
    const way = pick(['C', 'C', 'CD', 'CD', 'CD', 'E', 'D', 'nothing', 'anything'] as const);
    const edge = often(slip / 3) ? undefined : leaf;
    if (way === 'C' || way === 'CD') add('edge', 'C', ['resistive', 'resistive', 'relay', 'two-wire'], edge, 'closing-edge');
    // One ray that the leaf carries along spans nothing.
    if (way === 'CD' || way === 'D') add('beam', 'D', ['two-wire', 'relay'], often(slip) ? leaf : undefined, 'closing-edge');
    if (way === 'E') add('curtain', 'E', ['two-wire', 'two-wire', 'relay'], often(0.5) ? undefined : leaf, 'closing-edge');
    if (way === 'anything')
      add(
        pick(['beam', 'edge', 'curtain', 'loop'] as const),
        pick(['C', 'D', 'E', undefined] as const),
        ['two-wire', 'relay', 'resistive'],
        often(0.5) ? undefined : leaf,
        'closing-edge',
      );
    if (often(bodyOfRules === 'north-america' ? 0.6 : 0.15))
      add('edge', 'C', ['resistive', 'two-wire', 'relay'], leaf, often(0.8) ? 'opening-edge' : 'hinge-edge');
    if (often(bodyOfRules === 'north-america' ? 0.4 : 0.1))
      add('beam', often(0.7) ? 'D' : undefined, ['two-wire', 'relay'], undefined, 'closing-edge');
  }
  if (often(0.08)) add('loop', often(0.5) ? undefined : pick(['C', 'D', 'E'] as const), ['relay'], undefined, 'closing-edge');

  const held = often(0.2);
  const controls = Array.from({ length: often(0.03) ? 0 : pick([1, 1, 2, 3]) }, (_, i): ControlMade => {
    const acts = held
      ? pick(['hold-to-run', 'hold-to-run', 'hold-to-run', 'stop'] as const)
      : pick(['impulse', 'impulse', 'impulse', 'impulse', 'automatic', 'hold-to-run', 'stop'] as const);
    const by =
      acts === 'hold-to-run'
        ? often(slip)
          ? pick(['transmitter', 'intercom', 'keypad', 'loop', 'clock', undefined] as const)
          : pick(['push-button', 'key-switch', 'key-switch'] as const)
        : acts === 'automatic'
          ? pick(['clock', 'loop', undefined] as const)
          : acts === 'stop'
            ? 'push-button'
            : pick(['transmitter', 'keypad', 'push-button', 'key-switch', 'intercom', 'loop', 'clock', undefined] as const);
    return {
      name: `control-${i + 1}`,
      acts,
      by,
      sight: pick(held ? (['full', 'full', 'none', undefined] as const) : (['full', 'none', undefined, undefined] as const)),
    };
  });
  const panels = panelNames.map((name): PanelMade => {
    const wired = sensors.flatMap((sensor) =>
      sensor.panel === name && sensor.signal !== undefined && terminals[sensor.signal.input]?.common !== undefined
        ? [sensor.signal.input]
        : [],
    );
    return {
      name,
      testsRelays: often(0.7),
      learns: often(0.6),
      declares: often(0.25 + slip) ? (often(slip) ? pick(low) : pick(enough)) : undefined,
      position: pick(
        held ? (['held', 'held', 'steps', undefined] as const) : (['steps', 'steps', 'closes-alone', 'held', undefined] as const),
      ),
      bridges: [...new Set(wired)].flatMap((input) =>
        often(slip / 3) ? [{ input, by: often(0.3) ? ('way' as const) : ('link' as const) }] : [],
      ),
      tidy: often(0.8),
    };
  });
  return {
    rules: bodyOfRules,
    users: pick(['trained', 'limited', 'public'] as const),
    sight: pick(['full', 'none', undefined] as const),
    leaves,
    sensors,
    controls,
    panels,
    dwell: held ? (often(0.1) ? 20 : undefined) : often(0.4) ? 20 : undefined,
    pedestrian: often(0.5) ? { leaf: pick(leaves).name, dwell: often(0.5) ? 10 : undefined } : undefined,
    library: often(0.3),
    shuffle: Math.floor(next() * 1e9),
  };
}

// ---- truth ----

/** `doubtful`: wired in a way that no rule about safeguarding need judge; what is wrong is said of the wiring. */
export type Truth = 'yes' | 'no' | 'doubtful';
const worse = (a: Truth, b: Truth): Truth => (a === 'no' || b === 'no' ? 'no' : a === 'doubtful' || b === 'doubtful' ? 'doubtful' : 'yes');

/** What one sensor does for one leaf in one movement. */
export interface Protection {
  readonly sensor: SensorMade;
  readonly leaf: string;
  readonly movement: Movement;
  /** Whether it stops the leaf before, or as soon as, it touches a person there. */
  readonly stops: Truth;
  /** Whether a fault of it or of its line is found before the leaf moves. */
  readonly found: Truth;
}

/** Every sensor for every leaf and movement for which it does anything. */
export function truthOf(made: Made): readonly Protection[] {
  const protections: Protection[] = [];
  for (const sensor of made.sensors) {
    const { head, whole } = chainOf(made, sensor);
    const reports = reportsOf(made, sensor, head, whole);
    const found = foundOf(made, sensor, head, whole);
    for (const leaf of made.leaves)
      for (const movement of sensor.watches) {
        // A panel stops what it drives, and nothing else.
        const drives: Truth = leaf.drive === undefined ? 'no' : leaf.drive.wired && leaf.drive.panel !== head.panel ? 'no' : 'yes';
        const stops = worse(worse(reports, feels(sensor, leaf, movement)), drives);
        if (stops !== 'no') protections.push({ sensor, leaf: leaf.name, movement, stops, found });
      }
  }
  return protections;
}

/** Whether a panel hears a sensor at all, and which: the one that its chain is wired to. */
export function heardOf(made: Made, sensor: SensorMade): { readonly panel: string; readonly heard: Truth } {
  const { head, whole } = chainOf(made, sensor);
  return { panel: head.panel, heard: reportsOf(made, sensor, head, whole) };
}

/** Metres from one side of the opening to the other. */
const widthOf = (made: Made): number => made.leaves.length * leafWidth;
const leafWidth = 2;

/** Whether a ray of a beam or curtain meets a person there: low enough for one who lies, and to the other side; not one that rides along. */
export function spans(made: Made, { kind, height, reach, place, liesOn, watches }: SensorMade): boolean {
  if (kind !== 'beam' && kind !== 'curtain') return true;
  if (height !== undefined && height > 0.3) return false;
  if (place !== undefined) return kind === 'curtain';
  // A field that lies along a leaf, and watches nothing in the opening, need not reach across it.
  const isElsewhere = liesOn !== undefined && liesOn.places.length > 0 && !watches.includes('closing') && !watches.includes('pedestrian');
  return isElsewhere || reach === undefined || reach >= widthOf(made);
}

/** The edge by which a chain is wired to the panel, and whether nothing but resistive edges lies on the way. */
function chainOf(made: Made, sensor: SensorMade): { readonly head: SensorMade; readonly whole: boolean } {
  let head = sensor;
  let whole = true;
  // Where an edge is wired by itself, that is how it reports.
  for (let steps = 0; head.signal === undefined && head.behind !== undefined && steps < made.sensors.length; steps++) {
    const before = made.sensors.find((one) => one.name === head.behind);
    if (before === undefined) break;
    if (before.output !== 'resistive' || head.output !== 'resistive') whole = false;
    head = before;
  }
  return { head, whole };
}

function reportsOf(made: Made, sensor: SensorMade, head: SensorMade, whole: boolean): Truth {
  const panel = made.panels.find((one) => one.name === head.panel);
  const signal = head.signal;
  // An edge that is wired and hangs behind another as well: nobody can tell which of the two counts.
  if (head.behind !== undefined) return sensor.output === 'resistive' ? 'doubtful' : 'no';
  if (signal === undefined || panel === undefined || !whole) return 'no';
  const terminal = terminals[signal.input] as Terminal;
  if (!inputsFor[sensor.output].includes(signal.input) && !(sensor.output === 'relay' && signal.input === 'H2')) return 'no';
  if (panel.bridges.some((bridge) => bridge.input === signal.input)) return 'no';
  if (sensor.output === 'two-wire' && panel.learns && !sensor.learntBy.includes(panel.name)) return 'no';
  let truth: Truth = signal.back === 'own common' ? 'yes' : 'doubtful';
  if (sensor.output === 'relay') {
    if (terminal.contact !== sensor.contact) truth = 'doubtful';
    const beside = made.sensors.filter((one) => one !== head && one.panel === head.panel && one.signal?.input === signal.input);
    // Side by side, one closed contact hides another that opens.
    if (beside.length > 0 && terminal.contact === 'normally-closed')
      return beside.every((one) => one.output === 'relay' && one.contact === 'normally-closed') && truth === 'yes' ? 'no' : 'doubtful';
  }
  if (sensor.output === 'resistive') {
    const ends = loopOf(made, head);
    // No terminator, several, or one before the end: the panel sees a fault, or was set to overlook one.
    if (ends.terminators !== 1 || !ends.atEnd || ends.wires !== 1) truth = 'doubtful';
  }
  return truth;
}

/** The terminators on the input that an edge is wired to, whether the one is at the far end, and how many edges are wired there. */
function loopOf(made: Made, head: SensorMade): { readonly terminators: number; readonly atEnd: boolean; readonly wires: number } {
  const wired = made.sensors.filter((one) => one.panel === head.panel && one.signal?.input === head.signal?.input);
  const all = new Set(wired);
  for (let grown = true; grown; ) {
    grown = false;
    for (const one of made.sensors)
      if (one.behind !== undefined && !all.has(one) && [...all].some((other) => other.name === one.behind)) {
        all.add(one);
        grown = true;
      }
  }
  const terminated = [...all].filter((one) => one.terminator);
  return {
    terminators: terminated.length,
    atEnd: terminated.every((one) => !made.sensors.some((other) => other.behind === one.name)),
    wires: wired.length,
  };
}

function foundOf(made: Made, sensor: SensorMade, head: SensorMade, whole: boolean): Truth {
  const panel = made.panels.find((one) => one.name === head.panel);
  if (panel === undefined || !whole) return 'no';
  if (sensor.output === 'two-wire') return 'yes';
  // Who declares enough answers for the faults of the device itself; of the cable only a closed contact tells.
  const answersForItself = declaresEnough(sensor.declares) && terminals[sensor.signal?.input ?? '']?.contact !== 'normally-open';
  if (sensor.output === 'relay' && answersForItself) return 'yes';
  // A panel tries its safety inputs; a stop input only listens.
  if (sensor.output === 'relay')
    return terminals[sensor.signal?.input ?? '']?.role === 'safety-input' &&
      sensor.testable &&
      panel.testsRelays &&
      (sensor.test === 'wire' || sensor.test === 'supply')
      ? 'yes'
      : 'no';
  const loop = loopOf(made, head);
  if (loop.terminators === 0) return 'no';
  return loop.terminators === 1 && loop.atEnd && loop.wires === 1 ? 'yes' : 'doubtful';
}

/** PL c or category 2, or fewer than 3e-6 dangerous failures an hour: EN 12453:2017, 5.1.2; EN ISO 13849-1. */
export const declaresEnough = (declared: Declared): boolean =>
  declared !== undefined && /level [cde]|category [234]|pfhd [12]\d{3} /.test(declared);
export const declaresTooLittle = (declared: Declared): boolean => declared !== undefined && !declaresEnough(declared);

/** Whether a sensor is where a person would be caught in that movement. */
function feels(sensor: SensorMade, leaf: LeafMade, movement: Movement): Truth {
  // A loop in the ground feels vehicles, not people.
  if (sensor.kind === 'loop') return 'no';
  const { place } = sensor;
  // An edge that nobody says the place of may be anywhere.
  if (place === undefined) return sensor.kind === 'edge' ? 'doubtful' : 'yes';
  if (place.leaf !== leaf.name) return 'no';
  if (movement !== 'opening') return place.edge === 'closing-edge' || place.edge === 'receiving-edge' ? 'yes' : 'no';
  return place.edge === 'opening-edge' ? 'yes' : place.edge === 'hinge-edge' && leaf.moves === 'swings' ? 'doubtful' : 'no';
}

// ---- text ----

export interface Texts {
  readonly site: string;
  /** The library, where the site uses one; it stands beside the site as models.gate. */
  readonly library: string | undefined;
}

export function textOf(made: Made): Texts {
  const models = modelsOf(made);
  const blocks: string[] = [];
  const block = (head: string, lines: readonly (string | false | undefined)[]): void =>
    void blocks.push(
      `${head} {\n${lines
        .filter((line) => typeof line === 'string')
        .map((line) => `  ${line}\n`)
        .join('')}}\n`,
    );
  block('site "Made by chance"', [`rules ${made.rules}`, `users ${made.users}`, made.sight && `sight ${made.sight}`]);
  for (const leaf of made.leaves) {
    block(`leaf ${leaf.name}`, [
      `width ${leafWidth} m`,
      'height 1.8 m',
      'mass 150 kg',
      leaf.moves === 'swings' ? `opens ${leaf.opens} 90 deg` : `slides left ${leafWidth} m`,
      leaf.room !== undefined && `room-when-open ${leaf.room} m`,
    ]);
    if (leaf.drive !== undefined) block(`drive ${leaf.name}-drive : ${driveModelOf(leaf)}`, [`moves ${leaf.name}`]);
  }
  for (const sensor of made.sensors) {
    const next = made.sensors.find((one) => one.behind === sensor.name);
    block(`sensor ${sensor.name} : ${sensorModelOf(sensor)}`, [
      `watches ${sensor.watches.join(', ')}`,
      sensor.place && `on ${sensor.place.leaf} ${sensor.place.edge}`,
      sensor.height !== undefined && `height ${sensor.height} m`,
      sensor.liesOn !== undefined && sensor.liesOn.places.length > 0 && `guards ${sensor.liesOn.leaf} ${sensor.liesOn.places.join(', ')}`,
      sensor.terminator && 'terminator 8.2 kohm',
      next && `chains-into ${next.name}`,
    ]);
  }
  for (const control of made.controls)
    block(`control ${control.name}`, [control.by && `by ${control.by}`, `acts ${control.acts}`, control.sight && `sight ${control.sight}`]);
  for (const panel of made.panels) block(`panel ${panel.name} : ${panelModelOf(panel)}`, linesOf(made, panel));
  if (made.dwell !== undefined || made.pedestrian !== undefined) {
    const { pedestrian } = made;
    block('motion', [
      made.dwell !== undefined && `dwell ${made.dwell} s`,
      pedestrian && `pedestrian ${pedestrian.leaf} to 60 %${pedestrian.dwell === undefined ? '' : ` dwell ${pedestrian.dwell} s`}`,
    ]);
  }
  if (!made.library) blocks.push(...models);
  const next = chanceFrom(made.shuffle);
  if (made.shuffle !== 0)
    for (let i = blocks.length - 1; i > 0; i--) {
      const j = Math.floor(next() * (i + 1));
      [blocks[i], blocks[j]] = [blocks[j] as string, blocks[i] as string];
    }
  const head = made.library ? 'language 1\nuse "models.gate"\n' : 'language 1\n';
  return { site: [head, ...blocks].join('\n'), library: made.library ? ['language 1\n', ...models].join('\n') : undefined };
}

const driveModelOf = (leaf: LeafMade): string =>
  `${leaf.moves === 'slides' ? 'rack' : 'shaft'}${leaf.drive?.senses === true ? '-sensing' : ''}${leaf.drive?.limits === true ? '-limiting' : ''}`;
const declaredName = (declares: Declared): string | undefined => declares?.replace(/ FIT$/, '').replaceAll(' ', '-');
const sensorModelOf = ({ kind, output, contact, testable, letter, reach, declares }: SensorMade): string =>
  [
    kind,
    output,
    output === 'relay' && contact === 'normally-open' && 'open',
    output === 'relay' && testable && 'testable',
    letter?.toLowerCase(),
    reach === undefined ? undefined : `r${reach * 1000}`,
    declaredName(declares),
  ]
    .filter((part) => typeof part === 'string')
    .join('-');
const panelModelOf = (panel: PanelMade): string =>
  `box${panel.testsRelays ? '-testing' : ''}${panel.learns ? '-learning' : ''}${panel.declares === undefined ? '' : `-${declaredName(panel.declares)}`}`;

function linesOf(made: Made, panel: PanelMade): string[] {
  const lines: string[] = panel.position === undefined ? [] : [`select reply ${panel.position}`];
  const used = new Set<string>();
  const driven = made.leaves.filter((leaf) => leaf.drive?.panel === panel.name && leaf.drive.wired);
  driven.forEach((leaf, i) => lines.push(`wire ${leaf.name}-drive to L${'ABC'[i]}1 L${'ABC'[i]}2`));
  for (const sensor of made.sensors) {
    if (sensor.panel === panel.name && sensor.signal !== undefined) {
      const { input, back, turned } = sensor.signal;
      const own = terminals[input]?.common;
      const other = commons.find((common) => common !== own) as string;
      const ends = [input, ...(back === 'nowhere' ? [] : back === 'own common' ? (own === undefined ? [] : [own]) : [other])];
      lines.push(`wire ${sensor.name} to ${(turned ? ends.reverse() : ends).join(' ')}`);
      used.add(input);
    }
    const home = sensor.panel === panel.name;
    if (sensor.output === 'relay') {
      if (home && sensor.test === 'supply') lines.push(`wire ${sensor.name} supply to X1 V0`);
      if (home && sensor.test === 'wire') lines.push(`wire ${sensor.name} test to X1 V0`);
      if (home && sensor.test === 'wire to lamp') lines.push(`wire ${sensor.name} test to W1`);
      if (!home && sensor.test === 'wire to other panel') lines.push(`wire ${sensor.name} test to X1 V0`);
    }
  }
  if (panel.name === made.panels[0]?.name)
    for (const { name, acts } of made.controls) {
      if (acts === 'stop' && used.has('H2')) continue;
      if (acts === 'stop') used.add('H2');
      lines.push(`wire ${name} to ${acts === 'stop' ? 'H2 H0' : 'K1 K0'}`);
    }
  const spare = Object.keys(terminals).filter((name) => terminals[name]?.contact === 'normally-closed' && !used.has(name));
  for (const bridge of panel.bridges) {
    const common = terminals[bridge.input]?.common as string;
    const way = bridge.by === 'way' ? spare.find((name) => terminals[name]?.common === common) : undefined;
    if (way !== undefined) spare.splice(spare.indexOf(way), 1);
    if (way === undefined) lines.push(`link ${bridge.input} ${common}`);
    else lines.push(`link ${bridge.input} ${way}`, `link ${way} ${common}`);
  }
  if (panel.tidy) for (const name of spare) lines.push(`link ${name} ${terminals[name]?.common}`);
  const learnt = made.sensors.filter((sensor) => sensor.learntBy.includes(panel.name) && sensor.output === 'two-wire');
  if (learnt.length > 0) lines.push(`registered ${learnt.map((sensor) => sensor.name).join(', ')}`);
  return lines;
}

/** The models that the site speaks of, each once. */
function modelsOf(made: Made): string[] {
  const models = new Map<string, string>();
  const model = (kind: string, name: string, lines: readonly (string | false | undefined)[]): void =>
    void models.set(
      name,
      `${kind} ${name} {\n${lines
        .filter((line) => typeof line === 'string')
        .map((line) => `  ${line}\n`)
        .join('')}}\n`,
    );
  for (const leaf of made.leaves)
    if (leaf.drive !== undefined)
      model('drive-model', driveModelOf(leaf), [
        ...(leaf.moves === 'slides' ? ['kind rack', 'speed 200 mm/s'] : ['kind direct', 'shaft-speed 6 deg/s', 'rotation 110 deg']),
        leaf.drive.senses && 'senses-obstacles',
        leaf.drive.limits && 'limits-force',
      ]);
  for (const sensor of made.sensors)
    model('sensor-model', sensorModelOf(sensor), [
      `kind ${sensor.kind}`,
      `output ${sensor.output}`,
      sensor.output === 'relay' && `contact ${sensor.contact}`,
      sensor.output === 'relay' && sensor.testable && 'testable',
      sensor.output === 'resistive' && 'terminator 8.2 kohm',
      sensor.letter && `measure ${sensor.letter}`,
      sensor.reach !== undefined && `reach ${sensor.reach} m`,
      sensor.declares,
    ]);
  for (const panel of made.panels)
    model('panel-model', panelModelOf(panel), [
      'leaves 3',
      panel.testsRelays && 'tests-relay-outputs',
      panel.learns && 'registers-sensors',
      panel.declares,
      'selector reply "What a command does" {\n    option steps "open, stop, close, stop" acts impulse\n    option closes-alone "closes by itself" acts automatic\n    option held "moves while the command is held" acts hold-to-run\n  }',
      ...commons.map((name) => `terminal ${name} common`),
      ...Object.entries(terminals).map(
        ([name, { role, contact, common }]) =>
          `terminal ${name} ${role}${contact === undefined ? '' : ` ${contact}`}${common === undefined ? '' : ` common ${common}`}${role === 'edge-input' ? ' terminator 8.2 kohm' : ''}`,
      ),
    ]);
  return [...models.values()];
}
