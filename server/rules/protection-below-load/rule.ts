import { factPlace } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { protectionOf } from '../electrical.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { name: 'current against its protection', unit: 'A', way: 'most' } as const;

export const rule = installationRule({
  name: 'protection-below-load',
  severity: 'warning',
  title: 'The breaker or fuse of a cable is smaller than the current that the cable carries.',
  why: 'It cuts off in ordinary use, with the gate wherever it then is; and someone will fit a larger one without a look at the cable.',
  remedy: 'Fit a device of at least the greatest current, and see that the cable bears it.',
  source: { text: 'BS 7671, 433.1', standing: 'published' },
  acceptable: true,
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const device = protectionOf(cable);
      const { carries } = cable.facts;
      if (device === undefined || carries === undefined) continue;
      hold(bound(held, cable.name, carries.current, device.rating, hair(device.rating)), factPlace(cable, device), () => ({
        what: `${quoted(cable.name)} carries ${written(carries.line)} and is protected at ${written(device.line)}.`,
        related: toFact('the greatest current', carries),
      }));
    }
  },
});
