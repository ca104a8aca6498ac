import { type Leaf, perSubject } from '../../model/index.ts';
import { uniformLeafInertia } from './maths.ts';

/** Moment of inertia of a swing leaf about its hinge axis, kg·m². */
export const inertiaOf = perSubject((leaf: Leaf): number | undefined => {
  const { opens, mass, width } = leaf.facts;
  return opens === undefined || mass === undefined || width === undefined ? undefined : uniformLeafInertia(mass.value, width.value);
});
