import { leastCommonCause } from '../../figures/safety-function/annex.ts';
import { declaredOf } from '../../figures/safety-function/figure.ts';
import { factPlace, type FunctionPart, type SafetyFunction } from '../../model/index.ts';
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
    for (const of of functions) {
      for (const { facts, name } of of.subsystems) {
        const { category, 'common-cause': points } = facts;
        if (category === undefined || category.value < 2 || (points !== undefined && points.value >= leastCommonCause)) continue;
        report({ at: factPlace({ at: category.line }, points ?? category), what: said(`The subsystem ${quoted(name)}`, category.value, points?.value) });
      }
      for (const part of of.parts) {
        const facts = part.it === undefined ? undefined : declaredOf(part.it);
        const category = facts?.category?.value ?? 0;
        const points = facts?.['common-cause']?.value;
        // What its maker declares as a whole has it in it.
        if (facts === undefined || category < 2 || facts.pfhd !== undefined || facts['performance-level'] !== undefined || (points !== undefined && points >= leastCommonCause)) continue;
        if (isFirst(of, part)) report({ at: part.at, what: said(`The model of ${quoted(part.at.text)}`, category, points) });
      }
    }
  },
});

const said = (what: string, category: number, points: number | undefined): string =>
  `${what} claims category ${category} and ${points === undefined ? 'says nothing of' : `has only ${points} points for`} measures against a common cause of failure; ${leastCommonCause} are needed (from memory).`;

/** True where no function before this one, and no part before this, is the same device. */
function isFirst(of: SafetyFunction, part: FunctionPart): boolean {
  for (const other of of.installation.functions)
    for (const each of other.parts) {
      if (each === part) return true;
      if (each.it?.it === part.it?.it) return false;
    }
  return true;
}
