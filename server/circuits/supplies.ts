// What hangs on an output of a panel, and which cable brings the supply to it.
import {
  type Cable,
  type Control,
  type Device,
  type Installation,
  type Load,
  type Panel,
  type PanelModel,
  perSubject,
  type Sensor,
  type Wire,
} from '../model/index.ts';
import { panelsByDrive } from './heeding.ts';

export type Output = PanelModel['facts']['output'][number];

/**
 * Up to here a voltage is extra-low, V. Source: IEC 60364-4-41 (50 V a.c.; for direct current the limit is 120 V, so this is the safe
 * side).
 */
export const extraLow = 50;

/** True for a cable at more than extra-low voltage; undefined where that is not stated. */
export function isMains(cable: Cable): boolean | undefined {
  const { carries } = cable.facts;
  return carries === undefined ? undefined : carries.voltage > extraLow;
}

/** The outputs of a panel's model by the names of their terminals. */
export const outputsNamed = perSubject(({ model }: Panel): ReadonlyMap<string, readonly Output[]> => {
  const byName = new Map<string, Output[]>();
  for (const output of model?.facts.output ?? [])
    for (const { text } of output.terminals) {
      const known = byName.get(text);
      if (known === undefined) byName.set(text, [output]);
      else if (!known.includes(output)) known.push(output);
    }
  return byName;
});

/** True for a wire over which a device is fed: its supply, a motor, or the two wires of a self-checking sensor. */
function feeds({ part }: Wire, device: Device): boolean {
  if (part === 'supply') return true;
  if (part !== 'signal') return false;
  return device.kind === 'drive' || (device.kind === 'sensor' && device.it.model?.facts.output?.value === 'two-wire');
}

/** What the panel feeds from each output, each device once, by the first wire that does. */
export type OutputLoads = Map<Device['it'], { readonly device: Device; readonly wire: Wire }>;

/** The loads of the outputs of a panel, in the order of its wires; an output that feeds nothing is left out. */
export const loadsOf = perSubject((panel: Panel): ReadonlyMap<Output, OutputLoads> => {
  const byOutput = new Map<Output, OutputLoads>();
  for (const wire of panel.wires) {
    const { device } = wire;
    if (device === undefined || !feeds(wire, device)) continue;
    for (const end of wire.ends)
      for (const output of outputsNamed(panel).get(end.at.text) ?? none) {
        let loads = byOutput.get(output);
        if (loads === undefined) byOutput.set(output, (loads = new Map()));
        if (!loads.has(device.it)) loads.set(device.it, { device, wire });
      }
  }
  return byOutput;
});

const none: readonly never[] = [];

/** An output of a panel, and the first wire by which it feeds a device. */
export interface Feeding {
  readonly panel: Panel;
  readonly output: Output;
  readonly wire: Wire;
}

const feedingsByDevice = perSubject(({ panels }: Installation): ReadonlyMap<Device['it'], readonly Feeding[]> => {
  const byDevice = new Map<Device['it'], Feeding[]>();
  for (const panel of panels)
    for (const [output, loads] of loadsOf(panel))
      for (const [it, { wire }] of loads) {
        const known = byDevice.get(it);
        if (known === undefined) byDevice.set(it, [{ panel, output, wire }]);
        else known.push({ panel, output, wire });
      }
  return byDevice;
});

/** The outputs, of which their models say what they give, that feed a device. */
export const feedingsOf = (it: Device['it']): readonly Feeding[] => feedingsByDevice(it.installation).get(it) ?? none;

/** The cables that feed a device or panel, in the order of the file. */
export const cablesTo = (it: Load['it']): readonly Cable[] => cablesByLoad(it.installation).get(it) ?? none;

const cablesByLoad = perSubject(({ cables }: Installation): ReadonlyMap<Load['it'], readonly Cable[]> => {
  const byLoad = new Map<Load['it'], Cable[]>();
  for (const cable of cables) {
    if (cable.load === undefined) continue;
    const known = byLoad.get(cable.load.it);
    if (known === undefined) byLoad.set(cable.load.it, [cable]);
    else known.push(cable);
  }
  return byLoad;
});

/** The first cable that brings mains to a panel, and the first that brings it an extra-low voltage. */
const feedsOf = perSubject((panel: Panel): { readonly mains: Cable | undefined; readonly low: Cable | undefined } => {
  const feeds = cablesTo(panel);
  return { mains: feeds.find((cable) => isMains(cable) === true), low: feeds.find((cable) => isMains(cable) === false) };
});

/**
 * The cable that brings the same kind of supply to the panel to which this cable's device is wired: what is lost in it is
 * lost here too. Undefined for the feed of a panel.
 */
export const upstreamOf = perSubject((cable: Cable): Cable | undefined => {
  const { load, installation } = cable;
  const mains = isMains(cable);
  if (load === undefined || load.kind === 'panel' || mains === undefined) return undefined;
  let first: Cable | undefined;
  for (const panel of load.kind === 'drive' ? (panelsByDrive(installation).get(load.it) ?? none) : panelsOf(load.it)) {
    const feed = mains ? feedsOf(panel).mains : feedsOf(panel).low;
    if (feed !== undefined && (first === undefined || feed.at.start < first.at.start)) first = feed;
  }
  return first;
});

/** The panels that a sensor or a control is wired to. */
const panelsOf = perSubject(({ wires }: Sensor | Control): ReadonlySet<Panel> => new Set(wires.map(({ panel }) => panel)));
