import { mostHingeGuard } from '../../figures/hinge-gap/working.ts';
import { millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'hinge-guard-beyond-leaf',
  severity: 'error',
  title: 'The guard at a hinge is said to reach further than a guard at a hinge can.',
  why: 'Where a guard is said to be, nobody can be caught and no force is limited; claimed over the whole leaf it would take the limits off where people stand.',
  remedy: 'State how far from the hinge axis the guard reaches in truth.',
  source: commonPractice,
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const { 'hinge-guard': guard, width } = leaf.facts;
      if (guard === undefined) continue;
      const beyond = width !== undefined && guard.value >= width.value;
      if (!beyond && guard.value <= mostHingeGuard + 1e-9) continue;
      report({
        at: guard.line,
        severity: beyond ? 'error' : 'warning',
        what: beyond
          ? `The guard at the hinge of ${quoted(leaf.name)} is said to reach ${millimetres(guard.value)}, and the leaf is ${millimetres(width.value)} wide.`
          : `The guard at the hinge of ${quoted(leaf.name)} is said to reach ${millimetres(guard.value)}; it counts as far as ${millimetres(mostHingeGuard)}.`,
        related: beyond ? toFact('the width of the leaf', width) : [],
      });
    }
  },
});
