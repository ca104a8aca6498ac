// Greatest speed of a leaf over one stroke.

import { type Linkage, leafAt } from '../linkage/working.ts';
import { type Direction, type Profile, wholeTravel } from '../motion-profile/working.ts';

export interface GreatestSpeeds {
  /** Greatest leaf speed of the whole stroke, rad/s (swing) or m/s (sliding). */
  readonly overall: number;
  /** Where that is, as leaf position from closed, rad or m; where it holds over a stretch, the first reached. */
  readonly overallAt: number;
  /** Greatest leaf speed inside the slow zone, its start included, rad/s or m/s; undefined where there is no slow zone. */
  readonly inSlowZone: number | undefined;
}

/**
 * Greatest leaf speed, over the whole stroke and over its last `slowTravel` (m of drive travel, >= 0): leaf speed is drive
 * speed divided by the linkage's rate (d drive / d leaf), the chain rule.
 * Opening starts at the linkage's closed end; closing starts at drive position `profile`'s travel and runs back to 0, so the
 * profile may use less than the linkage has. For the free edge of a swing leaf multiply by its width.
 *
 * Looked at from both sides: every junction of the profile, every sample of the linkage, the start of the slow zone and both ends;
 * between them the rate is taken as linear in drive travel and the greatest is found in closed form.
 * undefined: the stroke is longer than the linkage, or the slow zone is negative or not a number.
 */
export function greatestSpeeds(linkage: Linkage, profile: Profile, slowTravel: number, direction: Direction): GreatestSpeeds | undefined {
  const { drive, rate } = linkage;
  const { startTravel, startSpeed, acceleration } = profile;
  const travel = wholeTravel(profile);
  const lastSample = drive.length - 1;
  const lastPiece = startTravel.length - 1;
  if (!(slowTravel >= 0 && travel <= drive[lastSample]! * (1 + 1e-9))) return undefined;

  const opening = direction === 'opening';
  const zoneStart = Math.max(0, travel - slowTravel);
  // The linkage interval [sample, sample + 1] the leaf is in.
  let sample = opening ? 0 : lastSample - 1;
  let best = -1; // squares of leaf speed
  let bestPosition = 0;
  let bestInZone = -1;
  let from = 0;
  for (let piece = 0; piece < lastPiece; piece += 1) {
    const pieceStart = startTravel[piece]!;
    // The stroke may be longer than the linkage by rounding.
    const pieceEnd = Math.min(startTravel[piece + 1]!, drive[lastSample]!);
    const twice = 2 * acceleration[piece]!;
    const speedSquared = startSpeed[piece]! * startSpeed[piece]!;
    while (from < pieceEnd) {
      const sampleEnd = opening ? drive[sample + 1]! : travel - drive[sample]!;
      if (sampleEnd <= from) {
        sample += opening ? 1 : -1;
        continue;
      }
      const inZone = from >= zoneStart;
      let to = Math.min(pieceEnd, sampleEnd);
      if (!inZone && to > zoneStart) to = zoneStart;

      const slope = (rate[sample + 1]! - rate[sample]!) / (drive[sample + 1]! - drive[sample]!);
      const positionFrom = opening ? from : travel - from;
      const positionTo = opening ? to : travel - to;
      const rateFrom = rate[sample]! + slope * (positionFrom - drive[sample]!);
      const rateTo = rate[sample]! + slope * (positionTo - drive[sample]!);
      const squareFrom = Math.max(0, speedSquared + twice * (from - pieceStart));

      let square = squareFrom / (rateFrom * rateFrom);
      let position = positionFrom;
      if (twice === 0) {
        // Even speed may end in a jump; any other is the speed with which the next piece begins.
        const squareAtEnd = squareFrom / (rateTo * rateTo);
        if (squareAtEnd > square) {
          square = squareAtEnd;
          position = positionTo;
        }
      } else {
        // (A + Bx) / (C + Ex)² has its one turning point, the greatest, at x = C/E − 2A/B.
        const alongSlope = opening ? slope : -slope;
        const turn = rateFrom / alongSlope - (2 * squareFrom) / twice;
        if (turn > 0 && turn < to - from) {
          const rateThere = rateFrom + alongSlope * turn;
          square = (squareFrom + twice * turn) / (rateThere * rateThere);
          position = opening ? from + turn : positionFrom - turn;
        }
      }
      // Rounding must not move "where" along a stretch of even speed.
      if (square > best * (1 + 1e-12)) {
        best = square;
        bestPosition = position;
      }
      if (inZone && square > bestInZone) bestInZone = square;
      from = to;
    }
  }
  const overallAt = leafAt(linkage, bestPosition);
  if (overallAt === undefined) return undefined;
  return { overall: Math.sqrt(best), overallAt, inSlowZone: bestInZone >= 0 ? Math.sqrt(bestInZone) : undefined };
}
