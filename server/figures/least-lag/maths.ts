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
import { pieceAtTime, timeAt, timeInPiece, wholeTravel } from '../motion-profile/maths.ts';
import type { Direction, Profile } from '../motion-profile/maths.ts';
import { rowOf } from '../rows.ts';

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
  /** How far the strip reaches past the covered leaf's end, m, > 0: without overlap there is no order to keep. */
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
  /** Angle that the covering leaf just needs at the moment that decides (with lag 0: that leaves least time in hand), rad from closed. */
  readonly angleCovering: number;
  /** Angle of the covered leaf at that moment, rad from closed. */
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

/** Grid between two neighbouring corners of the motion, and how often its best is then refined. */
const steps = 8;
const refinements = 4;

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
 * the strip becomes the nearest point), on a grid and by parabolas through its best;
 * for ordinary leaves it is good to well under a millisecond.
 *
 * undefined: no lag makes it free, because the covering leaf does not open far enough; or impossible input (a width not above 0,
 * an overlap not above 0, a negative gap or clearance, overlap and clearance together reaching the covered leaf's hinge, a clearance reaching from
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
  if (!(covering.width > 0 && covered.width > 0 && overlap > 0 && gap >= 0 && clearance >= 0 && plan.apart < Infinity)) return undefined;
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
  const corners = rowOf(covering.profile.startTravel.length + covered.profile.startTravel.length + 1);
  corners[0] = 0;
  let count = 1;
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

  const timesCovering = rowOf(count + 1);
  const timesCovered = rowOf(count + 1);
  let lag = -Infinity;
  let angleCovered = 0;
  for (let i = 0; i <= count; i += 1) {
    timesCovering[i] = timeAt(covering.profile, travelFor(covering, requiredAngle(plan, corners[i]!), opening));
    timesCovered[i] = timeAt(covered.profile, travelFor(covered, corners[i]!, opening));
    const needed = opening ? timesCovering[i]! - timesCovered[i]! : timesCovered[i]! - timesCovering[i]!;
    if (needed > lag) {
      lag = needed;
      angleCovered = corners[i]!;
    }
  }
  const grid = rowOf(steps + 1);
  for (let i = 0; i < count; i += 1) {
    // Both times only ever grow along the grid (or shrink, closing), so nothing in between can ask for more than this.
    const bound = opening ? timesCovering[i + 1]! - timesCovered[i]! : timesCovered[i]! - timesCovering[i + 1]!;
    if (bound <= lag) continue;
    const stretch: Stretch = {
      leaves,
      plan,
      opening,
      from: corners[i]!,
      span: corners[i + 1]! - corners[i]!,
      coveringPiece: pieceAtTime(covering.profile, (timesCovering[i]! + timesCovering[i + 1]!) / 2),
      coveredPiece: pieceAtTime(covered.profile, (timesCovered[i]! + timesCovered[i + 1]!) / 2),
    };
    grid[0] = opening ? timesCovering[i]! - timesCovered[i]! : timesCovered[i]! - timesCovering[i]!;
    grid[steps] = opening ? timesCovering[i + 1]! - timesCovered[i + 1]! : timesCovered[i + 1]! - timesCovering[i + 1]!;
    const share = greatestIn(stretch, grid);
    const needed = lagAt(stretch, share);
    if (needed > lag) {
      lag = needed;
      angleCovered = angleOn(stretch, share);
    }
  }
  if (!(lag < Infinity && lag > -Infinity)) return undefined;
  return { lag: Math.max(0, lag), angleCovering: requiredAngle(plan, angleCovered), angleCovered };
}

/** Angle of the leaf at the open end of its stroke. */
function openAngle({ linkage, profile }: SwingLeaf): number | undefined {
  const angle = leafAt(linkage, wholeTravel(profile));
  return angle !== undefined && angle <= Math.PI ? angle : undefined;
}

