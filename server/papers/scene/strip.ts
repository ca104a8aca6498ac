// The terminals of a panel, and what the file leads to each of them.

import { cablesTo, isUnfit } from '../../circuits/index.ts';
import type { Cable, Device, Installation, Panel, Sensor, Terminal, TerminalLink, TerminalUse, Wire } from '../../model/index.ts';

/** A row of the strip. `terminal` is absent where the panel's model has none of that name, or is not known. */
export interface Row {
  readonly name: string;
  readonly terminal: Terminal | undefined;
}

/** One end of a wire or a link at the strip. */
export interface RowEnd {
  readonly row: number;
  readonly end: TerminalUse;
}

/** One end of a wire there. */
export interface WireEnd extends RowEnd {
  /** The terminal cannot take it, or is none of the model. */
  readonly unfit: boolean;
}

/** All wires to one device, and the edges that are chained behind it. */
export interface WiredDevice {
  /** As the wires call it; `device` is absent where the file has none of that name. */
  readonly name: string;
  readonly device: Device | undefined;
  readonly wires: readonly { readonly wire: Wire; readonly ends: readonly WireEnd[] }[];
  readonly chained: readonly Sensor[];
}

export interface Strip {
  readonly panel: Panel;
  readonly rows: readonly Row[];
  readonly devices: readonly WiredDevice[];
  /** `row` is absent where what it is fed from is no terminal. */
  readonly accessories: readonly { readonly accessory: Panel['facts']['accessory'][number]; readonly row: number | undefined }[];
  readonly links: readonly { readonly link: TerminalLink; readonly ends: readonly RowEnd[] }[];
  /** The rows that the panel's model names for the feed and the earth, and the cables that feed it. */
  readonly fed: readonly number[];
  readonly feeds: readonly Cable[];
  /** Rows that something is wired or linked to. */
  readonly used: ReadonlySet<number>;
}

/** Undefined for a panel without a terminal that is known. */
export function stripOf(panel: Panel): Strip | undefined {
  const rows = rowsOf(panel);
  if (rows.length === 0) return undefined;
  const rowOf = new Map(rows.map(({ name }, i) => [name, i]));
  const devices = devicesOf(panel, rowOf);
  const accessories = panel.facts.accessory.map((accessory) => ({ accessory, row: rowOf.get(accessory.from.text) }));
  const links = panel.links.map((link) => ({ link, ends: endsOf(link, rowOf) }));
  const used = new Set([
    ...devices.flatMap(({ wires }) => wires.flatMap((wire) => wire.ends.map(({ row }) => row))),
    ...accessories.flatMap(({ row }) => row ?? []),
    ...links.flatMap(({ ends }) => ends.map(({ row }) => row)),
  ]);
  const fed = rows.flatMap(({ terminal }, i) => (isFeed(terminal) ? [i] : []));
  return { panel, rows, devices, accessories, links, fed, feeds: cablesTo(panel), used };
}

/** The terminals of the model; those that lines of the panel name besides them come behind, in the order of the text. */
function rowsOf(panel: Panel): Row[] {
  const rows: Row[] = [];
  const known = new Set<string>();
  for (const [name, terminal] of panel.model?.terminals ?? []) {
    known.add(name);
    rows.push({ name, terminal });
  }
  for (const { ends } of [...panel.wires, ...panel.links])
    for (const { at } of ends) {
      if (known.has(at.text)) continue;
      known.add(at.text);
      rows.push({ name: at.text, terminal: undefined });
    }
  return rows;
}

export const isFeed = (terminal: Terminal | undefined): boolean => terminal?.role === 'supply-in' || terminal?.role === 'earth';

/** What the wires of a panel lead to, in the order of the text. */
function devicesOf(panel: Panel, rowOf: ReadonlyMap<string, number>): WiredDevice[] {
  const byDevice = new Map<string, Wire[]>();
  for (const wire of panel.wires) {
    const wires = byDevice.get(wire.fact.device.text);
    if (wires === undefined) byDevice.set(wire.fact.device.text, [wire]);
    else wires.push(wire);
  }
  const met = new Set<Sensor>();
  return [...byDevice].map(([name, wires]) => {
    const device = wires[0]?.device;
    return {
      name,
      device,
      wires: wires.map((wire) => ({ wire, ends: wireEndsOf(wire, rowOf) })),
      chained: device?.kind === 'sensor' ? chainBehind(device.it, met) : [],
    };
  });
}

const wireEndsOf = (wire: Wire, rowOf: ReadonlyMap<string, number>): WireEnd[] =>
  endsOf(wire, rowOf).map(({ row, end }) => {
    const unfit = end.terminal === undefined ? wire.panel.model !== undefined : isUnfit(wire, end.terminal.role);
    return { row, end, unfit };
  });

const endsOf = ({ ends }: Wire | TerminalLink, rowOf: ReadonlyMap<string, number>): RowEnd[] =>
  ends.flatMap((end) => {
    const row = rowOf.get(end.at.text);
    return row === undefined ? [] : [{ row, end }];
  });

/** The edges chained behind one, each once for a panel. */
function chainBehind(sensor: Sensor, met: Set<Sensor>): Sensor[] {
  const chained: Sensor[] = [];
  met.add(sensor);
  for (let next = sensor.next; next !== undefined && !met.has(next); next = next.next) {
    met.add(next);
    chained.push(next);
  }
  return chained;
}

/** Devices that no wire, and no chain, leads to. */
export function looseDevices({ sensors, controls, drives, panels }: Installation): Device[] {
  const chained = new Set(sensors.map(({ next }) => next));
  const driven = new Set(panels.flatMap(({ wires }) => wires.map(({ device }) => device?.it)));
  return [
    ...sensors.filter((sensor) => sensor.wires.length === 0 && !chained.has(sensor)).map((it) => ({ kind: 'sensor', it }) as const),
    ...controls.filter(({ wires }) => wires.length === 0).map((it) => ({ kind: 'control', it }) as const),
    ...drives.filter((drive) => !driven.has(drive)).map((it) => ({ kind: 'drive', it }) as const),
  ];
}
