import { factPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { inertiaOf } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.inertia',
    title: 'Moment of inertia of the leaf about its hinge axis',
    unit: 'kg·m²',
    topic: 'impact',
    formula: 'I = m·w² / 3, the mass spread evenly over the width',
    source: {
      text: 'R. A. Serway and J. W. Jewett, Physics for Scientists and Engineers, ch. 10 (uniform slab about its edge)',
      standing: 'published',
    },
    changedBy: 'mass and width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const inertia = inertiaOf(leaf);
        const { mass, width } = leaf.facts;
        if (inertia !== undefined && mass !== undefined && width !== undefined)
          give(leaf.name, inertia, factPlace(leaf, mass), () => [
            { name: 'm, mass', value: mass.value, unit: 'kg' },
            { name: 'w, width', value: width.value, unit: 'm' },
          ]);
      }
    },
  },
];
