// How far the edge of a leaf runs on after a sensor has tripped: the reaction at the speed it has, then the braking.
//
// SI throughout: m, rad, s. A rotary drive has rad where a ram or a rack has m.
import { type Linkage, leafAt } from '../linkage/working.ts';
import { type Direction, type Profile, wholeTravel } from '../motion-profile/working.ts';

export interface Overtravel {
  /** m. */
  readonly distance: number;
  /** Leaf position from closed at which it is greatest, rad or m. */
  readonly at: number;
  /** Speed of the edge there when the drive is told to stop, m/s. */
  readonly edgeSpeed: number;
  /** Speed of the leaf there, rad/s or m/s. */
  readonly leafSpeed: number;
}

/**
 * The greatest overtravel over a stroke: the drive runs on by v·t + v²/(2a), v the greatest speed that it has until it is told to stop, t
 * the reaction (s, 0 or above), a its deceleration (above 0), and the leaf by what its linkage makes of that from there on; times arm, the
 * distance of the edge from the hinge (m; 1 for a sliding leaf). Beyond its end the linkage is carried on with its last lever, as no stop
 * is relied on. Looked for at every sample of the linkage and every junction of the profile. Opening starts at the linkage's closed end; closing starts at drive position
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
  const opening = direction === 'opening';
  const top = fastest(startSpeed);
  const look = (tripping: number, gaining: number, position: number, at: number, rateThere: number): void => {
    // What still gains speed when the sensor trips has more of it when the drive is told.
    const speed = gaining > 0 ? Math.max(tripping, Math.min(top, tripping + gaining * reaction)) : tripping;
    const way = speed * reaction + (speed * speed) / (2 * deceleration);
    const distance = (opening ? movedOnFrom(linkage, position, at, way) : movedBackFrom(linkage, position, at, way)) * arm;
    if (distance <= farthest * (1 + 1e-12)) return;
    farthest = distance;
    farthestAt = at;
    farthestSpeed = speed / rateThere;
  };
  const lookAfter = (travelled: number, speed: number, gaining: number): void => {
    const position = opening ? travelled : travel - travelled;
    look(speed, gaining, position, leafAt(linkage, position) ?? (leaf[last] as number), rateAt(linkage, position));
  };
  let arriving = 0;
  for (let junction = 0; junction < startTravel.length; junction++) {
    // Where the speed jumps, at the end of an even piece, the greater of both sides counts.
    const speed = Math.max(arriving, startSpeed[junction] as number);
    arriving = acceleration[junction] === 0 ? (startSpeed[junction] as number) : 0;
    lookAfter(startTravel[junction] as number, speed, acceleration[junction] ?? 0);
  }
  // And where what the drive gains until it is told is just all that it will have.
  for (let junction = 0; junction + 1 < startTravel.length; junction++) {
    const gaining = acceleration[junction] as number;
    const from = startSpeed[junction] as number;
    const speed = (startSpeed[junction + 1] as number) - gaining * reaction;
    if (gaining > 0 && speed > from)
      lookAfter((startTravel[junction] as number) + (speed * speed - from * from) / (2 * gaining), speed, gaining);
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
      acceleration[piece] as number,
      drive[i] as number,
      leaf[i] as number,
      rate[i] as number,
    );
  }
  return { distance: farthest, at: farthestAt, edgeSpeed: farthestSpeed * arm, leafSpeed: farthestSpeed };
}

/** The lever where the drive stands at `position`, between the two samples around it. */
function rateAt({ drive, rate }: Linkage, position: number): number {
  let at = 1;
  while (at < drive.length - 1 && (drive[at] as number) < position) at++;
  const share = (position - (drive[at - 1] as number)) / ((drive[at] as number) - (drive[at - 1] as number));
  return (rate[at - 1] as number) + share * ((rate[at] as number) - (rate[at - 1] as number));
}

/** How far the leaf at `at` moves on while its drive, at `position`, runs on by `way` towards open. */
function movedOnFrom(linkage: Linkage, position: number, at: number, way: number): number {
  const last = linkage.drive.length - 1;
  const beyond = position + way - (linkage.drive[last] as number);
  return beyond <= 0
    ? (leafAt(linkage, position + way) ?? at) - at
    : (linkage.leaf[last] as number) - at + beyond / (linkage.rate[last] as number);
}

/** The same towards closed. */
function movedBackFrom(linkage: Linkage, position: number, at: number, way: number): number {
  const beyond = way - position;
  return beyond <= 0
    ? at - (leafAt(linkage, position - way) ?? at)
    : at - (linkage.leaf[0] as number) + beyond / (linkage.rate[0] as number);
}

function fastest(speeds: Profile['startSpeed']): number {
  let top = 0;
  for (let i = 0; i < speeds.length; i++) top = Math.max(top, speeds[i] as number);
  return top;
}

/** Speed after `distance` at an even acceleration, m/s; 0 where rounding has braking end sooner. */
const speedAfter = (speed: number, acceleration: number, distance: number): number =>
  acceleration === 0 ? speed : Math.sqrt(Math.max(0, speed * speed + 2 * acceleration * distance));
