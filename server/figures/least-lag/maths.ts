// The least lag between two swing leaves whose ends overlap.
//
// Plan view. The covering leaf is hinged at (0, 0) and closed along +x; the covered leaf is hinged at (D, 0) and closed
// pointing to −x; both open towards +y. D = covering width + gap + covered width. A strip on the covering leaf carries on past its
// end, over the gap, and reaches `overlap` past the covered leaf's end, lying on its +y face: so the covering leaf has to
// open first and to close last.
//
// Assumed: leaves are straight lines without thickness from hinge to end, hinges are points on the line of the closed leaves
// and do not give, both drives start and run exactly as their profiles say.

import { driveAt, type Linkage, leafAt } from '../linkage/working.ts';
import { type Direction, type Profile, pieceAtTime, timeAt, timeInPiece, wholeTravel } from '../motion-profile/working.ts';
import { type Row, rowOf } from '../rows.ts';

/** One swing leaf and how it moves in the direction asked about. */
export interface SwingLeaf {
  /** Hinge to end of the leaf, without any strip, m, > 0. */
  readonly width: number;
  /** Leaf angles in rad. */
  readonly linkage: Linkage;
  /**
   * Opening starts at the linkage's closed end; closing starts at the drive position equal to the profile's whole travel and runs back to
   * 0.
   */
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
}

export interface LeastLag {
  /**
   * s, >= 0. Opening: the covered leaf starts this much after the covering one. Closing: the covering leaf starts this much after the
   * covered one.
   */
  readonly lag: number;
  /** Angle that the covering leaf just needs at the moment that decides (with lag 0: that leaves least time in hand), rad from closed. */
  readonly angleCovering: number;
  /** Angle of the covered leaf at that moment, rad from closed. */
  readonly angleCovered: number;
}

/** What of the plan decides where the leaves touch, m. */
interface Plan {
  /** Covering hinge to the end of the closed covered leaf. */
  readonly before: number;
  readonly coveredWidth: number;
  readonly overlap: number;
}

/** Grid between two neighbouring corners of the motion, and how often its best is then refined. */
const steps = 8;
const refinements = 4;

/**
 * Least lag in `direction` so that the two leaves never cross; a lag that just touches counts as free.
 *
 * While the covered leaf's end is within the strip's reach, the covering leaf must be at or beyond a required angle: that at
 * which it just touches the covered leaf's end. That angle grows with the covered leaf's angle up to the point of clearing,
 * and falls after it. As both leaves only ever move one way, the free lags are
 * those not less than the greatest, over the covered leaf's angle, of the time the covering leaf reaches the required angle
 * less the time the covered leaf is at its own (closing: the other way round); where the required angle falls that difference falls too, so
 * nothing after the point of clearing can decide. Plane geometry and constant-acceleration motion, derived, no published source.
 *
 * The greatest is looked for between each two neighbouring corners (where either profile changes its acceleration), on a grid
 * and by parabolas through its best; for ordinary leaves it is good to well under a millisecond.
 *
 * `spread` is how much slower the leaf that starts first and how much quicker the other one may be, as a share of their times, from 0 to
 * below 1: stretched so, a motion asks of the lag as much more.
 *
 * undefined: no lag makes it free, because the covering leaf does not open far enough; or impossible input (a width not above 0,
 * an overlap not above 0 or not below the covered leaf's width, a negative gap, a stroke longer than its linkage, a linkage beyond half a
 * turn).
 */
