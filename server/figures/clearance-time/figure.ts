import { factPlace, type Installation, perSubject } from '../../model/index.ts';
import { fallback, mechanics } from '../common.ts';
import type { FigureKind } from '../figure.ts';
import { clearanceTime } from './maths.ts';

/** Seconds that the longest vehicle takes to be clear of the gate; undefined where the site names no vehicle. */
export const clearanceOf = perSubject(({ site }: Installation): number | undefined => {
  const vehicle = site?.facts.vehicle;
  return vehicle === undefined ? undefined : clearanceTime(vehicle.length, site?.facts.clearance?.value ?? fallback.clearance, vehicle.speed);
});

export const figures: readonly FigureKind[] = [
  {
    id: 'motion.clearance-time',
    title: 'Time that the longest vehicle takes to be clear of the gate',
    unit: 's',
    topic: 'timing',
    formula: 't = (length of the vehicle + zone behind the gate line) / speed',
    source: mechanics,
    changedBy: 'the vehicle, its speed, and the zone that must be clear',
    work: (installation, give) => {
      const time = clearanceOf(installation);
      const facts = installation.site?.facts;
      const vehicle = facts?.vehicle;
      if (time === undefined || vehicle === undefined) return;
      give('', time, factPlace({ at: vehicle.line }, vehicle), () => [
        { name: 'length of the vehicle', value: vehicle.length, unit: 'm' },
        { name: 'zone behind the gate line', value: facts?.clearance?.value ?? fallback.clearance, unit: 'm', ...(facts?.clearance === undefined ? { from: 'not stated' } : {}) },
        { name: 'speed', value: vehicle.speed, unit: 'm/s' },
      ]);
    },
  },
];
