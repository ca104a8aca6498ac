import { hingeSideOf } from '../../figures/hinge-gap/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = { figure: 'leaf.NAME.hinge-gap-least', name: 'gap at the post', unit: 'm', way: 'least' } as const;

export const rule = installationRule({
  name: 'leaf-meets-post',
  severity: 'error',
  title: 'A swing leaf runs into its own post before it is open.',
  why: 'With the hinge axis where it is stated, the leaf would have to pass through the post: the drive bends the hinges, and whatever is between leaf and post is crushed.',
  remedy:
    'Move the hinge axis out towards the side that the leaf opens to, widen the gap, or open by less; or measure the stated distances again.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const side = hingeSideOf(leaf);
      // Where the gap was measured it is there.
      if (side === undefined || side.measured) continue;
      const { least, at } = side[side.worse];
      const { 'hinge-gap': gap, 'hinge-offset': offset } = leaf.facts;
      hold(bound(held, leaf.name, least, 0, 1e-6), factPlace(leaf, offset), () => ({
        what: `${quoted(leaf.name)} would reach ${millimetres(-least)} into its post when it is open by ${degrees(at)}.`,
        related: toFact('the gap when closed', gap),
      }));
    }
  },
});
