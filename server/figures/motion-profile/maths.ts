// Drive travel against time for one stroke, from standstill to standstill.
import { type Row, rowOf } from '../rows.ts';

/** Which way a leaf moves. Opening runs the linkage from closed to open, closing runs the same linkage backwards. */
export type Direction = 'opening' | 'closing';

/** One stroke of a drive as it is asked for. A rotary drive may use rad in place of m throughout. */
export interface ProfileSpec {
  /** Drive travel of the whole stroke, m, > 0. */
  readonly travel: number;
  /** Full speed, m/s, > 0. Infinity stands for "no limit" where the acceleration is finite. */
  readonly speed: number;
  /** Speeding up and braking, m/s², > 0. Infinity: speeds jump. */
  readonly acceleration: number;
  /** Length of the slow zone at the end of the stroke, m, >= 0. */
  readonly slowTravel: number;
  /** Greatest speed inside the slow zone, m/s, > 0; not looked at where `slowTravel` is 0. */
  readonly slowSpeed: number;
}

/**
 * A stroke cut into pieces of constant acceleration, in order of time. The last entry of each array is standstill at the end
 * of the stroke: its start time is the run time and its start travel is the whole travel.
 * Travel always grows, so a closing stroke is a profile too, measured from where it starts.
 */
export interface Profile {
  /** s, first 0. */
  readonly startTime: Row;
  /** m, first 0. */
  readonly startTravel: Row;
  /** m/s, just after the piece starts. */
  readonly startSpeed: Row;
  /** m/s², negative while braking. */
  readonly acceleration: Row;
}

interface Draft {
  readonly startTime: number[];
  readonly startTravel: number[];
  readonly startSpeed: number[];
  readonly acceleration: number[];
}

function draftOf(entries: number): Draft {
  return {
    startTime: rowOf(entries),
    startTravel: rowOf(entries),
    startSpeed: rowOf(entries),
    acceleration: rowOf(entries),
  };
}

function put(draft: Draft, entry: number, time: number, travel: number, speed: number, acceleration: number): void {
  draft.startTime[entry] = time;
  draft.startTravel[entry] = travel;
  draft.startSpeed[entry] = speed;
  draft.acceleration[entry] = acceleration;
}

/** Speed up to `speed`, hold it, brake to standstill; a triangle where the stroke is too short to reach `speed`. */
function trapezoid(travel: number, speed: number, acceleration: number): Draft {
  if (speed * speed >= acceleration * travel) {
    const half = Math.sqrt(travel / acceleration);
    const peak = acceleration * half;
    const draft = draftOf(3);
    put(draft, 0, 0, 0, 0, acceleration);
    put(draft, 1, half, travel / 2, peak, -acceleration);
    put(draft, 2, 2 * half, travel, 0, 0);
    return draft;
  }
  const ramp = speed / acceleration;
  const rampTravel = (speed * speed) / (2 * acceleration);
  const brakeTime = ramp + (travel - 2 * rampTravel) / speed;
  const draft = draftOf(4);
  put(draft, 0, 0, 0, 0, acceleration);
  put(draft, 1, ramp, rampTravel, speed, 0);
  put(draft, 2, brakeTime, travel - rampTravel, speed, -acceleration);
  put(draft, 3, brakeTime + ramp, travel, 0, 0);
  return draft;
}

