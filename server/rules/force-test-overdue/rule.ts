import { aYearAfter, forceRecordsOf } from '../../figures/force-records/working.ts';
import { headPlace, type Leaf } from '../../model/index.ts';
import { needsForceTest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'force-test-overdue',
  severity: 'warning',
  title: 'The forces were last measured more than a year ago.',
  why: 'Hinges stiffen, springs tire and settings are turned; what was safe a year ago is known no longer.',
  remedy: 'Measure again at every point, and write the readings down in a new measured block.',
  source: { text: 'ASR A1.7, 10.2 (at least yearly)', standing: 'published' },
  acceptable: true,
  check: (installation, report, asOf) => {
    for (const leaf of installation.leaves) {
      const last = needsForceTest(leaf) ? forceRecordsOf(leaf)?.lastDay : undefined;
      if (last === undefined) continue;
      if (last > asOf)
        report({
          at: dateOf(leaf, last),
          what: `The forces of ${quoted(leaf.name)} are dated ${last}, which is after the day of this verdict, ${asOf}.`,
          remedy: 'Correct the date.',
        });
      else if (asOf > aYearAfter(last))
        report({
          at: dateOf(leaf, last),
          what: `The forces of ${quoted(leaf.name)} were last measured on ${last}; they were due again by ${aYearAfter(last)}.`,
          related: [{ message: 'the leaf', ...headPlace(leaf) }],
        });
    }
  },
});

/** The line with the day of the last records. */
function dateOf(leaf: Leaf, day: string): { start: number; end: number } {
  for (const { measured } of leaf.forces) {
    const on = measured.facts.on;
    if (on?.value === day) return on.line;
  }
  return headPlace(leaf);
}
