import { queueSource, trafficOf } from '../../figures/traffic/figure.ts';
import type { Installation } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

const held = { figure: 'motion.queue-load', name: 'time that the gate is busy', unit: '1', way: 'most', says: (share: number) => `${shown(share * 100)} %` } as const;

/** All of the hour is too much as well: the queue then never ends. */
function boundOf(installation: Installation): Bound | undefined {
  const load = trafficOf(installation)?.load;
  return load === undefined ? undefined : bound(held, '', load, 1, -1e-12);
}

export const rule = installationRule({
  name: 'gate-saturated',
  severity: 'warning',
  title: 'In the busiest hour more vehicles come than the gate can let through.',
  why: 'The queue then grows for as long as the busy hour lasts, whatever room there is to wait.',
  remedy: 'Make each passage quicker: a faster drive, a quicker way to ask, a wider opening; or let the gate stand open in the busiest hours.',
  source: queueSource,
  acceptable: true,
  check: (installation, report) => {
    const traffic = installation.site?.facts.traffic;
    if (traffic === undefined) return;
    const known = trafficOf(installation);
    const load = boundOf(installation);
    if (load === undefined || known?.service === undefined || keeps(load)) return;
    report({
      at: traffic.line,
      what: `In the busiest hour ${shown(traffic.rate * 3600)} vehicles come, but each keeps the gate busy for ${shown(known.service)} s, so that no more than ${shown(3600 / known.service)} can pass.`,
    });
  },
  margins: (installation, give) => {
    const traffic = installation.site?.facts.traffic;
    const load = traffic === undefined || trafficOf(installation)?.service === undefined ? undefined : boundOf(installation);
    if (traffic !== undefined && load !== undefined) give(load, traffic.line);
  },
});
