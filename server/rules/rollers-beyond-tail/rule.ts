import { bound, hair } from '../bounds.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { name: 'roller spacing', unit: 'm', way: 'most' } as const;

export const rule = installationRule({
  name: 'rollers-beyond-tail',
  severity: 'error',
  title: 'The rollers of a leaf without a track stand further apart than its tail is long.',
  why: 'When the leaf is closed its tail no longer reaches the rear rollers: it tips over the front ones and falls.',
  remedy: 'Set the rollers closer together, or make the tail longer.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  holds: ({ leaves }, hold) => {
    for (const { name, facts } of leaves) {
      const { tail, 'roller-spacing': spacing, slides } = facts;
      if (tail === undefined || spacing === undefined || slides === undefined) continue;
      hold(bound(held, name, spacing.value, tail.value, hair(tail.value)), spacing.line, () => ({
        what: `The rollers of ${quoted(name)} stand further apart than its tail of ${written(tail.line)} is long, so the closed leaf rests on the front ones alone.`,
        related: toFact('the tail', tail),
      }));
    }
  },
});
