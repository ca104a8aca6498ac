// An articulated arm: a shaft on the post, a drive arm on the shaft, a link arm from the elbow to the leaf.
//
// Hinge axis at the origin, closed leaf along +x, leaf opening towards +y by θ. Shaft S = (−along, +out), elbow E at
// driveArm from S, leaf bracket Q = leafBracket · (cos θ, sin θ), link arm from E to Q. Together with the post this is a
// four-bar linkage: crank = drive arm, coupler = link arm, rocker = leaf up to its bracket, ground = shaft to hinge.
//
// Four bars can be put together in two ways. The usual one is meant here: with the leaf closed the elbow stands on the
// same side of the line from shaft to bracket as the shaft stands of the leaf (out ≥ 0: the side the leaf opens to;
// out < 0: the other one), so that the arm never folds through the leaf. With out ≥ 0 this is also the elbow that points
// away from the middle of the opening when the leaf is open. It stays on that side over the whole travel: it can only
// change where both arms are in line, and that is a dead point.
//
// SI throughout: metres and radians. An impossible mounting or a number that is not finite gives undefined.

/**
 * Where an articulated arm is fixed and how long its arms are, in metres. `along` is measured behind the hinge along the
 * line of the closed leaf (negative: in front of it), `out` from that line towards the side the leaf opens to (negative:
 * the other side); both arms pin to pin; `leafBracket` from the hinge axis along the leaf. The last three are above 0.
 */
export interface ArmMounting {
  readonly along: number;
  readonly out: number;
  readonly driveArm: number;
  readonly linkArm: number;
  readonly leafBracket: number;
}

/**
 * Why the arm has no hold on the leaf. `arms-in-line`: the two arms lie in one line; the leaf is at the end of what the
 * arm can reach and the shaft turns without moving it. `link-through-hinge`: the line of the link arm goes through the
 * hinge axis; the arm pushes on the hinge and no torque of the shaft moves the leaf.
 */
export type ArmDeadPointKind = 'arms-in-line' | 'link-through-hinge';

export interface ArmDeadPoint {
  /** Leaf angle in radians. */
  readonly angle: number;
  readonly kind: ArmDeadPointKind;
}

/** Angles closer together than this are the same angle: far below what a site can measure, far above rounding. In radians. */
const sameAngle = 1e-9;
/** Relative slack for what should be exactly equal. */
const rounding = 1e-12;
const turn = 2 * Math.PI;

/** What is no number, or has no end, makes no triangle in `poseAt`. */
const possible = (m: ArmMounting): boolean => m.driveArm > 0 && m.linkArm > 0 && m.leafBracket > 0;

/** +1: elbow to the left of the line from shaft to bracket; −1: to its right. */
const elbowSide = (m: ArmMounting): 1 | -1 => (m.out < 0 ? -1 : 1);

/**
 * Direction from shaft to leaf bracket in radians, without jumps of a turn as the leaf opens; with the cosine and sine of the leaf angle.
 */
function sightFrom(m: ArmMounting, angle: number, cosine: number, sine: number): number {
  const post = Math.sqrt(m.along * m.along + m.out * m.out);
  if (m.leafBracket >= post) {
    // Seen from the leaf the bracket is always ahead of the shaft, so this arctangent never wraps.
    const ahead = m.leafBracket + m.along * cosine - m.out * sine;
    return angle + Math.atan2(-m.along * sine - m.out * cosine, ahead);
  }
  // Shaft further from the hinge than the bracket: measured from the line shaft to hinge it never wraps.
  const east = m.along / post;
  const north = -m.out / post;
  const across = m.leafBracket * (sine * east - cosine * north);
  return Math.atan2(north, east) + Math.atan2(across, post + m.leafBracket * (cosine * east + sine * north));
}

/**
 * Direction of the drive arm in radians, counted from +x (the closed leaf) towards +y, and without jumps as the leaf opens.
 * `angle`: leaf angle in radians. Undefined where the arms are too short or too long to be put together there, where
 * shaft and leaf bracket coincide, and for an impossible mounting.
 */
export function shaftAngle(m: ArmMounting, angle: number): number | undefined {
  const pose = newPose();
  return poseAt(m, angle, pose) ? pose.shaft : undefined;
}

/**
 * |d shaft angle / d leaf angle|, 0 or above, without unit: leaf speed = shaft speed / ratio, leaf torque = shaft torque · ratio.
 * 0 where the link arm's line goes through the hinge. Undefined where both arms are in line (it grows without bound
 * there) and as for shaftAngle. From the constant length of the link arm: (E − Q)·(E′ − Q′) = 0.
 */
export function shaftRatio(m: ArmMounting, angle: number): number | undefined {
  const pose = newPose();
  return poseAt(m, angle, pose) && !Number.isNaN(pose.ratio) ? pose.ratio : undefined;
}

/** How the arm stands at one leaf angle. Written over again by `poseAt`, so that a walk over many angles makes no object for each. */
export interface ArmPose {
  /** Direction of the drive arm, radians, as shaftAngle. */
  shaft: number;
  /** |d shaft angle / d leaf angle|, as shaftRatio; NaN where both arms are in line. */
  ratio: number;
  /** The tangent of transmissionAngle; Infinity for a right angle. */
  transmission: number;
}

export const newPose = (): ArmPose => ({ shaft: 0, ratio: 0, transmission: 0 });

/**
 * All of an arm's pose at a leaf angle (radians), written into `pose`; false where it has none, as for shaftAngle. The sine
 * and cosine of the shaft come from its triangle and not from its angle, which saves most of the work.
 */
