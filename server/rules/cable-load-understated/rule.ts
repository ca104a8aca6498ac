import { cablesTo, isMains } from '../../circuits/index.ts';
import { consumptionOf, leastDrawOf } from '../../figures/supply-budget/working.ts';
import type { Cable, Panel } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { type Hold, installationRule } from '../rule.ts';
import { quoted, quotedList, written } from '../words.ts';

const held = { name: 'current that the load draws', unit: 'A', way: 'most' } as const;

export const rule = installationRule({
  name: 'cable-load-understated',
  severity: 'error',
  title: 'A cable is said to carry less current than what it feeds draws.',
  why: 'The drop, the heat and the protection of the cable are then worked out for too little.',
  remedy: 'State the greatest current of what the cable feeds, and of all that is fed through it.',
  source: { text: 'the model, which says what the product draws', standing: 'derived' },
  acceptable: false,
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const { name, facts, load } = cable;
      const { carries } = facts;
      if (carries === undefined || load === undefined) continue;
      if (load.kind === 'panel') {
        holdPanel(cable, load.it, carries, hold);
        continue;
      }
      const draws = consumptionOf(load);
      if (draws === undefined) continue;
      hold(bound(held, name, draws, carries.current, hair(carries.current)), carries.line, () => ({
        what: `${quoted(name)} is said to carry ${written(carries.line)}; ${quoted(load.it.name)} draws ${shown(draws)} A.`,
      }));
    }
  },
});

/** The feed of a panel carries at the least the power of all that hangs on the panel. */
function holdPanel(cable: Cable, panel: Panel, carries: NonNullable<Cable['facts']['carries']>, hold: Hold): void {
  // Several feeds of a kind share what is drawn.
  if (cablesTo(panel).some((other) => other !== cable && isMains(other) === isMains(cable))) return;
  const { current, draws } = leastDrawOf(panel, carries.voltage);
  if (draws.length === 0) return;
  hold(bound(held, cable.name, current, carries.current, hair(carries.current)), carries.line, () => ({
    what: `${quoted(cable.name)} is said to carry ${written(carries.line)}; ${quotedList(draws.map(({ name }) => name))} behind ${quoted(panel.name)} draw at least ${shown(current)} A of its voltage in all.`,
    related: draws.slice(0, 4).flatMap((draw) => toFact(`${quoted(draw.name)} hangs on the panel`, draw)),
  }));
}
