import { clearanceOf } from '../../figures/clearance-time/figure.ts';
import { seconds, secondsAtLeast } from '../numbers.ts';
import { commonPractice, installationRule } from '../rule.ts';

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
    if (dwell === undefined) return;
    const clearance = clearanceOf(installation);
    const vehicle = installation.site?.facts.vehicle;
    if (clearance === undefined || vehicle === undefined || dwell.value >= clearance) return;
    report({
      at: dwell.line,
      what: `The gate closes ${seconds(dwell.value)} after it is open, but the longest vehicle takes ${secondsAtLeast(clearance)} to be clear of it.`,
      related: [{ message: 'the vehicle', start: vehicle.line.start, end: vehicle.line.end }],
    });
  },
});
