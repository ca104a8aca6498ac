import { headPlace, type Leaf } from '../../model/index.ts';
import { measuresFor, needsForceTest } from '../protection.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'force-not-measured',
  severity: 'warning',
  title: 'The forces at the closing edge have never been measured here.',
  why: 'Mass, hinges, wind and settings differ at every site; no maker’s test says how hard this leaf strikes.',
  remedy: 'Measure at every point of the plan with a force gauge, and write the readings down in a measured block.',
  source: { text: 'EN 12453:2017, Annex C; ASR A1.7, 10.2', standing: 'published' },
  acceptable: true,
  cost: 'idle',
  check: (installation, report) => {
    const { leaves, site } = installation;
    if (site?.facts.rules?.value !== 'europe') return;
    let first: Leaf | undefined;
    let more: Leaf[] | undefined;
    for (const leaf of leaves) {
      if (leaf.forces.length > 0 || !needsForceTest(leaf)) continue;
      if (first === undefined) first = leaf;
      else (more ??= []).push(leaf);
    }
    if (first === undefined) return;
    const claimed = measuresFor(first, 'closing', false).C;
    const names = [first, ...(more ?? [])].slice(0, 4).map((leaf) => quoted(leaf.name));
    const all = names.length === 1 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
    report({
      at: headPlace(first),
      what: claimed ? `No force is recorded for ${all}, though its force limitation (C) is relied on.` : `No force is recorded for ${all}.`,
      related: (more ?? []).map((leaf) => ({ message: 'nor for this leaf', ...headPlace(leaf) })),
    });
  },
});
