import { loopOf } from '../../figures/loop-impedance/figure.ts';
import { factPlace, type Cable } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = { figure: 'cable.NAME.loop-impedance', name: 'loop impedance', unit: 'ohm', way: 'most' } as const;

function boundOf(cable: Cable): Bound | undefined {
  const loop = cable.facts.breaker === undefined ? undefined : loopOf(cable);
  return loop?.limit === undefined ? undefined : bound(held, cable.name, loop.impedance, loop.limit, hair(loop.limit));
}

export const rule = installationRule({
  name: 'loop-impedance-too-high',
  severity: 'error',
  title: 'A fault to earth would let too little current flow to trip the breaker at once.',
  why: 'Metal that people touch stays live until somebody notices; the gate and its panel are such metal.',
  remedy: 'Fit a breaker of characteristic B or of a smaller rated current, or a thicker or shorter cable.',
  source: { text: 'BS 7671, 411.4.4 and Table 41.3', standing: 'published' },
  acceptable: false,
  check: ({ cables }, report) => {
    for (const cable of cables) {
      const { breaker } = cable.facts;
      const loop = boundOf(cable);
      if (breaker === undefined || loop === undefined || keeps(loop)) continue;
      const residual = cable.facts['residual-current'];
      report({
        at: factPlace(cable, breaker),
        severity: residual === undefined ? 'error' : 'warning',
        what: `The earth fault loop at the end of ${quoted(cable.name)} is ${shown(loop.value)} ohm; a breaker ${breaker.curve} of ${written(breaker.line)} needs at most ${shown(loop.limit)} ohm.${residual === undefined ? '' : ` Only the residual-current device of ${written(residual.line)} cuts off.`}`,
        related: [cable.facts.length?.line].flatMap((line) => (line === undefined ? [] : [{ message: 'the length of the run', start: line.start, end: line.end }])),
      });
    }
  },
  margins: ({ cables }, give) => {
    for (const cable of cables) {
      const loop = boundOf(cable);
      if (loop !== undefined) give(loop, factPlace(cable, cable.facts.breaker));
    }
  },
});
