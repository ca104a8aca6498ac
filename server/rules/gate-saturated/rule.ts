import { queueSource, trafficOf } from '../../figures/traffic/figure.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';

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
    if (known?.load === undefined || known.service === undefined || known.load < 1) return;
    report({
      at: traffic.line,
      what: `In the busiest hour ${shown(traffic.rate * 3600)} vehicles come, but each keeps the gate busy for ${shown(known.service)} s, so that no more than ${shown(3600 / known.service)} can pass.`,
    });
  },
});