/** Speed up, hold full speed where there is room, brake to the slow speed by the start of the slow zone, hold it, brake to standstill. */
function slowing(travel: number, speed: number, acceleration: number, fastTravel: number, slowSpeed: number): Draft {
  // Speeding up from 0 and braking to the slow speed meet at this square of speed.
  const meeting = acceleration * fastTravel + (slowSpeed * slowSpeed) / 2;
  const holdsFull = speed * speed < meeting;
  const peak = holdsFull ? speed : Math.sqrt(meeting);
  const rampTravel = (peak * peak) / (2 * acceleration);
  const brakeTravel = fastTravel - (peak * peak - slowSpeed * slowSpeed) / (2 * acceleration);
  const lastTravel = travel - (slowSpeed * slowSpeed) / (2 * acceleration);

  const draft = draftOf(holdsFull ? 6 : 5);
  let time = 0;
  let entry = 0;
  put(draft, entry++, 0, 0, 0, acceleration);
  time += peak / acceleration;
  if (holdsFull) {
    put(draft, entry++, time, rampTravel, peak, 0);
    time += (brakeTravel - rampTravel) / peak;
  }
  put(draft, entry++, time, brakeTravel, peak, -acceleration);
  time += (peak - slowSpeed) / acceleration;
  put(draft, entry++, time, fastTravel, slowSpeed, 0);
  time += (lastTravel - fastTravel) / slowSpeed;
  put(draft, entry++, time, lastTravel, slowSpeed, -acceleration);
  put(draft, entry, time + slowSpeed / acceleration, travel, 0, 0);
  return draft;
}

/** The speeds jump: full speed, then slow speed. */
function jumping(travel: number, speed: number, fastTravel: number, slowSpeed: number): Draft {
  const isFast = fastTravel > 0;
  const isSlow = fastTravel < travel;
  const draft = draftOf(isFast && isSlow ? 3 : 2);
  let time = 0;
  let entry = 0;
  if (isFast) {
    put(draft, entry++, 0, 0, speed, 0);
    time = fastTravel / speed;
  }
  if (isSlow) {
    const from = isFast ? fastTravel : 0;
    put(draft, entry++, time, from, slowSpeed, 0);
    time += (travel - from) / slowSpeed;
  }
  put(draft, entry, time, travel, 0, 0);
  return draft;
}

/**
 * The quickest stroke that keeps to every limit of `spec`: at each travel s its speed squared is the least of
 * 2as, speed², braking to standstill 2a(S − s), before the slow zone slowSpeed² + 2a(S − slowTravel − s), inside it slowSpeed².
 * Source: constant-acceleration kinematics, v² = u² + 2as (any mechanics textbook).
 *
 * What gives way where the stroke is short, in every case without passing a limit:
 * - no room for full speed before the slow zone: it speeds up as far as it can still brake in time;
 * - the slow zone begins before the slow speed is reached: it goes on speeding up inside the zone, to the slow speed and no further;
 * - the slow zone is too short to brake from the slow speed to standstill: it brakes earlier and enters the zone slower;
 * - the slow zone is as long as the stroke, or longer: the whole stroke runs at the slow speed;
 * - the slow speed is not below full speed: there is no slow zone.
 *
 * undefined: a travel, speed, acceleration or slow speed that is not above 0, a negative or endless slow zone, an endless travel,
 * no limit on both speed and acceleration, anything not a number, or a result beyond the range of numbers.
 */
export function profileOf(spec: ProfileSpec): Profile | undefined {
  const { travel, speed, acceleration, slowTravel } = spec;
  if (!(travel > 0 && speed > 0 && acceleration > 0 && slowTravel >= 0 && slowTravel < Infinity)) return undefined;
  if (slowTravel > 0 && !(spec.slowSpeed > 0)) return undefined;
  const slowSpeed = slowTravel > 0 && spec.slowSpeed < speed ? spec.slowSpeed : speed;
  const fastTravel = slowSpeed < speed ? Math.max(0, travel - slowTravel) : travel;

  let draft: Draft;
  if (acceleration === Infinity) {
    if (speed === Infinity) return undefined;
    draft = jumping(travel, speed, fastTravel, slowSpeed);
  } else {
    const toSlowSpeed = (slowSpeed * slowSpeed) / (2 * acceleration);
    if (toSlowSpeed >= fastTravel) draft = trapezoid(travel, slowSpeed, acceleration);
    else if (toSlowSpeed >= travel - fastTravel) draft = trapezoid(travel, speed, acceleration);
    else draft = slowing(travel, speed, acceleration, fastTravel, slowSpeed);
  }
  const time = runTime(draft);
  return time > 0 && time < Infinity ? draft : undefined;
}

