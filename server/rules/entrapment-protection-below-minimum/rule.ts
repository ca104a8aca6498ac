import { headPlace, type Leaf } from '../../model/index.ts';
import { guards, heedingOf, type Movement } from '../protection.ts';
import { installationRule } from '../rule.ts';

/** Kinds of entrapment protection that can be told from the file: A built in, B1 without contact, B2 by contact. */
type Kind = 'A' | 'B1' | 'B2';

export const rule = installationRule({
  name: 'entrapment-protection-below-minimum',
  severity: 'error',
  title: 'A leaf has fewer than two independent, monitored means against entrapment (rules north-america).',
  why: 'One means can fail or miss; the second, of another kind, is there for that day. A means that is not monitored may have failed long ago.',
  remedy: 'Add a monitored contact edge or a monitored non-contact sensor, of another kind than the one that is there.',
  source: { text: 'UL 325 (2016 and 2018 rules), as quoted in DASMA TDS 353', standing: 'published' },
  acceptable: false,
  check: ({ site, leaves }, report) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    for (const leaf of leaves) {
      if (leaf.drives.length === 0) continue;
      for (const movement of ['closing', 'opening'] as const) {
        const kinds = kindsFor(leaf, movement);
        if (kinds.size >= 2) continue;
        const found = kinds.size === 0 ? 'no monitored means' : `only type ${[...kinds][0]}`;
        // Whether there is a risk in opening depends on what stands around, which the file may not say.
        report({
          at: headPlace(leaf),
          severity: movement === 'closing' || leaf.facts.slides !== undefined ? 'error' : 'warning',
          what: `“${leaf.name}” has ${found} against entrapment while ${movement}; two independent ones are needed wherever there is a risk.`,
        });
      }
    }
  },
});

function kindsFor(leaf: Leaf, movement: Movement): Set<Kind> {
  const kinds = new Set<Kind>();
  if (leaf.drives.every((drive) => drive.model?.facts['senses-obstacles'] !== undefined)) kinds.add('A');
  for (const sensor of leaf.installation.sensors) {
    const kind = sensor.model?.facts.kind?.value;
    if (kind === undefined || kind === 'loop' || !guards(sensor, leaf, movement) || heedingOf(sensor)?.tested !== true) continue;
    kinds.add(kind === 'edge' ? 'B2' : 'B1');
  }
  return kinds;
}
