import { aYearAfter, dateOf, forceRecordsOf } from '../../figures/force-records/working.ts';
import { headPlace } from '../../model/index.ts';
import { needsForceTest, owesForceTest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'force-test-overdue',
  severity: 'error',
  title: 'The forces were last measured more than a year ago.',
  why: 'Hinges stiffen, springs tire and settings are turned; what was safe a year ago is known no longer.',
  remedy: 'Measure again at every point, and write the readings down in a new measured block.',
  source: { text: 'ASR A1.7, 10.2 (at least yearly)', standing: 'published' },
  acceptable: 'warnings',
  check: (installation, report, asOf) => {
    for (const leaf of installation.leaves) {
      const { lastDay, oldestDay, since } = (needsForceTest(leaf) ? forceRecordsOf(leaf) : undefined) ?? nothing;
      if (lastDay === undefined || oldestDay === undefined) continue;
      const severity = owesForceTest(leaf) ? 'error' : 'warning';
      if (lastDay > asOf)
        report({
          at: dateOf(leaf, lastDay),
          severity,
          what: `The forces of ${quoted(leaf.name)} are dated ${lastDay}, which is after the day of this verdict, ${asOf}.`,
          remedy: 'Correct the date.',
        });
      // What was measured before the gate was changed is due at once: force-record-outdated.
      else if (asOf > aYearAfter(oldestDay) && !(since !== undefined && oldestDay < since.day))
        report({
          at: dateOf(leaf, oldestDay),
          severity,
          what:
            oldestDay === lastDay
              ? `The forces of ${quoted(leaf.name)} were last measured on ${oldestDay}; they were due again by ${aYearAfter(oldestDay)}.`
              : `The forces of ${quoted(leaf.name)} were last measured in full on ${oldestDay}, at some points; there they were due again by ${aYearAfter(oldestDay)}.`,
          related: [{ message: 'the leaf', ...headPlace(leaf) }],
        });
    }
  },
});

const nothing = { lastDay: undefined, oldestDay: undefined, since: undefined };
