import { type Excess, forceRecordsOf, nearestLimitOf, peakLimit, repeats, type Spot, slack } from '../../figures/force-records/working.ts';
import type { Leaf } from '../../model/index.ts';
import { type Bound, bound } from '../bounds.ts';
import { millimetres, shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = { figure: 'leaf.NAME.force-share', name: 'measured force', unit: 'N', way: 'most' } as const;

/** Of the forces at one place, the one nearest to its limit. */
function boundOf(leaf: Leaf, spot: Spot): Bound {
  const { value, limit } = nearestLimitOf(spot);
  return bound(held, leaf.name, value, limit, slack);
}

export const rule = installationRule({
  name: 'force-over-limit',
  severity: 'error',
  title: 'A measured force is greater than the force limits allow.',
  why: 'These are the forces that a person in the way is struck and held with. The limits are thresholds: above them an injury has to be reckoned with.',
  remedy:
    'Take the gate out of use or let it move only while a control in view is held; lower speed or force, or fit an edge that gives more; then measure again.',
  source: { text: 'EN 12453:2017, Annex A', standing: 'published' },
  acceptable: false,
  under: 'outside north-america',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves)
      for (const spot of forceRecordsOf(leaf)?.spots ?? none) {
        const [first, ...more] = spot.records;
        if (first === undefined) continue;
        hold(boundOf(leaf, spot), first.fact.line, () => ({
          what: `${quoted(leaf.name)} ${spot.movement}, at a gap of ${millimetres(spot.gap)}${counts(spot)} and ${millimetres(spot.height)} up, has ${spot.excess.map(inWords).join(', ')} (${means(spot)}).`,
          related: more.flatMap(({ fact }) => toFact('another reading of that point', fact)),
        }));
      }
  },
});

const none: readonly never[] = [];
const what = { peak: 'a peak of', static: 'after 0.75 s still', end: 'after 5 s still' } as const;
const inWords = ({ which, value, limit }: Excess): string => `${what[which]} ${over(value, limit)} N where ${limit} N are allowed`;

/** Never rounded to the limit itself. */
const over = (value: number, limit: number): string => (Number(shown(value)) > limit ? shown(value) : `just over ${limit}`);

/** What is told where the limit is that of a point and not that of the gap itself. */
const counts = ({ gap, limitGap }: Spot): string =>
  peakLimit(gap) === peakLimit(limitGap) ? '' : `, which counts for the point at ${millimetres(limitGap)},`;

const means = ({ readings: { length } }: Spot): string =>
  length === 1
    ? 'one reading'
    : length < repeats
      ? 'the worse of two readings'
      : length === repeats
        ? 'mean of 3 readings'
        : `mean of the three worst of ${length} readings`;