export function poseAt(m: ArmMounting, angle: number, pose: ArmPose): boolean {
  if (!possible(m)) return false;
  const { along, out, driveArm, linkArm, leafBracket } = m;
  const leafX = Math.cos(angle);
  const leafY = Math.sin(angle);
  const reachX = leafBracket * leafX + along;
  const reachY = leafBracket * leafY - out;
  const reach = Math.sqrt(reachX * reachX + reachY * reachY);
  const foldCosine = (driveArm * driveArm + reach * reach - linkArm * linkArm) / (2 * driveArm * reach);
  // Of a reach of 0 there is no direction, and of arms too short or too long no triangle.
  if (!(Math.abs(foldCosine) <= 1 + rounding)) return false;
  const held = Math.max(-1, Math.min(1, foldCosine));
  const side = elbowSide(m);
  pose.shaft = sightFrom(m, angle, leafX, leafY) + side * Math.acos(held);
  const foldSine = side * Math.sqrt(1 - held * held);
  const armX = (reachX * held - reachY * foldSine) / reach;
  const armY = (reachY * held + reachX * foldSine) / reach;
  const linkX = driveArm * armX - along - leafBracket * leafX;
  const linkY = driveArm * armY + out - leafBracket * leafY;
  const across = linkY * leafX - linkX * leafY;
  const onShaft = driveArm * (linkY * armX - linkX * armY);
  pose.ratio = Math.abs(onShaft) <= rounding * driveArm * linkArm ? Number.NaN : Math.abs((leafBracket * across) / onShaft);
  pose.transmission = Math.abs(across) / Math.abs(linkX * leafX + linkY * leafY);
  return true;
}

/**
 * Angle between link arm and leaf in radians, folded into [0, π/2]: at π/2 the link arm turns the leaf best, at 0 it only
 * pushes on the hinge. Textbooks ask for 40° or more (Norton, *Design of Machinery*, from memory). Undefined as for shaftAngle.
 */
export function transmissionAngle(m: ArmMounting, angle: number): number | undefined {
  const pose = newPose();
  return poseAt(m, angle, pose) ? Math.atan(pose.transmission) : undefined;
}

/** Angles in [0, one turn) at which a point `onLeaf` metres along the leaf (negative: behind the hinge) is `away` metres from the shaft. */
function anglesAt(m: ArmMounting, onLeaf: number, away: number): readonly number[] {
  const post = Math.sqrt(m.along * m.along + m.out * m.out);
  const cosine = (away * away - post * post - onLeaf * onLeaf) / (2 * post * onLeaf);
  if (!(Math.abs(cosine) <= 1 + rounding)) return [];
  const spread = Math.acos(Math.max(-1, Math.min(1, cosine)));
  const lead = Math.atan2(m.out, m.along);
  return [spread - lead, -spread - lead].map((angle) => {
    const turned = ((angle % turn) + turn) % turn;
    return turned >= turn - sameAngle ? 0 : turned;
  });
}

/** Whether the elbow of the usual assembly is the point at `onLeaf` on the leaf's line. */
function elbowIsAt(m: ArmMounting, angle: number, onLeaf: number): boolean {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const across =
    (m.leafBracket * cosine + m.along) * (onLeaf * sine - m.out) - (m.leafBracket * sine - m.out) * (onLeaf * cosine + m.along);
  return across * elbowSide(m) >= 0;
}

/**
 * The first leaf angle in [0, upTo] (radians) at which the arm has no hold on the leaf, and why (see ArmDeadPointKind).
 * Undefined where there is none, where the arm cannot be put together with the leaf closed, for an impossible mounting,
 * and for an `upTo` below 0 or not finite. Closed form: both kinds are triangles with three known sides.
 */
export function armDeadPoint(m: ArmMounting, upTo: number): ArmDeadPoint | undefined {
  if (!Number.isFinite(upTo) || upTo < 0) return undefined;
  if (shaftAngle(m, 0) === undefined) return undefined;
  // Asked at closed by itself, because there are mountings that are dead at every angle and have no first one.
  const stretched = m.driveArm + m.linkArm;
  const folded = Math.abs(m.driveArm - m.linkArm);
  const reach = Math.sqrt((m.leafBracket + m.along) ** 2 + m.out ** 2);
  if (stretched - reach <= rounding * stretched || reach - folded <= rounding * stretched) return { angle: 0, kind: 'arms-in-line' };
  let first: ArmDeadPoint | undefined;
  const consider = (angle: number, kind: ArmDeadPointKind): void => {
    if (angle <= upTo + sameAngle && (first === undefined || angle < first.angle)) first = { angle: Math.min(angle, upTo), kind };
  };
  for (const length of [stretched, folded]) {
    for (const angle of anglesAt(m, m.leafBracket, length)) consider(angle, 'arms-in-line');
  }
  for (const elbow of [m.leafBracket - m.linkArm, m.leafBracket + m.linkArm]) {
    for (const angle of anglesAt(m, elbow, m.driveArm)) {
      if (elbowIsAt(m, angle, elbow)) consider(angle, 'link-through-hinge');
    }
  }
  return first;
}

/**
 * Largest leaf angle in [0, upTo] (radians) the arm reaches from closed without crossing a dead point; where a dead point
 * stops it, the dead point's own angle, 0 if the arm is already dead with the leaf closed.
 * Undefined where the arm cannot be put together with the leaf closed, for an impossible mounting, and for an `upTo` below 0.
 */
export function reachableArmAngle(m: ArmMounting, upTo: number): number | undefined {
  if (!Number.isFinite(upTo) || upTo < 0 || shaftAngle(m, 0) === undefined) return undefined;
  return armDeadPoint(m, upTo)?.angle ?? upTo;
}
