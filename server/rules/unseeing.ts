import { endsShort } from '../circuits/index.ts';
import type { Sensor } from '../model/index.ts';

/** What a sensor does that sees nobody (`missesPeople`), as the end of a sentence that its name begins. */
export const missed = (sensor: Sensor): string =>
  endsShort(sensor) ? 'does not reach across the opening' : 'passes over who lies on the ground';
