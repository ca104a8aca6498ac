// The force window of each leaf over its travel: how hard the drive must push at least, and how hard it may push at most.
// Every point is worked out by the same functions as the figures.
import { allowedAt, forceWindowOf, needed, type SettingWindow, type Way, ways } from '../figures/force-window/working.ts';
import { inDegrees } from '../figures/index.ts';
import { motionOf } from '../figures/run-time/working.ts';
import type { Installation, Leaf } from '../model/index.ts';
import { readerOf, showShare, showSi, type Reader } from '../vocabulary/index.ts';
import { margin, nothing, notes, picture, sheetWidth, shows, Things, whole, type Drawing, type Note, type Table } from './drawing.ts';
import { siteTitle } from './plan.ts';
import { scaleOf, ticks, type Scale } from './scale.ts';
import { line, number, path, rect, through, type Element, type Point } from './svg.ts';
import { fitted, short, text, widthOf } from './text.ts';

const left = 92;
const right = sheetWidth - margin - 10;
const chartHeight = 250;

/** What the push must and may be at one place of the travel. */
interface Sample {
  readonly at: number;
  readonly needs: Readonly<Record<Way, number>>;
  /** Infinity where nothing limits it. */
  readonly allows: Readonly<Record<Way, number>>;
}

/** Samples of the linkage, with the places between them at which a limit begins or ends. */
function samplesOf({ of }: SettingWindow): Sample[] {
  const { leaf, rate } = of.linkage;
  const found: Sample[] = [];
  const steps = 4;
  for (let i = 0; i < leaf.length; i++) {
    const from = leaf[i] as number;
    const to = i + 1 < leaf.length ? (leaf[i + 1] as number) : from;
    for (let step = 0; step < (to > from ? steps : 1); step++) {
      const share = step / steps;
      const at = from + share * (to - from);
      const lever = (rate[i] as number) + share * ((rate[Math.min(i + 1, leaf.length - 1)] as number) - (rate[i] as number));
      const between = (way: Way): number => needed(of, i, way) + share * (needed(of, Math.min(i + 1, leaf.length - 1), way) - needed(of, i, way));
      const allows = (way: Way): number => (of.limited ? allowedAt(of, at, lever, way).push : Infinity);
      found.push({ at, needs: { opening: between('opening'), closing: between('closing') }, allows: { opening: allows('opening'), closing: allows('closing') } });
    }
  }
  return found;
}