/** Run time of the whole stroke, s. */
export function runTime(p: Profile): number {
  return p.startTime[p.startTime.length - 1]!;
}

/** Drive travel of the whole stroke, m. */
export function wholeTravel(p: Profile): number {
  return p.startTravel[p.startTravel.length - 1]!;
}

/**
 * The piece that `value` falls in, of pieces that start at `starts`; at a junction the later one, from the end on the last entry, before
 * the start the first.
 */
function pieceAt(starts: Row, value: number): number {
  let piece = 0;
  while ((starts[piece + 1] ?? NaN) <= value) piece += 1;
  return piece;
}

/** The piece that time `t` falls in; at a junction the later one, from the end on the last entry. */
export const pieceAtTime = (p: Profile, t: number): number => pieceAt(p.startTime, t);

/** Drive travel at time `t`, m. Before the start 0, after the end the whole travel; NaN gives NaN. */
export function travelAt(p: Profile, t: number): number {
  if (t <= 0) return 0;
  const piece = pieceAtTime(p, t);
  if (piece === p.startTime.length - 1) return p.startTravel[piece]!;
  const acceleration = p.acceleration[piece]!;
  // Braking is reckoned back from the end of its piece, so that the stroke ends exactly and nothing is lost to cancelling.
  if (acceleration < 0) {
    const left = p.startTime[piece + 1]! - t;
    return p.startTravel[piece + 1]! - (p.startSpeed[piece + 1]! - (acceleration * left) / 2) * left;
  }
  const spent = t - p.startTime[piece]!;
  return p.startTravel[piece]! + (p.startSpeed[piece]! + (acceleration * spent) / 2) * spent;
}

/** Drive speed at time `t`, m/s; where it jumps, the speed just after. 0 before the start and from the end on; NaN gives NaN. */
export function speedAt(p: Profile, t: number): number {
  if (t < 0) return 0;
  const piece = pieceAtTime(p, t);
  const acceleration = p.acceleration[piece]!;
  if (acceleration < 0) return p.startSpeed[piece + 1]! - acceleration * (p.startTime[piece + 1]! - t);
  // Standstill: nothing to add, and an endless time must not be multiplied by 0.
  if (acceleration === 0 && !Number.isNaN(t)) return p.startSpeed[piece]!;
  return p.startSpeed[piece]! + acceleration * (t - p.startTime[piece]!);
}

/** Time at which piece `piece` (not the last entry) has reached `travel`, s; `travel` has to lie in the piece. For walks along a stroke. */
export function timeInPiece(p: Profile, piece: number, travel: number): number {
  const acceleration = p.acceleration[piece]!;
  if (acceleration < 0) {
    const left = p.startTravel[piece + 1]! - travel;
    return p.startTime[piece + 1]! - timeFor(left, p.startSpeed[piece + 1]!, -acceleration);
  }
  return p.startTime[piece]! + timeFor(travel - p.startTravel[piece]!, p.startSpeed[piece]!, acceleration);
}

/** Time to travel `distance` from `speed` on, speeding up (s); 0 for a distance of 0 or less. */
function timeFor(distance: number, speed: number, acceleration: number): number {
  if (distance <= 0) return 0;
  // The root of s = vt + at²/2 in the form that loses nothing to cancelling.
  const both = speed + Math.sqrt(speed * speed + 2 * acceleration * distance);
  return both === 0 ? 0 : (2 * distance) / both;
}

/** Time at which the stroke has reached `travel`, s. Before the start 0, beyond the whole travel the run time; NaN gives NaN. */
export function timeAt(p: Profile, travel: number): number {
  const piece = pieceAt(p.startTravel, travel);
  return piece === p.startTravel.length - 1 ? runTime(p) : timeInPiece(p, piece, travel);
}
