import { guards, heedingOf, measureOf, missesPeople, sensorsFor } from '../../circuits/index.ts';
import { crushed, leastGap, partsInWords } from '../../figures/hazards/working.ts';
import { headPlace, type Leaf, regimeOf, type Sensor } from '../../model/index.ts';
import { heldInView, liesOn, missed, openingForcesProven } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'open-leaf-crushes',
  severity: 'error',
  title: 'The opening leaf leaves too little room before something fixed, and nothing protects a person there.',
  why: 'Whoever stands behind an opening leaf is pressed against the wall or post that it opens towards.',
  remedy:
    'Leave 500 mm, or fit a pressure-sensitive edge that watches opening on the edge that leads while opening, or let the gate move only while a control in full view is held.',
  source: { text: 'EN ISO 13854 (minimum gaps); EN 12453:2000, 5.5.1 (what counts as protection)', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    const { leaves } = installation;
    for (const leaf of leaves) {
      const room = leaf.facts['room-when-open'];
      if (room === undefined || room.value >= leastGap.body || leaf.drives.length === 0 || heldInView(installation)) continue;
      const sensors = sensorsFor(leaf).filter(
        (sensor) =>
          isOnOpeningSide(sensor.facts.on?.edge) &&
          measureOf(sensor) !== undefined &&
          (sensor.facts.on !== undefined || measureOf(sensor) === 'D' || liesOn(sensor, leaf, 'opening-side')) &&
          guards(sensor, leaf, 'opening') &&
          heedingOf(sensor) !== undefined,
      );
      if (sensors.some((sensor) => whyNot(sensor, leaf) === undefined) || openingForcesProven(leaf)) continue;
      report({
        at: room.line,
        what: `${quoted(leaf.name)} opens to within ${Math.round(room.value * 1000)} mm of something fixed, which crushes ${partsInWords(crushed(room.value))}; nothing there limits the force or keeps the leaf off a person.`,
        related: sensors.map((sensor) => ({ message: `${quoted(sensor.name)} ${whyNot(sensor, leaf)}`, ...headPlace(sensor) })),
      });
    }
  },
});

/** Why a sensor that the panel heeds does not keep the leaf off; undefined where it does. */
function whyNot(sensor: Sensor, leaf: Leaf): string | undefined {
  if (!protects(sensor, leaf)) return 'sees who stands in the way, which only adds to force limitation';
  if (missesPeople(sensor)) return missed(sensor);
  const heeding = heedingOf(sensor);
  return heeding === undefined || heeding.tested ? undefined : `is not tested: ${heeding.because}`;
}

/**
 * Detection of a person on the ground (D) supplements force limitation (C) and does not stand for it. In North America means are counted,
 * elsewhere.
 */
const protects = (sensor: Sensor, leaf: Leaf): boolean =>
  measureOf(sensor) !== 'D' || regimeOf(leaf.installation).seeingIsEnoughWhenOpening;

/** A sensor on no leaf (a curtain along the opening path) or on the edge that leads; one at the hinge sees nobody there. */
const isOnOpeningSide = (edge: string | undefined): boolean => edge === undefined || edge === 'opening-edge';
