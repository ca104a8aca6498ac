// One row for each leaf: how far it is open, and below that its bars.
import { inDegrees } from '../../../figures/index.ts';
import { leafAfter } from '../../../figures/run-time/working.ts';
import type { Leaf, Steps } from '../../../model/index.ts';
import { showSi } from '../../../vocabulary/index.ts';
import type { Point } from '../../scene/point.ts';
import type { LeafTimes, Run } from '../../scene/times.ts';
import { Count, margin, shows, whole } from '../drawing.ts';
import { type Element, hatch, path, rect, through } from '../svg.ts';
import { fitted, short, text, widthOf } from '../text.ts';
import { left } from './axis.ts';
import { type Chart, seconds, tell } from './chart.ts';

const rowHeight = 86;
/** Below a row whose leaf starts second. */
const lagHeight = 22;
/** From the top of a row to where the leaf is closed. */
const curveHeight = 44;
const barHeight = 20;

interface Rows {
  /** The place of each that is drawn. */
  readonly bars: ReadonlyMap<LeafTimes, number>;
  readonly count: Count;
  readonly end: number;
}

/** The rows of all leaves, in the order of the file; gives the place of each, and where they end. */
export function* drawLeaves(chart: Chart, top: number): Steps<Rows> {
  const bars = new Map<LeafTimes, number>();
  const count = new Count();
  let y = top;
  const all = chart.times.leaves;
  const firstOpening = all.reduce((first, { opening }) => Math.min(first, opening.start), Infinity);
  const firstClosing = all.reduce((first, { closing }) => Math.min(first, closing.start), Infinity);
  for (const each of all) {
    yield;
    tellLeaf(chart, each);
    if (!count.takes()) continue;
    drawLeaf(chart, each, y);
    bars.set(each, y);
    const second = firstOpening < each.opening.start || firstClosing < each.closing.start;
    y += rowHeight + (second ? lagHeight : 0);
  }
  return { bars, count, end: y };
}

/** A leaf and its runs in the table and in the list of parts. */
function tellLeaf(chart: Chart, { leaf, opening, closing }: LeafTimes): void {
  leafThing(chart, leaf);
  const name = short(leaf.name);
  for (const [run, way] of [
    [opening, 'opening'],
    [closing, 'closing'],
  ] as const) {
    tell(chart, `${name}: ${way}, at full speed`, run.start, run.slow, ', with speeding up and braking');
    if (run.stop > run.slow) tell(chart, `${name}: ${way}, slow zone`, run.slow, run.stop);
    if (run.end > run.stop) tell(chart, `${name}: seat after ${way}`, run.stop, run.end);
  }
}

const leafThing = ({ things }: Chart, leaf: Leaf): string => things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));

/** A leaf with the things that its bars show: its own, and those of the lines that make them. */
interface Row {
  readonly of: LeafTimes;
  readonly name: string;
  readonly id: string;
  readonly slow: string;
  readonly seat: string;
  /** Where its bars begin. */
  readonly y: number;
}

function drawLeaf(chart: Chart, of: LeafTimes, y: number): void {
  const { leaf, motion, opening, closing } = of;
  const { things, drawn } = chart;
  const id = leafThing(chart, leaf);
  const facts = leaf.installation.motion?.facts;
  const slow = facts?.['slow-zone'] === undefined ? id : things.note('motion.slow-zone', 'slow zone', whole(facts['slow-zone'].line));
  const seat = facts?.seat === undefined ? id : things.note('motion.seat', 'seat', whole(facts.seat.line));
  const name = short(leaf.name);
  drawn.push(
    shows(
      id,
      `leaf ${name}`,
      text(fitted(name, left - margin - 12, 'normal'), margin, y + 20, 'normal', 'start', 'strong'),
      text(`runs ${seconds(motion.runTime)}`, margin, y + 36, 'small', 'start', 'quiet'),
      rect('hit', margin - 4, y + 4, left - margin - 4, 40, 3),
    ),
  );
  drawn.push(path('curve', through(curveOf(chart, of, y))));
  drawTravel(chart, of, y);
  const row = { of, name, id, slow, seat, y: y + curveHeight + 2 };
  drawRun(chart, row, opening, 'opening');
  drawRun(chart, row, closing, 'closing');
}

