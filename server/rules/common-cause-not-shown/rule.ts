import { declaredOf, leastCommonCause } from '../../figures/safety-function/working.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'common-cause-not-shown',
  severity: 'warning',
  title: 'A part claims category 2, 3 or 4, but nothing shows that one cause cannot take both channels at once.',
  why: 'Water, a surge or one wrong batch takes both channels together, and the second one was worth nothing. The category is therefore not counted.',
  remedy: `State the points of the measures as “common-cause”: separated wiring, protection against surges, well-tried parts, and so on; ${leastCommonCause} are needed.`,
  source: { text: 'EN ISO 13849-1, Annex F (from memory)', standing: 'from memory' },
  acceptable: true,
  check: ({ functions }, report) => {
    const told = new Set<object>();
    for (const { subsystems, parts } of functions) {
      for (const { facts, name } of subsystems) {
        const { category, 'common-cause': points } = facts;
        if (category !== undefined && lacks(category, points))
          report({ at: (points ?? category).line, what: said(`The subsystem ${quoted(name)}`, category, points) });
      }
      for (const { it: device, at } of parts) {
        const facts = device === undefined ? undefined : declaredOf(device);
        // What its maker declares as a whole has it in it.
        if (device === undefined || facts?.category === undefined || facts.pfhd !== undefined || facts['performance-level'] !== undefined)
          continue;
        // A device is named once, however many functions run through it.
        if (!lacks(facts.category, facts['common-cause']) || told.has(device.it)) continue;
        told.add(device.it);
        report({ at, what: said(`The model of ${quoted(at.text)}`, facts.category, facts['common-cause']) });
      }
    }
  },
});

interface Amount {
  readonly value: number;
}

const lacks = (category: Amount, points: Amount | undefined): boolean => category.value >= 2 && (points?.value ?? 0) < leastCommonCause;

const said = (what: string, category: Amount, points: Amount | undefined): string =>
  `${what} claims category ${category.value} and ${points === undefined ? 'says nothing of' : `has only ${points.value} points for`} measures against a common cause of failure; ${leastCommonCause} are needed (from memory).`;
