import { factPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { installationRule } from '../rule.ts';
import { millimetres } from '../numbers.ts';

/** 2.25 inches in metres. */
const widest = 2.25 * 0.0254;
const held = { name: 'openings of the leaf', unit: 'm', way: 'most' } as const;

function boundOf({ name, facts, drives }: Leaf): Bound | undefined {
  const opening = facts['infill-opening'];
  return drives.length === 0 || opening?.size === undefined || opening.shape === 'closed' ? undefined : bound(held, name, opening.size, widest, 1e-6);
}

export const rule = installationRule({
  name: 'infill-opening-too-wide',
  severity: 'error',
  title: 'Under the rules of North America, the leaf has openings wider than 2.25 in.',
  why: 'A child puts an arm, a leg or its head through, and the moving leaf takes it along past the post.',
  remedy: 'Cover the face with mesh or sheet, so that no opening is wider than 2.25 in (57.15 mm).',
  source: { text: 'CPSC, Operation Safe Gate, 2018', standing: 'published' },
  acceptable: false,
  check: ({ site, leaves }, report) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    for (const leaf of leaves) {
      const opening = leaf.facts['infill-opening'];
      const width = boundOf(leaf);
      if (opening?.size === undefined || width === undefined || keeps(width)) continue;
      report({
        at: factPlace(leaf, opening),
        // The published sentence names no kind of gate; a leaf that swings takes nobody along past a post.
        severity: leaf.facts.slides === undefined ? 'warning' : 'error',
        what: `The openings of “${leaf.name}” are ${millimetres(opening.size)} wide; no opening may be wider than 57.15 mm (2.25 in).`,
      });
    }
  },
  margins: ({ site, leaves }, give) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    for (const leaf of leaves) {
      const width = boundOf(leaf);
      if (width !== undefined) give(width, factPlace(leaf, leaf.facts['infill-opening']));
    }
  },
});
