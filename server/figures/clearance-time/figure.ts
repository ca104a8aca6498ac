import { factPlace } from '../../model/index.ts';
import { type FigureKind, mechanics } from '../kind.ts';
import { clearanceOf, usualClearance } from './working.ts';

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
        {
          name: 'zone behind the gate line',
          value: facts?.clearance?.value ?? usualClearance,
          unit: 'm',
          ...(facts?.clearance === undefined ? { from: 'not stated' } : {}),
        },
        { name: 'speed', value: vehicle.speed, unit: 'm/s' },
      ]);
    },
  },
];
