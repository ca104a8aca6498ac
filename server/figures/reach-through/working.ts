import type { Leaf } from '../../model/index.ts';
import type { Opening } from './maths.ts';

export { type Opening, reachFrom3, reachFrom14 } from './maths.ts';

/** The opening in the face of the leaf; undefined where it is closed, or nothing is said. */
export function infillOpeningOf(leaf: Leaf): Opening | undefined {
  const fact = leaf.facts['infill-opening'];
  if (fact?.shape === undefined || fact.shape === 'closed' || fact.size === undefined) return undefined;
  return { shape: fact.shape, size: fact.size, length: fact.length };
}
