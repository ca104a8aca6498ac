import { type Leaf, perSubject } from '../../model/index.ts';
import { motionOf } from '../run-time/working.ts';
import { greatestSpeeds } from './maths.ts';

/** The greatest speeds of a leaf. For a swing leaf of its free edge, by way of the angular speed. */
export interface EdgeSpeeds {
  /** Greatest leaf speed over both movements: radians a second for a swing leaf, metres a second for a sliding one. */
  readonly leaf: number;
  /** Leaf position at which that is, from closed. */
  readonly at: number;
  /** Greatest speed of the free edge, metres a second. */
  readonly edge: number;
  /** Greatest speed of the free edge in the slow zone at the end of closing, metres a second; undefined without one. */
  readonly edgeInSlowZone: number | undefined;
  readonly swing: boolean;
  readonly width: number;
}

export const edgeSpeedsOf = perSubject((leaf: Leaf): EdgeSpeeds | undefined => {
  const motion = motionOf(leaf);
  const width = leaf.facts.width?.value;
  if (motion === undefined || width === undefined) return undefined;
  const opening = greatestSpeeds(motion.linkage, motion.profile, motion.slowTravel, 'opening');
  const closing = greatestSpeeds(motion.linkage, motion.profile, motion.slowTravel, 'closing');
  if (opening === undefined || closing === undefined) return undefined;
  const swing = leaf.facts.opens !== undefined;
  const arm = swing ? width : 1;
  const greater = closing.overall >= opening.overall ? closing : opening;
  return {
    leaf: greater.overall,
    at: greater.overallAt,
    edge: greater.overall * arm,
    edgeInSlowZone: closing.inSlowZone === undefined ? undefined : closing.inSlowZone * arm,
    swing,
    width,
  };
});
