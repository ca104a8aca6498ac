// One full cycle of the gate in seconds: when each leaf starts, runs, slows down and pushes on against its stop. Shared by
// the timing chart and by the slider that plays the cycle.
import { type CycleTimes, cycleOf, startsSecond } from '../../figures/cycle-time/working.ts';
import { type LeafMotion, motionOf, untilSlow } from '../../figures/run-time/working.ts';
import { type Installation, type Leaf, perSubject } from '../../model/index.ts';

/** Seconds that the gate is shown standing open where no dwell is stated. */
export const openUntilTold = 6;

/** One run of a leaf, in seconds from the beginning of the cycle. */
export interface Run {
  readonly start: number;
  /** Where the slow zone begins; the same as `stop` without one. */
  readonly slow: number;
  readonly stop: number;
  /** The end of the seat. */
  readonly end: number;
}

export interface LeafTimes {
  readonly leaf: Leaf;
  readonly motion: LeafMotion;
  readonly opening: Run;
  readonly closing: Run;
}

export interface Times {
  readonly cycle: CycleTimes;
  readonly leaves: readonly LeafTimes[];
  readonly seat: number;
  /** Undefined where none is stated: the gate stands open until it is told to close. */
  readonly dwell: number | undefined;
  /** Beginning of opening, all open, beginning of the second warning, beginning of closing, all closed, end of the last seat. */
  readonly opens: number;
  readonly open: number;
  readonly warns: number;
  readonly closes: number;
  readonly closed: number;
  readonly end: number;
}

/** Undefined where the motion of a driven leaf cannot be worked out. */
export const timesOf = perSubject((installation: Installation): Times | undefined => {
  const cycle = cycleOf(installation);
  if (cycle === undefined) return undefined;
  const facts = installation.motion?.facts;
  const seat = facts?.seat?.value ?? 0;
  const dwell = facts?.dwell?.value;
  const opens = cycle.preWarning;
  const open = opens + cycle.opening;
  const warns = open + Math.max(dwell ?? openUntilTold, dwell === undefined ? seat : 0);
  const closes = warns + cycle.preWarning;
  const closed = closes + cycle.closing;
  const leaves: LeafTimes[] = [];
  for (const leaf of installation.leaves) {
    const motion = leaf.drives.length === 0 ? undefined : motionOf(leaf);
    if (motion === undefined) continue;
    leaves.push({
      leaf,
      motion,
      opening: runOf(motion, opens + (startsSecond(leaf, 'opening') ? cycle.lagOpening : 0), seat),
      closing: runOf(motion, closes + (startsSecond(leaf, 'closing') ? cycle.lagClosing : 0), seat),
    });
  }
  return { cycle, leaves, seat, dwell, opens, open, warns, closes, closed, end: closed + seat };
});

function runOf(motion: LeafMotion, start: number, seat: number): Run {
  const { runTime } = motion;
  return { start, slow: start + untilSlow(motion), stop: start + runTime, end: start + runTime + seat };
}
