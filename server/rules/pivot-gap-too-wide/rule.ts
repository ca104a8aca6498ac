import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** 4 inches in metres. */
const most = 4 * 0.0254;
const held = { name: 'hinge axis from its post', unit: 'm', way: 'most' } as const;

function boundOf({ name, facts, drives }: Leaf): Bound | undefined {
  const { opens, 'hinge-gap': gap, 'hinge-offset': offset, 'hinge-guard': guard } = facts;
  if (opens === undefined || gap === undefined || offset === undefined || guard !== undefined || drives.length === 0) return undefined;
  return bound(held, name, gap.value - offset.along, most, 1e-6);
}

export const rule = installationRule({
  name: 'pivot-gap-too-wide',
  severity: 'warning',
  title: 'Under the rules of North America, the hinge axis of a leaf is more than 4 in from the post.',
  why: 'Between the hinge and the post a person fits in, and the opening leaf closes that space.',
  remedy: 'Hang the leaf nearer to the post, or cover the space and state “hinge-guard”.',
  source: { text: 'ASTM F2200, from memory', standing: 'from memory' },
  acceptable: true,
  check: ({ site, leaves }, report) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    for (const leaf of leaves) {
      const pivot = boundOf(leaf);
      if (pivot === undefined || keeps(pivot)) continue;
      report({ at: factPlace(leaf, leaf.facts['hinge-gap']), what: `The hinge axis of “${leaf.name}” is ${millimetres(pivot.value)} from its post; 101.6 mm (4 in) is the most (from memory).` });
    }
  },
  margins: ({ site, leaves }, give) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    for (const leaf of leaves) {
      const pivot = boundOf(leaf);
      if (pivot !== undefined) give(pivot, factPlace(leaf, leaf.facts['hinge-gap']));
    }
  },
});
