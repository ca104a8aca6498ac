// What stands on the right of a strip, before it has a place: devices with their pins, supply, accessories, battery.
import { cablesTo } from '../../../circuits/index.ts';
import type { Sensor, Steps } from '../../../model/index.ts';
import { showShare, showSi } from '../../../vocabulary/index.ts';
import type { WiredDevice, WireEnd } from '../../scene/strip.ts';
import { driveKind, firstInWords } from '../../words.ts';
import { eachOf, mappedOf, whole } from '../drawing.ts';
import { short } from '../text.ts';
import { cableLines } from './cables.ts';
import { type Noted, terminalThing } from './noted.ts';

/** One end of a wire at a box. */
export interface Pin {
  readonly row: number;
  /** What is said beside it. */
  readonly words: string;
  readonly wire: { readonly id: string | undefined; readonly title: string; readonly look: 'wire' | 'wire-guessed' | 'wrong' };
}

export interface Line {
  readonly words: string;
  readonly name: 'strong' | 'quiet' | 'in-alert';
  /** A line that is a thing by itself, as a cable is. */
  readonly thing?: { readonly id: string; readonly title: string };
}

/** A device with its pins, and the edges that are chained behind it. */
export interface Box {
  readonly id: string | undefined;
  readonly title: string;
  readonly lines: readonly Line[];
  readonly pins: readonly Pin[];
  /** What is said of the terminator at the end of a loop: its value, or that there is `none`. */
  readonly resistor: string | undefined;
  readonly chained: readonly Box[];
}

const plainBox = (id: string | undefined, title: string, lines: readonly Line[], pins: readonly Pin[] = []): Box => ({
  id,
  title,
  lines,
  pins,
  resistor: undefined,
  chained: [],
});

export function* boxesOf(noted: Noted): Steps<Box[]> {
  const { strip } = noted;
  const boxes = supplyBox(noted);
  for (const device of strip.devices) boxes.push(yield* deviceBox(noted, device));
  yield* eachOf(strip.accessories, (each, i) => boxes.push(accessoryBox(noted, each, i)));
  return [...boxes, ...sourceBoxes(noted)];
}

/** The feed of the panel, at the terminals that the model names for it. */
function supplyBox({ strip, things, reader }: Noted): Box[] {
  const { panel, rows, fed, feeds } = strip;
  if (fed.length === 0 && feeds.length === 0) return [];
  const title = 'the supply; which conductor goes where is not stated';
  const wire = { id: undefined, title, look: 'wire-guessed' } as const;
  const pins = fed.map((row): Pin => ({ row, words: short(rows[row]?.name ?? '', 14), wire }));
  const supply = panel.installation.site?.facts.supply;
  const id = supply === undefined ? undefined : things.note('site.supply', 'supply', whole(supply.line));
  const frequency = supply?.frequency === undefined ? '' : ` ${showSi(supply.frequency, 'Hz', reader)}`;
  const words = supply === undefined ? 'supply, not stated' : `supply ${showSi(supply.voltage, 'V', reader)}${frequency}`;
  const { isolator } = panel.facts;
  const isolatorLine: Line =
    isolator === undefined
      ? { words: 'isolator not stated', name: 'in-alert' }
      : {
          words: `isolator ${isolator.place}`,
          name: 'quiet',
          thing: { id: things.note(`isolator.${panel.name}`, 'isolator', whole(isolator.line)), title: 'isolator' },
        };
  return [plainBox(id, words, [{ words, name: 'strong' }, isolatorLine, ...cableLines(feeds, things, reader)], pins)];
}

function* deviceBox(noted: Noted, wired: WiredDevice): Steps<Box> {
  const { things, reader } = noted;
  const { name, device, chained } = wired;
  const pins = yield* pinsOf(noted, wired);
  if (device === undefined) {
    const missing: Line = { words: 'no device of this name in the file', name: 'in-alert' };
    return plainBox(undefined, short(name), [{ words: name, name: 'strong' }, missing], pins);
  }
  const title = `${device.kind} ${short(device.it.name)}`;
  const id = things.note(`${device.kind}.${device.it.name}`, title, whole(device.it.at));
  const lines: Line[] = [
    { words: device.it.name, name: 'strong' },
    { words: kindInWords(device), name: 'quiet' },
    ...cableLines(cablesTo(device.it), things, reader),
  ];
  if (device.kind !== 'sensor') return plainBox(id, title, lines, pins);
  return {
    ...plainBox(id, title, lines, pins),
    resistor: resistorOf(noted, device.it),
    chained: yield* mappedOf(chained, (sensor) => chainedBox(noted, sensor)),
  };
}

