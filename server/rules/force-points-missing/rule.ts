import { forceRecordsOf, isRagged, type Point, repeats } from '../../figures/force-records/working.ts';
import { headPlace } from '../../model/index.ts';
import { needsForceTest, owesForceTest } from '../../safeguards/index.ts';
import { millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Points that are told one by one; the rest are counted. */
const mostTold = 5;

export const rule = installationRule({
  name: 'force-points-missing',
  severity: 'error',
  title: 'Forces were measured, but not at every point, or not three times.',
  why: 'The force differs with the gap and the height; one good reading in the middle says nothing of the bottom corner.',
  remedy: 'Measure the points that are missing, three times each.',
  source: { text: 'EN 12453:2017, Annex C (points and repeats, known second-hand)', standing: 'published' },
  acceptable: 'warnings',
  check: (installation, report) => {
    for (const leaf of installation.leaves) {
      const records = needsForceTest(leaf) ? forceRecordsOf(leaf) : undefined;
      if (records === undefined) continue;
      const severity = owesForceTest(leaf) ? 'error' : 'warning';
      for (const record of leaf.forces)
        if (isRagged(record))
          report({
            at: record.fact.line,
            severity: 'warning',
            what: `This line holds ${record.fact.peak.length}, ${record.fact.static.length} and ${record.fact.end.length} values for peak, 0.75 s and 5 s, so not every reading is whole.`,
            remedy: 'Write as many values behind each of the three, in the same order.',
          });
      if (records.plan === undefined) {
        report({
          at: headPlace(leaf),
          severity,
          what: `The height of ${quoted(leaf.name)} is not stated, so nobody can say at which heights its forces are to be measured.`,
          remedy: 'State the height of the leaf.',
        });
        continue;
      }
      const open = records.plan.filter(({ readings }) => readings < repeats);
      if (open.length === 0) continue;
      const told = open
        .slice(0, mostTold)
        .map(({ point, readings }) => `${inWords(point)} (${readings === 0 ? 'none' : `${readings} of ${repeats}`})`);
      report({
        at: headPlace(leaf),
        severity,
        what: `Of the ${records.asked ?? 0} force readings of ${quoted(leaf.name)}, ${records.missing ?? 0} ${records.missing === 1 ? 'is' : 'are'} missing: ${told.join('; ')}${open.length > mostTold ? `; and ${open.length - mostTold} more points` : ''}.`,
        related: toFact('what was measured', leaf.forces[0]?.fact),
      });
    }
  },
});

const inWords = ({ movement, gap, height }: Point): string =>
  `${movement}${gap === undefined ? '' : ` at ${millimetres(gap)}`}${height === undefined ? ' where it sticks out most' : `, ${millimetres(height)} up`}`;
