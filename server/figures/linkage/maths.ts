// One form for every way a drive moves a leaf: what the drive has travelled against where the leaf is, sampled once and
// then read many times by the timing of a cycle.
//
// SI throughout: metres and radians. Anything impossible gives undefined.

import { type ArmMounting, armDeadPoint, newPose, poseAt } from '../articulated-arm/working.ts';
import { deadPoint, type RamMounting, ramLength } from '../linear-ram/working.ts';
import { type Row, rowOf } from '../rows.ts';

/** Sampled from closed to open; all three arrays are equally long. */
export interface Linkage {
  /** Leaf position, increasing from 0, not always in equal steps: radians for a swing leaf, metres for a sliding one. */
  readonly leaf: Row;
  /** Drive travel used, increasing from 0: metres of ram or rack, radians of shaft. */
  readonly drive: Row;
  /** d drive / d leaf at each sample, above 0. */
  readonly rate: Row;
}

const samples = 49;
const last = samples - 1;
/** How far outside the travel, as a share of it, still counts as its end: rounding of whoever adds up the steps. */
const rounding = 1e-9;

/**
 * Linkage of a linear ram for a leaf that opens by `opening` (radians, above 0); drive travel is the stroke used, in metres.
 * Undefined where the travel, ends included, has a dead point, and for an impossible mounting. Whether the ram has that
 * much stroke is a question of its own (reachableAngle).
 */
export function ramLinkage(m: RamMounting, opening: number): Linkage | undefined {
  const closed = ramLength(m, 0);
  if (closed === undefined || deadPoint(m, opening) !== undefined) return undefined;
  const { along, out, leafBracket } = m;
  const leaf = rowOf(samples);
  const drive = rowOf(samples);
  const rate = rowOf(samples);
  const step = opening / last;
  const stepCosine = Math.cos(step);
  const stepSine = Math.sin(step);
  const constant = along * along + out * out + leafBracket * leafBracket;
  const twice = 2 * leafBracket;
  let cosine = 1;
  let sine = 0;
  for (let i = 0; i < samples; i++) {
    const length = Math.sqrt(constant + twice * (along * cosine - out * sine));
    leaf[i] = i * step;
    // L² − L0² over L + L0: no difference of two nearly equal lengths.
    drive[i] = Math.abs((twice * (along * (cosine - 1) - out * sine)) / (length + closed));
    rate[i] = Math.abs((leafBracket * (along * sine + out * cosine)) / length);
    // Turning by one step costs four products instead of a sine and a cosine; 48 steps lose about 1e-15.
    const turned = cosine * stepCosine - sine * stepSine;
    sine = sine * stepCosine + cosine * stepSine;
    cosine = turned;
  }
  leaf[last] = opening;
  return sound(leaf, drive, rate);
}

/**
 * Linkage of an articulated arm for a leaf that opens by `opening` (radians, above 0); drive travel is the turn of the
 * shaft, in radians. Undefined where the travel, ends included, has a dead point or an angle the arm does not reach, and
 * for an impossible mounting.
 */
export function armLinkage(m: ArmMounting, opening: number): Linkage | undefined {
  const pose = newPose();
  if (!poseAt(m, 0, pose) || armDeadPoint(m, opening) !== undefined) return undefined;
  const closed = pose.shaft;
  let leaf = rowOf(samples);
  for (let i = 0; i < samples; i++) leaf[i] = i === last ? opening : (i * opening) / last;
  const drive = rowOf(samples);
  const rate = rowOf(samples);
  // An arm can be slow for most of the travel and quick for a few degrees: samples move to where shaft or leaf does most.
  for (let round = 0; ; round++) {
    for (let i = 0; i < samples; i++) {
      if (!poseAt(m, leaf[i] as number, pose)) return undefined;
      drive[i] = Math.abs(pose.shaft - closed);
      rate[i] = pose.ratio;
    }
    if (round === 2 || !uneven(drive, rate)) return sound(leaf, drive, rate);
    leaf = evenlyAlong(leaf, drive, rate);
  }
}

/** Whether some step takes so much of the drive's travel, or changes the rate so much, that it may hide a bend. */
function uneven(drive: Row, rate: Row): boolean {
  const most = 0.05 * (drive[last] as number);
  for (let i = 1; i < samples; i++) {
    const change = (rate[i] as number) / (rate[i - 1] as number);
    if (change > 1.3 || change < 1 / 1.3 || (drive[i] as number) - (drive[i - 1] as number) > most) return true;
  }
  return false;
}

/** Leaf positions between which leaf, drive (each as a share of its travel) and the logarithm of the rate together go equally far. */
function evenlyAlong(leaf: Row, drive: Row, rate: Row): number[] {
  const way = rowOf(samples);
  way[0] = 0;
  for (let i = 1; i < samples; i++) {
    const leafShare = ((leaf[i] as number) - (leaf[i - 1] as number)) / (leaf[last] as number);
    const driveShare = ((drive[i] as number) - (drive[i - 1] as number)) / (drive[last] as number);
    const bend = Math.abs(Math.log((rate[i] as number) / (rate[i - 1] as number)));
    way[i] = (way[i - 1] as number) + leafShare + driveShare + 0.3 * bend;
  }
  const placed = rowOf(samples);
  placed[0] = 0;
  let piece = 0;
  for (let i = 1; i < last; i++) {
    const target = (i * (way[last] as number)) / last;
    while ((way[piece + 1] as number) <= target) piece++;
    const from = way[piece] as number;
    const share = (target - from) / ((way[piece + 1] as number) - from);
    placed[i] = (leaf[piece] as number) + share * ((leaf[piece + 1] as number) - (leaf[piece] as number));
  }
  placed[last] = leaf[last] as number;
  return placed;
}