function chainedBox(noted: Noted, sensor: Sensor): Box {
  const { things, reader } = noted;
  const title = `sensor ${short(sensor.name)}`;
  const id = things.note(`sensor.${sensor.name}`, title, whole(sensor.at));
  const lines: Line[] = [
    { words: sensor.name, name: 'strong' },
    { words: `chained behind it${sensor.model === undefined ? '' : `, ${short(sensor.model.name)}`}`, name: 'quiet' },
    ...cableLines(cablesTo(sensor), things, reader),
  ];
  return { ...plainBox(id, title, lines), resistor: resistorOf(noted, sensor) };
}

function* pinsOf(noted: Noted, { name, wires }: WiredDevice): Steps<Pin[]> {
  const several = new Set(wires.map(({ wire }) => wire.part)).size > 1;
  const met = new Set<string>();
  const pins: Pin[] = [];
  for (const [i, { wire, ends }] of wires.entries()) {
    yield;
    const { panel, part, fact } = wire;
    const title = `${short(name)}${part === 'signal' ? '' : `, ${part}`}: ${firstInWords(wire.ends, 'terminals', ', ', ({ at }) => short(at.text))}`;
    const again = met.has(part) ? `.${i + 1}` : '';
    const id = noted.things.note(`wire.${panel.name}.${name}.${part}${again}`, `wire to ${title}`, whole(fact.line));
    met.add(part);
    for (const end of ends) pins.push(pinOf(noted, end, several ? `${part} ` : '', id, title));
  }
  return pins;
}

function pinOf(noted: Noted, { row, end, unfit }: WireEnd, before: string, id: string, title: string): Pin {
  terminalThing(noted, row, end.at);
  return { row, words: `${before}${short(end.at.text, 14)}`, wire: { id, title, look: unfit ? 'wrong' : 'wire' } };
}

function accessoryBox(noted: Noted, { accessory, row }: Noted['strip']['accessories'][number], i: number): Box {
  const { strip, things, reader } = noted;
  const title = `accessory: ${short(accessory.what)}`;
  const id = things.note(`accessory.${strip.panel.name}.${i + 1}`, title, whole(accessory.line));
  const from = row === undefined ? `, from ${short(accessory.from.text)}, which is no terminal` : '';
  const lines: Line[] = [
    { words: accessory.what, name: 'strong' },
    { words: `draws ${showSi(accessory.current, 'A', reader)}${from}`, name: 'quiet' },
  ];
  if (row === undefined) return plainBox(id, title, lines);
  terminalThing(noted, row, accessory.from);
  return plainBox(id, title, lines, [{ row, words: short(accessory.from.text, 14), wire: { id, title, look: 'wire' } }]);
}

/** Battery and solar panel: no file says where they are connected. */
function sourceBoxes({ strip: { panel }, things, reader }: Noted): Box[] {
  const { battery, solar } = panel;
  const boxes: Box[] = [];
  if (battery !== undefined) {
    const { voltage, capacity } = battery.facts;
    const charge = capacity[0]?.charge;
    const id = things.note(`battery.${panel.name}`, 'battery', whole(battery.at));
    const stated = voltage === undefined ? [] : [showSi(voltage.value, 'V', reader)];
    boxes.push(sourceBox(id, 'battery', charge === undefined ? stated : [...stated, showSi(charge, 'C', reader)]));
  }
  if (solar !== undefined) {
    const { peak } = solar.facts;
    const id = things.note(`solar.${panel.name}`, 'solar panel', whole(solar.at));
    boxes.push(sourceBox(id, 'solar panel', peak === undefined ? [] : [showSi(peak.value, 'W', reader)]));
  }
  return boxes;
}

const sourceBox = (id: string, title: string, stated: readonly string[]): Box =>
  plainBox(id, title, [
    { words: title, name: 'strong' },
    { words: [...stated, 'its terminals are not stated'].join(', '), name: 'quiet' },
  ]);

/** The terminator of an edge as its line states it, or that there is none at the end of its loop. */
function resistorOf({ reader }: Noted, { model, facts }: Sensor): string | undefined {
  if (model?.facts.output?.value !== 'resistive') return undefined;
  const { terminator } = facts;
  if (terminator !== undefined) return `${showSi(terminator.value, 'ohm', reader)} ± ${showShare(terminator.tolerance ?? 0)}`;
  return facts['chains-into'] === undefined ? 'none' : undefined;
}

function kindInWords(device: NonNullable<WiredDevice['device']>): string {
  if (device.kind === 'control') {
    const { by, acts } = device.it.facts;
    return [by, acts].flatMap((fact) => (fact === undefined ? [] : [fact.value.replaceAll('-', ' ')])).join(', ');
  }
  const { model } = device.it;
  if (model === undefined) return 'model not known';
  const kind = device.kind === 'drive' ? driveKind(device.it) : device.it.model?.facts.kind?.value;
  const output = device.kind === 'sensor' ? device.it.model?.facts.output?.value : undefined;
  const parts = [kind ?? '', short(model.name), output === undefined ? '' : `${output.replaceAll('-', ' ')} output`];
  return parts.filter((part) => part !== '').join(', ');
}
