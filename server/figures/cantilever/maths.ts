// A sliding leaf that hangs on two pairs of rollers beside the opening and is balanced by its tail.
//
// The mass is spread evenly over leaf and tail. Forces are what the rollers push the leaf up with: below 0, they hold it
// down. SI throughout: kg, m, N. Anything impossible gives undefined.
import { gravity } from '../leaf-load/working.ts';

export interface Cantilever {
  /** Of leaf and tail together, above 0. */
  readonly mass: number;
  /** From the front rollers to the free end of the closed leaf, above 0. */
  readonly overhang: number;
  /** Behind the front rollers, closed, above 0. */
  readonly tail: number;
  /** Between front and rear rollers, above 0. */
  readonly spacing: number;
}

export interface RollerForces {
  readonly front: number;
  readonly rear: number;
}

const above = (value: number): boolean => Number.isFinite(value) && value > 0;

/**
 * Forces of both pairs of rollers when the leaf is open by `open` (m, 0 or above): with W = m·g and the centre of mass
 * (L − c)/2 − open in front of the front rollers, rear = −W·that/s and front = W − rear. Published for the closed leaf:
 * front = W·(1 + (L − c)/(2s)).
 */
export function rollerForces({ mass, overhang, tail, spacing }: Cantilever, open: number): RollerForces | undefined {
  if (!above(mass) || !above(overhang) || !above(tail) || !above(spacing) || !(open >= 0) || !Number.isFinite(open)) return undefined;
  const weight = mass * gravity;
  const rear = (-weight * ((overhang - tail) / 2 - open)) / spacing;
  return { front: weight - rear, rear };
}
