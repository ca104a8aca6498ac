import { crushed, leastGap, partsInWords } from '../../figures/hazards/gaps.ts';
import { guards, heedingOf, onlyHeld, sensorsFor } from '../protection.ts';
import { installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'open-leaf-crushes',
  severity: 'error',
  title: 'The opening leaf leaves too little room before something fixed, and nothing detects a person there.',
  why: 'Whoever stands behind an opening leaf is pressed against the wall or post that it opens towards.',
  remedy: 'Leave 500 mm, or fit a sensor that watches opening on the edge that leads while opening, or let the gate move only while a control in full view is held.',
  source: { text: 'EN ISO 13854 (minimum gaps)', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    const { leaves } = installation;
    for (const leaf of leaves) {
      const room = leaf.facts['room-when-open'];
      if (room === undefined || room.value >= leastGap.body || leaf.drives.length === 0 || onlyHeld(installation)) continue;
      if (sensorsFor(leaf).some((sensor) => isOnOpeningSide(sensor.facts.on?.edge) && sensor.model?.facts.measure !== undefined && guards(sensor, leaf, 'opening') && heedingOf(sensor) !== undefined)) continue;
      report({
        at: room.line,
        what: `“${leaf.name}” opens to within ${Math.round(room.value * 1000)} mm of something fixed, which crushes ${partsInWords(crushed(room.value))}; nothing on its opening edge detects a person.`,
      });
    }
  },
});

/** A sensor on no leaf (a curtain along the opening path) or on the edge that leads; one at the hinge sees nobody there. */
const isOnOpeningSide = (edge: string | undefined): boolean => edge === undefined || edge === 'opening-edge';
