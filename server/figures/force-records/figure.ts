import { factPlace, type Installation, type Leaf } from '../../model/index.ts';
import { onlyWhere, type Source } from '../kind.ts';
import { peakLimit, repeats } from './maths.ts';
import { forceRecordsOf, type Spot, shareOf } from './working.ts';

const limitSource: Source = { text: 'EN 12453:2017, Annex A (limits)', standing: 'published' };
const planSource: Source = { text: 'EN 12453:2017, Annex C (points)', standing: 'published' };

const firstLine = (leaf: Leaf): { start: number; end: number } => factPlace(leaf, leaf.forces[0]?.fact);

const hasForces = ({ leaves }: Installation): boolean => leaves.some((leaf) => leaf.forces.length > 0);

export const figures = onlyWhere(hasForces, [
  {
    id: 'leaf.NAME.force-readings',
    title: 'Readings that the plan of force measurements asks for on this leaf',
    unit: '1',
    topic: 'measurements',
    formula:
      'points × 3: closing, gaps of 50, 300 and 500 mm at three heights; opening only with something nearer than 500 mm behind the open leaf',
    source: planSource,
    changedBy: 'the height of the leaf and the room when it is open',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const plan = forceRecordsOf(leaf)?.plan;
        if (plan !== undefined)
          give(leaf.name, plan.length * repeats, factPlace(leaf, leaf.facts.height), () => [
            { name: 'points', value: plan.length, unit: '1' },
            { name: 'readings at each', value: repeats, unit: '1' },
          ]);
      }
    },
  },
  {
    id: 'leaf.NAME.force-readings-missing',
    title: 'Readings of the plan that no record holds',
    unit: '1',
    topic: 'measurements',
    formula: 'Σ over the points of 3 less the readings of its fullest day',
    source: planSource,
    changedBy: 'measuring what is missing',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const records = forceRecordsOf(leaf);
        if (records?.missing !== undefined)
          give(leaf.name, records.missing, firstLine(leaf), () => [
            { name: 'readings asked for', value: records.asked ?? 0, unit: '1', from: `leaf.${leaf.name}.force-readings` },
          ]);
      }
    },
  },
  {
    id: 'leaf.NAME.force-share',
    title: 'The measured force that comes nearest to its limit, as a share of it; above 1 it is too much',
    unit: '1',
    topic: 'measurements',
    formula:
      'greatest of peak / 400 N (1400 N in gaps above 500 mm), force after 0.75 s / 150 N, force after 5 s / 25 N; the mean of the three worst readings or the worst of fewer',
    source: limitSource,
    changedBy: 'the force set, the speed, the edge',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        let worst: Spot | undefined;
        for (const spot of forceRecordsOf(leaf)?.spots ?? []) if (worst === undefined || shareOf(spot) > shareOf(worst)) worst = spot;
        const spot = worst;
        if (spot === undefined) continue;
        give(
          leaf.name,
          shareOf(spot),
          factPlace(leaf, spot.records[0]?.fact),
          () => [
            { name: 'gap', value: spot.gap, unit: 'm' },
            { name: 'height', value: spot.height, unit: 'm' },
            { name: 'peak', value: spot.judged.peak, unit: 'N' },
            { name: 'limit of the peak', value: peakLimit(spot.limitGap), unit: 'N', from: 'EN 12453, Annex A' },
            { name: 'after 0.75 s', value: spot.judged.static, unit: 'N' },
            { name: 'after 5 s', value: spot.judged.end, unit: 'N' },
            { name: 'readings', value: spot.readings.length, unit: '1' },
          ],
          () => (spot.excess.length === 0 ? 'Within the limits' : 'Over a limit'),
        );
      }
    },
  },
]);
