// The bracket triangle of a linear ram: hinge, post bracket, leaf bracket.
//
// Hinge axis at the origin, closed leaf along +x, leaf opening towards +y by θ. The post bracket is the fixed point
// P = (−along, +out), the leaf bracket Q = leafBracket · (cos θ, sin θ), and the ram is the straight line from P to Q.
// With L² = along² + out² + b² + 2b(along·cos θ − out·sin θ) everything here is plane trigonometry (law of cosines).
//
// SI throughout: metres and radians. An impossible mounting or a number that is not finite gives undefined.

/**
 * Where a ram is fixed, in metres. `along` is measured behind the hinge along the line of the closed leaf (negative: in
 * front of it), `out` from that line towards the side the leaf opens to (negative: the other side), `leafBracket` from
 * the hinge axis along the leaf (above 0).
 */
export interface RamMounting {
  readonly along: number;
  readonly out: number;
  readonly leafBracket: number;
}

/** Angles closer together than this are the same angle: far below what a site can measure, far above rounding. In radians. */
const sameAngle = 1e-9;

const possible = (m: RamMounting): boolean =>
  Number.isFinite(m.along) && Number.isFinite(m.out) && Number.isFinite(m.leafBracket) && m.leafBracket > 0;

/**
 * Distance between the ram's two pins in metres, leaf open by `angle` (radians, any finite value).
 * Undefined for an impossible mounting.
 */
export function ramLength(m: RamMounting, angle: number): number | undefined {
  return possible(m) && Number.isFinite(angle) ? lengthAt(m, angle) : undefined;
}

function lengthAt(m: RamMounting, angle: number): number {
  const along = m.leafBracket * Math.cos(angle) + m.along;
  const out = m.leafBracket * Math.sin(angle) - m.out;
  return Math.sqrt(along * along + out * out);
}

/**
 * dL/dθ in metres per radian; negative where the ram shortens as the leaf opens.
 * Undefined for an impossible mounting, and where the two pins coincide (a ram of no length has no direction).
 */
export function lengthRate(m: RamMounting, angle: number): number | undefined {
  const length = ramLength(m, angle);
  if (length === undefined || length === 0) return undefined;
  return (-m.leafBracket * (m.along * Math.sin(angle) + m.out * Math.cos(angle))) / length;
}

/**
 * Lever arm of the ram about the hinge in metres, 0 or above: leaf torque = ram force · lever arm, and leaf speed = ram
 * speed / lever arm (virtual work makes it |dL/dθ|). Undefined as for lengthRate.
 */
export function leverArm(m: RamMounting, angle: number): number | undefined {
  const rate = lengthRate(m, angle);
  return rate === undefined ? undefined : Math.abs(rate);
}

/** Whether the post bracket stands on the hinge axis, to a millionth of the leaf's side: the ram then has no lever arm at any angle. */
const onHinge = (m: RamMounting): boolean => Math.abs(m.along) + Math.abs(m.out) <= 1e-6 * m.leafBracket;

/** The angle in [0, π) at which hinge and both pins are in line; 0 for a post bracket on the hinge axis. It comes back every half turn. */
const inLine = (m: RamMounting): number => (onHinge(m) ? 0 : firstExtremum(m));

/** The angle in [0, π) at which the length stops growing or shrinking. */
function firstExtremum(m: RamMounting): number {
  const angle = Math.atan2(-m.out, m.along);
  const turned = angle < 0 ? angle + Math.PI : angle;
  return turned <= sameAngle || turned >= Math.PI - sameAngle ? 0 : turned;
}

/**
 * Smallest angle in [0, upTo] (radians) at which the ram has no lever arm: hinge and both pins in line, so that no force
 * in the ram moves the leaf. A post bracket on the hinge axis itself is dead at every angle and gives 0.
 * Undefined where there is none, for an impossible mounting, and for an `upTo` below 0 or not finite.
 */
export function deadPoint(m: RamMounting, upTo: number): number | undefined {
  if (!possible(m) || !Number.isFinite(upTo) || upTo < 0) return undefined;
  const angle = inLine(m);
  return angle <= upTo + sameAngle ? Math.min(angle, upTo) : undefined;
}

/**
 * Stroke the ram needs between closed and `angle` (radians, 0 or above): longest minus shortest distance between its pins
 * on the way, in metres. The longest or shortest may lie inside the travel, at a dead point; that is seen.
 * Undefined for an impossible mounting and for an angle below 0 or not finite.
 */
export function strokeUsed(m: RamMounting, angle: number): number | undefined {
  if (!possible(m) || !(angle >= 0 && angle < Infinity)) return undefined;
  const closed = lengthAt(m, 0);
  const opened = lengthAt(m, angle);
  let shortest = Math.min(closed, opened);
  let longest = Math.max(closed, opened);
  // Two dead points in a row are the longest and the shortest length there is: later ones add nothing.
  const first = firstExtremum(m);
  for (const extremum of [first, first + Math.PI]) {
    if (extremum > angle) break;
    const length = lengthAt(m, extremum);
    shortest = Math.min(shortest, length);
    longest = Math.max(longest, length);
  }
  return longest - shortest;
}

/**
 * The angle at which the pins are `length` metres apart, held inside the piece of travel from closed to the next dead point. For a
 * mounting that is not dead at closed.
 */
function angleOf(m: RamMounting, length: number): number {
  const post = Math.sqrt(m.along * m.along + m.out * m.out);
  const cosine = (length * length - post * post - m.leafBracket * m.leafBracket) / (2 * post * m.leafBracket);
  const spread = Math.acos(Math.max(-1, Math.min(1, cosine)));
  // L² = a² + b² + 2ab·cos(θ + lead): up to the next dead point θ + lead runs on to π, the ram growing shorter, or to 0, growing longer.
  const lead = Math.atan2(m.out, m.along);
  return Math.max(0, lead > 0 ? spread - lead : -spread - lead);
}

/**
 * Largest angle in [0, upTo] (radians) that a ram with `stroke` metres of stroke reaches from closed, without crossing a
 * dead point; where the dead point stops it, the dead point's own angle (0 if the leaf is already dead when closed).
 * Undefined for an impossible mounting and for a stroke or an `upTo` below 0 or not finite.
 */
export function reachableAngle(m: RamMounting, stroke: number, upTo: number): number | undefined {
  if (!possible(m) || !(stroke >= 0 && stroke < Infinity) || !(upTo >= 0 && upTo < Infinity)) return undefined;
  const limit = deadPoint(m, upTo) ?? upTo;
  const closed = lengthAt(m, 0);
  const last = lengthAt(m, limit);
  if (Math.abs(last - closed) <= stroke) return limit;
  return Math.min(angleOf(m, last < closed ? closed - stroke : closed + stroke), limit);
}
