import { factPlace } from '../../model/index.ts';
import { isFixed } from '../../safeguards/index.ts';
import { bound } from '../bounds.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** 6 feet in metres. */
const least = 6 * 0.3048;
const slack = 1e-6;
const held = { name: 'distance from the gate', unit: 'm', way: 'least' } as const;

export const rule = installationRule({
  name: 'control-within-reach',
  severity: 'warning',
  title: 'Under the rules of North America, a fixed control can be operated by somebody who touches the gate.',
  why: 'Whoever reaches through or over the gate to a control stands where the leaf is about to move.',
  remedy: 'Move the control at least 6 ft from every part of the moving gate, to where the gate is in view.',
  source: { text: 'UL 325 (controls out of reach of the gate), with 6 ft from memory', standing: 'from memory' },
  acceptable: true,
  under: 'north-america',
  holds: ({ controls }, hold) => {
    for (const control of controls) {
      const { reach } = control.facts;
      if (reach === undefined || !isFixed(control)) continue;
      hold(bound(held, control.name, reach.value, least, slack), factPlace(control, reach), () => ({
        what: `${quoted(control.name)} is ${millimetres(reach.value)} from the moving gate; it should be 1829 mm (6 ft) away (from memory).`,
      }));
    }
  },
});
