// The gap between the underside of a swing leaf and the ground through the whole travel.
//
// SI throughout: m and rad; slope is rise over length. Anything impossible gives undefined.

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

const amount = (value: number): boolean => value >= 0 && value < Infinity;

/** The least and greatest gap under a leaf that opens by `travel` (radians, above 0, up to π), anywhere along its width. */
export function clearance(leaf: Underside, travel: number): Clearance | undefined {
  const { gap, width, slope, rises, tilt, lowest } = leaf;
  if (
    !amount(gap) ||
    !amount(width) ||
    width === 0 ||
    !amount(rises) ||
    !Number.isFinite(slope) ||
    !(tilt >= 0 && tilt < Math.PI / 2) ||
    !(travel > 0 && travel <= Math.PI)
  )
    return undefined;
  const found = { least: gap, at: 0, greatest: gap + rises };
  // Between hinge and free edge the gap grows or shrinks evenly, so it is least at one of the two: at the hinge when closed.
  if (slope === 0 && tilt === 0) return found;
  // Under the free edge it is gap + even·θ + s·sin θ + c·(cos θ − 1): a point of a leaning leaf rises by out·sin β·(1 − cos).
  const lean = width * Math.sin(tilt);
  const from = lowest === 'closed' ? 0 : travel;
  const s = -width * slope - lean * Math.sin(from);
  const c = -lean * Math.cos(from);
  const even = rises / travel;
  const look = (angle: number): void => {
    if (!(angle <= travel)) return;
    const here = gap + even * angle + s * Math.sin(angle) + c * (Math.cos(angle) - 1);
    if (here < found.least) {
      found.least = here;
      found.at = angle;
    }
    if (here > found.greatest) found.greatest = here;
  };
  look(travel);
  // It turns round where even + s·cos θ − c·sin θ = 0; where it is lifted more than that everywhere, the arc cosine is no number.
  const middle = Math.atan2(-c, s);
  const aside = Math.acos(-even / Math.sqrt(s * s + c * c));
  for (const angle of [middle + aside, middle - aside]) look(angle < 0 ? angle + 2 * Math.PI : angle);
  return found;
}
