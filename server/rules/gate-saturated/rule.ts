import { queueSource, trafficOf } from '../../figures/traffic/working.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

const held = {
  figure: 'motion.queue-load',
  name: 'time that the gate is busy',
  unit: '1',
  way: 'most',
  says: (share: number) => `${shown(share * 100)} %`,
} as const;

export const rule = installationRule({
  name: 'gate-saturated',
  severity: 'warning',
  title: 'In the busiest hour more vehicles come than the gate can let through.',
  why: 'The queue then grows for as long as the busy hour lasts, whatever room there is to wait.',
  remedy:
    'Make each passage quicker: a faster drive, a quicker way to ask, a wider opening; or let the gate stand open in the busiest hours.',
  source: queueSource,
  acceptable: true,
  holds: (installation, hold) => {
    const traffic = installation.site?.facts.traffic;
    const service = trafficOf(installation)?.service;
    if (traffic === undefined || service === undefined) return;
    // All of the hour is too much as well: the queue then never ends.
    hold(bound(held, '', traffic.rate * service, 1, -1e-12), traffic.line, () => ({
      what: `In the busiest hour ${shown(traffic.rate * 3600)} vehicles come, but each keeps the gate busy for ${shown(service)} s, so that no more than ${shown(3600 / service)} can pass.`,
    }));
  },
});
