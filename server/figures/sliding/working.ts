import type { Leaf } from '../../model/index.ts';
import { rollingShare } from '../leaf-load/working.ts';
import { travelForce } from './maths.ts';

/** Force in N that keeps a sliding leaf moving at even speed; below 0 it has to be held back. Undefined for other leaves. */
export function travelForceOf(leaf: Leaf, movement: 'opening' | 'closing'): number | undefined {
  const { slides, mass, slope, friction } = leaf.facts;
  if (slides === undefined || mass === undefined) return undefined;
  const uphill = Math.atan(slope?.value ?? 0) * (movement === 'opening' ? 1 : -1);
  const rolling = travelForce(mass.value, friction === undefined ? rollingShare : 0, uphill);
  return rolling === undefined ? undefined : rolling + (friction?.value ?? 0);
}
