// The least lag between two swing leaves whose ends overlap.
//
// Plan view. The covering leaf is hinged at (0, 0) and closed along +x; the covered leaf is hinged at (D, 0) and closed
// pointing to −x; both open towards +y. D = covering width + gap + covered width. A strip on the covering leaf carries on past its
// end, over the gap, and reaches `overlap` past the covered leaf's end, lying on its +y face: so the covering leaf has to
// open first and to close last.
//
// Assumed: leaves are straight lines without thickness from hinge to end (allow for thickness with `clearance`), hinges are
// points on the line of the closed leaves and do not give, both drives start and run exactly as their profiles say.

import { driveAt, leafAt } from '../linkage/maths.ts';
import type { Linkage } from '../linkage/maths.ts';
import { timeAt, wholeTravel } from '../motion-profile/maths.ts';
import type { Direction, Profile } from '../motion-profile/maths.ts';

/** One swing leaf and how it moves in the direction asked about. */
export interface SwingLeaf {
  /** Hinge to end of the leaf, without any strip, m, > 0. */
  readonly width: number;
  /** Leaf angles in rad. */
  readonly linkage: Linkage;
  /** Opening starts at the linkage's closed end; closing starts at the drive position equal to the profile's whole travel and runs back to 0. */
  readonly profile: Profile;
}

export interface OverlappingLeaves {
  /** Carries the strip; opens first, closes last. */
  readonly covering: SwingLeaf;
  readonly covered: SwingLeaf;
  /** How far the strip reaches past the covered leaf's end, m, >= 0. */
  readonly overlap: number;
  /** Between the ends of the two closed leaves, m, >= 0. */
  readonly gap: number;
  /**
   * Least distance between the leaves while the covered leaf is off its closed position, m, >= 0; 0 where not given.
   * The covering leaf has therefore to be this far clear before the covered leaf starts to open, and to stay so until it has closed.
   */
  readonly clearance?: number;
}

export interface LeastLag {
  /** s, >= 0. Opening: the covered leaf starts this much after the covering one. Closing: the covering leaf starts this much after the covered one. */
  readonly lag: number;
  /** Angle of the covering leaf at the moment that decides, rad from closed. */
  readonly angleCovering: number;
  /** Angle of the covered leaf at the moment that decides, rad from closed. */
  readonly angleCovered: number;
}

/** The plan, with what every position needs worked out once. */
interface Plan {
  /** Covering hinge to tip of the strip. */
  readonly reach: number;
  readonly coveredWidth: number;
  /** Hinge to hinge. */
  readonly apart: number;
  readonly clearance: number;
}

/** What one moment asks for. */
interface Moment {
  /** s; negative where the leaves have time in hand. */
  readonly lag: number;
  readonly angleCovered: number;
}

/** Steps of the grid between two corners of the motion. */
const steps = 14;

/**
 * Least lag in `direction` so that the two leaves never cross, nor come nearer than the clearance; a lag that just touches counts as free.
 *
 * While the covered leaf's end is within the strip's reach, the covering leaf must be at or beyond a required angle: that at
 * which it (or, at the last, the tip of its strip) just touches the covered leaf's end. That angle grows with the covered
 * leaf's angle up to the point of clearing, and falls after it. As both leaves only ever move one way, the free lags are
 * those not less than the greatest, over the covered leaf's angle, of the time the covering leaf reaches the required angle
 * less the time the covered leaf is at its own (closing: the other way round); where the required angle falls that difference falls too, so
 * nothing after the point of clearing can decide. Plane geometry and constant-acceleration motion, derived, no published source.
 *
 * The greatest is looked for between each two neighbouring corners (where either profile changes its acceleration, and where the tip of
 * the strip becomes the nearest point), on a grid and at the top of the parabola through its best three; for ordinary leaves it is
 * good to well under a millisecond.
 *
 * undefined: no lag makes it free, because the covering leaf does not open far enough; or impossible input (a width not above 0,
 * a negative overlap, gap or clearance, overlap and clearance together reaching the covered leaf's hinge, a clearance reaching from
 * the covering leaf's hinge to the covered leaf's end, a stroke longer than its linkage, a linkage beyond half a turn).
 */
