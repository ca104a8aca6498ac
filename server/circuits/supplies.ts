// What hangs on an output of a panel, and which cable brings the supply to it.
import { type Cable, type Device, type Panel, type PanelModel, perSubject, type Wire } from '../model/index.ts';

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

/** True where a terminal of that name belongs to the output. */
export function isOf(output: Output, name: string): boolean {
  for (const terminal of output.terminals) if (terminal.text === name) return true;
  return false;
}

/** True for a wire over which a device is fed: its supply, a motor, or the two wires of a self-checking sensor. */
function feeds({ part }: Wire, device: Device): boolean {
  if (part === 'supply') return true;
  if (part !== 'signal') return false;
  return device.kind === 'drive' || (device.kind === 'sensor' && device.it.model?.facts.output?.value === 'two-wire');
}

function hangsOn(wire: Wire, device: Device, output: Output): boolean {
  if (!feeds(wire, device)) return false;
  for (const end of wire.ends) if (isOf(output, end.at.text)) return true;
  return false;
}

/** True where an earlier wire feeds the same device from the same output. */
function isRepeated(wires: readonly Wire[], wire: Wire, device: Device, output: Output): boolean {
  for (const earlier of wires) {
    if (earlier === wire) break;
    if (earlier.device?.it === device.it && hangsOn(earlier, device, output)) return true;
  }
  return false;
}

/** Calls `each` with every device that the panel feeds from an output, once, and the wire that does. */
export function eachFedFrom({ wires }: Panel, output: Output, each: (device: Device, wire: Wire) => void): void {
  for (const wire of wires) {
    const { device } = wire;
    if (device !== undefined && hangsOn(wire, device, output) && !isRepeated(wires, wire, device, output)) each(device, wire);
  }
}

/**
 * The cable that brings the same kind of supply to the panel to which this cable's device is wired: what is lost in it is
 * lost here too. Undefined for the feed of a panel.
 */
export const upstreamOf = perSubject((cable: Cable): Cable | undefined => {
  const { load, installation } = cable;
  const mains = isMains(cable);
  if (load === undefined || load.kind === 'panel' || mains === undefined) return undefined;
  for (const feed of installation.cables) {
    if (feed.load?.kind !== 'panel' || isMains(feed) !== mains) continue;
    for (const wire of feed.load.it.wires) if (wire.device?.it === load.it) return feed;
  }
  return undefined;
});
