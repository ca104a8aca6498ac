import type { Source } from '../../figures/index.ts';
import { type Cutoff, fusingCurrent, loopOf } from '../../figures/loop-impedance/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'cable.NAME.loop-impedance', name: 'loop impedance', unit: 'ohm', way: 'most' } as const;
const byMemory: Source = { text: 'BS 7671, Table 41.2, of fuses below 16 A from memory', standing: 'from memory' };

export const rule = installationRule({
  name: 'loop-impedance-too-high',
  severity: 'error',
  title: 'A fault to earth would let too little current flow to be cut off in time.',
  why: 'Metal that people touch stays live until somebody notices; the gate and its panel are such metal.',
  remedy:
    'Fit a residual-current device, a breaker of characteristic B or a device of a smaller rated current, or a thicker or shorter cable.',
  source: { text: 'BS 7671, 411.4.4 and Tables 41.2, 41.3 and 41.4; IEC 60269-1', standing: 'published' },
  acceptable: false,
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const loop = loopOf(cable);
      if (loop?.cutoff === undefined) continue;
      const { impedance, cutoff, faultCurrent } = loop;
      const { limit } = cutoff;
      hold(bound(held, cable.name, impedance, limit, hair(limit)), factPlace(cutoff.cable, cutoff.cable.facts[cutoff.by]), () => {
        const never = neverCutsOff(cutoff, faultCurrent);
        const isRemembered = cutoff.standing === 'from memory' && !never;
        return {
          severity: isRemembered ? 'warning' : 'error',
          what: `The earth fault loop at the end of ${quoted(cable.name)} is ${shown(impedance)} ohm; ${inWords(cutoff)} needs at most ${shown(limit)} ohm${isRemembered ? ' (from memory)' : ''}.${never ? ` At the ${shown(faultCurrent)} A of a fault it never cuts off.` : ''}`,
          ...(isRemembered ? { source: byMemory } : {}),
          related: toFact('the length of the run', cable.facts.length),
        };
      });
    }
  },
});

/** True where the current of a fault is one that the device carries for an hour and more. */
function neverCutsOff({ cable, by }: Cutoff, current: number): boolean {
  const { fuse, breaker } = cable.facts;
  if (by === 'fuse') return fuse !== undefined && current < fusingCurrent(fuse.rating);
  return by === 'breaker' && breaker !== undefined && current <= breaker.rating;
}

function inWords({ cable, by }: Cutoff): string {
  const { breaker, fuse, 'residual-current': residual } = cable.facts;
  if (by === 'breaker' && breaker !== undefined) return `a breaker ${breaker.curve} of ${written(breaker.line)}`;
  if (by === 'fuse' && fuse !== undefined) return `a fuse of ${written(fuse.line)}`;
  return residual === undefined ? 'its device' : `a residual-current device of ${written(residual.line)}`;
}
