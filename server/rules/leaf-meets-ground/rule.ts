import { clearanceOf } from '../../figures/underside/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { degrees, millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const held = { figure: 'leaf.NAME.ground-gap-least', name: 'gap above the ground', unit: 'm', way: 'least' } as const;

export const rule = installationRule({
  name: 'leaf-meets-ground',
  severity: 'error',
  title: 'A swing leaf runs into the ground before it is open.',
  why: 'The leaf jams on its way, lifts itself off its hinges, or grinds over whatever lies there.',
  remedy:
    'Leave width times slope under the leaf for an opening of 90°, hang it on rising hinges, or let it open to the side where the ground falls.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const clearance = clearanceOf(leaf);
      if (clearance === undefined) continue;
      const { slope, 'ground-gap': gap } = leaf.facts;
      hold(bound(held, leaf.name, clearance.least, 0, 1e-6), factPlace(leaf, gap), () => ({
        what: `${quoted(leaf.name)} lacks ${millimetres(-clearance.least)} under its free edge when it is open by ${degrees(clearance.at)}: the ground is in its way.`,
        related: toFact('the ground', slope),
      }));
    }
  },
});
