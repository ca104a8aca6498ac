// How everything in a plan moves through one full cycle, in metres on the ground and seconds. The leaves stand closed; what is
// fixed to a leaf is carried along by it.
import { inDegrees } from '../../figures/index.ts';
import { type LeafMotion, leafAfter } from '../../figures/run-time/working.ts';
import type { Drive, Installation, Leaf, Steps } from '../../model/index.ts';
import { mostDrawn } from './limit.ts';
import { mechanismAt } from './mechanism.ts';
import { onGround, type Slide, type Swing, turnOf } from './opening.ts';
import { planSceneOf } from './plan.ts';
import type { Point } from './point.ts';
import { type LeafTimes, type Times, timesOf } from './times.ts';

/** One part that turns or shifts. */
export interface Move {
  /** `leaf.NAME`, `drive.NAME.fixed`, `drive.NAME.carried`. */
  readonly part: string;
  /** The point that it turns about, with the leaf closed; or how far it shifts. */
  readonly motion: { readonly kind: 'turn'; readonly about: Point } | { readonly kind: 'shift'; readonly by: Point };
  /** Seconds from the beginning of the cycle, rising. */
  readonly times: readonly number[];
  /** At each of them the angle in degrees, clockwise as seen from above; or the share 0 to 1 of the shift. */
  readonly values: readonly number[];
}

/** Stretches of a cycle in words; seconds. */
export interface Phase {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

/** All moves of what the plan of an installation draws; empty where no motion can be worked out. */
export function* movesOf(installation: Installation): Steps<Move[]> {
  const times = timesOf(installation);
  const scene = planSceneOf(installation);
  if (times === undefined || scene === undefined) return [];
  const timesByLeaf = new Map<Leaf, LeafTimes>(times.leaves.map((each) => [each.leaf, each]));
  const moves: Move[] = [];
  let drives = mostDrawn;
  for (const placed of scene.leaves) {
    yield;
    const own = timesByLeaf.get(placed.leaf);
    if (own === undefined) continue;
    const positions = positionsOf(own, times.closed);
    if (placed.kind === 'slide') {
      moves.push(slideMove(placed, positions));
      continue;
    }
    moves.push(turnOfLeaf(placed, positions));
    for (const drive of placed.leaf.drives.slice(0, drives)) {
      yield;
      drives--;
      moves.push(...mechanismMoves(placed, drive, positions));
    }
  }
  return moves;
}

/** Where a leaf is over the cycle, radians or metres from closed. */
interface Positions {
  readonly times: readonly number[];
  readonly positions: readonly number[];
}

function positionsOf({ motion, opening, closing }: LeafTimes, end: number): Positions {
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

/** Samples of each piece of a run: of one that speeds up or brakes, and of one at even speed; its leaf may be quick here, slow there. */
const samples = { changing: 8, even: 20 } as const;

/** Seconds from the start of a run at which its leaf is looked at, without its ends; straight lines between are true to 0.1 degree. */
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

const slideMove = ({ leaf, way, distance }: Slide, { times, positions }: Positions): Move => ({
  part: `leaf.${leaf.name}`,
  motion: { kind: 'shift', by: { x: way * distance, y: 0 } },
  times,
  values: positions.map((position) => position / distance),
});

function turnOfLeaf(placed: Swing, { times, positions }: Positions): Move {
  const turn = turnOf(placed);
  const values = positions.map((angle) => turn * inDegrees(angle));
  return { part: `leaf.${placed.leaf.name}`, motion: { kind: 'turn', about: placed.hinge }, times, values };
}

/** The parts of a ram or an arm: one turns about its place on the post; the other is carried by the leaf, and turns about its bracket. */
function mechanismMoves(placed: Swing, drive: Drive, { times, positions }: Positions): Move[] {
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
  const turning = (part: string, { x, y }: Point, values: readonly number[]): Move => ({
    part: `drive.${drive.name}.${part}`,
    motion: { kind: 'turn', about: onGround(placed, x, y) },
    times,
    values,
  });
  return [turning('fixed', post, fixed), turning('carried', closed.bracket, carried)];
}

/** The same direction, written without a jump of a turn. */
const near = (angle: number, before: number): number => angle + 2 * Math.PI * Math.round((before - angle) / (2 * Math.PI));

/** What happens one after the other in a cycle; what takes no time is left out. */
export function phasesOf({ opens, open, warns, closes, closed, dwell }: Times): Phase[] {
  const phases = [
    { from: 0, to: opens, label: 'warning before it opens' },
    { from: opens, to: open, label: 'opening' },
    { from: open, to: warns, label: `standing open${dwell === undefined ? ' until it is told to close (no dwell is stated)' : ''}` },
    { from: warns, to: closes, label: 'warning before it closes' },
    { from: closes, to: closed, label: 'closing' },
  ];
  return phases.filter(({ from, to }) => to > from);
}
