import { ampereHours, batteryOf } from '../../figures/battery/figure.ts';
import { factPlace, type Panel } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';

const held = { figure: 'panel.NAME.battery-needed', name: 'charge needed', unit: 'C', way: 'most' } as const;

function boundOf(panel: Panel): Bound | undefined {
  const workings = panel.battery?.facts.lasts === undefined ? undefined : batteryOf(panel);
  return workings?.needed === undefined ? undefined : bound(held, panel.name, workings.needed, workings.gives, hair(workings.gives));
}

export const rule = installationRule({
  name: 'battery-too-small',
  severity: 'warning',
  title: 'The battery does not keep the gate going for as long as it is to.',
  why: 'The gate stands still, shut or open, before the time for which people were told they can count on it.',
  remedy: 'Choose a larger battery, let it last a shorter time, or feed less from it.',
  source: { text: 'simplified IEEE method for lead-acid banks; Peukert’s law, whose exponent 1.25 of a battery with one rating only is from memory', standing: 'from memory' },
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { battery } = panel;
      const lasts = battery?.facts.lasts;
      const charge = boundOf(panel);
      if (battery === undefined || lasts === undefined || charge === undefined || keeps(charge)) continue;
      const workings = batteryOf(panel);
      if (workings?.needed === undefined) continue;
      const rated = battery.facts.capacity[0];
      report({
        at: factPlace(battery, rated),
        what: `To keep ${quoted(panel.name)} going for ${written(lasts.line)} its battery needs ${ampereHours(workings.needed)}; at that current it gives ${ampereHours(workings.gives)}${workings.exponentFrom.endsWith('from memory') ? ' (exponent 1.25, from memory)' : ''}.`,
        related: [{ message: 'how long it is to last', start: lasts.line.start, end: lasts.line.end }],
      });
    }
  },
  margins: ({ panels }, give) => {
    for (const panel of panels) {
      const charge = boundOf(panel);
      if (charge !== undefined && panel.battery !== undefined) give(charge, factPlace(panel.battery, panel.battery.facts.capacity[0]));
    }
  },
});
