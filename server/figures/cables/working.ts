// What several figures and rules ask of a cable.
import type { Cable, Installation } from '../../model/index.ts';

// Every figure of a cable, a loop or a fault asks how much its copper resists.
export { atTemperature, bySize, type Insulation, inCelsius, inKelvin, resistancePerMetre, type Sizes, sizeOf, warmest } from './maths.ts';

export const insulationOf = (cable: Cable): 'pvc' | 'xlpe' | 'rubber' => cable.model?.facts.insulation?.value ?? 'pvc';
export const classOf = (cable: Cable): number => cable.model?.facts.class?.value ?? 5;

/** For `onlyWhere`. */
export const hasCables = ({ cables }: Installation): boolean => cables.length > 0;
