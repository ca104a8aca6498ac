import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';

const held = { name: 'roller spacing', unit: 'm', way: 'most' } as const;

function boundOf({ name, facts }: Leaf): Bound | undefined {
  const { tail, 'roller-spacing': spacing, slides } = facts;
  return tail === undefined || spacing === undefined || slides === undefined ? undefined : bound(held, name, spacing.value, tail.value, hair(tail.value));
}

export const rule = installationRule({
  name: 'rollers-beyond-tail',
  severity: 'error',
  title: 'The rollers of a leaf without a track stand further apart than its tail is long.',
  why: 'When the leaf is closed its tail no longer reaches the rear rollers: it tips over the front ones and falls.',
  remedy: 'Set the rollers closer together, or make the tail longer.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const { tail, 'roller-spacing': spacing } = leaf.facts;
      const rollers = boundOf(leaf);
      if (tail === undefined || rollers === undefined || keeps(rollers)) continue;
      report({
        at: factPlace(leaf, spacing),
        what: `The rollers of “${leaf.name}” stand further apart than its tail of ${written(tail.line)} is long, so the closed leaf rests on the front ones alone.`,
        related: [{ message: 'the tail', start: tail.line.start, end: tail.line.end }],
      });
    }
  },
  margins: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const rollers = boundOf(leaf);
      if (rollers !== undefined) give(rollers, factPlace(leaf, leaf.facts['roller-spacing']));
    }
  },
});
