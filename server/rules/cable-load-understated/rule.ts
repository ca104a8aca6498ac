import { consumptionOf } from '../../figures/supply-budget/working.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { name: 'current that the load draws', unit: 'A', way: 'most' } as const;

export const rule = installationRule({
  name: 'cable-load-understated',
  severity: 'warning',
  title: 'A cable is said to carry less current than what it feeds draws.',
  why: 'The drop, the heat and the protection of the cable are then worked out for too little.',
  remedy: 'State the greatest current of what the cable feeds.',
  source: { text: 'the model, which says what the product draws', standing: 'derived' },
  acceptable: true,
  holds: ({ cables }, hold) => {
    for (const { name, facts, load } of cables) {
      const { carries } = facts;
      if (carries === undefined || load === undefined || load.kind === 'panel') continue;
      const draws = consumptionOf(load);
      if (draws === undefined) continue;
      hold(bound(held, name, draws, carries.current, hair(carries.current)), carries.line, () => ({
        what: `${quoted(name)} is said to carry ${written(carries.line)}; ${quoted(load.it.name)} draws ${shown(draws)} A.`,
      }));
    }
  },
});
