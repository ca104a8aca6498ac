import { type Leaf, perSubject } from '../../model/index.ts';
import { gravity, risingHingeMoment, tiltedHingeMoment, tiltedHingeRise } from './maths.ts';

export { gravity, risingHingeMoment } from './maths.ts';

/** Rolling resistance of a sliding leaf as a share of its weight where none is stated: bearings, seals and dirt, from memory. */
export const rollingShare = 0.03;

/** What gravity does to a released leaf: N·m about the hinge of a swing leaf, N along the track of a sliding one. */
export interface Released {
  readonly swing: boolean;
  /** Greatest pull towards closed and towards open over the travel, before friction; 0 where there is none. */
  readonly towardsClosed: number;
  readonly towardsOpen: number;
  /** Positions of both, radians or metres. */
  readonly closedAt: number;
  readonly openAt: number;
  /** What holds the leaf, in the same unit, and whether it is stated or taken from memory. */
  readonly friction: number;
  readonly frictionStated: boolean;
  /** How much higher the centre of the leaf stands at its highest than at its lowest, metres. */
  readonly rise: number;
}

/**
 * The angles over a travel of `end` at which the pull `climb + tilt·sin(θ − lowest)` or the height, of which it is the derivative, is at
 * its greatest or least: both ends, where the sine turns, and where the pull is nothing. Radians.
 */
function turningPoints(lowest: number, end: number, climb: number, tilt: number): readonly number[] {
  const level = tilt === 0 || Math.abs(climb) > Math.abs(tilt) ? [] : [Math.asin(-climb / tilt), Math.PI - Math.asin(-climb / tilt)];
  const points = [0, end];
  for (const turn of [-Math.PI / 2, Math.PI / 2, ...level])
    for (const at of [turn - 2 * Math.PI, turn, turn + 2 * Math.PI]) if (lowest + at > 0 && lowest + at < end) points.push(lowest + at);
  return points;
}

/** Undefined for a leaf that nothing pulls: its hinges neither lean nor rise, its track does not slope. */
export const releasedOf = perSubject((leaf: Leaf): Released | undefined => {
  const { opens, slides, width, mass, slope, rises, friction, 'hinge-tilt': tilt } = leaf.facts;
  if (mass === undefined) return undefined;
  if (slides !== undefined) {
    if (slope === undefined || slope.value === 0) return undefined;
    const angle = Math.atan(slope.value);
    const pull = mass.value * gravity * Math.sin(angle);
    return {
      swing: false,
      towardsClosed: Math.max(0, pull),
      towardsOpen: Math.max(0, -pull),
      closedAt: slides.distance,
      openAt: 0,
      friction: friction?.value ?? mass.value * gravity * rollingShare * Math.cos(angle),
      frictionStated: friction !== undefined,
      rise: Math.abs(slides.distance * Math.sin(angle)),
    };
  }
  if (opens === undefined || width === undefined || (tilt === undefined && rises === undefined)) return undefined;
  const climb = risingHingeMoment(mass.value, rises?.value ?? 0, opens.angle) ?? 0;
  const beta = tilt?.value ?? 0;
  const lowest = tilt?.lowest === 'open' ? opens.angle : 0;
  let towardsClosed = 0;
  let towardsOpen = 0;
  let closedAt = 0;
  let openAt = 0;
  let highest = -Infinity;
  let deepest = Infinity;
  const greatestTilt = tiltedHingeMoment(mass.value, width.value, beta, Math.PI / 2) ?? 0;
  for (const at of turningPoints(lowest, opens.angle, climb, greatestTilt)) {
    const pull = climb + (tiltedHingeMoment(mass.value, width.value, beta, at - lowest) ?? 0);
    if (pull > towardsClosed) {
      towardsClosed = pull;
      closedAt = at;
    }
    if (-pull > towardsOpen) {
      towardsOpen = -pull;
      openAt = at;
    }
    const height = ((rises?.value ?? 0) * at) / opens.angle + (tiltedHingeRise(width.value, beta, at - lowest) ?? 0);
    highest = Math.max(highest, height);
    deepest = Math.min(deepest, height);
  }
  return {
    swing: true,
    towardsClosed,
    towardsOpen,
    closedAt,
    openAt,
    friction: (friction?.value ?? 0) * width.value,
    frictionStated: friction !== undefined,
    rise: highest - deepest,
  };
});
