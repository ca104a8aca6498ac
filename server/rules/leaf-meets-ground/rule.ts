import { clearanceOf } from '../../figures/underside/figure.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';

const held = { figure: 'leaf.NAME.ground-gap-least', name: 'gap above the ground', unit: 'm', way: 'least' } as const;

function boundOf(leaf: Leaf): Bound | undefined {
  const clearance = clearanceOf(leaf);
  return clearance === undefined ? undefined : bound(held, leaf.name, clearance.least, 0, 1e-6);
}

export const rule = installationRule({
  name: 'leaf-meets-ground',
  severity: 'error',
  title: 'A swing leaf runs into the ground before it is open.',
  why: 'The leaf jams on its way, lifts itself off its hinges, or grinds over whatever lies there.',
  remedy: 'Leave width times slope under the leaf for an opening of 90°, hang it on rising hinges, or let it open to the side where the ground falls.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const gapLeft = boundOf(leaf);
      const clearance = gapLeft === undefined || keeps(gapLeft) ? undefined : clearanceOf(leaf);
      if (clearance === undefined) continue;
      const { slope, 'ground-gap': gap } = leaf.facts;
      report({
        at: factPlace(leaf, gap),
        what: `“${leaf.name}” lacks ${millimetres(-clearance.least)} under its free edge when it is open by ${degrees(clearance.at)}: the ground is in its way.`,
        related: slope === undefined ? [] : [{ message: 'the ground', start: slope.line.start, end: slope.line.end }],
      });
    }
  },
  margins: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const gapLeft = boundOf(leaf);
      if (gapLeft !== undefined) give(gapLeft, factPlace(leaf, leaf.facts['ground-gap']));
    }
  },
});