/** Puts `angle` in its place among the first `count` corners, if it is between 0 and `end`; returns how many there are then. */
function insert(corners: number[], count: number, angle: number, end: number): number {
  if (!(angle > 0 && angle < end)) return count;
  let place = count;
  while (corners[place - 1]! > angle) {
    corners[place] = corners[place - 1]!;
    place -= 1;
  }
  corners[place] = angle;
  return count + 1;
}

/** Between two neighbouring corners: each leaf is in one piece of its profile throughout. */
interface Stretch {
  readonly leaves: OverlappingLeaves;
  readonly plan: Plan;
  readonly opening: boolean;
  /** Angles of the covered leaf. */
  readonly from: number;
  readonly span: number;
  readonly coveringPiece: number;
  readonly coveredPiece: number;
}

/** Angle of the covered leaf at a share of the stretch; closest at both ends, as where a leaf starts or stops, time goes by the square root of its angle. */
const angleOn = ({ from, span }: Stretch, share: number): number => from + span * share * share * (3 - 2 * share);

/** The lag that the moment at a share of the stretch asks for; negative where the leaves have time in hand. */
function lagAt(stretch: Stretch, share: number): number {
  const { plan, opening } = stretch;
  const { covering, covered } = stretch.leaves;
  const angle = angleOn(stretch, share);
  const coveringTime = timeInPiece(covering.profile, stretch.coveringPiece, travelFor(covering, requiredAngle(plan, angle), opening));
  const coveredTime = timeInPiece(covered.profile, stretch.coveredPiece, travelFor(covered, angle, opening));
  return opening ? coveringTime - coveredTime : coveredTime - coveringTime;
}

/** The share of the stretch that asks for the greatest lag. `grid` is room to work in; its first and last are given. */
function greatestIn(stretch: Stretch, grid: number[]): number {
  let best = grid[steps]! > grid[0]! ? steps : 0;
  for (let i = 1; i < steps; i += 1) {
    grid[i] = lagAt(stretch, i / steps);
    if (grid[i]! > grid[best]!) best = i;
  }
  // Three points with the greatest in the middle (or at an end of the stretch), then the top of the parabola through them, and again.
  const centre = Math.min(steps - 1, Math.max(1, best));
  let left = (centre - 1) / steps;
  let middle = centre / steps;
  let right = (centre + 1) / steps;
  let atLeft = grid[centre - 1]!;
  let atMiddle = grid[centre]!;
  let atRight = grid[centre + 1]!;
  for (let i = 0; i < refinements; i += 1) {
    const before = (atMiddle - atLeft) / (middle - left);
    const after = (atRight - atMiddle) / (right - middle);
    const bend = (after - before) / (right - left);
    const top = (left + middle - before / bend) / 2;
    if (!(bend < 0 && top > left && top < right && top !== middle)) break;
    const atTop = lagAt(stretch, top);
    // The four points in order; keep the best and its neighbours.
    if (top < middle) {
      if (atTop > atMiddle || atLeft > atMiddle) {
        right = middle;
        atRight = atMiddle;
        middle = top;
        atMiddle = atTop;
      } else {
        left = top;
        atLeft = atTop;
      }
    } else if (atTop > atMiddle || atRight > atMiddle) {
      left = middle;
      atLeft = atMiddle;
      middle = top;
      atMiddle = atTop;
    } else {
      right = top;
      atRight = atTop;
    }
  }
  return middle;
}

/** Travel of the leaf's drive since its own start with the leaf at `angle`. */
function travelFor({ linkage, profile }: SwingLeaf, angle: number, opening: boolean): number {
  const drive = driveNear(linkage, angle);
  return opening ? drive : wholeTravel(profile) - drive;
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
  const start = rate[low]! * leafSpan;
  const end = rate[low + 1]! * leafSpan;
  if (!(Math.abs(start - driveSpan) < 0.1 * driveSpan && Math.abs(end - driveSpan) < 0.1 * driveSpan)) return driveAt(linkage, angle) ?? drive[low]!;
  const t = (angle - leaf[low]!) / leafSpan;
  return drive[low]! + t * (start + t * (3 * driveSpan - 2 * start - end + t * (start + end - 2 * driveSpan)));
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