/** Linkage of a drive whose shaft is the hinge: one radian of shaft, one radian of leaf. `opening` in radians, above 0. */
export const directLinkage = (opening: number): Linkage | undefined => evenLinkage(opening);

/** Linkage of a rack on a sliding leaf: one metre of rack, one metre of leaf. `distance` in metres, above 0. */
export const rackLinkage = (distance: number): Linkage | undefined => evenLinkage(distance);

function evenLinkage(travel: number): Linkage | undefined {
  const leaf = rowOf(samples);
  for (let i = 0; i < last; i++) leaf[i] = (i * travel) / last;
  leaf[last] = travel;
  // Drive and leaf go the same way, so one row serves as both.
  return sound(leaf, leaf, ones);
}

const ones = rowOf(samples).fill(1);

/**
 * Undefined for a travel that is impossible, or so small that rounding swallows its steps. The rate is above 0 wherever there is no dead
 * point.
 */
function sound(leaf: Row, drive: Row, rate: Row): Linkage | undefined {
  for (let i = 1; i < samples; i++) {
    if (!((leaf[i] as number) > (leaf[i - 1] as number) && (drive[i] as number) > (drive[i - 1] as number))) return undefined;
  }
  return { leaf, drive, rate };
}

/**
 * Drive travel used when the leaf is at `leafPosition`, from 0 to the linkage's last; undefined outside that.
 * Within a thousandth of the whole travel of the exact value, mostly within 1e-5 (measured over random mountings).
 */
export function driveAt(linkage: Linkage, leafPosition: number): number | undefined {
  const at = within(linkage.leaf, leafPosition);
  if (at === undefined) return undefined;
  const piece = pieceAt(linkage, linkage.leaf, at);
  const share = (at - piece.leafFrom) / piece.leafSpan;
  return piece.driveFrom + piece.driveSpan * shape(piece, share);
}

/**
 * Leaf position when the drive has travelled `driveTravel`, from 0 to the linkage's last; undefined outside that. Exact inverse of
 * driveAt.
 */
export function leafAt(linkage: Linkage, driveTravel: number): number | undefined {
  const at = within(linkage.drive, driveTravel);
  if (at === undefined) return undefined;
  const piece = pieceAt(linkage, linkage.drive, at);
  const share = (at - piece.driveFrom) / piece.driveSpan;
  return piece.leafFrom + piece.leafSpan * shapeInverse(piece, share);
}

/** `value` held inside the values' range, or undefined if it is further outside than rounding explains. */
function within(values: Row, value: number): number | undefined {
  const end = values[values.length - 1] as number;
  if (!(value >= -rounding * end && value <= end * (1 + rounding))) return undefined;
  return Math.min(Math.max(value, 0), end);
}

/** One piece between two samples: a cubic Hermite curve of drive over leaf on the unit square, with end slopes `start` and `end`. */
interface Piece {
  readonly leafFrom: number;
  readonly leafSpan: number;
  readonly driveFrom: number;
  readonly driveSpan: number;
  readonly start: number;
  readonly end: number;
}

function pieceAt({ leaf, drive, rate }: Linkage, values: Row, value: number): Piece {
  let low = 0;
  let high = values.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((values[middle] as number) <= value) low = middle;
    else high = middle;
  }
  const leafFrom = leaf[low] as number;
  const driveFrom = drive[low] as number;
  const leafSpan = (leaf[high] as number) - leafFrom;
  const driveSpan = (drive[high] as number) - driveFrom;
  // Slopes above 3 could make the curve turn back (Fritsch and Carlson, 1980).
  const start = Math.min(3, ((rate[low] as number) * leafSpan) / driveSpan);
  const end = Math.min(3, ((rate[high] as number) * leafSpan) / driveSpan);
  return { leafFrom, leafSpan, driveFrom, driveSpan, start, end };
}

const shape = ({ start, end }: Piece, t: number): number => t * (start + t * (3 - 2 * start - end + t * (start + end - 2)));

/** The t in [0, 1] with shape(t) = value: Newton's method, halving where it would leave what is left of the interval. */
function shapeInverse(piece: Piece, value: number): number {
  const { start, end } = piece;
  let low = 0;
  let high = 1;
  let t = value;
  // At most 28 were needed for any two slopes; halving alone would take twice as many.
  for (let i = 0; i < 32; i++) {
    const error = shape(piece, t) - value;
    if (Math.abs(error) <= 1e-15) break;
    if (error > 0) high = t;
    else low = t;
    const slope = start + t * (2 * (3 - 2 * start - end) + 3 * t * (start + end - 2));
    const next = t - error / slope;
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}
