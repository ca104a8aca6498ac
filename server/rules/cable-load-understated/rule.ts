import { consumptionOf } from '../../figures/supply-budget/figure.ts';
import { factPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

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
      if (carries === undefined || load === undefined || load.kind === 'panel') continue;
      const draws = consumptionOf(load);
      if (draws === undefined || draws <= carries.current * (1 + 1e-9)) continue;
      report({
        at: factPlace(cable, carries),
        what: `${quoted(cable.name)} is said to carry ${written(carries.line)}; ${quoted(load.it.name)} draws ${shown(draws)} A.`,
      });
    }
  },
});
