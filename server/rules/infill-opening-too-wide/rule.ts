import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** 2.25 inches in metres. Source: CPSC, Operation Safe Gate, 2018. */
const widest = 2.25 * 0.0254;
const held = { name: 'openings of the leaf', unit: 'm', way: 'most' } as const;

export const rule = installationRule({
  name: 'infill-opening-too-wide',
  severity: 'error',
  title: 'Under the rules of North America, the leaf has openings wider than 2.25 in.',
  why: 'A child puts an arm, a leg or its head through, and the moving leaf takes it along past the post.',
  remedy: 'Cover the face with mesh or sheet, so that no opening is wider than 2.25 in (57.15 mm).',
  source: { text: 'CPSC, Operation Safe Gate, 2018', standing: 'published' },
  acceptable: false,
  under: 'north-america',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const { 'infill-opening': opening, slides } = leaf.facts;
      const width = opening?.shape === 'closed' ? undefined : opening?.size;
      if (leaf.drives.length === 0 || width === undefined) continue;
      hold(bound(held, leaf.name, width, widest, 1e-6), factPlace(leaf, opening), () => ({
        // The published sentence names no kind of gate; a leaf that swings takes nobody along past a post.
        severity: slides === undefined ? 'warning' : 'error',
        what: `The openings of ${quoted(leaf.name)} are ${millimetres(width)} wide; no opening may be wider than 57.15 mm (2.25 in).`,
      }));
    }
  },
});
