import { type Leaf, perSubject } from '../../model/index.ts';
import { type ForceCase, forceCaseOf, gravityAt } from '../force-window/working.ts';
import { airDensity, gripsOf, gustShareOf } from '../wind/working.ts';

/** The gust, in m/s at the gate, against which the drive can no longer move the leaf; square to the leaf. */
export interface Stall {
  readonly of: ForceCase;
  readonly gust: number;
  /** Leaf position, radians. */
  readonly at: number;
  /** What the drive has left for the wind there, N·m. */
  readonly spare: number;
  /** Moment for each pascal, m³. */
  readonly grip: number;
  /** Drive force or torque, and its lever there. */
  readonly push: number;
  readonly lever: number;
}

export interface Stalls {
  readonly closed: Stall;
  readonly moving: Stall;
  readonly open: Stall;
}

/** Stall winds of a swing leaf by what its drive is set to, or else by the most that it can; undefined where a fact is missing. */
export const stallsOf = perSubject((leaf: Leaf): Stalls | undefined => {
  const of = forceCaseOf(leaf);
  if (of === undefined || !of.swing) return undefined;
  const grips = gripsOf(leaf);
  if (grips === undefined) return undefined;
  const push = of.setting ?? of.greatest;
  const { leaf: positions, rate } = of.linkage;
  const last = positions.length - 1;
  const stall = (i: number, grip: number, ways: readonly (1 | -1)[]): Stall => {
    const at = positions[i] as number;
    const lever = rate[i] as number;
    let spare = Infinity;
    for (const way of ways) spare = Math.min(spare, push * lever - of.friction - way * gravityAt(of, at));
    spare = Math.max(0, spare);
    return { of, gust: Math.sqrt((2 * spare) / (airDensity * grip)), at, spare, grip, push, lever };
  };
  let moving = stall(0, grips.moving.moment, [1, -1]);
  for (let i = 1; i <= last; i++) {
    const here = stall(i, grips.moving.moment, [1, -1]);
    if (here.gust < moving.gust) moving = here;
  }
  return { closed: stall(0, grips.closed.moment, [1]), moving, open: stall(last, grips.moving.moment, [-1]) };
});

/** The ten-minute mean in open country that brings gusts of that speed to the gate, m/s: what Beaufort numbers are about. */
export function meanBehind(leaf: Leaf, gust: number): number | undefined {
  const share = gustShareOf(leaf);
  return share === undefined ? undefined : gust / share;
}
