import { type Leaf, perSubject } from '../../model/index.ts';
import { type Clearance, clearance } from './maths.ts';

/** The gap under a swing leaf over its travel; undefined where it is not stated. */
export const clearanceOf = perSubject((leaf: Leaf): Clearance | undefined => {
  const { opens, width, slope, rises, 'ground-gap': gap, 'hinge-tilt': tilt } = leaf.facts;
  if (gap === undefined || opens === undefined || width === undefined) return undefined;
  return clearance(
    {
      gap: gap.value,
      width: width.value,
      slope: slope?.value ?? 0,
      rises: rises?.value ?? 0,
      tilt: tilt?.value ?? 0,
      lowest: tilt?.lowest ?? 'closed',
    },
    opens.angle,
  );
});