export function leastLag(leaves: OverlappingLeaves, direction: Direction): LeastLag | undefined {
  const { covering, covered, overlap, gap } = leaves;
  const clearance = leaves.clearance ?? 0;
  const plan: Plan = {
    reach: covering.width + gap + overlap,
    coveredWidth: covered.width,
    apart: covering.width + gap + covered.width,
    clearance,
  };
  if (!(covering.width > 0 && covered.width > 0 && overlap >= 0 && gap >= 0 && clearance >= 0 && plan.apart < Infinity)) return undefined;
  if (!(overlap + clearance < covered.width && clearance < covering.width + gap)) return undefined;
  const coveringEnd = openAngle(covering);
  const coveredEnd = openAngle(covered);
  if (coveringEnd === undefined || coveredEnd === undefined) return undefined;

  const opening = direction === 'opening';
  const passing = passingAngle(plan);
  const clearing = passing === undefined ? squareAngle(plan) : clearingAngle(plan);
  const lastAngle = Math.min(coveredEnd, clearing);
  const leastRequired = requiredAngle(plan, 0);
  const greatestRequired = requiredAngle(plan, lastAngle);
  if (!(greatestRequired <= coveringEnd * (1 + 1e-9))) return undefined;

  // Corners of the difference of times, in order of the covered leaf's angle.
  const corners = new Float64Array(covering.profile.startTravel.length + covered.profile.startTravel.length + 1);
  let count = 1; // the first is 0
  for (let i = 1; i < covering.profile.startTravel.length - 1; i += 1) {
    const angle = angleAtJunction(covering, i, leastRequired, greatestRequired, opening);
    if (angle !== undefined) count = insert(corners, count, coveredAngleFor(plan, angle), lastAngle);
  }
  for (let i = 1; i < covered.profile.startTravel.length - 1; i += 1) {
    const angle = angleAtJunction(covered, i, 0, lastAngle, opening);
    if (angle !== undefined) count = insert(corners, count, angle, lastAngle);
  }
  if (passing !== undefined) count = insert(corners, count, passing, lastAngle);
  corners[count] = lastAngle;

  const grid = new Float64Array(steps + 1);
  let greatest: Moment = { lag: lagFor(leaves, plan, 0, opening), angleCovered: 0 };
  for (let i = 0; i < count; i += 1) greatest = greatestBetween(leaves, plan, corners[i]!, corners[i + 1]!, greatest, grid, opening);
  const { lag, angleCovered } = greatest;
  if (!(lag < Infinity && lag > -Infinity)) return undefined;
  return { lag: Math.max(0, lag), angleCovering: requiredAngle(plan, angleCovered), angleCovered };
}

/** Angle of the leaf at the open end of its stroke. */
function openAngle({ linkage, profile }: SwingLeaf): number | undefined {
  const angle = leafAt(linkage, wholeTravel(profile));
  return angle !== undefined && angle <= Math.PI ? angle : undefined;
}

/** Puts `angle` in its place among the first `count` corners, if it is between 0 and `end`; returns how many there are then. */
function insert(corners: Float64Array, count: number, angle: number, end: number): number {
  if (!(angle > 0 && angle < end)) return count;
  let place = count;
  while (corners[place - 1]! > angle) {
    corners[place] = corners[place - 1]!;
    place -= 1;
  }
  corners[place] = angle;
  return count + 1;
}

/** The moment that asks for most, with the covered leaf between `from` and `to`, or `sofar` if that asks for more. `grid` is room to work in. */
function greatestBetween(leaves: OverlappingLeaves, plan: Plan, from: number, to: number, sofar: Moment, grid: Float64Array, opening: boolean): Moment {
  // The grid is closest at both ends, by share²(3 − 2·share): where a leaf starts or stops, time goes by the square root of its angle.
  const span = to - from;
  let lag = -Infinity;
  let angleCovered = from;
  let best = 0;
  for (let i = 0; i <= steps; i += 1) {
    const share = i / steps;
    const angle = from + span * share * share * (3 - 2 * share);
    const needed = lagFor(leaves, plan, angle, opening);
    grid[i] = needed;
    if (needed > lag) {
      lag = needed;
      angleCovered = angle;
      best = i;
    }
  }
  const middle = Math.min(steps - 1, Math.max(1, best));
  const bend = grid[middle - 1]! - 2 * grid[middle]! + grid[middle + 1]!;
  const share = (middle + (grid[middle - 1]! - grid[middle + 1]!) / (2 * bend)) / steps;
  if (bend < 0 && share > 0 && share < 1) {
    const angle = from + span * share * share * (3 - 2 * share);
    const needed = lagFor(leaves, plan, angle, opening);
    if (needed > lag) {
      lag = needed;
      angleCovered = angle;
    }
  }
  return lag > sofar.lag ? { lag, angleCovered } : sofar;
}

/** The lag that the moment with the covered leaf at `angle` asks for; negative where the leaves have time in hand. */
function lagFor(leaves: OverlappingLeaves, plan: Plan, angle: number, opening: boolean): number {
  const difference = timeOf(leaves.covering, requiredAngle(plan, angle), opening) - timeOf(leaves.covered, angle, opening);
  return opening ? difference : -difference;
}

/** Time after its own start at which the leaf is at `angle`. */
function timeOf({ linkage, profile }: SwingLeaf, angle: number, opening: boolean): number {
  const drive = driveNear(linkage, angle);
  return timeAt(profile, opening ? drive : wholeTravel(profile) - drive);
}

/**
 * Drive travel at leaf angle `angle`, which lies in the linkage. The same curve through the samples as driveAt, without its
 * search and its care next to a dead point; where the samples bend too much for that, driveAt itself.
 */
