import { dateOf, forceRecordsOf, type Since } from '../../figures/force-records/working.ts';
import { needsForceTest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'force-record-outdated',
  severity: 'error',
  title: 'Forces were measured before something that decides them was fitted.',
  why: 'A record tells of the gate as it was on that day; of another drive, edge or panel it tells nothing.',
  remedy: 'Measure again at every point, and write the readings down in a new measured block; or correct the day that is wrong.',
  source: { text: 'ASR A1.7, 10.2 (before first use and after a substantial change)', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    for (const leaf of installation.leaves) {
      const { oldestDay, since } = (needsForceTest(leaf) ? forceRecordsOf(leaf) : undefined) ?? nothing;
      if (oldestDay === undefined || since === undefined || oldestDay >= since.day) continue;
      report({
        at: { start: since.fact.line.start, end: since.fact.line.end },
        what: `The forces of ${quoted(leaf.name)} that were measured on ${oldestDay} say nothing of it now: ${inWords(since)} on ${since.day}, and not every point was measured since.`,
        related: [{ message: 'the day of measuring', ...dateOf(leaf, oldestDay) }],
      });
    }
  },
});

const nothing = { oldestDay: undefined, since: undefined };

const inWords = ({ what, name }: Since): string => (what === 'site' ? 'the gate was installed' : `the ${what} ${quoted(name)} was fitted`);
