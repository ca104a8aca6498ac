// The window of one leaf: what it needs, what it may get, and where the setting lies between.
import { type SettingWindow, type Way, ways } from '../../../figures/force-window/working.ts';
import type { Leaf } from '../../../model/index.ts';
import { emptyStretch, type Sample, strictest } from '../../scene/force.ts';
import type { Point } from '../../scene/point.ts';
import { margin, type Note, notes, sheetWidth, shows, type Things, whole } from '../drawing.ts';
import { line, number, path, rect, through } from '../svg.ts';
import { fitted, short, text } from '../text.ts';
import { drawAxes } from './axes.ts';
import { type Chart, clipped, left, placeOf, right, type Shared } from './chart.ts';
import { Tags } from './tags.ts';
import { placeInWords, pushInWords, settingInWords, shareInWords, whereInWords } from './words.ts';

/** Draws a window from its head on, with its sentence below; gives where it ends. */
export function drawWindow(chart: Chart, things: Things, sentence: string): number {
  const { window, reader, samples, bottom, drawn } = chart;
  drawHead(chart);
  drawAxes(chart);
  const empty = drawBetween(chart);
  for (const way of ways) drawCurves(chart, way);
  const tags = new Tags();
  drawEdges(chart, tags);
  drawSetting(chart, tags, things);
  drawGreatest(chart, tags);
  const lines: Note[] = [{ words: sentence, name: window.low <= window.high ? 'ink' : 'in-alert' }];
  if (empty) {
    const { from, to } = emptyStretch(samples);
    const stretch = `from ${placeInWords(window, from, reader)} to ${placeInWords(window, to, reader)}`;
    const words = `Where the strokes slant, ${stretch}, the leaf needs more than the limits allow: no setting works there.`;
    lines.push({ words, name: 'in-alert' });
  }
  return notes(lines, margin, bottom + 36, sheetWidth - 2 * margin, drawn);
}

function drawHead({ leaf, id, window: { of }, top, drawn }: Chart): void {
  const name = short(leaf.name);
  const words = `${name}: ${short(of.drive.name)}${of.drive.model === undefined ? '' : `, ${short(of.drive.model.name)}`}`;
  const shown = text(fitted(words, 420, 'normal'), margin, top - 26, 'normal', 'start', 'strong');
  drawn.push(shows(id, `leaf ${name}`, shown, rect('hit', margin - 4, top - 42, 430, 22, 3)));
}

/** Between the two: upright strokes where a setting works there, slanting ones where none does. Gives whether there are such. */
function drawBetween(chart: Chart): boolean {
  let works = '';
  let none = '';
  for (let at = left + 3; at < right; at += 6) {
    const { needs, allows } = strictest(neighbours(chart, at));
    const from = number(clipped(chart, needs));
    const to = number(clipped(chart, allows));
    if (allows > needs) works += `M${number(at)} ${from}L${number(at)} ${to}`;
    else none += `M${number(at - 4)} ${from}L${number(at + 4)} ${to}`;
  }
  const title = `${short(chart.leaf.name)}: pushes that move the leaf and keep to the limits, at each place`;
  chart.drawn.push(shows(chart.id, title, path('between', works), ...(none === '' ? [] : [path('nothing', none)])));
  return none !== '';
}

/** The samples on both sides of a place on the paper. */
function neighbours(chart: Chart, at: number): [Sample, Sample] {
  const { samples } = chart;
  let i = 0;
  while (i < samples.length - 1 && placeOf(chart, samples[i + 1] as Sample) < at) i++;
  return [samples[i] as Sample, samples[Math.min(i + 1, samples.length - 1)] as Sample];
}

/** What a movement needs, and what it may get as far as the chart reaches. */
function drawCurves(chart: Chart, way: Way): void {
  const { samples, y, drawn } = chart;
  const needs = samples.map((sample): Point => ({ x: placeOf(chart, sample), y: clipped(chart, sample.needs[way]) }));
  drawn.push(path(way === 'opening' ? 'needs' : 'needs-other', through(needs)));
  let stretch: Point[] = [];
  const flush = (): void => {
    if (stretch.length > 1) drawn.push(path(way === 'opening' ? 'allows' : 'allows-other', through(stretch)));
    stretch = [];
  };
  for (const sample of samples) {
    const value = sample.allows[way];
    if (value > y.to * 1.0001) flush();
    else stretch.push({ x: placeOf(chart, sample), y: clipped(chart, value) });
  }
  flush();
}

/** The lowest and the highest setting that work over the whole travel. */
function drawEdges({ window, reader, y, drawn }: Chart, tags: Tags): void {
  const { low, high } = window;
  if (low > high) return;
  for (const [edge, words] of [
    [low, 'lowest that works everywhere'],
    [high, 'highest'],
  ] as const) {
    if (edge > y.to) continue;
    const at = y.at(edge);
    const tag = tags.at(`${words} ${pushInWords(window, edge, reader)}`, right - 6, at, 'end', 'in-sound', edge === low);
    drawn.push(line('window-edge', { x: left, y: at }, { x: right, y: at }), ...tag);
  }
}

function drawSetting(chart: Chart, tags: Tags, things: Things): void {
  const { leaf, window, reader, drawn } = chart;
  const { setting } = window.of;
  if (setting === undefined) return;
  const fact = leaf.installation.motion?.facts.force;
  const id = fact === undefined ? chart.id : things.note('motion.force', 'how hard the drives push', whole(fact.line));
  const at = clipped(chart, setting);
  const set = pushInWords(window, setting, reader);
  const share = shareInWords(window, setting);
  const verdict = settingInWords(window, setting);
  const wrong = verdict === 'within the window' ? '' : `, ${verdict === '' ? 'no setting works' : verdict}`;
  const tag = tags.at(`set to ${set} (${share})${wrong}`, left + 8, at, 'start', wrong === '' ? '' : 'in-alert');
  const shown = [line('setting', { x: left, y: at }, { x: right, y: at }), ...tag, rect('hit', left, at - 7, right - left, 14)];
  drawn.push(shows(id, `set to ${set}${wrong}`, ...shown));
}

function drawGreatest({ window, reader, y, drawn }: Chart, tags: Tags): void {
  const { greatest } = window.of;
  if (greatest > y.to) return;
  const at = y.at(greatest);
  const tag = tags.at(`the most that the drive can, ${pushInWords(window, greatest, reader)}`, (left + right) / 2, at, 'middle', 'quiet');
  drawn.push(line('limit', { x: left, y: at }, { x: right, y: at }), ...tag);
}

/** A window as rows of the table. */
export function tellWindow({ reader, rows }: Shared, leaf: Leaf, window: SettingWindow): void {
  const { least, most, low, high } = window;
  const { setting } = window.of;
  const name = short(leaf.name);
  const push = (value: number): string => pushInWords(window, value, reader);
  if (setting === undefined) rows.push([name, 'present setting', 'not stated', '']);
  else rows.push([name, 'present setting', push(setting), `${shareInWords(window, setting)} of what the drive can`]);
  rows.push([name, 'needed at least', push(least.push), `${least.way}, ${whereInWords(window, least.at, reader)}`]);
  if (most.push < Infinity) rows.push([name, 'allowed at most', push(most.push), `${most.way}, ${whereInWords(window, most.at, reader)}`]);
  else rows.push([name, 'allowed at most', 'no limit', '']);
  const settings = 'settings that work everywhere';
  if (low > high) rows.push([name, settings, 'none', 'the window is empty']);
  else rows.push([name, settings, `${push(low)} to ${push(high)}`, `${shareInWords(window, low)} to ${shareInWords(window, high)}`]);
}
