// What a timing chart is put together from.
import { headPlace, type Installation } from '../../../model/index.ts';
import { showSi } from '../../../vocabulary/index.ts';
import type { Times } from '../../scene/times.ts';
import { shows, Things, whole } from '../drawing.ts';
import { type Element, rect } from '../svg.ts';
import { text, widthOf } from '../text.ts';
import { type Axis, axisOf } from './axis.ts';

export interface Chart {
  readonly installation: Installation;
  readonly times: Times;
  readonly axis: Axis;
  readonly things: Things;
  /** The things of the lines `dwell` and `pre-warning`; undefined where they are not stated. */
  readonly dwell: string | undefined;
  readonly warning: string | undefined;
  readonly drawn: Element[];
  /** The same as a table. */
  readonly rows: (readonly string[])[];
}

export function chartOf(installation: Installation, times: Times): Chart {
  const things = new Things();
  const facts = installation.motion?.facts;
  const dwell = facts?.dwell === undefined ? undefined : things.note('motion.dwell', 'dwell', whole(facts.dwell.line));
  const stated = facts?.['pre-warning'];
  const warning = stated === undefined ? undefined : things.note('motion.pre-warning', 'pre-warning', whole(stated.line));
  return { installation, times, axis: axisOf(times), things, dwell, warning, drawn: [], rows: [] };
}

export const seconds = (value: number): string => showSi(value, 's');

/** The block of the motion; the beginning of the file where there is none. */
export const motionThing = ({ installation: { motion }, things }: Chart): string =>
  things.note('motion', 'motion', motion === undefined ? { start: 0, end: 0 } : headPlace(motion));

/** A moment in words. Where no dwell is stated, nobody knows when closing begins: it is told from the command on. */
export function moment({ times }: Chart, time: number): string {
  if (times.dwell === undefined && time >= times.warns - 1e-9) return `${seconds(time - times.warns)} after the command to close`;
  return seconds(time);
}

/** A row of the table. */
export function tell(chart: Chart, what: string, from: number, to: number, note = ''): void {
  chart.rows.push([what, moment(chart, from), moment(chart, to), `${seconds(to - from)}${note}`]);
}

/** The first of these texts that fits in a stretch, in its part before a break. */
function inside({ cut }: Axis, choices: readonly string[], x: number, width: number, y: number, tone: string): Element | undefined {
  const room = cut !== undefined && cut > x && cut < x + width ? cut - x - 6 : width;
  const words = choices.find((each) => widthOf(each, 'small') <= room - 6);
  return words === undefined ? undefined : text(words, x + room / 2, y, 'small', 'middle', tone);
}

/** A stretch of time as a surface with words in it, that shows a thing. */
export interface Stretch {
  /** The line that it comes from; undefined for the motion as a whole. */
  readonly id: string | undefined;
  readonly from: number;
  readonly to: number;
  readonly surface: 'state' | 'lamp';
  readonly title: string;
  /** What is written in it, the longest first. */
  readonly choices: readonly string[];
}

/** What does not fit stands above its stretch, where there is room `above`; else it is left out. */
export function drawStretch(chart: Chart, stretch: Stretch, y: number, height: number, above: boolean): void {
  const { id, from, to, surface, title, choices } = stretch;
  const x = chart.axis.at(from);
  const width = chart.axis.at(to) - x;
  const parts: Element[] = [rect(surface, x, y, width, height)];
  const words = inside(chart.axis, choices, x, width, y + (above ? 18 : 15), surface === 'lamp' ? 'in-over' : '');
  if (words !== undefined) parts.push(words);
  else if (above) parts.push(text(choices[0] ?? '', x, y - 5, 'small', 'start', 'quiet'));
  parts.push(rect('hit', x, y, width, height));
  chart.drawn.push(shows(id ?? motionThing(chart), title, ...parts));
}
