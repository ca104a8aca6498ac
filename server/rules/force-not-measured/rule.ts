import { headPlace } from '../../model/index.ts';
import { isDraft, measuresFor, needsForceTest, owesForceTest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'force-not-measured',
  severity: 'error',
  title: 'The forces at the closing edge have never been measured here.',
  why: 'Mass, hinges, wind and settings differ at every site; no maker’s test says how hard this leaf strikes.',
  remedy: 'Measure at every point of the plan with a force gauge, and write the readings down in a measured block.',
  source: { text: 'EN 12453:2017, Annex C; ASR A1.7, 10.2', standing: 'published' },
  acceptable: 'warnings',
  cost: 'idle',
  check: (installation, report) => {
    // What nobody has built nobody has measured.
    if (isDraft(installation)) return;
    const { leaves } = installation;
    const [first, ...more] = leaves.filter((leaf) => leaf.forces.length === 0 && needsForceTest(leaf));
    if (first === undefined) return;
    const all = quotedList(
      [first, ...more].map((leaf) => leaf.name),
      4,
    );
    const claimed = measuresFor(first, 'closing', false).C;
    report({
      at: headPlace(first),
      severity: owesForceTest(first) ? 'error' : 'warning',
      what: claimed ? `No force is recorded for ${all}, though its force limitation (C) is relied on.` : `No force is recorded for ${all}.`,
      related: more.map((leaf) => ({ message: 'nor for this leaf', ...headPlace(leaf) })),
    });
  },
});
