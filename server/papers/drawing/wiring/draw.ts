// The wiring of each panel: its terminals in the order of its model, links on their left, and on their right every wire to
// what it leads to. Wires to neighbours run straight; the others bend in lanes that are ordered so that few cross.
import type { Installation } from '../../../model/index.ts';
import { readerOf } from '../../../vocabulary/index.ts';
import { looseDevices, stripOf } from '../../scene/strip.ts';
import { caution, siteTitle } from '../../words.ts';
import { type Drawing, finished, margin, type Note, notes, nothing, type Table, Things } from '../drawing.ts';
import type { Element } from '../svg.ts';
import { fitted, short, text } from '../text.ts';
import type { Pin } from './boxes.ts';
import { cableInWords } from './cables.ts';
import { type Layout, layOut, roleInWords } from './layout.ts';
import { drawStrip } from './strip.ts';

const title = 'Terminals and cables';

export function wiringOf(installation: Installation): Drawing {
  const table: Table = { caption: title, heads: ['Terminal', 'Is for', 'Wired to'], rows: [] };
  const strips = installation.panels.flatMap((panel) => stripOf(panel) ?? []);
  if (strips.length === 0) return nothing('wiring', title, table, lacksOf(installation));
  const reader = readerOf(installation);
  const things = new Things();
  const layouts = strips.map((strip) => layOut(strip, things, reader));
  const width = Math.max(...layouts.map((layout) => layout.width));
  const heading = siteTitle(installation);
  const drawn: Element[] = [text(fitted(`Wiring: ${heading}`, width - 2 * margin, 'large'), margin, 32, 'large')];
  let y = 46;
  for (const layout of layouts) y = drawStrip(layout, y, drawn) + 26;
  const loose = looseInWords(installation);
  y = notes(notesOf(layouts, loose), margin, y - 12, width - 2 * margin, drawn);
  const cables = installation.cables.map((cable) => [
    `cable ${short(cable.name)}`,
    cableInWords(cable, reader),
    cable.load === undefined ? '' : `feeds ${short(cable.load.it.name)}`,
  ]);
  const description = describe(layouts, loose);
  const height = y + margin;
  const told = { ...table, rows: [...layouts.flatMap(rowsOf), ...cables] };
  return finished({ id: 'wiring', title, heading, description, width, height, table: told, drawn, things });
}

const lacksOf = ({ panels }: Installation): string =>
  panels.length === 0
    ? 'There is no panel in this file: state one with its model, and what is wired to its terminals.'
    : 'No terminal is known: the panel’s model is not known, and nothing is wired to it.';

function looseInWords(installation: Installation): string {
  const names = looseDevices(installation).map((device) => {
    const by = device.kind === 'control' ? device.it.facts.by : undefined;
    return `${device.kind} ${short(device.it.name)}${by === undefined ? '' : ` (${by.value.replaceAll('-', ' ')})`}`;
  });
  return names.join(', ');
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
  return [...lines, { words: signs }, { words: caution, name: 'ink' }];
}

function describe(layouts: readonly Layout[], loose: string): string {
  const told = layouts.map(({ strip: { panel, rows, used } }) => {
    const led = `${panel.wires.length} wires and ${panel.links.length} links`;
    return `Panel ${short(panel.name)} has ${rows.length} terminals, ${used.size} of them used, ${led}`;
  });
  return `${told.join('. ')}.${loose === '' ? '' : ` Wired to no terminal: ${loose}.`} The table tells what each terminal is wired to.`;
}

const doubts: Readonly<Record<Pin['wire']['look'], string>> = { wire: '', 'wire-guessed': ' (not stated)', wrong: ' (cannot take it)' };

/** The strip as rows of the table. */
function rowsOf({ strip: { panel, rows, used }, boxes, links }: Layout): string[][] {
  const several = panel.installation.panels.length > 1;
  return rows.map((row, i) => {
    const wired = boxes.flatMap((box) => box.pins.filter((pin) => pin.row === i).map(({ wire }) => `${box.title}${doubts[wire.look]}`));
    const others = links.filter((link) => link.rows.includes(i)).map((link) => link.rows.filter((other) => other !== i));
    const linked = others.map((ends) => `link to ${ends.map((end) => short(rows[end]?.name ?? '')).join(', ')}`);
    const to = [...new Set([...wired, ...linked])];
    const name = several ? `${short(panel.name)} ${short(row.name)}` : short(row.name);
    return [name, roleInWords(row), to.length > 0 ? to.join('; ') : used.has(i) ? '' : 'not used'];
  });
}
