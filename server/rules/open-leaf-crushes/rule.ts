import { guards, heedingOf, measureOf, sensorsFor } from '../../circuits/index.ts';
import { crushed, leastGap, partsInWords } from '../../figures/hazards/working.ts';
import { headPlace, type Leaf, regimeOf, type Sensor } from '../../model/index.ts';
import { heldInView, liesOn, openingForcesProven } from '../../safeguards/index.ts';
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
      if (sensors.some((sensor) => protects(sensor, leaf) && heedingOf(sensor)?.tested === true) || openingForcesProven(leaf)) continue;
      report({
        at: room.line,
        what: `${quoted(leaf.name)} opens to within ${Math.round(room.value * 1000)} mm of something fixed, which crushes ${partsInWords(crushed(room.value))}; nothing there limits the force or keeps the leaf off a person.`,
        related: sensors.map((sensor) => ({
          message: protects(sensor, leaf)
            ? `${quoted(sensor.name)} is not tested: ${heedingOf(sensor)?.because ?? ''}`
            : `${quoted(sensor.name)} sees who stands in the way, which only adds to force limitation`,
          ...headPlace(sensor),
        })),
      });
    }
  },
});

/**
 * Detection of a person on the ground (D) supplements force limitation (C) and does not stand for it. In North America means are counted,
 * elsewhere.
 */
const protects = (sensor: Sensor, leaf: Leaf): boolean =>
  measureOf(sensor) !== 'D' || regimeOf(leaf.installation).seeingIsEnoughWhenOpening;

/** A sensor on no leaf (a curtain along the opening path) or on the edge that leads; one at the hinge sees nobody there. */
const isOnOpeningSide = (edge: string | undefined): boolean => edge === undefined || edge === 'opening-edge';
