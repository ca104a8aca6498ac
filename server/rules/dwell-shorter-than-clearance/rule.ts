import { clearanceOf } from '../../figures/clearance-time/working.ts';
import { bound, hair } from '../bounds.ts';
import { seconds, secondsAtLeast } from '../numbers.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';

const held = { figure: 'motion.clearance-time', name: 'dwell', unit: 's', way: 'least' } as const;

export const rule = installationRule({
  name: 'dwell-shorter-than-clearance',
  severity: 'warning',
  title: 'The gate starts to close before the longest vehicle can be clear of it.',
  why: 'Only the sensors then stand between the leaf and the vehicle, and drivers who have seen the gate come at them once begin to rush.',
  remedy: 'Lengthen the dwell to at least the time the vehicle needs, and some more for drivers who hesitate.',
  source: commonPractice,
  acceptable: true,
  holds: (installation, hold) => {
    const dwell = installation.motion?.facts.dwell;
    const clearance = clearanceOf(installation);
    if (dwell === undefined || clearance === undefined) return;
    hold(bound(held, '', dwell.value, clearance, hair(clearance)), dwell.line, () => ({
      what: `The gate closes ${seconds(dwell.value)} after it is open, but the longest vehicle takes ${secondsAtLeast(clearance)} to be clear of it.`,
      related: toFact('the vehicle', installation.site?.facts.vehicle),
    }));
  },
});
