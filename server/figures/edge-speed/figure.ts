import { type FigureKind, type Input, inDegrees, mechanics } from '../kind.ts';
import { travelPlace } from '../run-time/working.ts';
import { type EdgeSpeeds, edgeSpeedsOf } from './working.ts';

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
        if (value !== undefined)
          give(leaf.name, value, zone.line, () => [{ name: 'slow zone, share of the drive’s travel', value: zone.last, unit: '1' }]);
      }
    },
  },
];
