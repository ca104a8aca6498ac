import { factPlace } from '../../model/index.ts';
import { edgeSpeedsOf } from '../edge-speed/working.ts';
import { type FigureKind, inDegrees, mechanics } from '../kind.ts';
import { inertiaOf } from '../leaf-inertia/working.ts';
import { energyOf } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.kinetic-energy',
    title: 'Greatest kinetic energy of the leaf',
    unit: 'J',
    topic: 'impact',
    formula: 'E = I·ω² / 2 for a swing leaf, E = m·v² / 2 for a sliding one, at the greatest speed',
    source: mechanics,
    changedBy: 'speed most of all (twice the speed is four times the energy), then mass and width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const energy = energyOf(leaf);
        const speeds = edgeSpeedsOf(leaf);
        if (energy === undefined || speeds === undefined) continue;
        give(leaf.name, energy, factPlace(leaf, leaf.facts.mass), () =>
          speeds.swing
            ? [
                { name: 'I, inertia', value: inertiaOf(leaf) ?? 0, unit: 'kg·m²', from: `leaf.${leaf.name}.inertia` },
                { name: 'ω, greatest angular speed', value: inDegrees(speeds.leaf), unit: 'deg/s' },
              ]
            : [
                { name: 'm, mass', value: leaf.facts.mass?.value ?? 0, unit: 'kg' },
                { name: 'v, greatest speed', value: speeds.leaf, unit: 'm/s' },
              ],
        );
      }
    },
  },
];
