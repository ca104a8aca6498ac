import { type Leaf, perSubject } from '../../model/index.ts';
import { type RollerForces, rollerForces } from './maths.ts';

export interface Balance {
  /** Of the tail to the leaf without it. */
  readonly share: number;
  /**
   * What holds the rear of the closed leaf down, as a multiple of its weight; below 0 it need not be held. Where the distance of the rollers
   * is not stated, with rollers as far apart as the tail allows.
   */
  readonly uplift: number;
  /** Undefined where the distance of the rollers or the mass is not stated. */
  readonly closed: RollerForces | undefined;
  readonly open: RollerForces | undefined;
}

/** How a leaf with a tail is balanced; undefined for any other leaf. */
export const balanceOf = perSubject((leaf: Leaf): Balance | undefined => {
  const { slides, width, mass, tail, 'roller-spacing': spacing } = leaf.facts;
  if (tail === undefined || slides === undefined || width === undefined) return undefined;
  const of =
    mass === undefined || spacing === undefined
      ? undefined
      : { mass: mass.value, overhang: width.value, tail: tail.value, spacing: spacing.value };
  const reach = Math.min(spacing?.value ?? tail.value, tail.value);
  const uplift = (width.value - tail.value) / (2 * reach);
  return { share: tail.value / width.value, uplift, closed: of && rollerForces(of, 0), open: of && rollerForces(of, slides.distance) };
});
