import { factPlace, type Leaf } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, type Source } from '../kind.ts';
import { releasedOf } from './working.ts';

function inputsOf(leaf: Leaf): Input[] {
  const { opens, width, mass, rises, 'hinge-tilt': tilt } = leaf.facts;
  return [
    { name: 'm, mass', value: mass?.value ?? 0, unit: 'kg' },
    { name: 'w, width', value: width?.value ?? 0, unit: 'm' },
    { name: 'Θ, opening angle', value: inDegrees(opens?.angle ?? 0), unit: 'deg' },
    ...(tilt === undefined
      ? []
      : [{ name: `β, lean of the hinge axis, lowest ${tilt.lowest}`, value: inDegrees(tilt.value), unit: 'deg' as const }]),
    ...(rises === undefined ? [] : [{ name: 'h, rise of the hinges', value: rises.value, unit: 'm' as const }]),
  ];
}

const statics: Source = { text: 'statics, any mechanics textbook; standard gravity 9.80665 m/s²', standing: 'derived' };

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.hinge-moment',
    title: 'Greatest moment with which leaning or rising hinges pull the leaf; above 0 towards closed, below 0 towards open',
    unit: 'N·m',
    topic: 'force',
    formula: 'm·g·h/Θ + m·g·(w/2)·sin β·sin θ, θ from where the leaf hangs lowest; the greatest over the travel',
    source: statics,
    changedBy: 'the lean or rise of the hinges, mass and width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const released = releasedOf(leaf);
        if (released === undefined || !released.swing) continue;
        const closing = released.towardsClosed >= released.towardsOpen;
        give(
          leaf.name,
          closing ? released.towardsClosed : -released.towardsOpen,
          factPlace(leaf, leaf.facts['hinge-tilt'] ?? leaf.facts.rises),
          () => [
            ...inputsOf(leaf),
            { name: 'at an opening of', value: inDegrees(closing ? released.closedAt : released.openAt), unit: 'deg' },
          ],
        );
      }
    },
  },
  {
    id: 'leaf.NAME.hinge-rise',
    title: 'How far leaning or rising hinges lift the centre of the leaf over the travel',
    unit: 'm',
    topic: 'force',
    formula: 'h·θ/Θ + (w/2)·sin β·(1 − cos θ), θ from where the leaf hangs lowest; highest less lowest',
    source: statics,
    changedBy: 'the lean or rise of the hinges, and the width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const released = releasedOf(leaf);
        if (released?.swing === true)
          give(leaf.name, released.rise, factPlace(leaf, leaf.facts['hinge-tilt'] ?? leaf.facts.rises), () => inputsOf(leaf));
      }
    },
  },
];
