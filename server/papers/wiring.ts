// The wiring of each panel: its terminals in the order of its model, links on their left, and on their right every wire to
// what it leads to. Wires to neighbours run straight; the others bend in lanes that are ordered so that few cross.
import { classOf, insulationOf } from '../figures/cables/working.ts';
import type { Cable, Installation, Panel, Sensor, Terminal, Wire } from '../model/index.ts';
import { isUnfit } from '../circuits/index.ts';
import { readerOf, showShare, showSi, type Reader } from '../vocabulary/index.ts';
import { margin, nothing, notes, picture, shows, Things, whole, type Drawing, type Note, type Table } from './drawing.ts';
import { caution, driveKind, siteTitle } from './plan.ts';
import { circle, element, line, path, rect, through, type Element } from './svg.ts';
import { fitted, short, sizes, text, widthOf, wrapped } from './text.ts';

const pitch = 26;
const boxWidth = 384;
const laneWidth = 9;
const textLine = 16;
const padding = 8;

/** A row of the strip. `terminal` is absent where the panel's model has none of that name, or is not known. */
interface Row {
  readonly name: string;
  readonly terminal: Terminal | undefined;
}

/** One end of a wire at a box. */
interface Pin {
  readonly row: number;
  /** What is said beside it. */
  readonly words: string;
  readonly wire: { readonly id: string | undefined; readonly title: string; readonly look: 'wire' | 'wire-guessed' | 'wrong' };
}

interface Line {
  readonly words: string;
  readonly name: string;
  /** A line that is a thing by itself, as a cable is. */
  readonly thing?: { readonly id: string; readonly title: string };
}

/** What stands on the right: a device with its pins, and the edges that are chained behind it. */
interface Box {
  readonly id: string | undefined;
  readonly title: string;
  readonly lines: readonly Line[];
  readonly pins: readonly Pin[];
  readonly resistor: string | undefined;
  readonly chained: readonly Box[];
}

export function wiringOf(installation: Installation): Drawing {
  const title = 'Terminals and cables';
  const table: Table = { caption: title, heads: ['Terminal', 'Is for', 'Wired to'], rows: [] };
  const panels = installation.panels.filter((panel) => rowsOf(panel).length > 0);
  if (panels.length === 0) {
    return nothing('wiring', title, table, installation.panels.length === 0 ? 'There is no panel in this file: state one with its model, and what is wired to its terminals.' : 'No terminal is known: the panel’s model is not known, and nothing is wired to it.');
  }
  const reader = readerOf(installation);
  const things = new Things();
  const drawn: Element[] = [];
  const rows: (readonly string[])[] = [];
  const heading = siteTitle(installation);
  const strips = panels.map((panel) => layOut(panel, things, reader));
  const width = Math.max(...strips.map((strip) => strip.width));
  drawn.push(text(fitted(`Wiring: ${heading}`, width - 2 * margin, 'large'), margin, 32, 'large'));
  let y = 46;
  for (const strip of strips) {
    y = drawStrip(strip, y, drawn) + 26;
    rows.push(...tableOf(strip));
  }
  const lines: Note[] = [];
  const loose = looseOf(installation);
  if (loose.length > 0) lines.push({ words: `Wired to no terminal in this file: ${loose.join(', ')}.` });
  if (strips.some(({ boxes }) => boxes.some(({ pins }) => pins.some(({ wire }) => wire.look === 'wire-guessed')))) lines.push({ words: 'Broken lines are not stated in the file: the supply is drawn to the terminals that the panel’s model names for it.' });
  if (strips.some(({ boxes }) => boxes.some(({ pins }) => pins.some(({ wire }) => wire.look === 'wrong')))) lines.push({ words: 'A bold broken line leads to a terminal that cannot take it.', name: 'in-alert' });
  lines.push({ words: 'A dot joins wires; wires that only cross are not joined. A bracket on the left is a wire link. Terminals with a broken outline are not used. The order is that of the panel’s model.' }, { words: caution, name: 'ink' });
  y = notes(lines, margin, y - 12, width - 2 * margin, drawn);
  for (const cable of installation.cables) rows.push([`cable ${short(cable.name)}`, cableInWords(cable, reader), cable.load === undefined ? '' : `feeds ${short(cable.load.it.name)}`]);
  const description = describe(panels, strips, loose);
  const height = y + margin;
  return { id: 'wiring', title, description, picture: picture('wiring', `${title}: ${heading}`, description, width, height, drawn), width, height, table: { ...table, rows }, lacks: undefined, things: things.all };
}