export function leastLag(leaves: OverlappingLeaves, direction: Direction, spread = 0): LeastLag | undefined {
  const { covering, covered, overlap, gap } = leaves;
  const plan: Plan = { before: covering.width + gap, coveredWidth: covered.width, overlap };
  if (!(covering.width > 0 && gap >= 0 && overlap > 0 && overlap < covered.width && spread >= 0 && spread < 1)) return undefined;
  const coveringEnd = openAngle(covering);
  const coveredEnd = openAngle(covered);
  if (!(coveringEnd <= Math.PI && coveredEnd <= Math.PI)) return undefined;

  const lastAngle = Math.min(coveredEnd, clearingAngle(plan));
  const greatestRequired = requiredAngle(plan, lastAngle);
  // Also where a width without end has left no angle.
  if (!(greatestRequired <= coveringEnd * (1 + 1e-9))) return undefined;

  // Corners of the difference of times, in order of the covered leaf's angle.
  const opening = direction === 'opening';
  const corners = [0];
  for (let i = 1; i + 1 < covering.profile.startTravel.length; i += 1) {
    const angle = angleAtJunction(covering, i, opening);
    if (angle < greatestRequired) insertInOrder(corners, coveredAngleFor(plan, angle));
  }
  for (let i = 1; i + 1 < covered.profile.startTravel.length; i += 1) {
    const angle = angleAtJunction(covered, i, opening);
    if (angle < lastAngle) insertInOrder(corners, angle);
  }
  corners.push(lastAngle);

  const timesCovering = rowOf(corners.length);
  const timesCovered = rowOf(corners.length);
  const asked = rowOf(corners.length);
  let lag = -Infinity;
  let angleCovered = 0;
  for (let i = 0; i < corners.length; i += 1) {
    timesCovering[i] = timeAt(covering.profile, travelFor(covering, requiredAngle(plan, corners[i]!), opening));
    timesCovered[i] = timeAt(covered.profile, travelFor(covered, corners[i]!, opening));
    asked[i] = difference(timesCovering[i]!, timesCovered[i]!, opening, spread);
    if (asked[i]! > lag) {
      lag = asked[i]!;
      angleCovered = corners[i]!;
    }
  }
  for (let i = 0; i + 1 < corners.length; i += 1) {
    // Both times only ever grow along the stretch (or shrink, closing), so nothing in it can ask for more than this.
    const bound = difference(timesCovering[i + 1]!, timesCovered[i]!, opening, spread);
    if (bound <= lag) continue;
    const stretch: Stretch = {
      leaves,
      plan,
      opening,
      spread,
      from: corners[i]!,
      span: corners[i + 1]! - corners[i]!,
      coveringPiece: pieceAtTime(covering.profile, (timesCovering[i]! + timesCovering[i + 1]!) / 2),
      coveredPiece: pieceAtTime(covered.profile, (timesCovered[i]! + timesCovered[i + 1]!) / 2),
    };
    const { share, needed } = greatestIn(stretch, asked[i]!, asked[i + 1]!);
    if (needed > lag) {
      lag = needed;
      angleCovered = angleOn(stretch, share);
    }
  }
  return { lag: Math.max(0, lag), angleCovering: requiredAngle(plan, angleCovered), angleCovered };
}

/** Angle of the leaf at the open end of its stroke; NaN where its linkage ends before. */
const openAngle = ({ linkage, profile }: SwingLeaf): number => leafAt(linkage, wholeTravel(profile)) ?? NaN;

/**
 * How much later the leaf that waits has to start, for times of the two leaves since their own starts: the first is slower by the spread,
 * the one that waits quicker.
 */
const difference = (covering: number, covered: number, opening: boolean, spread: number): number =>
  opening ? covering * (1 + spread) - covered * (1 - spread) : covered * (1 + spread) - covering * (1 - spread);

/** Leaf angle at which the leaf's drive goes over to piece `piece` of its profile. */
function angleAtJunction({ linkage, profile }: SwingLeaf, piece: number, opening: boolean): number {
  const travelled = profile.startTravel[piece]!;
  return leafAt(linkage, opening ? travelled : wholeTravel(profile) - travelled) ?? NaN;
}

/** Puts `value` in its place in a row that ascends. */
function insertInOrder(row: number[], value: number): void {
  let place = row.length;
  while (row[place - 1]! > value) place -= 1;
  insert(row, place, value);
}

function insert(row: number[], place: number, value: number): void {
  for (let i = row.length; i > place; i -= 1) row[i] = row[i - 1]!;
  row[place] = value;
}

/** Between two neighbouring corners: each leaf is in one piece of its profile throughout. */
interface Stretch {
  readonly leaves: OverlappingLeaves;
  readonly plan: Plan;
  readonly opening: boolean;
  readonly spread: number;
  /** Angles of the covered leaf. */
  readonly from: number;
  readonly span: number;
  readonly coveringPiece: number;
  readonly coveredPiece: number;
}

/**
 * Angle of the covered leaf at a share of the stretch; closest at both ends, as where a leaf starts or stops, time goes by the square root
 * of its angle.
 */
const angleOn = ({ from, span }: Stretch, share: number): number => from + span * share * share * (3 - 2 * share);

/** The lag that the moment at a share of the stretch asks for; negative where the leaves have time in hand. */
function lagAt(stretch: Stretch, share: number): number {
  const { plan, opening, spread } = stretch;
  const { covering, covered } = stretch.leaves;
  const angle = angleOn(stretch, share);
  const coveringTime = timeInPiece(covering.profile, stretch.coveringPiece, travelFor(covering, requiredAngle(plan, angle), opening));
  const coveredTime = timeInPiece(covered.profile, stretch.coveredPiece, travelFor(covered, angle, opening));
  return difference(coveringTime, coveredTime, opening, spread);
}

