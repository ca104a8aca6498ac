// The force window of each leaf over its travel: how hard the drive must push at least, and how hard it may push at most.
import { forceWindowOf, type SettingWindow } from '../../../figures/force-window/working.ts';
import type { Installation, Leaf, Steps } from '../../../model/index.ts';
import { readerOf } from '../../../vocabulary/index.ts';
import { drivenLeaves, firstInWords, siteTitle } from '../../words.ts';
import {
  Count,
  type Drawing,
  finished,
  limitNotes,
  margin,
  type Note,
  notes,
  nothing,
  sheetWidth,
  type Table,
  Things,
  whole,
} from '../drawing.ts';
import { type Element, line, number, path } from '../svg.ts';
import { fitted, short, text, widthOf } from '../text.ts';
import { chartOf, type Shared } from './chart.ts';
import { drawWindow, tellWindow } from './window.ts';
import { lacksOf, windowInWords } from './words.ts';

const title = 'Force window over the travel';

export function* forceOf(installation: Installation): Steps<Drawing> {
  const shared: Shared = { reader: readerOf(installation), drawn: [], rows: [] };
  const { reader, drawn, rows } = shared;
  const windows: LeafWindow[] = [];
  for (const leaf of installation.leaves) {
    yield;
    const window = forceWindowOf(leaf);
    if (window !== undefined) windows.push({ leaf, window, sentence: windowInWords(leaf, window, reader) });
  }
  const table: Table = { caption: title, heads: ['Leaf', 'What', 'Value', 'Where'], rows };
  if (windows.length === 0) return nothing('force', title, table, lacksOf(installation));
  const things = new Things();
  const heading = siteTitle(installation);
  drawn.push(text(fitted(`Force window: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'));
  let y = 50;
  const count = new Count();
  for (const { leaf, window, sentence } of windows) {
    yield;
    const id = things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));
    if (count.takes()) y = drawWindow(chartOf(shared, leaf, id, window, y + 44), things, sentence) + 18;
    tellWindow(shared, leaf, window);
  }
  y = drawLegend(
    y,
    drawn,
    windows.map(({ window }) => window),
  );
  y = notes([...limitNotes([[count.all, 'leaves']]), ...notesOf(installation)], margin, y, sheetWidth - 2 * margin, drawn);
  const height = y + margin;
  const description = firstInWords(windows, 'leaves', ' ', ({ sentence }) => sentence);
  return finished({ id: 'force', title, heading, description, width: sheetWidth, height, table, drawn, things });
}

interface LeafWindow {
  readonly leaf: Leaf;
  readonly window: SettingWindow;
  readonly sentence: string;
}

function notesOf(installation: Installation): Note[] {
  const rest = drivenLeaves(installation).filter((leaf) => forceWindowOf(leaf) === undefined);
  const names = firstInWords(rest, 'leaves', ', ', (leaf) => short(leaf.name));
  return [
    ...(rest.length === 0 ? [] : [{ words: `No window for ${names}: ${lacksOf(installation)}` }]),
    {
      words:
        'Least: what moves the leaf from rest, with its friction, slope and the working wind. Most: what the force limits of EN 12453 ' +
        'leave at every point of the leaf that people can reach. Reckoned, and no measurement: forces are proven with a gauge on the gate.',
    },
  ];
}

/** What the lines mean, of those that are there; gives where that ends. */
function drawLegend(top: number, drawn: Element[], windows: readonly SettingWindow[]): number {
  let x = margin;
  let y = top;
  const entry = (name: string, words: string, upright = false): void => {
    const width = 34 + widthOf(words, 'small') + 18;
    if (x + width > sheetWidth - margin) {
      x = margin;
      y += 18;
    }
    const strokes = (step: number): string => `M${number(x + step)} ${number(y)}L${number(x + step)} ${number(y + 11)}`;
    const sample = upright ? path(name, [2, 8, 14, 20, 26].map(strokes).join('')) : line(name, { x, y: y + 6 }, { x: x + 28, y: y + 6 });
    drawn.push(sample, text(words, x + 34, y + 10, 'small', 'start', 'quiet'));
    x += width;
  };
  entry('needs', 'least, opening');
  entry('needs-other', 'least, closing');
  if (windows.some(({ of }) => of.limited)) {
    entry('allows', 'most, opening');
    entry('allows-other', 'most, closing');
  }
  entry('between', 'a push between them works at this place', true);
  entry('window-edge', 'settings that work at every place');
  if (windows.some(({ of }) => of.setting !== undefined)) entry('setting', 'present setting');
  return y + 18;
}
