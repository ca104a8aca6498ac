import { endsShort, guards, heedingOf, isMeantFor, type Movement, ridesAlong, sensorsFor } from '../../circuits/index.ts';
import { type Hazards, hazardsOf } from '../../figures/hazards/working.ts';
import { headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import { heldInView, missed } from '../../safeguards/index.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

/**
 * Kinds of entrapment protection that can be told from the file: A built in, B1 without contact, B2 by contact, C limited
 * force, D a control that is held.
 */
type Kind = 'A' | 'B1' | 'B2' | 'C' | 'D';

/** 16 inches in metres: room behind an open swing leaf in which nobody is entrapped, by ASTM F2200 from memory. */
const room = 16 * 0.0254;

export const rule = installationRule({
  name: 'entrapment-protection-below-minimum',
  severity: 'error',
  title: 'A leaf has fewer than two independent, monitored means against entrapment (rules north-america).',
  why: 'One means can fail or miss; the second, of another kind, is there for that day. A means that is not monitored may have failed long ago.',
  remedy: 'Add a monitored contact edge or a monitored non-contact sensor, of another kind than the one that is there.',
  source: { text: 'UL 325 (2016 and 2018 rules), as quoted in DASMA TDS 353', standing: 'published' },
  acceptable: false,
  under: 'north-america',
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const hazards = hazardsOf(leaf);
      // Nothing drives it.
      if (hazards === undefined) continue;
      for (const movement of ['closing', 'opening'] as const) {
        const risk = riskIn(leaf, movement, hazards);
        const kinds = risk === 'none' ? undefined : kindsFor(leaf, movement);
        if (kinds === undefined || kinds.size >= 2) continue;
        const only = [...kinds][0];
        // That a control which is held is a means (type D) is from memory, and so is what follows from it.
        const memory = only === 'D';
        const found = only === undefined ? 'no monitored means' : `only type ${only}`;
        const clutch =
          leaf.facts.slides !== undefined && leaf.drives.some((drive) => drive.model?.facts['limits-force'] !== undefined)
            ? ' That its drive limits its force (type C) counts for swing leaves only, from memory.'
            : '';
        report({
          at: headPlace(leaf),
          severity: risk === 'certain' && !memory ? 'error' : 'warning',
          what: `${quoted(leaf.name)} has ${found} against entrapment while ${movement}${memory ? ' (from memory)' : ''}; two independent ones are needed wherever there is a risk.${clutch}`,
          related: uncountedIn(leaf, movement),
        });
      }
    }
  },
});

/**
 * Whether a person can be entrapped in a movement. Behind a swing leaf that opens there may be no risk at all: that is so
 * where its surroundings are stated and hold no hazard.
 */
function riskIn(leaf: Leaf, movement: Movement, hazards: Hazards): 'certain' | 'possible' | 'none' {
  if (movement === 'closing' || leaf.facts.slides !== undefined) return 'certain';
  const behind = leaf.facts['room-when-open']?.value;
  if (behind === undefined) return 'possible';
  if (behind <= room + 1e-6) return 'certain';
  const guarded = leaf.facts['hinge-guard'] !== undefined;
  const found = hazards.found.some(
    ({ kind, movements }) => kind === 'opening-side' || (kind === 'hinge' && !guarded && movements.includes('opening')),
  );
  return found || hazards.unstated.some(({ about }) => about === 'the gap at the hinge') ? 'possible' : 'none';
}

function kindsFor(leaf: Leaf, movement: Movement): Set<Kind> {
  const kinds = new Set<Kind>();
  if (leaf.drives.every((drive) => drive.model?.facts['senses-obstacles'] !== undefined)) kinds.add('A');
  if (leaf.facts.opens !== undefined && leaf.drives.every((drive) => drive.model?.facts['limits-force'] !== undefined)) kinds.add('C');
  if (heldInView(leaf.installation)) kinds.add('D');
  for (const sensor of sensorsFor(leaf)) {
    const kind = sensor.model?.facts.kind?.value;
    if (kind === undefined || kind === 'loop' || !guards(sensor, leaf, movement) || heedingOf(sensor)?.tested !== true) continue;
    if (spansNothing(sensor)) continue;
    kinds.add(kind === 'edge' ? 'B2' : 'B1');
  }
  return kinds;
}

/** How low a ray must be there is known from memory only, and so is not asked; one that ends short or rides along spans nothing anywhere. */
const spansNothing = (sensor: Sensor): boolean => endsShort(sensor) || ridesAlong(sensor);

/** Sensors that are meant to be a means in that movement and do not count as one. */
function uncountedIn(leaf: Leaf, movement: Movement): Related[] {
  const uncounted: Related[] = [];
  for (const sensor of leaf.installation.sensors) {
    const kind = sensor.model?.facts.kind?.value;
    if (kind === undefined || kind === 'loop' || !isMeantFor(sensor, leaf, movement)) continue;
    const heeding = heedingOf(sensor);
    if (heeding === undefined)
      uncounted.push({ message: `${quoted(sensor.name)} is meant to be one, but the panel does not heed it`, ...headPlace(sensor) });
    else if (!heeding.tested)
      uncounted.push({ message: `${quoted(sensor.name)} is not monitored: ${heeding.because}`, ...headPlace(sensor) });
    else if (spansNothing(sensor)) uncounted.push({ message: `${quoted(sensor.name)} ${missed(sensor)}`, ...headPlace(sensor) });
  }
  return uncounted;
}
