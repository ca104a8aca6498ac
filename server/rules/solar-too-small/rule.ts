import { solarOf } from '../../figures/battery/working.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'panel.NAME.solar-yield', name: 'energy drawn in a day', unit: 'J', way: 'most' } as const;

export const rule = installationRule({
  name: 'solar-too-small',
  severity: 'warning',
  title: 'The solar panel gives less in a day of the worst month than the gate draws.',
  why: 'The battery empties a little more every day until the gate stands still, in the darkest weeks of the year.',
  remedy: 'Choose a larger solar panel, or feed less from the battery.',
  source: { text: 'peak sun hours (kWh a square metre and day) × rated power × efficiency', standing: 'derived' },
  acceptable: true,
  holds: ({ panels }, hold) => {
    for (const panel of panels) {
      const peak = panel.solar?.facts.peak;
      const workings = solarOf(panel);
      if (peak === undefined || workings === undefined) continue;
      const { daily, gives, needed } = workings;
      hold(bound(held, panel.name, daily, gives, hair(gives)), peak.line, () => ({
        what: `${quoted(panel.name)} draws ${shown(daily / 3600)} Wh a day; ${written(peak.line)} of solar panel give ${shown(gives / 3600)} Wh. It needs ${shown(needed)} W.`,
        related: toFact('the sun of the worst month', panel.solar?.facts.sun),
      }));
    }
  },
});
