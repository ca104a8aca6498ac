// The wiring of each panel: its terminals in the order of its model, links on their left, and on their right every wire to
// what it leads to. Wires to neighbours run straight; the others bend in lanes that are ordered so that few cross.
import type { Installation, Steps } from '../../../model/index.ts';
import { readerOf } from '../../../vocabulary/index.ts';
import { mostDrawn } from '../../scene/limit.ts';
import { looseDevices, type Strip, stripOf } from '../../scene/strip.ts';
import { firstInWords, siteTitle } from '../../words.ts';
import { type Drawing, eachOf, finished, limitNotes, mappedOf, margin, type Note, notes, nothing, type Table, Things } from '../drawing.ts';
import type { Element } from '../svg.ts';
import { fitted, short, text } from '../text.ts';
import type { Pin } from './boxes.ts';
import { cableInWords } from './cables.ts';
import { type Layout, layOut, limitsOf, roleInWords } from './layout.ts';
import { drawStrip } from './strip.ts';

const title = 'Terminals and cables';

export function* wiringOf(installation: Installation): Steps<Drawing> {
  const table: Table = { caption: title, heads: ['Terminal', 'Is for', 'Wired to'], rows: [] };
  const strips: Strip[] = [];
  for (const panel of installation.panels) {
    yield;
    const strip = stripOf(panel);
    if (strip !== undefined) strips.push(strip);
  }
  if (strips.length === 0) return nothing('wiring', title, table, lacksOf(installation));
  const reader = readerOf(installation);
  const things = new Things();
  const layouts: Layout[] = [];
  for (const strip of strips) layouts.push(yield* layOut(strip, things, reader));
  const shown = layouts.slice(0, mostDrawn);
  const width = Math.max(...shown.map((layout) => layout.width));
  const heading = siteTitle(installation);
  const drawn: Element[] = [text(fitted(`Wiring: ${heading}`, width - 2 * margin, 'large'), margin, 32, 'large')];
  let y = 46;
  for (const layout of shown) y = (yield* drawStrip(layout, y, drawn)) + 26;
  const loose = looseInWords(installation);
  const limits = [...limitNotes([[layouts.length, 'panels']]), ...shown.flatMap(limitsOf)];
  y = notes([...limits, ...notesOf(layouts, loose)], margin, y - 12, width - 2 * margin, drawn);
  const rows: string[][] = [];
  for (const layout of layouts) rows.push(...(yield* rowsOf(layout)));
  yield* eachOf(installation.cables, (cable) => {
    const feeds = cable.load === undefined ? '' : `feeds ${short(cable.load.it.name)}`;
    rows.push([`cable ${short(cable.name)}`, cableInWords(cable, reader), feeds]);
  });
  const description = describe(layouts, loose);
  const height = y + margin;
  const told = { ...table, rows };
  return finished({ id: 'wiring', title, heading, description, width, height, table: told, drawn, things });
}

const lacksOf = ({ panels }: Installation): string =>
  panels.length === 0
    ? 'There is no panel in this file: state one with its model, and what is wired to its terminals.'
    : 'No terminal is known: the panel’s model is not known, and nothing is wired to it.';

function looseInWords(installation: Installation): string {
  return firstInWords(looseDevices(installation), 'devices', ', ', (device) => {
    const by = device.kind === 'control' ? device.it.facts.by : undefined;
    return `${device.kind} ${short(device.it.name)}${by === undefined ? '' : ` (${by.value.replaceAll('-', ' ')})`}`;
  });
}

function notesOf(layouts: readonly Layout[], loose: string): Note[] {
  const looks = new Set(layouts.flatMap(({ boxes }) => boxes.flatMap(({ pins }) => pins.map(({ wire }) => wire.look))));
  const lines: Note[] = [];
  if (loose !== '') lines.push({ words: `Wired to no terminal in this file: ${loose}.` });
  const guessed = 'Broken lines are not stated in the file: the supply is drawn to the terminals that the panel’s model names for it.';
  if (looks.has('wire-guessed')) lines.push({ words: guessed });
  if (looks.has('wrong')) lines.push({ words: 'A bold broken line leads to a terminal that cannot take it.', name: 'in-alert' });
  const signs =
    'A dot joins wires; wires that only cross are not joined. A bracket on the left is a wire link. ' +
    'Terminals with a broken outline are not used. The order is that of the panel’s model.';
  return [...lines, { words: signs }];
}

function describe(layouts: readonly Layout[], loose: string): string {
  const told = firstInWords(layouts, 'panels', '. ', ({ strip: { panel, rows, used } }) => {
    const led = `${panel.wires.length} wires and ${panel.links.length} links`;
    return `Panel ${short(panel.name)} has ${rows.length} terminals, ${used.size} of them used, ${led}`;
  });
  return `${told}.${loose === '' ? '' : ` Wired to no terminal: ${loose}.`} The table tells what each terminal is wired to.`;
}

const doubts: Readonly<Record<Pin['wire']['look'], string>> = { wire: '', 'wire-guessed': ' (not stated)', wrong: ' (cannot take it)' };

/** The strip as rows of the table. */
function* rowsOf({ strip: { panel, rows, used }, boxes, links }: Layout): Steps<string[][]> {
  const several = panel.installation.panels.length > 1;
  const wired = new Map<number, Set<string>>();
  const tell = (row: number, words: string): void => {
    const told = wired.get(row);
    if (told === undefined) wired.set(row, new Set([words]));
    else told.add(words);
  };
  yield* eachOf(boxes, ({ title: of, pins }) => {
    for (const { row, wire } of pins) tell(row, `${of}${doubts[wire.look]}`);
  });
  yield* eachOf(links, ({ rows: ends }) => {
    const times = new Map<number, number>();
    for (const row of ends) times.set(row, (times.get(row) ?? 0) + 1);
    for (const [row, own] of times) {
      // As many of the ends as hold the first others: a link may name its terminals over and over.
      const others = ends.slice(0, mostDrawn + own).filter((other) => other !== row);
      tell(row, `link to ${firstInWords(others, 'terminals', ', ', (end) => short(rows[end]?.name ?? ''), ends.length - own)}`);
    }
  });
  return yield* mappedOf(rows, (row, i) => {
    const to = [...(wired.get(i) ?? [])];
    const name = several ? `${short(panel.name)} ${short(row.name)}` : short(row.name);
    return [name, roleInWords(row), to.length > 0 ? to.join('; ') : used.has(i) ? '' : 'not used'];
  });
}
