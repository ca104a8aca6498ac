import { factPlace, type Leaf, perSubject } from '../../model/index.ts';
import { inDegrees, type FigureKind, type Input, type Source } from '../figure.ts';
import { hingeGaps, type GapRange, type HingeGaps } from './maths.ts';

export interface HingeSide extends HingeGaps {
  /** The least and greatest were measured, and so hold for both sides. */
  readonly measured: boolean;
  /** The side on which the gap is least. */
  readonly worse: 'opening' | 'closing';
  /** What it was worked out from. */
  readonly inputs: () => Input[];
}

/** The gap at the hinge of a swing leaf; undefined where neither its shape nor what was measured is stated. */
export const hingeSideOf = perSubject((leaf: Leaf): HingeSide | undefined => {
  const { opens, width, thickness, 'hinge-gap': gap, 'hinge-offset': offset, 'post-proud': proud } = leaf.facts;
  if (opens === undefined || gap === undefined) return undefined;
  if (gap.least !== undefined && gap.greatest !== undefined) {
    const least = Math.min(gap.least, gap.value);
    const range: GapRange = { least, at: least < gap.value ? opens.angle / 2 : 0, greatest: Math.max(gap.greatest, gap.value) };
    const measured = [gap.least, gap.greatest] as const;
    return {
      opening: range,
      closing: range,
      measured: true,
      worse: 'opening',
      inputs: () => [closed(gap.value), { name: 'least, as measured', value: measured[0], unit: 'm' }, { name: 'greatest, as measured', value: measured[1], unit: 'm' }],
    };
  }
  if (width === undefined || thickness === undefined || offset === undefined) return undefined;
  const hinge = { width: width.value, thickness: thickness.value, gap: gap.value, along: offset.along, out: offset.out, proud: proud?.value ?? 0 };
  const gaps = hingeGaps(hinge, opens.angle);
  if (gaps === undefined) return undefined;
  return {
    ...gaps,
    measured: false,
    worse: gaps.opening.least < gaps.closing.least ? 'opening' : 'closing',
    inputs: () => [
      closed(hinge.gap),
      { name: 't, thickness', value: hinge.thickness, unit: 'm' },
      { name: 'a, axis beyond the end of the leaf', value: hinge.along, unit: 'm' },
      { name: 'b, axis out from the face', value: hinge.out, unit: 'm' },
      { name: 's, post beyond that face', value: hinge.proud, unit: 'm', ...(proud === undefined ? { from: 'not stated: flush' } : {}) },
      { name: 'Θ, opening angle', value: inDegrees(opens.angle), unit: 'deg' },
    ],
  };
});

const closed = (gap: number): Input => ({ name: 'g, gap when closed', value: gap, unit: 'm' });

const source: Source = { text: 'plane geometry', standing: 'derived' };
const changedBy = 'where the hinge axis stands, the gap, the thickness of the leaf, and how far the post stands out';
const formula = 'the distance between the leaf, turned by θ about the axis, and the post, over 0 ≤ θ ≤ Θ; between a corner (x, y) from the axis and a face d from it: |x·sin θ − y·cos θ| − d, and so on for each corner and face';

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
        give(leaf.name, least, factPlace(leaf, leaf.facts['hinge-gap']), () => (side.measured ? side.inputs() : [...side.inputs(), { name: 'there at an opening of', value: inDegrees(at), unit: 'deg' }]));
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
        if (side !== undefined) give(leaf.name, Math.max(side.opening.greatest, side.closing.greatest), factPlace(leaf, leaf.facts['hinge-gap']), side.inputs);
      }
    },
  },
];
