import { shapedHingeOf } from '../../figures/hinge-gap/working.ts';
import { millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** What a tape and a drawing may differ by, metres: a tool’s choice. */
const tolerance = 0.01;

export const rule = installationRule({
  name: 'hinge-gap-contradicted',
  severity: 'error',
  title: 'The gap at the hinge is said to be one, and the place of the hinge makes another.',
  why: 'One of the two is not so. If it is the measured gap, a hand is crushed at a hinge that the file calls closed.',
  remedy: 'Measure the gap at the closed, the half open and the open leaf, and the place of the hinge axis, and correct what is wrong.',
  source: { text: 'geometry of the leaf; the gaps are those of EN ISO 13854 and ASR A1.7, section 6', standing: 'derived' },
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const { 'hinge-gap': gap, 'hinge-offset': offset } = leaf.facts;
      if (gap?.least === undefined || gap.greatest === undefined) continue;
      const shaped = shapedHingeOf(leaf);
      if (shaped === undefined) continue;
      const least = Math.max(0, Math.min(shaped.opening.least, shaped.closing.least));
      const greatest = Math.max(shaped.opening.greatest, shaped.closing.greatest);
      if (least >= gap.least - tolerance && greatest <= gap.greatest + tolerance) continue;
      report({
        at: gap.line,
        what: `The gap at the hinge of ${quoted(leaf.name)} is said to stay between ${millimetres(gap.least)} and ${millimetres(gap.greatest)}; by the place of its axis it runs from ${millimetres(least)} to ${millimetres(greatest)}.`,
        related: toFact('the place of the axis', offset),
      });
    }
  },
});
