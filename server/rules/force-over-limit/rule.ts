import { forceRecordsOf, type Spot } from '../../figures/force-records/records.ts';
import { nearestOf, slack, type Excess } from '../../figures/force-records/maths.ts';
import type { Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { millimetres, shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = { figure: 'leaf.NAME.force-share', name: 'measured force', unit: 'N', way: 'most' } as const;

/** Of the forces at one place, the one nearest to its limit. */
function boundOf(leaf: Leaf, spot: Spot): Bound {
  const { value, limit } = nearestOf(spot.gap, spot.judged);
  return bound(held, leaf.name, value, limit, slack);
}

export const rule = installationRule({
  name: 'force-over-limit',
  severity: 'error',
  title: 'A measured force is greater than the force limits allow.',
  why: 'These are the forces that a person in the way is struck and held with; above the limits bones break and breath stops.',
  remedy: 'Take the gate out of use or let it move only while a control in view is held; lower speed or force, or fit an edge that gives more; then measure again.',
  source: { text: 'EN 12453:2017, Annex A', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    if (installation.site?.facts.rules?.value === 'north-america') return;
    for (const leaf of installation.leaves) {
      if (leaf.forces.length === 0) continue;
      for (const spot of forceRecordsOf(leaf)?.spots ?? []) {
        if (keeps(boundOf(leaf, spot))) continue;
        const [first, ...more] = spot.records;
        if (first === undefined) continue;
        report({
          at: { start: first.fact.line.start, end: first.fact.line.end },
          what: `${quoted(leaf.name)} ${spot.movement}, at a gap of ${millimetres(spot.gap)} and ${millimetres(spot.height)} up, has ${spot.excess.map(inWords).join(', ')} (${means(spot)}).`,
          related: more.map(({ fact }) => ({ message: 'another reading of that point', start: fact.line.start, end: fact.line.end })),
        });
      }
    }
  },
  margins: ({ site, leaves }, give) => {
    if (site?.facts.rules?.value === 'north-america') return;
    for (const leaf of leaves)
      for (const spot of leaf.forces.length === 0 ? [] : (forceRecordsOf(leaf)?.spots ?? [])) {
        const line = spot.records[0]?.fact.line;
        if (line !== undefined) give(boundOf(leaf, spot), line);
      }
  },
});

const what = { peak: 'a peak of', static: 'after 0.75 s still', end: 'after 5 s still' } as const;
const inWords = ({ which, value, limit }: Excess): string => `${what[which]} ${over(value, limit)} N where ${limit} N are allowed`;

/** Never rounded to the limit itself. */
const over = (value: number, limit: number): string => (Number(shown(value)) > limit ? shown(value) : `just over ${limit}`);

const means = ({ readings }: Spot): string => (readings.length === 1 ? 'one reading' : readings.length === 2 ? 'the worse of two readings' : `mean of ${readings.length} readings`);
