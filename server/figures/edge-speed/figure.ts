import { type Leaf, perSubject } from '../../model/index.ts';
import { mechanics, travelPlace } from '../common.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { motionOf } from '../run-time/figure.ts';
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
  return { leaf: greater.overall, at: greater.overallAt, edge: greater.overall * arm, edgeInSlowZone: closing.inSlowZone === undefined ? undefined : closing.inSlowZone * arm, swing, width };
});

function inputsOf(speeds: EdgeSpeeds): Input[] {
  if (!speeds.swing) return [{ name: 'speed of the rack', value: speeds.leaf, unit: 'm/s' }];
  return [
    { name: 'ω, greatest angular speed', value: inDegrees(speeds.leaf), unit: 'deg/s' },
    { name: 'at an opening of', value: inDegrees(speeds.at), unit: 'deg' },
    { name: 'w, width', value: speeds.width, unit: 'm' },
  ];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.edge-speed',
    title: 'Greatest speed of the free edge over both movements',
    unit: 'm/s',
    topic: 'impact',
    formula: 'v = ω·w, with ω = drive speed / lever arm, greatest over the travel; for a sliding leaf the speed of the rack',
    source: mechanics,
    changedBy: 'speed, brackets and width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const speeds = edgeSpeedsOf(leaf);
        if (speeds !== undefined) give(leaf.name, speeds.edge, travelPlace(leaf), () => inputsOf(speeds));
      }
    },
  },
  {
    id: 'leaf.NAME.final-edge-speed',
    title: 'Greatest speed of the free edge in the slow zone at the end of closing',
    unit: 'm/s',
    topic: 'impact',
    formula: 'v = ω·w, greatest over the slow zone',
    source: mechanics,
    changedBy: 'the slow zone and its speed',
    work: ({ leaves, motion }, give) => {
      const zone = motion?.facts['slow-zone'];
      if (zone === undefined) return;
      for (const leaf of leaves) {
        const speeds = edgeSpeedsOf(leaf);
        const value = speeds?.edgeInSlowZone;
        if (value !== undefined) give(leaf.name, value, zone.line, () => [{ name: 'slow zone, share of the drive’s travel', value: zone.last, unit: '1' }]);
      }
    },
  },
];
