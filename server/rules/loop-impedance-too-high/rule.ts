import { loopOf } from '../../figures/loop-impedance/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'cable.NAME.loop-impedance', name: 'loop impedance', unit: 'ohm', way: 'most' } as const;

export const rule = installationRule({
  name: 'loop-impedance-too-high',
  severity: 'error',
  title: 'A fault to earth would let too little current flow to trip the breaker at once.',
  why: 'Metal that people touch stays live until somebody notices; the gate and its panel are such metal.',
  remedy: 'Fit a breaker of characteristic B or of a smaller rated current, or a thicker or shorter cable.',
  source: { text: 'BS 7671, 411.4.4 and Table 41.3', standing: 'published' },
  acceptable: false,
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const { breaker, length, 'residual-current': residual } = cable.facts;
      const loop = loopOf(cable);
      if (breaker === undefined || loop?.limit === undefined) continue;
      const { impedance, limit } = loop;
      hold(bound(held, cable.name, impedance, limit, hair(limit)), factPlace(cable, breaker), () => ({
        severity: residual === undefined ? 'error' : 'warning',
        what: `The earth fault loop at the end of ${quoted(cable.name)} is ${shown(impedance)} ohm; a breaker ${breaker.curve} of ${written(breaker.line)} needs at most ${shown(limit)} ohm.${residual === undefined ? '' : ` Only the residual-current device of ${written(residual.line)} cuts off.`}`,
        related: toFact('the length of the run', length),
      }));
    }
  },
});
