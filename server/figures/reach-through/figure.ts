import { factPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { reachFrom14 } from './maths.ts';
import { infillOpeningOf } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.reach-distance',
    title: 'How far a person of 14 years or above reaches through an opening of the leaf',
    unit: 'm',
    topic: 'gaps',
    formula: 'from the table, by the shape and the smaller side of the opening',
    source: { text: 'EN ISO 13857, as reprinted in DGUV Information 208-022, Table 2', standing: 'published' },
    changedBy: 'smaller openings, or another shape',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const opening = infillOpeningOf(leaf);
        const reach = opening === undefined ? undefined : reachFrom14(opening);
        if (opening === undefined || reach === undefined) continue;
        give(leaf.name, reach, factPlace(leaf, leaf.facts['infill-opening']), () => [
          { name: `e, ${opening.shape}`, value: opening.size, unit: 'm' },
          ...(opening.length === undefined ? [] : [{ name: 'length of the slot', value: opening.length, unit: 'm' as const }]),
        ]);
      }
    },
  },
];