function driveNear(linkage: Linkage, angle: number): number {
  const { leaf, drive, rate } = linkage;
  const last = leaf.length - 1;
  if (angle >= leaf[last]!) return drive[last]!;
  let low = Math.min(last - 1, Math.floor((angle / leaf[last]!) * last));
  while (low > 0 && leaf[low]! > angle) low -= 1;
  while (low < last - 1 && leaf[low + 1]! <= angle) low += 1;
  const leafSpan = leaf[low + 1]! - leaf[low]!;
  const driveSpan = drive[low + 1]! - drive[low]!;
  const start = (rate[low]! * leafSpan) / driveSpan;
  const end = (rate[low + 1]! * leafSpan) / driveSpan;
  if (!(Math.abs(start - 1) < 0.1 && Math.abs(end - 1) < 0.1)) return driveAt(linkage, angle) ?? drive[low]!;
  const t = (angle - leaf[low]!) / leafSpan;
  return drive[low]! + driveSpan * t * (start + t * (3 - 2 * start - end + t * (start + end - 2)));
}

/** Leaf angle at junction `i` of its profile, if that is between `least` and `greatest`. */
function angleAtJunction(leaf: SwingLeaf, i: number, least: number, greatest: number, opening: boolean): number | undefined {
  const { linkage, profile } = leaf;
  const drive = opening ? profile.startTravel[i]! : wholeTravel(profile) - profile.startTravel[i]!;
  if (!(drive > 0 && drive < driveNear(linkage, greatest))) return undefined;
  const angle = leafAt(linkage, drive);
  return angle !== undefined && angle > least && angle < greatest ? angle : undefined;
}

/**
 * Angle that the covering leaf needs with the covered leaf at `angle`, from 0 to the point of clearing.
 * Mostly the covered leaf's end is below the covering leaf's line: the direction to that end, seen from the covering hinge, plus the
 * angle that the clearance takes up there. At the last the tip of the strip is the nearest point instead.
 */
function requiredAngle({ reach, coveredWidth, apart, clearance }: Plan, angle: number): number {
  const sineOfHalf = Math.sin(angle / 2);
  const cosineOfHalf = Math.sqrt(Math.max(0, 1 - sineOfHalf * sineOfHalf));
  const along = apart - coveredWidth + 2 * coveredWidth * sineOfHalf * sineOfHalf;
  const up = 2 * coveredWidth * sineOfHalf * cosineOfHalf;
  const direction = Math.atan2(up, along);
  if (clearance === 0) return direction;
  const squared = along * along + up * up;
  const distance = Math.sqrt(squared);
  if (squared <= reach * reach + clearance * clearance) return direction + Math.asin(Math.min(1, clearance / distance));
  const cosine = (reach * reach + squared - clearance * clearance) / (2 * reach * distance);
  return direction + Math.acos(Math.min(1, cosine));
}

/** The other way round: angle of the covered leaf at which the covering leaf just needs `angle`. */
function coveredAngleFor({ reach, coveredWidth, apart, clearance }: Plan, angle: number): number {
  const below = Math.asin(Math.min(1, (apart * Math.sin(angle) - clearance) / coveredWidth)) - angle;
  if (clearance === 0) return below;
  const along = apart - coveredWidth * Math.cos(below);
  const up = coveredWidth * Math.sin(below);
  if (along * along + up * up <= reach * reach + clearance * clearance) return below;
  const tipAlong = apart - reach * Math.cos(angle);
  const tipUp = reach * Math.sin(angle);
  const toTip = Math.sqrt(tipAlong * tipAlong + tipUp * tipUp);
  const cosine = (toTip * toTip + coveredWidth * coveredWidth - clearance * clearance) / (2 * toTip * coveredWidth);
  return Math.atan2(tipUp, tipAlong) - Math.acos(Math.min(1, cosine));
}

/**
 * Angle of the covered leaf at which the tip of the strip becomes the nearest to its end; without clearance that is the point of clearing.
 * undefined with a very long strip, where before that the leaves stand square to each other.
 */
function passingAngle({ reach, coveredWidth, apart, clearance }: Plan): number | undefined {
  const distanceSquared = reach * reach + clearance * clearance;
  const squareDistanceSquared = apart * apart + coveredWidth * coveredWidth - 2 * coveredWidth * (coveredWidth + clearance);
  if (squareDistanceSquared <= distanceSquared) return undefined;
  return angleOpposite(Math.sqrt(distanceSquared), apart, coveredWidth);
}

/** Angle of the covered leaf at which the tip of the strip is in line with it, the clearance beyond its end. */
function clearingAngle({ reach, coveredWidth, apart, clearance }: Plan): number {
  return angleOpposite(reach, apart, coveredWidth + clearance);
}

/** Angle of the covered leaf at which the covering leaf, touching its end or at the clearance from it, stands square to it. */
function squareAngle({ coveredWidth, apart, clearance }: Plan): number {
  return Math.acos((coveredWidth + clearance) / apart);
}

/** Angle of a triangle opposite its side `a`, between `b` and `c`. By the half angle, which keeps its digits where the overlap is small. */
function angleOpposite(a: number, b: number, c: number): number {
  const squared = (a * a - (b - c) * (b - c)) / (4 * b * c);
  return 2 * Math.asin(Math.sqrt(Math.min(1, Math.max(0, squared))));
}
