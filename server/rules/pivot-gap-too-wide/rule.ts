import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** 4 inches in metres. Source: ASTM F2200, from memory. */
const most = 4 * 0.0254;
const held = { name: 'hinge axis from its post', unit: 'm', way: 'most' } as const;

export const rule = installationRule({
  name: 'pivot-gap-too-wide',
  severity: 'warning',
  title: 'Under the rules of North America, the hinge axis of a leaf is more than 4 in from the post.',
  why: 'Between the hinge and the post a person fits in, and the opening leaf closes that space.',
  remedy: 'Hang the leaf nearer to the post, or cover the space and state “hinge-guard”.',
  source: { text: 'ASTM F2200, from memory', standing: 'from memory' },
  acceptable: true,
  under: 'north-america',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const { opens, 'hinge-gap': gap, 'hinge-offset': offset, 'hinge-guard': guard } = leaf.facts;
      if (opens === undefined || gap === undefined || offset === undefined || guard !== undefined || leaf.drives.length === 0) continue;
      const pivot = gap.value - offset.along;
      hold(bound(held, leaf.name, pivot, most, 1e-6), factPlace(leaf, gap), () => ({
        what: `The hinge axis of ${quoted(leaf.name)} is ${millimetres(pivot)} from its post; 101.6 mm (4 in) is the most (from memory).`,
      }));
    }
  },
});