export function forceOf(installation: Installation): Drawing {
  const title = 'Force window over the travel';
  const reader = readerOf(installation);
  const windows = installation.leaves.flatMap((leaf) => {
    const window = forceWindowOf(leaf);
    return window === undefined ? [] : [{ leaf, window }];
  });
  const rows: (readonly string[])[] = [];
  const table: Table = { caption: title, heads: ['Leaf', 'What', 'Value', 'Where'], rows };
  if (windows.length === 0) return nothing('force', title, table, whatLacks(installation));
  const things = new Things();
  const drawn: Element[] = [];
  const heading = siteTitle(installation);
  drawn.push(text(fitted(`Force window: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'));
  let y = 50;
  const sentences: string[] = [];
  for (const { leaf, window } of windows) {
    const sentence = inWords(leaf, window, reader);
    sentences.push(sentence);
    y = drawWindow(leaf, window, reader, y, things, drawn, rows, sentence) + 18;
  }
  y = legend(y, drawn, windows.map(({ window }) => window));
  const lines: Note[] = [];
  const rest = installation.leaves.filter((leaf) => leaf.drives.length > 0 && !windows.some((each) => each.leaf === leaf));
  if (rest.length > 0) lines.push({ words: `No window for ${rest.map((leaf) => short(leaf.name)).join(', ')}: ${whatLacks(installation)}` });
  lines.push({ words: 'Least: what moves the leaf from rest, with its friction, slope and the working wind. Most: what the force limits of EN 12453 leave at every point of the leaf that people can reach. Reckoned, and no measurement: forces are proven with a gauge on the gate.' });
  y = notes(lines, margin, y, sheetWidth - 2 * margin, drawn);
  const height = y + margin;
  const description = sentences.join(' ');
  return { id: 'force', title, description, picture: picture('force', `${title}: ${heading}`, description, sheetWidth, height, drawn), width: sheetWidth, height, table, lacks: undefined, things: things.all };
}

function whatLacks(installation: Installation): string {
  const driven = installation.leaves.filter((leaf) => leaf.drives.length > 0);
  if (driven.length === 0) return 'Nothing drives a leaf: state a drive that moves it, with its model.';
  const silent = driven.filter(({ drives: [drive] }) => drive?.model !== undefined && drive.model.facts.thrust === undefined && drive.model.facts.torque === undefined);
  if (silent.length > 0) {
    const models = [...new Set(silent.map(({ drives: [drive] }) => short(drive?.model?.name ?? '')))];
    return `${models.join(' and ')} ${models.length === 1 ? 'does' : 'do'} not state how hard the drive pushes: “thrust” of a ram or a rack, “torque” of a shaft.`;
  }
  const still = driven.filter((leaf) => motionOf(leaf) === undefined);
  if (still.length > 0) return `The motion of ${still.map((leaf) => short(leaf.name)).join(' and ')} cannot be worked out: that takes how far the leaf opens, a drive model with its kind and speed, and the brackets of a ram or an arm that can make the whole travel.`;
  return 'For the window the mass and the height of the leaf are needed, and a thrust of a ram or a rack, or a torque of a shaft.';
}

const whereOf = (window: SettingWindow, at: number, reader: Reader): string => (window.of.swing ? `at ${showSi(inDegrees(at), 'deg')}` : `${showSi(at, 'm', reader)} open`);

function inWords(leaf: Leaf, window: SettingWindow, reader: Reader): string {
  const { of, least, most, low, high } = window;
  const force = (value: number): string => showSi(value, of.unit, reader);
  const name = short(leaf.name);
  const needs = `${name} needs at least ${force(least.push)} (${least.way}, ${whereOf(window, least.at, reader)})`;
  const may = most.push < Infinity ? `and may get at most ${force(most.push)} (${most.way}, ${whereOf(window, most.at, reader)})` : of.limited ? 'and nothing limits it: every place is guarded' : 'and the force limits of EN 12453 are not applied here';
  const setting = of.setting === undefined ? 'No setting is stated.' : `It is set to ${force(of.setting)}, ${showShare(of.setting / of.greatest)} of what the drive can${low > high ? '' : of.setting < low ? ': too little' : of.setting > high ? ': too much' : ': within the window'}.`;
  const window2 = low <= high ? `Settings from ${showShare(low / of.greatest)} to ${showShare(high / of.greatest)} work everywhere.` : 'No setting works everywhere: the window is empty.';
  return `${needs}, ${may}. ${window2} ${setting}`;
}

function drawWindow(leaf: Leaf, window: SettingWindow, reader: Reader, top: number, things: Things, drawn: Element[], rows: (readonly string[])[], sentence: string): number {
  const { of, least, most, low, high } = window;
  const id = things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));
  const name = short(leaf.name);
  const samples = samplesOf(window);
  const travel = samples[samples.length - 1]?.at ?? 0;
  const force = (value: number): string => showSi(value, of.unit, reader);
  // What is far above all that matters is left out of the picture: the drive's greatest, or twice the window.
  const finite = samples.flatMap((sample) => ways.map((way) => sample.allows[way])).filter((value) => value < Infinity);
  const matters = Math.max(least.push, of.setting ?? 0, most.push < Infinity ? most.push * 2 : 0, Math.min(of.greatest, least.push * 4));
  const highest = Math.max(Math.min(Math.max(of.greatest, ...finite), Math.max(matters * 1.15, 1)), least.push * 1.2);
  const x = scaleOf(0, of.swing ? inDegrees(travel) : travel, left, right);
  const headY = top + 18;
  const chartTop = top + 44;
  const bottom = chartTop + chartHeight;
  const y = scaleOf(0, highest, bottom, chartTop);
  const place = (sample: Sample): number => x.at(of.swing ? inDegrees(sample.at) : sample.at);
  const clipped = (value: number): number => y.at(Math.min(value, highest));

  drawn.push(shows(id, `leaf ${name}`, text(fitted(`${name}: ${short(of.drive.name)}${of.drive.model === undefined ? '' : `, ${short(of.drive.model.name)}`}`, 420, 'normal'), margin, headY, 'normal', 'start', 'strong'), rect('hit', margin - 4, top + 2, 430, 22, 3)));
  axes(x, y, of, reader, chartTop, bottom, drawn);

  // Between the two: upright strokes where a setting works there, slanting ones where none does.
  let works = '';
  let none = '';
  for (let at = left + 3; at < right; at += 6) {
    const { needs, allows } = valuesAt(samples, place, at);
    const from = clipped(needs);
    const to = clipped(allows);
    if (allows > needs) works += `M${number(at)} ${number(from)}L${number(at)} ${number(to)}`;
    else none += `M${number(at - 4)} ${number(from)}L${number(at + 4)} ${number(to)}`;
  }
  const empty = none !== '';
  drawn.push(shows(id, `${name}: pushes that move the leaf and keep to the limits, at each place`, path('between', works), ...(empty ? [path('nothing', none)] : [])));
  for (const way of ways) {
    const needs = samples.map((sample): Point => ({ x: place(sample), y: clipped(sample.needs[way]) }));
    drawn.push(path(way === 'opening' ? 'needs' : 'needs-other', through(needs)));
    let stretch: Point[] = [];
    const flush = (): void => {
      if (stretch.length > 1) drawn.push(path(way === 'opening' ? 'allows' : 'allows-other', through(stretch)));
      stretch = [];
    };
    for (const sample of samples) {
      const value = sample.allows[way];
      if (value > highest * 1.0001) flush();
      else stretch.push({ x: place(sample), y: clipped(value) });
    }
    flush();
  }

  const tags = new Tags();
  // The window of settings that hold over the whole travel, and the setting.
  if (low <= high) {
    for (const [edge, words] of [[low, `lowest that works everywhere ${force(low)}`], [high, `highest ${force(high)}`]] as const) {
      if (edge > highest) continue;
      drawn.push(line('window-edge', { x: left, y: y.at(edge) }, { x: right, y: y.at(edge) }), ...tags.at(words, right - 6, y.at(edge), 'end', 'in-sound', edge === low));
    }
  }
  if (of.setting !== undefined) {
    const fact = leaf.installation.motion?.facts.force;
    const settingId = fact === undefined ? id : things.note('motion.force', 'how hard the drives push', whole(fact.line));
    const at = y.at(Math.min(of.setting, highest));
    const verdict = low > high ? ', no setting works' : of.setting < low ? ', too little' : of.setting > high ? ', too much' : '';
    drawn.push(shows(settingId, `set to ${force(of.setting)}${verdict}`, line('setting', { x: left, y: at }, { x: right, y: at }), ...tags.at(`set to ${force(of.setting)} (${showShare(of.setting / of.greatest)})${verdict}`, left + 8, at, 'start', verdict === '' ? '' : 'in-alert'), rect('hit', left, at - 7, right - left, 14)));
    rows.push([name, 'present setting', force(of.setting), `${showShare(of.setting / of.greatest)} of what the drive can`]);
  } else rows.push([name, 'present setting', 'not stated', '']);
  if (of.greatest <= highest) drawn.push(line('limit', { x: left, y: y.at(of.greatest) }, { x: right, y: y.at(of.greatest) }), ...tags.at(`the most that the drive can, ${force(of.greatest)}`, (left + right) / 2, y.at(of.greatest), 'middle', 'quiet'));
  rows.push([name, 'needed at least', force(least.push), `${least.way}, ${whereOf(window, least.at, reader)}`]);
  rows.push([name, 'allowed at most', most.push < Infinity ? force(most.push) : 'no limit', most.push < Infinity ? `${most.way}, ${whereOf(window, most.at, reader)}` : '']);
  rows.push([name, 'settings that work everywhere', low <= high ? `${force(low)} to ${force(high)}` : 'none', low <= high ? `${showShare(low / of.greatest)} to ${showShare(high / of.greatest)}` : 'the window is empty']);

  const lines: Note[] = [{ words: sentence, name: low <= high ? 'ink' : 'in-alert' }];
  if (empty) lines.push({ words: `Where the strokes slant, from ${emptyStretch(samples, of.swing, reader)}, the leaf needs more than the limits allow: no setting works there.`, name: 'in-alert' });
  return notes(lines, margin, bottom + 36, sheetWidth - 2 * margin, drawn);
}

/** Texts at lines, each on a piece of paper of its own: above its line, or below it where another one stands there already. */
class Tags {
  readonly #taken: { x: number; y: number; width: number }[] = [];

  at(words: string, x: number, lineY: number, anchor: 'start' | 'middle' | 'end', name: string, below = false): Element[] {
    const width = widthOf(words, 'small');
    const from = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    const free = (y: number): boolean => !this.#taken.some((other) => Math.abs(other.y - y) < 13 && other.x < from + width + 4 && from < other.x + other.width + 4);
    const above = [lineY - 5, lineY + 14];
    const y = [...(below ? above.reverse() : above), lineY - 19, lineY + 28].find(free) ?? lineY - 5;
    this.#taken.push({ x: from, y, width });
    return [rect('halo', from - 2, y - 11, width + 4, 14, 2), text(words, x, y, 'small', anchor, name)];
  }
}

function axes(x: Scale, y: Scale, of: SettingWindow['of'], reader: Reader, top: number, bottom: number, drawn: Element[]): void {
  const american = reader === 'american';
  const perFoot = american && !of.swing ? 0.3048 : 1;
  for (const mark of ticks(0, x.to / perFoot, 10, of.swing ? [5, 10, 15, 30, 45] : undefined)) {
    const at = x.at(mark * perFoot);
    drawn.push(line('grid', { x: at, y: top }, { x: at, y: bottom }), text(of.swing ? `${mark}°` : String(mark), at, bottom + 16, 'small', 'middle', 'quiet'));
  }
  // Pounds-force are shown as such; the scale itself stays in newtons.
  const pound = 4.4482216;
  const unit = of.unit === 'N' ? (american ? 'lbf' : 'N') : american ? 'lbf·ft' : 'N·m';
  const per = american ? (of.unit === 'N' ? pound : pound * 0.3048) : 1;
  for (const mark of ticks(0, y.to / per, 6)) {
    const at = y.at(mark * per);
    drawn.push(line('grid', { x: left, y: at }, { x: right, y: at }), text(String(mark), left - 8, at + 4, 'small', 'end', 'quiet'));
  }
  drawn.push(line('axis', { x: left, y: top }, { x: left, y: bottom }), line('axis', { x: left, y: bottom }, { x: right, y: bottom }));
  drawn.push(text(of.unit === 'N' ? `push, ${unit}` : `torque, ${unit}`, margin, top - 8, 'small', 'start', 'quiet'), text(of.swing ? 'how far the leaf is open' : `how far the leaf is open, ${american ? 'ft' : 'm'}`, right, bottom + 30, 'small', 'end', 'quiet'));
}

/** The greatest need and the least allowance at a place on paper. */
function valuesAt(samples: readonly Sample[], place: (sample: Sample) => number, at: number): { needs: number; allows: number } {
  let i = 0;
  while (i < samples.length - 1 && place(samples[i + 1] as Sample) < at) i++;
  const before = samples[i] as Sample;
  const after = samples[Math.min(i + 1, samples.length - 1)] as Sample;
  // The stricter of the two neighbours.
  return { needs: Math.max(...ways.flatMap((way) => [before.needs[way], after.needs[way]])), allows: Math.min(...ways.flatMap((way) => [before.allows[way], after.allows[way]])) };
}

function emptyStretch(samples: readonly Sample[], swing: boolean, reader: Reader): string {
  const bad = samples.filter(({ needs, allows }) => Math.max(needs.opening, needs.closing) > Math.min(allows.opening, allows.closing));
  const from = bad[0]?.at ?? 0;
  const to = bad[bad.length - 1]?.at ?? from;
  const show = (at: number): string => (swing ? showSi(inDegrees(at), 'deg') : showSi(at, 'm', reader));
  return `${show(from)} to ${show(to)}`;
}

function legend(y: number, drawn: Element[], windows: readonly SettingWindow[]): number {
  let x = margin;
  let at = y;
  const entry = (name: string, words: string, upright = false): void => {
    const width = 34 + widthOf(words, 'small') + 18;
    if (x + width > sheetWidth - margin) {
      x = margin;
      at += 18;
    }
    drawn.push(upright ? path(name, [2, 8, 14, 20, 26].map((step) => `M${number(x + step)} ${number(at)}L${number(x + step)} ${number(at + 11)}`).join('')) : line(name, { x, y: at + 6 }, { x: x + 28, y: at + 6 }), text(words, x + 34, at + 10, 'small', 'start', 'quiet'));
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
  return at + 18;
}
