import { ampereHours, batteryOf } from '../../figures/battery/working.ts';
import { bound, hair } from '../bounds.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'panel.NAME.battery-needed', name: 'charge needed', unit: 'C', way: 'most' } as const;

export const rule = installationRule({
  name: 'battery-too-small',
  severity: 'warning',
  title: 'The battery does not keep the gate going for as long as it is to.',
  why: 'The gate stands still, shut or open, before the time for which people were told they can count on it.',
  remedy: 'Choose a larger battery, let it last a shorter time, or feed less from it.',
  source: {
    text: 'simplified IEEE method for lead-acid banks; Peukert’s law, whose exponent 1.25 of a battery with one rating only is from memory',
    standing: 'from memory',
  },
  acceptable: true,
  holds: ({ panels }, hold) => {
    for (const panel of panels) {
      const facts = panel.battery?.facts;
      const lasts = facts?.lasts;
      const rated = facts?.capacity[0];
      if (lasts === undefined || rated === undefined) continue;
      const workings = batteryOf(panel);
      if (workings?.needed === undefined) continue;
      const { needed, gives, exponentFrom } = workings;
      hold(bound(held, panel.name, needed, gives, hair(gives)), rated.line, () => ({
        what: `To keep ${quoted(panel.name)} going for ${written(lasts.line)} its battery needs ${ampereHours(needed)}; at that current it gives ${ampereHours(gives)}${exponentFrom.endsWith('from memory') ? ' (exponent 1.25, from memory)' : ''}.`,
        related: toFact('how long it is to last', lasts),
      }));
    }
  },
});
