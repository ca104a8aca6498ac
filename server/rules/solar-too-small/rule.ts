import { solarOf } from '../../figures/battery/figure.ts';
import { factPlace, type Panel } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = { figure: 'panel.NAME.solar-yield', name: 'energy drawn in a day', unit: 'J', way: 'most' } as const;

function boundOf(panel: Panel): Bound | undefined {
  const workings = panel.solar?.facts.peak === undefined ? undefined : solarOf(panel);
  return workings === undefined ? undefined : bound(held, panel.name, workings.daily, workings.gives, hair(workings.gives));
}

export const rule = installationRule({
  name: 'solar-too-small',
  severity: 'warning',
  title: 'The solar panel gives less in a day of the worst month than the gate draws.',
  why: 'The battery empties a little more every day until the gate stands still, in the darkest weeks of the year.',
  remedy: 'Choose a larger solar panel, or feed less from the battery.',
  source: { text: 'peak sun hours (kWh a square metre and day) × rated power × efficiency', standing: 'derived' },
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const peak = panel.solar?.facts.peak;
      const energy = boundOf(panel);
      const workings = energy === undefined || keeps(energy) ? undefined : solarOf(panel);
      if (panel.solar === undefined || peak === undefined || workings === undefined) continue;
      const sun = panel.solar.facts.sun;
      report({
        at: factPlace(panel.solar, peak),
        what: `${quoted(panel.name)} draws ${shown(workings.daily / 3600)} Wh a day; ${written(peak.line)} of solar panel give ${shown(workings.gives / 3600)} Wh. It needs ${shown(workings.needed)} W.`,
        related: sun === undefined ? [] : [{ message: 'the sun of the worst month', start: sun.line.start, end: sun.line.end }],
      });
    }
  },
  margins: ({ panels }, give) => {
    for (const panel of panels) {
      const energy = boundOf(panel);
      if (energy !== undefined && panel.solar !== undefined) give(energy, factPlace(panel.solar, panel.solar.facts.peak));
    }
  },
});
