import { type Leaf, perSubject } from '../../model/index.ts';
import { edgeSpeedsOf } from '../edge-speed/working.ts';
import { inertiaOf } from '../leaf-inertia/working.ts';
import { kineticEnergy, kineticEnergyLinear } from './maths.ts';

/** Greatest kinetic energy of a leaf over both movements, joules. */
export const energyOf = perSubject((leaf: Leaf): number | undefined => {
  const speeds = edgeSpeedsOf(leaf);
  if (speeds === undefined) return undefined;
  if (!speeds.swing) return leaf.facts.mass === undefined ? undefined : kineticEnergyLinear(leaf.facts.mass.value, speeds.leaf);
  const inertia = inertiaOf(leaf);
  return inertia === undefined ? undefined : kineticEnergy(inertia, speeds.leaf);
});
