import { isMains } from '../../circuits/index.ts';
import type { Source } from '../../figures/index.ts';
import { loopOf, protectiveAreaOf } from '../../figures/loop-impedance/working.ts';
import { factPlace, headPlace, type Load } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

const bears: Source = { text: 'BS 7671, 543.1.3 and Table 54.3; the 0.1 s of the breaker from memory', standing: 'from memory' };

const held = { figure: 'cable.NAME.protective-conductor-least', name: 'protective conductor', unit: 'm²', way: 'least' } as const;

export const rule = installationRule({
  name: 'protective-conductor-too-small',
  severity: 'error',
  title: 'A mains cable has no protective conductor, or one that does not bear a fault.',
  why: 'When a line conductor touches metal that is not joined to earth, no current flows that would cut it off: the metal stays live.',
  remedy: 'Choose a cable with a thicker protective conductor.',
  source: { text: 'BS 7671, 411.3.1.1', standing: 'published' },
  acceptable: 'warnings',
  under: 'outside north-america',
  check: ({ cables }, report) => {
    for (const cable of cables) {
      const { model, load } = cable;
      const cores = model?.facts.cores;
      // A flat cable has its protective conductor beside its cores.
      if (cores === undefined || cores.value >= 3 || model?.facts.kind?.value === 'flat' || isMains(cable) !== true) continue;
      if (protectiveAreaOf(cable) !== undefined || isDoubleInsulated(load)) continue;
      report({
        at: cable.modelAt ?? headPlace(cable),
        what: `${quoted(cable.name)} has ${cores.value === 1 ? 'one core' : `${cores.value} cores`} and no protective conductor${load === undefined ? '' : `; that ${quoted(load.it.name)} needs none (“double-insulated”) is not stated`}.`,
        remedy:
          'Choose a cable with a protective conductor, or state the size of the one beside it with “protective-conductor” in the model.',
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
        severity: 'warning',
        source: bears,
        what: `The protective conductor of ${quoted(cable.name)} has ${shown(area * 1e6)} mm²; the ${shown(faultCurrent)} A of a fault need ${shown(least * 1e6)} mm² until the breaker has tripped (0.1 s, from memory).`,
        why: 'In a fault it burns through before the breaker has cut off, and the metal it should hold at earth is live.',
      }));
    }
  },
});

/** True for a device or panel of which it is said that it needs no protective conductor. */
const isDoubleInsulated = (load: Load | undefined): boolean =>
  load !== undefined && load.kind !== 'control' && load.it.model?.facts['double-insulated'] !== undefined;
