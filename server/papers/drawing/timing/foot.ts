// Below the rows: the axis, what the surfaces mean, and the sums.
import { margin, type Note, sheetWidth } from '../drawing.ts';
import { type Element, hatch, line, path, rect, through } from '../svg.ts';
import { text, widthOf } from '../text.ts';
import { left, right } from './axis.ts';
import { type Chart, seconds } from './chart.ts';
import { leastMark } from './lag.ts';

/** The axis at `y`, its grid up to `top`, and the break at each of these heights. */
export function drawAxis({ axis, drawn }: Chart, top: number, y: number, breaks: readonly number[]): void {
  for (const mark of axis.marks) {
    const x = axis.at(mark);
    drawn.unshift(line('grid', { x, y: top }, { x, y }));
    const words = text(String(Number(mark.toPrecision(6))), x, y + 18, 'small', 'middle', 'quiet');
    drawn.push(line('axis', { x, y }, { x, y: y + 5 }), words);
  }
  drawn.push(line('axis', { x: left, y }, { x: right, y }), text('seconds', margin, y + 18, 'small', 'start', 'quiet'));
  if (axis.cut === undefined) return;
  for (const at of breaks) drawn.push(breakSign(axis.cut, at));
}

const breakSign = (x: number, y: number): Element =>
  path(
    'break',
    through(
      [
        { x: x - 5, y: y + 11 },
        { x: x + 1, y: y - 11 },
        { x: x + 7, y: y - 11 },
        { x: x + 1, y: y + 11 },
      ],
      true,
    ),
  );

/** What the surfaces mean, of those that are there; gives where that ends. */
export function drawLegend({ times, drawn }: Chart, top: number): number {
  let x = margin;
  let y = top;
  const entry = (sample: (x: number, y: number) => readonly Element[], words: string): void => {
    const width = 34 + widthOf(words, 'small');
    if (x + width > sheetWidth - margin) {
      x = margin;
      y += 20;
    }
    drawn.push(...sample(x, y), text(words, x + 34, y + 10, 'small', 'start', 'quiet'));
    x += width + 22;
  };
  entry(fullSample, 'full speed');
  if (times.leaves.some(({ opening }) => opening.stop > opening.slow)) entry(slowSample, 'slow zone');
  if (times.seat > 0) entry(seatSample, 'seat: pushing on against the stop');
  entry(curveSample, 'how far it is open');
  if (times.leaves.some(({ leaf }) => leaf.covers !== undefined)) entry(leastSample, 'least lag of overlapping leaves');
  return y + 18;
}

type Sample = (x: number, y: number) => readonly Element[];
const fullSample: Sample = (x, y) => [rect('run', x, y, 28, 12)];
const slowSample: Sample = (x, y) => [rect('slow', x, y, 28, 12), path('slow-strokes', hatch(x, y, 28, 12, 8))];
const seatSample: Sample = (x, y) => [
  rect('seat', x, y, 28, 12),
  path(
    'seat-strokes',
    through([
      { x, y: y + 6 },
      { x: x + 28, y: y + 6 },
    ]),
  ),
];
const curveSample: Sample = (x, y) => [
  path(
    'curve',
    through([
      { x, y: y + 12 },
      { x: x + 14, y: y + 2 },
      { x: x + 28, y: y + 2 },
    ]),
  ),
];
const leastSample: Sample = (x, y) => leastMark(x + 14, y, 4, 8);

export function timingNotes({ installation, times, axis }: Chart): Note[] {
  const { cycle, dwell, closed } = times;
  const facts = installation.motion?.facts;
  const sums = [`opening ${seconds(cycle.opening)}`, `closing ${seconds(cycle.closing)}`];
  if (dwell !== undefined) sums.push(`whole cycle ${seconds(closed)}`);
  const lines: Note[] = [{ words: `In all: ${sums.join(', ')}. Times are from stop to stop, each leaf on its true motion.`, name: 'ink' }];
  if (axis.cut !== undefined)
    lines.push({
      words:
        dwell === undefined
          ? 'No dwell is stated: how long the gate stands open is left out at the break.'
          : 'A part of the time in which the gate stands open is left out at the break.',
    });
  if (facts?.['pre-warning'] === undefined) lines.push({ words: 'No pre-warning is stated: none is drawn.' });
  if (facts?.seat === undefined) lines.push({ words: 'No seat is stated: none is drawn.' });
  return lines;
}
