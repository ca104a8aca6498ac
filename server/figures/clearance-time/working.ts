import { type Installation, perSubject } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { clearanceTime } from './maths.ts';

/** What has to be clear behind the gate line where a file does not say, metres. */
export const usualClearance = blocks.site.lines.clearance.slots.value.fallback;

/** Seconds that the longest vehicle takes to be clear of the gate; undefined where the site names no vehicle. */
export const clearanceOf = perSubject(({ site }: Installation): number | undefined => {
  const vehicle = site?.facts.vehicle;
  return vehicle === undefined ? undefined : clearanceTime(vehicle.length, site?.facts.clearance?.value ?? usualClearance, vehicle.speed);
});
