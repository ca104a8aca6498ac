import { type Installation, regimeOf } from '../../model/index.ts';

export { electrodeLimit, touchLimit, touchVoltage, unstableFrom } from './maths.ts';

/** True where an earth electrode of the installation does the work. */
export const isOnElectrode = (installation: Installation): boolean =>
  installation.site?.facts.earthing?.value === 'TT' && regimeOf(installation).judgesMainsByIec;
