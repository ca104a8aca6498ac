import { isMains } from '../../circuits/index.ts';
import type { Source } from '../../figures/index.ts';
import { loopOf, protectiveAreaOf } from '../../figures/loop-impedance/working.ts';
import { factPlace, headPlace, type Panel } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const noCore: Source = { text: 'BS 7671, 411.3.1.1', standing: 'published' };

const held = { figure: 'cable.NAME.protective-conductor-least', name: 'protective conductor', unit: 'm²', way: 'least' } as const;

export const rule = installationRule({
  name: 'protective-conductor-too-small',
  severity: 'warning',
  title: 'The protective conductor of a cable does not bear a fault, or there is none.',
  why: 'In a fault it burns through before the breaker has cut off, and the metal it should hold at earth is live.',
  remedy: 'Choose a cable with a thicker protective conductor.',
  source: { text: 'BS 7671, 543.1.3 and Table 54.3; the 0.1 s of the breaker from memory', standing: 'from memory' },
  acceptable: true,
  under: 'outside north-america',
  check: ({ cables }, report) => {
    for (const cable of cables) {
      const { model, load } = cable;
      const cores = model?.facts.cores;
      if (
        cores === undefined ||
        cores.value >= 3 ||
        isMains(cable) !== true ||
        protectiveAreaOf(cable) !== undefined ||
        load?.kind !== 'panel' ||
        !hasEarth(load.it)
      )
        continue;
      report({
        at: cable.modelAt ?? headPlace(cable),
        what: `${quoted(cable.name)} has ${cores.value === 1 ? 'one core' : `${cores.value} cores`} and no protective conductor; ${quoted(load.it.name)} has a terminal for protective earth.`,
        remedy:
          'Choose a cable with a protective conductor, or state the size of the one beside it with “protective-conductor” in the model.',
        source: noCore,
        related: toModelFact('the cores of the cable', cable.installation, model, cores),
      });
    }
  },
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const loop = loopOf(cable);
      if (loop?.conductorLeast === undefined) continue;
      const area = protectiveAreaOf(cable);
      if (area === undefined) continue;
      const { conductorLeast: least, faultCurrent } = loop;
      hold(bound(held, cable.name, area, least, hair(least)), factPlace(cable, cable.facts.breaker), () => ({
        what: `The protective conductor of ${quoted(cable.name)} has ${shown(area * 1e6)} mm²; the ${shown(faultCurrent)} A of a fault need ${shown(least * 1e6)} mm² until the breaker has tripped (0.1 s, from memory).`,
      }));
    }
  },
});

function hasEarth({ model }: Panel): boolean {
  if (model !== undefined) for (const terminal of model.terminals.values()) if (terminal.role === 'earth') return true;
  return false;
}
