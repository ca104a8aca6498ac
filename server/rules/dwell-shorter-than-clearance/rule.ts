import { clearanceOf } from '../../figures/clearance-time/figure.ts';
import type { Installation } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { seconds, secondsAtLeast } from '../numbers.ts';
import { commonPractice, installationRule } from '../rule.ts';

const held = { figure: 'motion.clearance-time', name: 'dwell', unit: 's', way: 'least' } as const;

function boundOf(installation: Installation): Bound | undefined {
  const dwell = installation.motion?.facts.dwell;
  const clearance = dwell === undefined ? undefined : clearanceOf(installation);
  return dwell === undefined || clearance === undefined ? undefined : bound(held, '', dwell.value, clearance);
}

export const rule = installationRule({
  name: 'dwell-shorter-than-clearance',
  severity: 'warning',
  title: 'The gate starts to close before the longest vehicle can be clear of it.',
  why: 'Only the sensors then stand between the leaf and the vehicle, and drivers who have seen the gate come at them once begin to rush.',
  remedy: 'Lengthen the dwell to at least the time the vehicle needs, and some more for drivers who hesitate.',
  source: commonPractice,
  acceptable: true,
  check: (installation, report) => {
    const dwell = installation.motion?.facts.dwell;
    const stay = boundOf(installation);
    const vehicle = installation.site?.facts.vehicle;
    if (dwell === undefined || stay === undefined || vehicle === undefined || keeps(stay)) return;
    const clearance = stay.limit;
    report({
      at: dwell.line,
      what: `The gate closes ${seconds(dwell.value)} after it is open, but the longest vehicle takes ${secondsAtLeast(clearance)} to be clear of it.`,
      related: [{ message: 'the vehicle', start: vehicle.line.start, end: vehicle.line.end }],
    });
  },
  margins: (installation, give) => {
    const dwell = installation.motion?.facts.dwell;
    const stay = boundOf(installation);
    if (dwell !== undefined && stay !== undefined && installation.site?.facts.vehicle !== undefined) give(stay, dwell.line);
  },
});
