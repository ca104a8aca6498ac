import { isMains } from '../../figures/cables.ts';
import { loopOf, protectiveAreaOf } from '../../figures/loop-impedance/figure.ts';
import type { Source } from '../../figures/index.ts';
import { factPlace, headPlace, type Cable } from '../../model/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { inModel } from '../wiring.ts';
import { quoted } from '../words.ts';

const noCore: Source = { text: 'BS 7671, 411.3.1.1', standing: 'published' };

const held = { figure: 'cable.NAME.protective-conductor-least', name: 'protective conductor', unit: 'm2', way: 'least' } as const;

function boundOf(cable: Cable): Bound | undefined {
  const area = protectiveAreaOf(cable);
  const least = area === undefined ? undefined : loopOf(cable)?.conductorLeast;
  return area === undefined || least === undefined ? undefined : bound(held, cable.name, area, least, hair(least));
}

export const rule = installationRule({
  name: 'protective-conductor-too-small',
  severity: 'warning',
  title: 'The protective conductor of a cable does not bear a fault, or there is none.',
  why: 'In a fault it burns through before the breaker has cut off, and the metal it should hold at earth is live.',
  remedy: 'Choose a cable with a thicker protective conductor.',
  source: { text: 'BS 7671, 543.1.3 and Table 54.3; the 0.1 s of the breaker from memory', standing: 'from memory' },
  acceptable: true,
  check: (installation, report) => {
    if (installation.site?.facts.rules?.value === 'north-america') return;
    for (const cable of installation.cables) {
      const { model, load } = cable;
      if (model === undefined || isMains(cable) !== true) continue;
      const cores = model.facts.cores;
      const area = protectiveAreaOf(cable);
      if (area === undefined) {
        if (cores === undefined || cores.value >= 3 || load?.kind !== 'panel' || !hasEarth(load.it.model)) continue;
        report({
          at: cable.modelAt ?? headPlace(cable),
          what: `${quoted(cable.name)} has ${cores.value === 1 ? 'one core' : `${cores.value} cores`} and no protective conductor; ${quoted(load.it.name)} has a terminal for protective earth.`,
          remedy: 'Choose a cable with a protective conductor, or state the size of the one beside it with “protective-conductor” in the model.',
          source: noCore,
          related: [inModel(model, installation, cores.line, 'the cores of the cable')],
        });
        continue;
      }
      const conductor = boundOf(cable);
      if (conductor === undefined || keeps(conductor)) continue;
      report({
        at: factPlace(cable, cable.facts.breaker),
        what: `The protective conductor of ${quoted(cable.name)} has ${shown(area * 1e6)} mm²; the ${shown(loopOf(cable)?.faultCurrent ?? 0)} A of a fault need ${shown(conductor.limit * 1e6)} mm² until the breaker has tripped (0.1 s, from memory).`,
      });
    }
  },
  margins: ({ site, cables }, give) => {
    if (site?.facts.rules?.value === 'north-america') return;
    for (const cable of cables) {
      const conductor = cable.model === undefined || isMains(cable) !== true ? undefined : boundOf(cable);
      if (conductor !== undefined) give(conductor, factPlace(cable, cable.facts.breaker));
    }
  },
});

function hasEarth(model: { readonly terminals: ReadonlyMap<string, { readonly role: string }> } | undefined): boolean {
  for (const terminal of model?.terminals.values() ?? []) if (terminal.role === 'earth') return true;
  return false;
}