function describe(panels: readonly Panel[], strips: readonly Strip[], loose: readonly string[]): string {
  const told = panels.map((panel, i) => {
    const strip = strips[i];
    const used = strip?.rows.filter((_, row) => strip.used.has(row)).length ?? 0;
    return `Panel ${short(panel.name)} has ${strip?.rows.length ?? 0} terminals, ${used} of them used, ${panel.wires.length} wires and ${panel.links.length} links`;
  });
  return `${told.join('. ')}.${loose.length === 0 ? '' : ` Wired to no terminal: ${loose.join(', ')}.`} The table tells what each terminal is wired to.`;
}

/** Devices that no wire, and no chain, leads to. */
function looseOf({ sensors, controls, drives }: Installation): string[] {
  const wired = new Set(sensors.filter((sensor) => sensor.wires.length > 0));
  const chained = new Set(sensors.flatMap((sensor) => (sensor.next === undefined ? [] : [sensor.next])));
  const loose: string[] = sensors.filter((sensor) => !wired.has(sensor) && !chained.has(sensor)).map(({ name }) => `sensor ${short(name)}`);
  for (const { name, wires, facts } of controls) if (wires.length === 0) loose.push(`control ${short(name)}${facts.by === undefined ? '' : ` (${facts.by.value.replaceAll('-', ' ')})`}`);
  for (const drive of drives) if (!drive.installation.panels.some((panel) => panel.wires.some(({ device }) => device?.it === drive))) loose.push(`drive ${short(drive.name)}`);
  return loose;
}

// --- What there is.

