import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'force-reading-impossible',
  severity: 'error',
  title: 'A force reading says what no instrument can show.',
  why: 'The peak is the greatest of all, and what is left after 5 s is no more than the greatest from 0.75 s on: forces that say otherwise were written down wrong, and prove nothing.',
  remedy: 'Look at the print of the instrument and write the readings down as they are; where there is none, measure again.',
  source: { text: 'EN 12453:2017, Annex A (what the peak, the static and the residual force are)', standing: 'published' },
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves)
      for (const { fact } of leaf.forces) {
        const count = Math.min(fact.peak.length, fact.static.length, fact.end.length);
        for (let i = 0; i < count; i++) {
          const [peak, later, end] = [fact.peak[i] as number, fact.static[i] as number, fact.end[i] as number];
          if (later <= peak && end <= later) continue;
          const which = count === 1 ? 'The reading' : `Reading ${i + 1}`;
          report({
            at: fact.line,
            what:
              later > peak
                ? `${which} of ${quoted(leaf.name)} has ${Math.round(later)} N after 0.75 s and a peak of ${Math.round(peak)} N, which is less.`
                : `${which} of ${quoted(leaf.name)} has ${Math.round(end)} N after 5 s and ${Math.round(later)} N at most from 0.75 s on.`,
          });
          break;
        }
      }
  },
});
