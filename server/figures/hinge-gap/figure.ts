import { factPlace, type Leaf } from '../../model/index.ts';
import { type FigureKind, type Input, inDegrees, type Source } from '../kind.ts';
import { type HingeSide, hingeSideOf } from './working.ts';

function inputsOf({ facts }: Leaf, { measured }: HingeSide): Input[] {
  const { opens, thickness, 'hinge-gap': gap, 'hinge-offset': offset, 'post-proud': proud } = facts;
  const closed: Input = { name: 'g, gap when closed', value: gap?.value ?? 0, unit: 'm' };
  if (measured)
    return [
      closed,
      { name: 'least, as measured', value: gap?.least ?? 0, unit: 'm' },
      { name: 'greatest, as measured', value: gap?.greatest ?? 0, unit: 'm' },
    ];
  const from = proud === undefined ? { from: 'not stated: flush' } : {};
  return [
    closed,
    { name: 't, thickness', value: thickness?.value ?? 0, unit: 'm' },
    { name: 'a, axis beyond the end of the leaf', value: offset?.along ?? 0, unit: 'm' },
    { name: 'b, axis out from the face', value: offset?.out ?? 0, unit: 'm' },
    { name: 's, post beyond that face', value: proud?.value ?? 0, unit: 'm', ...from },
    { name: 'Θ, opening angle', value: inDegrees(opens?.angle ?? 0), unit: 'deg' },
  ];
}

const source: Source = { text: 'plane geometry', standing: 'derived' };
const changedBy = 'where the hinge axis stands, the gap, the thickness of the leaf, and how far the post stands out';
const formula =
  'the distance between the leaf, turned by θ about the axis, and the post, over 0 ≤ θ ≤ Θ; between a corner (x, y) from the axis and a face d from it: |x·sin θ − y·cos θ| − d, and so on for each corner and face';

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.hinge-gap-least',
    title: 'Least gap between the leaf and its post over the travel',
    unit: 'm',
    topic: 'gaps',
    formula,
    source,
    changedBy,
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const side = hingeSideOf(leaf);
        if (side === undefined) continue;
        const { least, at } = side[side.worse];
        give(leaf.name, least, factPlace(leaf, leaf.facts['hinge-gap']), () => [
          ...inputsOf(leaf, side),
          ...(side.measured ? [] : [{ name: 'there at an opening of', value: inDegrees(at), unit: 'deg' as const }]),
        ]);
      }
    },
  },
  {
    id: 'leaf.NAME.hinge-gap-greatest',
    title: 'Widest way in to the gap between the leaf and its post over the travel',
    unit: 'm',
    topic: 'gaps',
    formula: 'the greatest distance between the leaf and the corner of the post, on the side where that is wider',
    source,
    changedBy,
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const side = hingeSideOf(leaf);
        if (side === undefined) continue;
        const greatest = Math.max(side.opening.greatest, side.closing.greatest);
        give(leaf.name, greatest, factPlace(leaf, leaf.facts['hinge-gap']), () => inputsOf(leaf, side));
      }
    },
  },
];
