import { factPlace } from '../../model/index.ts';
import { type FigureKind, inDegrees } from '../kind.ts';
import { clearanceOf } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.ground-gap-least',
    title: 'Least gap between a swing leaf and the ground over the travel',
    unit: 'm',
    topic: 'gaps',
    formula: 'g + h·θ/Θ + w·sin β·(1 − cos θ) − w·slope·sin θ under the free edge, g at the hinge; the least of both over the travel',
    source: { text: 'plane geometry', standing: 'derived' },
    changedBy: 'the gap, the slope, the width, rising or leaning hinges, or opening to the other side',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const found = clearanceOf(leaf);
        if (found === undefined) continue;
        const { slope, rises, width, 'ground-gap': gap, 'hinge-tilt': tilt } = leaf.facts;
        give(leaf.name, found.least, factPlace(leaf, gap), () => [
          { name: 'g, gap when closed', value: gap?.value ?? 0, unit: 'm' },
          { name: 'w, width', value: width?.value ?? 0, unit: 'm' },
          { name: 'slope', value: slope?.value ?? 0, unit: '1', ...(slope === undefined ? { from: 'not stated: level' } : {}) },
          ...(rises === undefined ? [] : [{ name: 'h, rise of the hinges over the travel', value: rises.value, unit: 'm' as const }]),
          ...(tilt === undefined ? [] : [{ name: 'β, lean of the hinge axis', value: inDegrees(tilt.value), unit: 'deg' as const }]),
          { name: 'least at an opening of', value: inDegrees(found.at), unit: 'deg' },
        ]);
      }
    },
  },
];