interface Strip {
  readonly panel: Panel;
  readonly rows: readonly Row[];
  readonly boxes: readonly Box[];
  readonly links: readonly { readonly id: string; readonly title: string; readonly rows: readonly number[] }[];
  /** Rows that something is wired or linked to. */
  readonly used: ReadonlySet<number>;
  readonly terminalThings: ReadonlyMap<number, string>;
  readonly roleWidth: number;
  readonly linkLanes: readonly number[];
  readonly cellWidth: number;
  readonly lanes: number;
  readonly width: number;
  readonly placed: readonly PlacedBox[];
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

function layOut(panel: Panel, things: Things, reader: Reader): Strip {
  const rows = rowsOf(panel);
  const rowOf = new Map(rows.map(({ name }, i) => [name, i]));
  const used = new Set<number>();
  const terminalThings = new Map<number, string>();
  const meet = (name: string, at: { readonly start: number; readonly end: number }): number | undefined => {
    const row = rowOf.get(name);
    if (row === undefined) return undefined;
    used.add(row);
    if (!terminalThings.has(row)) terminalThings.set(row, things.note(`terminal.${panel.name}.${name}`, `terminal ${short(name)} of ${short(panel.name)}`, at));
    return row;
  };
  things.note(`panel.${panel.name}`, `panel ${short(panel.name)}`, whole(panel.at));

  const boxes = boxesOf(panel, meet, things, reader);
  const links = panel.links.map((link, i) => {
    const names = link.ends.map(({ at }) => short(at.text)).join(' and ');
    const title = `link between ${names}`;
    return {
      id: things.note(`link.${panel.name}.${i + 1}`, title, whole(link.fact.line)),
      title,
      rows: link.ends.flatMap(({ at }) => meet(at.text, at) ?? []),
    };
  });
  // A model in the same file states its terminals there; of those that nothing uses, that is their place.
  if (panel.model?.path === panel.installation.path)
    for (const [row, { terminal, name }] of rows.entries()) if (terminal !== undefined && !terminalThings.has(row)) terminalThings.set(row, things.note(`terminal.${panel.name}.${name}`, `terminal ${short(name)} of ${short(panel.name)}`, whole(terminal.line)));

  const placed = placeBoxes(boxes);
  const { wires, lanes } = lanesOf(placed);
  const linkLanes = linkLanesOf(links.map((link) => link.rows));
  const roleWidth = Math.min(330, Math.max(90, ...rows.map((row) => widthOf(roleWords(row, reader), 'small')))) + 8;
  const cellWidth = Math.min(150, Math.max(46, ...rows.map(({ name }) => widthOf(short(name), 'normal', true) + 24)));
  const linksWidth = (linkLanes.length === 0 ? 0 : Math.max(...linkLanes) + 1) * 10 + 12;
  const width = margin + roleWidth + linksWidth + cellWidth + lanes * laneWidth + 56 + boxWidth + margin;
  return { panel, rows, boxes, links, used, terminalThings, roleWidth, linkLanes, cellWidth, lanes, width, placed: placed.map((box) => ({ ...box, lanes: wires.get(box) ?? [] })) };
}

/** What a terminal is for, in few words. */
function roleWords({ terminal }: Row, reader: Reader): string {
  if (terminal === undefined) return 'not a terminal of the model';
  const parts: string[] = [terminal.role.replaceAll('-', ' ')];
  if (terminal.contact !== undefined) parts.push(terminal.contact.replace('-', ' '));
  if (terminal.terminator !== undefined) parts.push(`at rest ${showSi(terminal.terminator, 'ohm', reader)}`);
  if (terminal.common !== undefined) parts.push(`returns to ${short(terminal.common.text, 12)}`);
  return parts.join(', ');
}

type Meet = (name: string, at: { readonly start: number; readonly end: number }) => number | undefined;

function boxesOf(panel: Panel, meet: Meet, things: Things, reader: Reader): Box[] {
  const byDevice = new Map<string, Wire[]>();
  for (const wire of panel.wires) {
    const key = wire.fact.device.text;
    byDevice.set(key, [...(byDevice.get(key) ?? []), wire]);
  }
  const boxes: Box[] = [];
  const supply = supplyOf(panel, things, reader);
  if (supply !== undefined) boxes.push(supply);
  const drawn = new Set<Sensor>();
  for (const [name, wires] of byDevice) {
    const parts = new Set(wires.map(({ part }) => part));
    const pins = wires.flatMap((wire, i): Pin[] => {
      const title = `${short(name)}${wire.part === 'signal' ? '' : `, ${wire.part}`}: ${wire.ends.map(({ at }) => short(at.text)).join(', ')}`;
      const id = things.note(`wire.${panel.name}.${name}.${wire.part}${i === 0 || wires.slice(0, i).every(({ part }) => part !== wire.part) ? '' : `.${i + 1}`}`, `wire to ${title}`, whole(wire.fact.line));
      return wire.ends.flatMap((end): Pin[] => {
        const row = meet(end.at.text, end.at);
        if (row === undefined) return [];
        const wrong = end.terminal === undefined ? panel.model !== undefined : isUnfit(wire, end.terminal.role);
        return [{ row, words: `${parts.size > 1 ? `${wire.part} ` : ''}${short(end.at.text, 14)}`, wire: { id, title, look: wrong ? 'wrong' : 'wire' } }];
      });
    });
    boxes.push(deviceBox(name, wires[0] as Wire, pins, things, reader, drawn));
  }
  for (const [i, accessory] of panel.facts.accessory.entries()) {
    const title = `accessory: ${short(accessory.what)}`;
    const id = things.note(`accessory.${panel.name}.${i + 1}`, title, whole(accessory.line));
    const row = meet(accessory.from.text, accessory.from);
    const known = row !== undefined;
    boxes.push({
      id,
      title,
      lines: [{ words: accessory.what, name: 'strong' }, { words: `draws ${showSi(accessory.current, 'A', reader)}${known ? '' : `, from ${short(accessory.from.text)}, which is no terminal`}`, name: 'quiet' }],
      pins: known ? [{ row, words: short(accessory.from.text, 14), wire: { id, title, look: 'wire' } }] : [],
      resistor: undefined,
      chained: [],
    });
  }
  const { battery, solar } = panel;
  if (battery !== undefined) {
    const capacity = battery.facts.capacity[0];
    boxes.push(loneBox(things.note(`battery.${panel.name}`, 'battery', whole(battery.at)), 'battery', [battery.facts.voltage === undefined ? '' : showSi(battery.facts.voltage.value, 'V', reader), capacity === undefined ? '' : showSi(capacity.charge, 'C', reader)]));
  }
  if (solar !== undefined) boxes.push(loneBox(things.note(`solar.${panel.name}`, 'solar panel', whole(solar.at)), 'solar panel', [solar.facts.peak === undefined ? '' : showSi(solar.facts.peak.value, 'W', reader)]));
  return boxes;
}

const loneBox = (id: string, title: string, facts: readonly string[]): Box => ({
  id,
  title,
  lines: [{ words: title, name: 'strong' }, { words: [...facts.filter((fact) => fact !== ''), 'its terminals are not stated'].join(', '), name: 'quiet' }],
  pins: [],
  resistor: undefined,
  chained: [],
});

/** The feed of the panel, at the terminals that the model names for it. */
function supplyOf(panel: Panel, things: Things, reader: Reader): Box | undefined {
  const { installation } = panel;
  const pins: Pin[] = [];
  for (const [row, { terminal, name }] of rowsOf(panel).entries()) {
    if (terminal?.role !== 'supply-in' && terminal?.role !== 'earth') continue;
    pins.push({ row, words: short(name, 14), wire: { id: undefined, title: 'the supply; which conductor goes where is not stated', look: 'wire-guessed' } });
  }
  const supply = installation.site?.facts.supply;
  const feeds = installation.cables.filter(({ load }) => load?.kind === 'panel' && load.it === panel);
  if (pins.length === 0 && feeds.length === 0) return undefined;
  const id = supply === undefined ? undefined : things.note('site.supply', 'supply', whole(supply.line));
  const words = supply === undefined ? 'supply, not stated' : `supply ${showSi(supply.voltage, 'V', reader)}${supply.frequency === undefined ? '' : ` ${showSi(supply.frequency, 'Hz', reader)}`}`;
  const isolator = panel.facts.isolator;
  return {
    id,
    title: words,
    lines: [
      { words, name: 'strong' },
      isolator === undefined ? { words: 'isolator not stated', name: 'in-alert' } : { words: `isolator ${isolator.place}`, name: 'quiet', thing: { id: things.note(`isolator.${panel.name}`, 'isolator', whole(isolator.line)), title: 'isolator' } },
      ...cableLines(feeds, things, reader),
    ],
    pins,
    resistor: undefined,
    chained: [],
  };
}

function cableLines(cables: readonly Cable[], things: Things, reader: Reader): Line[] {
  return cables.map((cable) => ({
    words: `cable ${short(cable.name, 30)}: ${cableInWords(cable, reader)}`,
    name: 'quiet',
    thing: { id: things.note(`cable.${cable.name}`, `cable ${short(cable.name)}`, whole(cable.at)), title: `cable ${short(cable.name)}` },
  }));
}

function cableInWords(cable: Cable, reader: Reader): string {
  const { model, facts } = cable;
  const parts: string[] = [];
  const area = model?.facts.area?.value;
  const cores = model?.facts.cores?.value;
  if (area !== undefined) parts.push(`${cores === undefined ? '' : `${cores}\u00a0×\u00a0`}${Number((area * 1e6).toPrecision(3))}\u00a0mm²`);
  if (facts.length !== undefined) parts.push(showSi(facts.length.value, 'm', reader));
  if (facts.carries !== undefined) parts.push(`${showSi(facts.carries.current, 'A', reader)} at ${showSi(facts.carries.voltage, 'V', reader)}`);
  if (facts.breaker !== undefined) parts.push(`breaker ${breakerInWords(cable)}`);
  if (facts['residual-current'] !== undefined) parts.push(`${showSi(facts['residual-current'].value, 'A', reader)} residual current`);
  if (model !== undefined) parts.push(`class ${classOf(cable)}, ${insulationOf(cable)}`);
  return parts.join(', ');
}

function breakerInWords({ facts: { breaker } }: Cable): string {
  // As it is written: a letter and a rating.
  return breaker === undefined ? '' : short(breaker.line.values.map((value) => ('text' in value ? String(value.text) + (value.kind === 'number' && value.unit !== undefined ? ` ${value.unit.text}` : '') : '')).join(' '), 20);
}

function deviceBox(name: string, wire: Wire, pins: readonly Pin[], things: Things, reader: Reader, drawn: Set<Sensor>): Box {
  const { device, panel } = wire;
  if (device === undefined) return { id: undefined, title: short(name), lines: [{ words: name, name: 'strong' }, { words: 'no device of this name in the file', name: 'in-alert' }], pins, resistor: undefined, chained: [] };
  const id = things.note(`${device.kind}.${device.it.name}`, `${device.kind} ${short(device.it.name)}`, whole(device.it.at));
  const cables = panel.installation.cables.filter(({ load }) => load?.it === device.it);
  const lines: Line[] = [{ words: device.it.name, name: 'strong' }, { words: kindInWords(wire), name: 'quiet' }, ...cableLines(cables, things, reader)];
  if (device.kind !== 'sensor') return { id, title: `${device.kind} ${short(device.it.name)}`, lines, pins, resistor: undefined, chained: [] };
  const chained: Box[] = [];
  drawn.add(device.it);
  for (let next = device.it.next; next !== undefined && !drawn.has(next); next = next.next) {
    drawn.add(next);
    chained.push({
      id: things.note(`sensor.${next.name}`, `sensor ${short(next.name)}`, whole(next.at)),
      title: `sensor ${short(next.name)}`,
      lines: [{ words: next.name, name: 'strong' }, { words: `chained behind it${next.model === undefined ? '' : `, ${short(next.model.name)}`}`, name: 'quiet' }, ...cableLines(panel.installation.cables.filter(({ load }) => load?.it === next), things, reader)],
      pins: [],
      resistor: resistorOf(next, reader),
      chained: [],
    });
  }
  return { id, title: `sensor ${short(device.it.name)}`, lines, pins, resistor: resistorOf(device.it, reader), chained };
}

/** The terminator of an edge as its line states it, or that there is none at the end of its loop. */
function resistorOf(sensor: Sensor, reader: Reader): string | undefined {
  if (sensor.model?.facts.output?.value !== 'resistive') return undefined;
  const terminator = sensor.facts.terminator;
  if (terminator !== undefined) return `${showSi(terminator.value, 'ohm', reader)} ± ${showShare(terminator.tolerance ?? 0)}`;
  return sensor.facts['chains-into'] === undefined ? 'none' : undefined;
}

function kindInWords({ device }: Wire): string {
  if (device === undefined) return '';
  if (device.kind === 'control') {
    const { by, acts } = device.it.facts;
    return [by?.value.replaceAll('-', ' '), acts?.value.replaceAll('-', ' ')].filter((part) => part !== undefined).join(', ');
  }
  const { model } = device.it;
  if (model === undefined) return 'model not known';
  const kind = device.kind === 'drive' ? driveKind(device.it) : (model.facts.kind?.value ?? '');
  const output = device.kind === 'sensor' ? device.it.model?.facts.output?.value.replaceAll('-', ' ') : undefined;
  return [kind, short(model.name), ...(output === undefined ? [] : [`${output} output`])].filter((part) => part !== '').join(', ');
}

// --- Where it goes.

interface PlacedBox {
  readonly box: Box;
  readonly y: number;
  readonly height: number;
  /** The place of each pin, from the top of the strip. */
  readonly pins: readonly number[];
  readonly lines: readonly { readonly words: string; readonly of: Line }[];
  readonly chained: readonly { readonly box: Box; readonly y: number; readonly height: number; readonly lines: readonly { readonly words: string; readonly of: Line }[] }[];
  /** The lane of each pin's wire; −1 where it runs straight. */
  readonly lanes: readonly number[];
}

/** Beside the pins of a box: as wide as what they say. */
const pinRoomOf = ({ pins }: Box): number => (pins.length === 0 ? padding : Math.min(130, Math.max(...pins.map(({ words }) => widthOf(words, 'small')))) + 24);
const resistorRoom = 128;

function linesOf(box: Box, indent: number): { words: string; of: Line }[] {
  const width = boxWidth - indent - padding - (box.resistor === undefined ? 0 : resistorRoom);
  return box.lines.flatMap((of) => wrapped(of.words, width, of.name === 'strong' ? 'normal' : 'small', of.name === 'strong' ? 2 : 3, of.name === 'strong').map((words) => ({ words, of })));
}

const heightFor = (lines: number, pins: number): number => Math.max(lines * textLine + 2 * padding - 2, pins * pitch, 30);
const rowMiddle = (row: number): number => row * pitch + pitch / 2;

/** Boxes from top to bottom in the order of what they are wired to, each as near to its terminals as the one above lets it. */
function placeBoxes(boxes: readonly Box[]): PlacedBox[] {
  const mean = (box: Box): number => (box.pins.length === 0 ? Infinity : box.pins.reduce((sum, pin) => sum + pin.row, 0) / box.pins.length);
  const ordered = boxes.map((box, i) => ({ box, i, mean: mean(box) })).sort((a, b) => (a.mean === b.mean ? a.i - b.i : a.mean - b.mean));
  const placed: PlacedBox[] = [];
  let free = 0;
  for (const { box } of ordered) {
    const pins = [...box.pins].sort((a, b) => a.row - b.row);
    const lines = linesOf(box, pinRoomOf(box));
    const height = heightFor(lines.length, pins.length);
    const lead = (height - pins.length * pitch) / 2;
    const wanted = pins.length === 0 ? free : rowMiddle((pins[0] as Pin).row) - pitch / 2 - lead;
    const y = Math.max(free, wanted);
    let below = y + height;
    const chained = box.chained.map((next) => {
      const own = linesOf(next, padding);
      const tall = heightFor(own.length, 0);
      const at = below + 14;
      below = at + tall;
      return { box: next, y: at, height: tall, lines: own };
    });
    placed.push({ box: { ...box, pins }, y, height, pins: pins.map((_, i) => y + lead + i * pitch + pitch / 2), lines, chained, lanes: [] });
    free = below + 10;
  }
  return placed;
}

/**
 * A lane for each terminal whose wires are not all straight; wires of one terminal share it. Of those that lead downwards
 * the lower ones turn first, of those that lead upwards the upper ones: then two that keep their order never cross.
 */
function lanesOf(placed: readonly PlacedBox[]): { wires: Map<PlacedBox, number[]>; lanes: number } {
  const wires = new Map<PlacedBox, number[]>(placed.map((box) => [box, box.box.pins.map(() => -1)]));
  const nets = new Map<number, { row: number; from: number; low: number; high: number; ends: { box: PlacedBox; i: number }[] }>();
  for (const box of placed)
    for (const [i, { row }] of box.box.pins.entries()) {
      const from = rowMiddle(row);
      const to = box.pins[i] as number;
      if (Math.abs(from - to) <= 0.5) continue;
      const net = nets.get(row) ?? { row, from, low: from, high: from, ends: [] };
      net.low = Math.min(net.low, to);
      net.high = Math.max(net.high, to);
      net.ends.push({ box, i });
      nets.set(row, net);
    }
  const all = [...nets.values()];
  const down = all.filter(({ from, high }) => high > from).sort((a, b) => b.from - a.from);
  const up = all.filter(({ from, high }) => high <= from).sort((a, b) => a.from - b.from);
  const taken: { lane: number; low: number; high: number }[] = [];
  let lanes = 0;
  for (const { low, high, ends } of [...down, ...up]) {
    let lane = 0;
    for (const other of taken) if (other.low < high + 3 && low - 3 < other.high) lane = Math.max(lane, other.lane + 1);
    taken.push({ lane, low: low - 3, high: high + 3 });
    for (const { box, i } of ends) (wires.get(box) as number[])[i] = lane;
    lanes = Math.max(lanes, lane + 1);
  }
  return { wires, lanes };
}

/** A lane for each link, the shortest next to the strip. */
function linkLanesOf(links: readonly (readonly number[])[]): number[] {
  const order = links.map((rows, i) => ({ i, low: Math.min(...rows), high: Math.max(...rows) })).sort((a, b) => a.high - a.low - (b.high - b.low));
  const lanes = links.map(() => 0);
  const taken: { lane: number; low: number; high: number }[] = [];
  for (const { i, low, high } of order) {
    let lane = 0;
    while (taken.some((other) => other.lane === lane && other.low <= high && low <= other.high)) lane++;
    taken.push({ lane, low, high });
    lanes[i] = lane;
  }
  return lanes;
}

// --- Drawing it.

function drawStrip(strip: Strip, top: number, drawn: Element[]): number {
  const { panel, rows, roleWidth, linkLanes, cellWidth, lanes, used, terminalThings } = strip;
  const linksWidth = (linkLanes.length === 0 ? 0 : Math.max(...linkLanes) + 1) * 10 + 12;
  const cellX = margin + roleWidth + linksWidth;
  const wireX = cellX + cellWidth;
  const boxX = wireX + lanes * laneWidth + 56;
  const panelId = `panel.${panel.name}`;
  const panelTitle = `panel ${short(panel.name)}`;
  const name = `${short(panel.name)}${panel.model === undefined ? ', model not known' : `: ${short(panel.model.name)}${panel.model.title === undefined ? '' : `, ${short(panel.model.title)}`}`}`;
  drawn.push(shows(panelId, panelTitle, text(fitted(name, strip.width - 2 * margin - 8, 'normal', true), margin, top + 18, 'normal', 'start', 'strong'), rect('hit', margin - 4, top + 3, Math.min(strip.width - 2 * margin, widthOf(name, 'normal', true) + 8), 21, 3)));
  const y0 = top + 32;
  drawn.push(rect('strip', cellX - 6, y0 - 4, cellWidth + 12, rows.length * pitch + 8, 4));

  // Wires first, so that boxes and terminals lie over their ends.
  for (const box of strip.placed) drawWires(box, y0, wireX, boxX, drawn);
  drawJoints(strip, y0, wireX, drawn);
  for (const box of strip.placed) drawBox(box, y0, boxX, drawn);

  for (const [i, row] of rows.entries()) {
    const y = y0 + i * pitch;
    const isUsed = used.has(i) || row.terminal?.role === 'supply-in' || row.terminal?.role === 'earth';
    const words = roleWords(row, 'metric');
    const parts: Element[] = [
      rect(isUsed ? 'terminal' : 'terminal-free', cellX, y + 2, cellWidth, pitch - 4, 2),
      text(fitted(row.name, cellWidth - 22, 'normal', true), cellX + 8, y + pitch / 2 + 4.5, 'normal', 'start', isUsed ? 'strong' : 'quiet'),
      circle('screw', { x: cellX + cellWidth - 8, y: y + pitch / 2 }, 3.4),
      text(fitted(words, roleWidth - 4, 'small'), margin + roleWidth - 8, y + pitch / 2 + 4, 'small', 'end', row.terminal === undefined ? 'in-alert' : 'quiet'),
      rect('hit', cellX - 2, y + 1, cellWidth + 4, pitch - 2, 2),
    ];
    const thing = terminalThings.get(i);
    if (thing === undefined) drawn.push(...parts.slice(0, -1));
    else drawn.push(shows(thing, `terminal ${short(row.name)}: ${words}`, ...parts));
  }
  for (const [i, link] of strip.links.entries()) {
    if (link.rows.length < 2) continue;
    const x = cellX - 12 - (linkLanes[i] ?? 0) * 10;
    const ys = [...link.rows].sort((a, b) => a - b).map((row) => y0 + rowMiddle(row));
    const first = ys[0] as number;
    const last = ys[ys.length - 1] as number;
    const d = through([{ x: cellX, y: first }, { x, y: first }, { x, y: last }, { x: cellX, y: last }]) + ys.slice(1, -1).map((at) => through([{ x: cellX, y: at }, { x, y: at }])).join('');
    drawn.push(shows(link.id, link.title, path('link', d), ...ys.map((at) => circle('joint', { x: cellX, y: at }, 2.6)), rect('hit', x - 5, first - 6, cellX - x + 6, last - first + 12, 2)));
  }
  const boxesEnd = Math.max(0, ...strip.placed.map(({ y, height, chained }) => Math.max(y + height, ...chained.map((each) => each.y + each.height))));
  return y0 + Math.max(rows.length * pitch, boxesEnd) + 4;
}

function drawWires({ box, pins, lanes }: PlacedBox, y0: number, wireX: number, boxX: number, drawn: Element[]): void {
  for (const [i, pin] of box.pins.entries()) {
    const from = y0 + rowMiddle(pin.row);
    const to = y0 + (pins[i] as number);
    const lane = lanes[i] ?? -1;
    const x = wireX + 18 + Math.max(0, lane) * laneWidth;
    const points = lane < 0 ? [{ x: wireX, y: from }, { x: boxX, y: to }] : [{ x: wireX, y: from }, { x, y: from }, { x, y: to }, { x: boxX, y: to }];
    const shape = path(pin.wire.look, through(points));
    // The surface that can be hit is the part next to the box, where no other wire runs.
    const hit = rect('hit', boxX - 36, to - 7, 36, 14, 2);
    if (pin.wire.id === undefined) drawn.push(element('g', { class: 'thing' }, element('title', {}, pin.wire.title), shape));
    else drawn.push(shows(pin.wire.id, pin.wire.title, shape, hit));
  }
}

/** A dot where wires of one terminal part. */
function drawJoints({ placed }: Strip, y0: number, wireX: number, drawn: Element[]): void {
  const byRow = new Map<number, { lane: number; ys: number[]; straight: boolean }>();
  for (const { box, lanes, pins } of placed)
    for (const [i, pin] of box.pins.entries()) {
      const net = byRow.get(pin.row) ?? { lane: -1, ys: [], straight: false };
      const lane = lanes[i] ?? -1;
      if (lane < 0) net.straight = true;
      else {
        net.lane = lane;
        net.ys.push(pins[i] as number);
      }
      byRow.set(pin.row, net);
    }
  for (const [row, { lane, ys, straight }] of byRow) {
    if (lane < 0) continue;
    const x = wireX + 18 + lane * laneWidth;
    const from = rowMiddle(row);
    const low = Math.min(from, ...ys);
    const high = Math.max(from, ...ys);
    if (straight || (low < from && from < high)) drawn.push(circle('joint', { x, y: y0 + from }, 2.8));
    for (const y of ys) if (y > low && y < high) drawn.push(circle('joint', { x, y: y0 + y }, 2.8));
  }
}

function drawBox({ box, y, height, pins, lines, chained }: PlacedBox, y0: number, x: number, drawn: Element[]): void {
  const top = y0 + y;
  const indent = pinRoomOf(box);
  boxParts(box, top, height, lines, x, indent, drawn, pins.map((at, i) => [circle('screw', { x, y: y0 + at }, 3.4), text(fitted(box.pins[i]?.words ?? '', 130, 'small'), x + 9, y0 + at + 4, 'small', 'start', 'quiet')]).flat());
  let before = top + height;
  for (const next of chained) {
    const at = y0 + next.y;
    for (const side of [40, 60]) drawn.push(line('wire', { x: x + side, y: before }, { x: x + side, y: at }));
    boxParts(next.box, at, next.height, next.lines, x, padding, drawn, []);
    before = at + next.height;
  }
}

function boxParts(box: Box, top: number, height: number, lines: PlacedBox['lines'], x: number, indent: number, drawn: Element[], more: readonly Element[]): void {
  const parts: Element[] = [rect('box', x, top, boxWidth, height, 5), ...more];
  const others: Element[] = [];
  const first = top + (height - lines.length * textLine) / 2 + sizes.small;
  for (const [i, { words, of }] of lines.entries()) {
    const at = first + i * textLine;
    const shape = text(words, x + indent, at, of.name === 'strong' ? 'normal' : 'small', 'start', of.name);
    if (of.thing === undefined) parts.push(shape);
    else others.push(shows(of.thing.id, of.thing.title, shape, rect('hit', x + indent - 3, at - 11, widthOf(words, 'small') + 6, 15, 2)));
  }
  if (box.resistor !== undefined) parts.push(...resistor(box.resistor, x + boxWidth - resistorRoom + 10, top + height / 2));
  parts.push(rect('hit', x, top, boxWidth, height, 5));
  drawn.push(box.id === undefined ? element('g', { class: 'thing' }, element('title', {}, box.title), ...parts) : shows(box.id, box.title, ...parts), ...others);
}

/** A resistor across the end of a loop, or the open ends where there is none. */
function resistor(words: string, x: number, y: number): Element[] {
  const none = words === 'none';
  const half = 10;
  const ends = through([{ x: x - 8, y: y - half }, { x: x + 6, y: y - half }]) + through([{ x: x - 8, y: y + half }, { x: x + 6, y: y + half }]);
  if (none) return [path('wire', ends), circle('screw', { x: x + 8, y: y - half }, 2.4), circle('screw', { x: x + 8, y: y + half }, 2.4), text('no terminator', x + 18, y + 4, 'small', 'start', 'in-alert')];
  return [path('wire', ends + through([{ x: x + 6, y: y - half }, { x: x + 6, y: y + half }])), rect('resistor', x + 2, y - 6, 8, 12), text(words, x + 16, y + 4, 'small', 'start', 'quiet')];
}

// --- The same as a table.

function tableOf({ panel, rows, boxes, links, used }: Strip): string[][] {
  const several = panel.installation.panels.length > 1;
  return rows.map((row, i) => {
    const wired = boxes.flatMap((box) => box.pins.filter((pin) => pin.row === i).map((pin) => `${box.title}${pin.wire.look === 'wire-guessed' ? ' (not stated)' : pin.wire.look === 'wrong' ? ' (cannot take it)' : ''}`));
    const linked = links.filter((link) => link.rows.includes(i)).map((link) => `link to ${link.rows.filter((other) => other !== i).map((other) => short(rows[other]?.name ?? '')).join(', ')}`);
    const to = [...wired, ...linked];
    return [several ? `${short(panel.name)} ${short(row.name)}` : short(row.name), roleWords(row, 'metric'), to.length > 0 ? [...new Set(to)].join('; ') : used.has(i) ? '' : 'not used'];
  });
}