/** How far the leaf is open over the cycle. */
function curveOf({ axis, times }: Chart, { motion, opening, closing }: LeafTimes, y: number): Point[] {
  const { linkage, runTime } = motion;
  const most = linkage.leaf[linkage.leaf.length - 1] as number;
  const base = y + curveHeight;
  const high = base - y - 4;
  const samples = (run: Run, back: boolean): Point[] =>
    Array.from({ length: 25 }, (_, i) => {
      const time = (i * runTime) / 24;
      const position = leafAfter(motion, back ? 'closing' : 'opening', time) ?? 0;
      return { x: axis.at(run.start + time), y: base - (high * position) / most };
    });
  return [{ x: axis.at(0), y: base }, ...samples(opening, false), ...samples(closing, true), { x: axis.at(times.end), y: base }];
}

/** How far it opens, over the stretch in which it stands open, where there is room. */
function drawTravel({ axis, drawn }: Chart, { leaf, motion: { linkage }, opening, closing }: LeafTimes, y: number): void {
  if (!(axis.at(closing.start) - axis.at(opening.stop) > 40)) return;
  const most = linkage.leaf[linkage.leaf.length - 1] as number;
  const shown = leaf.facts.opens === undefined ? showSi(most, 'm') : showSi(inDegrees(most), 'deg');
  drawn.push(text(shown, (axis.at(opening.stop) + (axis.cut ?? axis.at(closing.start))) / 2, y - 2, 'small', 'middle', 'quiet'));
}

/** The bars of one run: at full speed, in the slow zone, pushing against the stop. */
function drawRun(chart: Chart, row: Row, run: Run, way: 'opening' | 'closing'): void {
  const { axis, drawn } = chart;
  const { name, y } = row;
  const start = axis.at(run.start);
  const slow = axis.at(run.slow);
  const full = seconds(run.slow - run.start);
  const hit = rect('hit', start, y, slow - start, barHeight);
  drawn.push(
    shows(
      row.id,
      `${name} ${way} at full speed, ${full}`,
      rect('run', start, y, slow - start, barHeight),
      ...inBar(`${way} ${full}`, start, slow - start, y),
      hit,
    ),
  );
  if (run.stop > run.slow) drawSlow(chart, row, run, `${name} ${way} in the slow zone, ${seconds(run.stop - run.slow)}`);
  if (run.end > run.stop) drawSeat(chart, row, run, `${name} pushing against its stop, ${seconds(run.end - run.stop)}`);
}

const inBar = (words: string, x: number, width: number, y: number): Element[] =>
  width > widthOf(words, 'small') + 6 ? [text(words, x + width / 2, y + 14, 'small', 'middle', 'in-over')] : [];

function drawSlow({ axis, drawn }: Chart, row: Row, run: Run, title: string): void {
  const { y } = row;
  const x = axis.at(run.slow);
  const width = axis.at(run.stop) - x;
  const strokes = path('slow-strokes', hatch(x, y, width, barHeight, 8));
  drawn.push(shows(row.slow, title, rect('slow', x, y, width, barHeight), strokes, rect('hit', x, y, width, barHeight)));
}

function drawSeat({ axis, drawn }: Chart, row: Row, run: Run, title: string): void {
  const { y } = row;
  const x = axis.at(run.stop);
  const end = axis.at(run.end);
  const middle = y + barHeight / 2;
  drawn.push(
    shows(
      row.seat,
      title,
      rect('seat', x, y + 3, end - x, barHeight - 6),
      path(
        'seat-strokes',
        through([
          { x, y: middle },
          { x: end, y: middle },
        ]),
      ),
      rect('hit', x, y, Math.max(6, end - x), barHeight),
    ),
  );
}
