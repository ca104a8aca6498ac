import { hingeSideOf } from '../../figures/hinge-gap/figure.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';

const held = { figure: 'leaf.NAME.hinge-gap-least', name: 'gap at the post', unit: 'm', way: 'least' } as const;

/** None where the gap was measured: then it is there. */
function boundOf(leaf: Leaf): Bound | undefined {
  const side = hingeSideOf(leaf);
  return side === undefined || side.measured ? undefined : bound(held, leaf.name, side[side.worse].least, 0, 1e-6);
}

export const rule = installationRule({
  name: 'leaf-meets-post',
  severity: 'error',
  title: 'A swing leaf runs into its own post before it is open.',
  why: 'With the hinge axis where it is stated, the leaf would have to pass through the post: the drive bends the hinges, and whatever is between leaf and post is crushed.',
  remedy: 'Move the hinge axis out towards the side that the leaf opens to, widen the gap, or open by less; or measure the stated distances again.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const room = boundOf(leaf);
      const side = room === undefined || keeps(room) ? undefined : hingeSideOf(leaf);
      if (side === undefined) continue;
      const { least, at } = side[side.worse];
      const { 'hinge-gap': gap, 'hinge-offset': offset } = leaf.facts;
      report({
        at: factPlace(leaf, offset),
        what: `“${leaf.name}” would reach ${millimetres(-least)} into its post when it is open by ${degrees(at)}.`,
        related: gap === undefined ? [] : [{ message: 'the gap when closed', start: gap.line.start, end: gap.line.end }],
      });
    }
  },
  margins: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const room = boundOf(leaf);
      if (room !== undefined) give(room, factPlace(leaf, leaf.facts['hinge-offset']));
    }
  },
});
