// How everything in the plan moves through one full cycle, for a slider. The plan is drawn closed; each entry turns or
// shifts the element of its name. What is fixed to a leaf stands within the leaf's element and is carried along by it.
import { inDegrees } from '../figures/index.ts';
import { leafAfter, type LeafMotion } from '../figures/run-time/working.ts';
import type { Installation } from '../model/index.ts';
import { mechanismAt, onGround, openingOf, turnOf, type PlacedLeaf, type Swing } from './opening.ts';
import { planScaleOf } from './plan.ts';
import type { Point } from './svg.ts';
import { timesOf, type LeafTimes, type Times } from './times.ts';

export interface Moving {
  /** `data-moves` of its element in the plan, which is drawn closed. Parts of a drive move too, and may stand within a leaf that carries them along. */
  readonly thing: string;
  /** Turns about a point of the plan (in its viewBox), or moves along it. */
  readonly motion: { readonly kind: 'turn' | 'shift'; readonly x: number; readonly y: number };
  /** Seconds, rising. */
  readonly times: readonly number[];
  /** At each of them the angle in degrees as SVG turns, or the share 0 to 1 of the shift. Between them, straight lines. */
  readonly values: readonly number[];
}

export interface Cycle {
  /** Seconds of the whole cycle: opening, waiting open, closing, seating. */
  readonly duration: number;
  /** Stretches of it in words. */
  readonly phases: readonly { readonly from: number; readonly to: number; readonly label: string }[];
  readonly leaves: readonly Moving[];
}

/** Samples of each piece of a run: of one that speeds up or brakes, and of one at even speed, whose leaf may still be quick here and slow there. */
const samples = { changing: 8, even: 20 } as const;

/** Seconds from the start of a run at which its leaf is looked at, without both ends; between them straight lines are within a tenth of a degree. */
function momentsOf({ profile: { startTime, acceleration } }: LeafMotion): number[] {
  const moments: number[] = [];
  for (let piece = 0; piece + 1 < startTime.length; piece++) {
    const from = startTime[piece] as number;
    const span = (startTime[piece + 1] as number) - from;
    const count = acceleration[piece] === 0 ? samples.even : samples.changing;
    for (let i = piece === 0 ? 1 : 0; i < count; i++) moments.push(from + (span * i) / count);
  }
  return moments;
}

export function cycleMotion(installation: Installation): Cycle | undefined {
  const times = timesOf(installation);
  const scale = planScaleOf(installation);
  if (times === undefined || scale === undefined) return undefined;
  const leaves: Moving[] = [];
  for (const placed of openingOf(installation).gaps.flatMap((gap) => gap.leaves)) {
    const own = times.leaves.find((each) => each.leaf === placed.leaf);
    if (own !== undefined) leaves.push(...movesOf(placed, own, times, scale.at));
  }
  if (leaves.length === 0) return undefined;
  return { duration: times.end, phases: phasesOf(times), leaves };
}

/** Positions of a leaf (radians or metres from closed) over the cycle. */
function positionsOf({ motion, opening, closing }: LeafTimes, end: number): { times: number[]; positions: number[] } {
  const times: number[] = [0];
  const positions: number[] = [0];
  const put = (time: number, position: number): void => {
    // Told in tenths of a millisecond: what is closer is the same moment.
    if (time - (times[times.length - 1] as number) < 2e-4) return;
    times.push(time);
    positions.push(position);
  };
  const { leaf: sampled } = motion.linkage;
  const moments = momentsOf(motion);
  const open = sampled[sampled.length - 1] as number;
  put(opening.start, 0);
  for (const moment of moments) put(opening.start + moment, leafAfter(motion, 'opening', moment) ?? 0);
  put(opening.stop, open);
  put(closing.start, open);
  for (const moment of moments) put(closing.start + moment, leafAfter(motion, 'closing', moment) ?? open);
  put(closing.stop, 0);
  put(end, 0);
  return { times, positions };
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

function movesOf(placed: PlacedLeaf, own: LeafTimes, { end }: Times, at: (point: Point) => Point): Moving[] {
  const { times: exact, positions } = positionsOf(own, end);
  const times = exact.map((time) => rounded(time, 4));
  if (placed.kind === 'slide') {
    const zero = at({ x: 0, y: 0 });
    const moved = at({ x: placed.way * placed.distance, y: 0 });
    return [{ thing: `leaf.${placed.leaf.name}`, motion: { kind: 'shift', x: rounded(moved.x - zero.x, 3), y: 0 }, times, values: positions.map((position) => rounded(position / placed.distance, 5)) }];
  }
  const turn = turnOf(placed);
  const moving: Moving[] = [turning(`leaf.${placed.leaf.name}`, at(placed.hinge), times, positions.map((angle) => turn * inDegrees(angle)))];
  for (const drive of placed.leaf.drives) moving.push(...mechanismMoves(placed, drive, times, positions, at));
  return moving;
}

const turning = (thing: string, about: Point, times: readonly number[], degrees: readonly number[]): Moving => ({
  thing,
  motion: { kind: 'turn', x: rounded(about.x, 3), y: rounded(about.y, 3) },
  times,
  values: degrees.map((value) => rounded(value, 3)),
});

/** The parts of a ram or an arm: one turns about its place on the post; the other is carried by the leaf and turns about its bracket there. */
function mechanismMoves(placed: Swing, drive: Swing['leaf']['drives'][number], times: readonly number[], positions: readonly number[], at: (point: Point) => Point): Moving[] {
  const closed = mechanismAt(drive, 0);
  if (closed === undefined) return [];
  const turn = turnOf(placed);
  const fixed: number[] = [];
  const carried: number[] = [];
  let before = closed.direction;
  let linkBefore = closed.kind === 'arm' ? closed.link : 0;
  for (const angle of positions) {
    const now = mechanismAt(drive, angle);
    if (now === undefined || now.kind !== closed.kind) return [];
    before = near(now.direction, before);
    fixed.push(turn * inDegrees(before - closed.direction));
    if (now.kind === 'arm') linkBefore = near(now.link, linkBefore);
    const direction = now.kind === 'arm' && closed.kind === 'arm' ? linkBefore - closed.link : before - closed.direction;
    carried.push(turn * inDegrees(direction - angle));
  }
  const post = closed.kind === 'ram' ? closed.post : closed.shaft;
  return [
    turning(`drive.${drive.name}.fixed`, at(onGround(placed, post.x, post.y)), times, fixed),
    turning(`drive.${drive.name}.carried`, at(onGround(placed, closed.bracket.x, closed.bracket.y)), times, carried),
  ];
}

/** The same direction, written without a jump of a turn. */
const near = (angle: number, before: number): number => angle + 2 * Math.PI * Math.round((before - angle) / (2 * Math.PI));

function phasesOf({ opens, open, warns, closes, closed, end, dwell }: Times): Cycle['phases'] {
  const phases = [
    { from: 0, to: opens, label: 'warning before it opens' },
    { from: opens, to: open, label: 'opening' },
    { from: open, to: warns, label: dwell === undefined ? 'standing open until it is told to close (no dwell is stated)' : 'standing open' },
    { from: warns, to: closes, label: 'warning before it closes' },
    { from: closes, to: closed, label: 'closing' },
    { from: closed, to: end, label: 'pushing against the stop' },
  ];
  return phases.filter(({ from, to }) => to > from);
}
