// The gap between the underside of a swing leaf and the ground through the whole travel.
//
// SI throughout: m and rad; slope is rise over length. Anything impossible gives undefined.
import { tiltedHingeRise } from '../leaf-load/maths.ts';

export interface Underside {
  /** Gap of the closed leaf, 0 or above. */
  readonly gap: number;
  /** Above 0. */
  readonly width: number;
  /** Of the ground, towards the side that the leaf opens to; negative where it falls. */
  readonly slope: number;
  /** How much higher rising hinges hold the open leaf, evenly over the travel; 0 or above. */
  readonly rises: number;
  /** Lean of the hinge axis, from 0 to below π/2, and where the leaf then hangs lowest. */
  readonly tilt: number;
  readonly lowest: 'closed' | 'open';
}

export interface Clearance {
  /** Below 0 where the leaf meets the ground. */
  readonly least: number;
  /** Opening angle at which it is least, radians. */
  readonly at: number;
  readonly greatest: number;
}

/** Samples over the travel: a sine over at most half a turn is met to a thousandth of its height. */
const samples = 48;

/** Gap under the free edge at an opening angle in m: what was there, what hinges lift it by, less what the ground rises. */
function underFreeEdge(leaf: Underside, travel: number, angle: number): number {
  // A point on the leaf rises twice as far as its centre when it is twice as far out.
  const lift = (from: number): number => 2 * (tiltedHingeRise(leaf.width, leaf.tilt, from) ?? 0);
  const tilted = leaf.tilt === 0 ? 0 : leaf.lowest === 'closed' ? lift(angle) : lift(travel - angle) - lift(travel);
  return leaf.gap + tilted + (leaf.rises * angle) / travel - leaf.width * leaf.slope * Math.sin(angle);
}

/** The least and greatest gap under a leaf that opens by `travel` (radians, above 0, up to π), anywhere along its width. */
export function clearance(leaf: Underside, travel: number): Clearance | undefined {
  const { gap, width, slope, rises, tilt } = leaf;
  if (!(gap >= 0) || !(width > 0) || !(rises >= 0) || !Number.isFinite(gap + width + slope + rises) || !(tilt >= 0 && tilt < Math.PI / 2) || !(travel > 0 && travel <= Math.PI)) return undefined;
  // Between hinge and free edge the gap grows or shrinks evenly, so it is least at one of the two.
  let least = gap;
  let at = 0;
  let greatest = gap + rises;
  if (slope === 0 && tilt === 0) return { least, at, greatest };
  const look = (angle: number): void => {
    const here = underFreeEdge(leaf, travel, angle);
    if (here < least) {
      least = here;
      at = angle;
    }
    if (here > greatest) greatest = here;
  };
  for (let i = 1; i <= samples; i++) look((travel * i) / samples);
  if (travel > Math.PI / 2) look(Math.PI / 2);
  return { least, at, greatest };
}
