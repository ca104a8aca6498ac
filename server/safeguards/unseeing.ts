import { endsShort, ridesAlong } from '../circuits/index.ts';
import type { Sensor } from '../model/index.ts';

/** What a sensor does that sees nobody (`missesPeople`), as the end of a sentence that its name begins. */
export function missed(sensor: Sensor): string {
  if (ridesAlong(sensor)) return 'is one ray that the leaf carries along';
  return endsShort(sensor) ? 'does not reach across the opening' : 'passes over who lies on the ground';
}
