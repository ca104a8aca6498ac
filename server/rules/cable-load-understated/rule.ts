import { consumptionOf } from '../../figures/supply-budget/figure.ts';
import { factPlace, type Cable } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = { name: 'current that the load draws', unit: 'A', way: 'most' } as const;

function boundOf({ name, facts, load }: Cable): Bound | undefined {
  const { carries } = facts;
  const draws = carries === undefined || load === undefined || load.kind === 'panel' ? undefined : consumptionOf(load);
  return carries === undefined || draws === undefined ? undefined : bound(held, name, draws, carries.current, hair(carries.current));
}

export const rule = installationRule({
  name: 'cable-load-understated',
  severity: 'warning',
  title: 'A cable is said to carry less current than what it feeds draws.',
  why: 'The drop, the heat and the protection of the cable are then worked out for too little.',
  remedy: 'State the greatest current of what the cable feeds.',
  source: { text: 'the model, which says what the product draws', standing: 'derived' },
  acceptable: true,
  check: ({ cables }, report) => {
    for (const cable of cables) {
      const { carries } = cable.facts;
      const { load } = cable;
      const current = boundOf(cable);
      if (carries === undefined || load === undefined || current === undefined || keeps(current)) continue;
      const draws = current.value;
      report({
        at: factPlace(cable, carries),
        what: `${quoted(cable.name)} is said to carry ${written(carries.line)}; ${quoted(load.it.name)} draws ${shown(draws)} A.`,
      });
    }
  },
  margins: ({ cables }, give) => {
    for (const cable of cables) {
      const current = boundOf(cable);
      if (current !== undefined) give(current, factPlace(cable, cable.facts.carries));
    }
  },
});