/** The greatest lag that the stretch asks for, and at which share of it; `first` and `last` are those at its two ends. */
function greatestIn(stretch: Stretch, first: number, last: number): { readonly share: number; readonly needed: number } {
  const shares = [0];
  const lags = [first];
  for (let i = 1; i < steps; i += 1) {
    shares.push(i / steps);
    lags.push(lagAt(stretch, i / steps));
  }
  shares.push(1);
  lags.push(last);
  // The top of the parabola through the best and its two neighbours (at an end of the stretch, the two next to it); and again.
  let best = greatestOf(lags);
  for (let round = 0; round < refinements; round += 1) {
    const centre = Math.min(lags.length - 2, Math.max(1, best));
    const left = shares[centre - 1]!;
    const middle = shares[centre]!;
    const right = shares[centre + 1]!;
    const before = (lags[centre]! - lags[centre - 1]!) / (middle - left);
    const after = (lags[centre + 1]! - lags[centre]!) / (right - middle);
    const bend = (after - before) / (right - left);
    const top = (left + middle - before / bend) / 2;
    if (!(bend < 0 && top > left && top < right)) break;
    const place = top < middle ? centre : centre + 1;
    insert(shares, place, top);
    insert(lags, place, lagAt(stretch, top));
    best = greatestOf(lags);
  }
  return { share: shares[best]!, needed: lags[best]! };
}

/** Where in the row its greatest stands. */
function greatestOf(row: Row): number {
  let best = 0;
  for (let i = 1; i < row.length; i += 1) if (row[i]! > row[best]!) best = i;
  return best;
}

/**
 * Angle that the covering leaf needs at the most before the covered one has got past it, rad: for leaves of those widths (m, above 0) with
 * `overlap` (m, above 0 and below the covered width) and `gap` (m, 0 or above), the covered one opening by `coveredEnd` (rad). Plane
 * geometry; undefined for a number out of its range.
 */
export function neededToPass(width: number, coveredWidth: number, overlap: number, gap: number, coveredEnd: number): number | undefined {
  if (!(width > 0 && gap >= 0 && overlap > 0 && overlap < coveredWidth && coveredEnd > 0 && coveredEnd <= Math.PI)) return undefined;
  const plan: Plan = { before: width + gap, coveredWidth, overlap };
  return requiredAngle(plan, Math.min(coveredEnd, clearingAngle(plan)));
}

/** Travel of the leaf's drive since its own start with the leaf at `angle`. */
function travelFor({ linkage, profile }: SwingLeaf, angle: number, opening: boolean): number {
  const drive = driveFor(linkage, angle);
  return opening ? drive : wholeTravel(profile) - drive;
}

/** Drive travel at an angle that lies in the linkage, but for rounding. */
const driveFor = (linkage: Linkage, angle: number): number => driveAt(linkage, angle) ?? NaN;

/**
 * Angle that the covering leaf needs with the covered leaf at `angle`, from 0 to the point of clearing: the direction to that leaf's end,
 * seen from the covering hinge.
 */
function requiredAngle({ before, coveredWidth }: Plan, angle: number): number {
  // By the half angle, whose one sine gives both of the whole.
  const sine = Math.sin(angle / 2);
  return Math.atan2(2 * coveredWidth * sine * Math.sqrt(1 - sine * sine), before + 2 * coveredWidth * sine * sine);
}

/** The other way round: angle of the covered leaf at which the covering leaf just needs `angle`. By the sine rule. */
function coveredAngleFor({ before, coveredWidth }: Plan, angle: number): number {
  return Math.asin(Math.min(1, ((before + coveredWidth) * Math.sin(angle)) / coveredWidth)) - angle;
}

/**
 * Angle of the covered leaf at which it clears: the tip of the strip is at its end. With a very long strip the leaves stand
 * square to each other before that, and from there on the covering leaf needs less again.
 */
function clearingAngle({ before, coveredWidth, overlap }: Plan): number {
  const apart = before + coveredWidth;
  if (2 * before * (coveredWidth - overlap) <= overlap * overlap) return Math.acos(coveredWidth / apart);
  // Of the triangle of the two hinges and the end, by the half angle: that keeps its digits where the overlap is small.
  return 2 * Math.asin(Math.sqrt((overlap * (2 * before + overlap)) / (4 * apart * coveredWidth)));
}
