import { solarOf } from '../../figures/battery/figure.ts';
import { factPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

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
      if (panel.solar === undefined || peak === undefined) continue;
      const workings = solarOf(panel);
      if (workings === undefined || workings.daily <= workings.gives * (1 + 1e-9)) continue;
      const sun = panel.solar.facts.sun;
      report({
        at: factPlace(panel.solar, peak),
        what: `${quoted(panel.name)} draws ${shown(workings.daily / 3600)} Wh a day; ${written(peak.line)} of solar panel give ${shown(workings.gives / 3600)} Wh. It needs ${shown(workings.needed)} W.`,
        related: sun === undefined ? [] : [{ message: 'the sun of the worst month', start: sun.line.start, end: sun.line.end }],
      });
    }
  },
});
