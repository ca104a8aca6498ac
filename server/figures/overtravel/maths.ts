// How far the edge of a leaf runs on after a sensor has tripped: the reaction at the speed it has, then the braking.
//
// SI throughout: m, rad, s. A rotary drive has rad where a ram or a rack has m.
import type { Linkage } from '../linkage/working.ts';
import { type Direction, type Profile, wholeTravel } from '../motion-profile/working.ts';

export interface Overtravel {
  /** m. */
  readonly distance: number;
  /** Leaf position from closed at which it is greatest, rad or m. */
  readonly at: number;
  /** Speed of the edge there, m/s. */
  readonly edgeSpeed: number;
  /** Speed of the leaf there, rad/s or m/s. */
  readonly leafSpeed: number;
}

/**
 * The greatest overtravel over a stroke: (v·t + v²/(2a))·arm / rate, v the drive's speed where the sensor trips, t the reaction
 * (s, 0 or above), a the drive's deceleration (above 0), rate = d drive / d leaf there, arm the distance of the edge from the
 * hinge (m; 1 for a sliding leaf). Looked for at every sample of the linkage and every junction of the profile; the rate is
 * taken as even over the few degrees of the stop. Opening starts at the linkage's closed end; closing starts at drive position
 * `profile`'s travel and runs back to 0. undefined: a number out of its range, or a stroke longer than its linkage.
 */
export function greatestOvertravel(
  linkage: Linkage,
  profile: Profile,
  direction: Direction,
  reaction: number,
  deceleration: number,
  arm: number,
): Overtravel | undefined {
  if (
    !(reaction >= 0) ||
    !Number.isFinite(reaction) ||
    !(deceleration > 0) ||
    !Number.isFinite(deceleration) ||
    !(arm > 0) ||
    !Number.isFinite(arm)
  )
    return undefined;
  const { leaf, drive, rate } = linkage;
  const { startTravel, startSpeed, acceleration } = profile;
  const last = drive.length - 1;
  const travel = wholeTravel(profile);
  if (!(travel <= (drive[last] as number) * (1 + 1e-9))) return undefined;
  let farthest = -1;
  let farthestAt = 0;
  let farthestSpeed = 0;
  const look = (speed: number, at: number, rateThere: number): void => {
    const distance = ((speed * reaction + (speed * speed) / (2 * deceleration)) * arm) / rateThere;
    if (distance <= farthest) return;
    farthest = distance;
    farthestAt = at;
    farthestSpeed = speed / rateThere;
  };
  const opening = direction === 'opening';
  // Junctions and samples both come in the order of the stroke, so one walk over the linkage serves each.
  let at = opening ? 1 : last;
  let arriving = 0;
  for (let junction = 0; junction < startTravel.length; junction++) {
    const travelled = startTravel[junction] as number;
    // Where the speed jumps, at the end of an even piece, the greater of both sides counts.
    const speed = Math.max(arriving, startSpeed[junction] as number);
    arriving = acceleration[junction] === 0 ? (startSpeed[junction] as number) : 0;
    const position = opening ? travelled : travel - travelled;
    if (opening) while (at < last && (drive[at] as number) < position) at++;
    else while ((drive[at - 1] as number) > position) at--;
    const share = (position - (drive[at - 1] as number)) / ((drive[at] as number) - (drive[at - 1] as number));
    look(
      speed,
      (leaf[at - 1] as number) + share * ((leaf[at] as number) - (leaf[at - 1] as number)),
      (rate[at - 1] as number) + share * ((rate[at] as number) - (rate[at - 1] as number)),
    );
  }
  let piece = 0;
  for (let step = 1; step < last; step++) {
    const i = opening ? step : last - step;
    const travelled = opening ? (drive[i] as number) : travel - (drive[i] as number);
    // A closing stroke may start inside the linkage; beyond the end of any the drive stands.
    if (travelled < 0) continue;
    while (travelled > (startTravel[piece + 1] as number)) piece++;
    look(
      speedAfter(startSpeed[piece] as number, acceleration[piece] as number, travelled - (startTravel[piece] as number)),
      leaf[i] as number,
      rate[i] as number,
    );
  }
  return { distance: farthest, at: farthestAt, edgeSpeed: farthestSpeed * arm, leafSpeed: farthestSpeed };
}

/** Speed after `distance` at an even acceleration, m/s; 0 where rounding has braking end sooner. */
const speedAfter = (speed: number, acceleration: number, distance: number): number =>
  acceleration === 0 ? speed : Math.sqrt(Math.max(0, speed * speed + 2 * acceleration * distance));
