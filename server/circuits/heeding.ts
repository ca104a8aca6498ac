// Which device is heard by which panel, and which leaf that panel stops. A sensor that no panel heeds protects nobody.
import { type Drive, type Installation, type Leaf, type Panel, perSubject, type Sensor, type Wire } from '../model/index.ts';
import { isMeantFor, type Movement } from './devices.ts';
import { declaredAs } from './levels.ts';
import { isLinked } from './links.ts';
import { isResistive } from './loops.ts';
import { isHiddenOn } from './terminals.ts';

const inputFor = { 'two-wire': 'two-wire-input', relay: 'safety-input', resistive: 'edge-input' } as const;

/** The wire that brings the sensor's report to an input that can read it, and that nothing bridges. */
function reportingWire(sensor: Sensor): Wire | undefined {
  const output = sensor.model?.facts.output?.value;
  if (output === undefined) return undefined;
  for (const wire of sensor.wires) {
    if (wire.part !== 'signal' || isLinked(wire)) continue;
    for (const { terminal } of wire.ends)
      if (terminal !== undefined && (terminal.role === inputFor[output] || (output === 'relay' && terminal.role === 'stop-input')))
        return isHiddenOn(wire, terminal) ? undefined : wire;
  }
  return undefined;
}

/** The wire through which a sensor reports: its own, or that of the edge whose chain it is part of. */
function wireOf(sensor: Sensor): Wire | undefined {
  const own = reportingWire(sensor);
  return own !== undefined || !isResistive(sensor) ? own : wiresByChain(sensor.installation).get(sensor);
}

/** The wire of the first edge in the file whose chain leads to each. Only resistive edges carry a loop on. */
const wiresByChain = perSubject(({ sensors }: Installation): ReadonlyMap<Sensor, Wire> => {
  const byChain = new Map<Sensor, Wire>();
  for (const sensor of sensors) {
    const wire = sensor.next === undefined ? undefined : reportingWire(sensor);
    if (wire === undefined) continue;
    // Behind an edge that is reached already, an earlier chain has reached all.
    for (let link: Sensor | undefined = sensor; link !== undefined && isResistive(link) && !byChain.has(link); link = link.next)
      byChain.set(link, wire);
  }
  return byChain;
});

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
  const because = whyUntested(sensor, wire);
  return { wire, tested: because === '' || provesItself(sensor, wire), because };
});

/**
 * True where the maker declares that the sensor finds its own faults well enough, and a cut wire reads as somebody in the way. What
 * waits for a contact to close hears nothing of a cut wire.
 */
const provesItself = (sensor: Sensor, { ends }: Wire): boolean =>
  declaredAs(sensor.model?.facts) === 'enough' && !ends.some(({ terminal }) => terminal?.contact === 'normally-open');

/** Why a fault of a sensor with a relay would not be found; empty where it would. */
function whyUntested(sensor: Sensor, { panel, ends }: Wire): string {
  if (sensor.model?.facts.testable === undefined) return 'it has no test input';
  if (panel.model?.facts['tests-relay-outputs'] === undefined) return `${panel.model?.name ?? 'the panel'} cannot test a relay output`;
  // Nothing says that a panel tries its stop inputs: what reports there stops the gate, but may fail unseen.
  if (!ends.some((end) => end.terminal?.role === 'safety-input'))
    return 'it reports to a stop input, and a panel tests what reports to its safety inputs';
  return hasTestWire(sensor, panel) ? '' : 'its test input is not wired to a test output';
}

/** True where the panel itself has learnt the sensor; that another one has does not count. */
export function isLearntBy(panel: Panel, sensor: Sensor): boolean {
  if (!sensor.registered || sensor.installation.panels.length < 2) return sensor.registered;
  return learntBy(panel).has(sensor.name);
}

const learntBy = perSubject(
  ({ facts }: Panel): ReadonlySet<string> => new Set(facts.registered.flatMap((line) => line.sensors.map((word) => word.text))),
);

/** True when the panel that hears the sensor can test it: by its test input, or by switching its supply, with both ends wired. */
function hasTestWire(sensor: Sensor, panel: Panel): boolean {
  for (const wire of sensor.wires)
    if (wire.part !== 'signal' && wire.panel === panel && wire.ends.length > 1)
      for (const end of wire.ends) if (end.terminal?.role === 'test-output') return true;
  return false;
}

function hasTerminator(sensor: Sensor): boolean {
  let link: Sensor | undefined = sensor;
  for (let steps = 0; link !== undefined && steps <= sensor.installation.sensors.length; steps++, link = link.next)
    if (link.facts.terminator !== undefined) return true;
  return false;
}

/**
 * False where a panel heeds the sensor that does not drive the leaf: a panel stops what it drives. Where nobody says what drives it, any
 * may.
 */
export function reaches(sensor: Sensor, leaf: Leaf): boolean {
  if (leaf.installation.panels.length < 2) return true;
  const heard = heedingOf(sensor)?.wire.panel;
  return heard === undefined || stoppingPanelsOf(leaf)?.includes(heard) !== false;
}

/** True when a panel heeds the sensor that stops the leaf. */
export const isHeard = (sensor: Sensor, leaf: Leaf): boolean => heedingOf(sensor) !== undefined && reaches(sensor, leaf);

/** True when the sensor is meant for that movement of that leaf, and no other panel than the one that hears it drives the leaf. */
export function guards(sensor: Sensor, leaf: Leaf, movement: Movement): boolean {
  return isMeantFor(sensor, leaf, movement) && reaches(sensor, leaf);
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
export const panelsByDrive = perSubject(({ panels }: Installation): ReadonlyMap<Drive, readonly Panel[]> => {
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

/** The sensors that sit on no leaf and guard the whole opening, by the panel that heeds them. */
const sensorsByPanel = perSubject((installation: Installation): ReadonlyMap<Panel, readonly Sensor[]> => {
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

/** The sensors on no leaf that a panel heeds, in the order of the text; undefined where there are none. */
export const sensorsHeardBy = (panel: Panel): readonly Sensor[] | undefined => sensorsByPanel(panel.installation).get(panel);

/** The panels by which a sensor of the opening can stop a leaf. */
export const panelsFor = (leaf: Leaf): Iterable<Panel> =>
  (leaf.installation.panels.length < 2 ? undefined : stoppingPanelsOf(leaf)) ?? sensorsByPanel(leaf.installation).keys();

/** The sensors that can guard a leaf, in the order of the text: those on it, and those of the opening that a panel heeds which stops it. */
export const sensorsFor = perSubject((leaf: Leaf): readonly Sensor[] => {
  let sensors: Sensor[] | undefined;
  for (const panel of panelsFor(leaf)) for (const sensor of sensorsHeardBy(panel) ?? none) (sensors ??= [...leaf.sensors]).push(sensor);
  return sensors?.sort((a, b) => a.at.start - b.at.start) ?? leaf.sensors;
});

const none: readonly never[] = [];
