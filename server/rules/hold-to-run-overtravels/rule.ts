import { edgeSpeedsOf } from '../../figures/edge-speed/figure.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** Most that the edge may run on, metres: where less than 500 mm are left, and elsewhere. */
const most = { narrow: 0.05, wide: 0.1 } as const;

export const rule = installationRule({
  name: 'hold-to-run-overtravels',
  severity: 'warning',
  title: 'A leaf runs on too far when a hold-to-run control is let go.',
  why: 'Whoever lets go because somebody is in the way counts on the leaf to stop at once.',
  remedy: 'Choose a drive that stops sooner, lower its speed, or make the slow zone slower.',
  source: { text: 'EN 12453:2000, from memory', standing: 'from memory' },
  acceptable: true,
  check: ({ site, controls, leaves }, report) => {
    if (site?.facts.rules?.value !== 'europe') return;
    const held = controls.find((control) => control.facts.acts?.value === 'hold-to-run');
    if (held?.facts.acts === undefined) return;
    for (const leaf of leaves) {
      const speeds = edgeSpeedsOf(leaf);
      const stops = brakingOf(leaf);
      if (speeds === undefined || stops === undefined) continue;
      const wide = (speeds.edge * stops) / 2;
      // Even braking takes as much less time from a lower speed, so the way shrinks with its square.
      const narrow = speeds.edgeInSlowZone === undefined || speeds.edge === 0 ? wide : (speeds.edgeInSlowZone / speeds.edge) ** 2 * wide;
      const [over, limit, where] = narrow > most.narrow + 1e-9 ? [narrow, most.narrow, 'near its closed position'] : [wide, most.wide, 'in full movement'];
      if (over <= limit + 1e-9) continue;
      report({
        at: factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides),
        what: `The edge of “${leaf.name}” runs on by ${millimetres(over)} ${where} when “${held.name}” is let go; ${millimetres(limit)} are allowed (from memory).`,
        related: [{ message: 'this control', start: held.facts.acts.line.start, end: held.facts.acts.line.end }],
      });
    }
  },
});

/** Time from the greatest speed to standstill, s; undefined where the drive does not say. */
function brakingOf(leaf: Leaf): number | undefined {
  let longest: number | undefined;
  for (const drive of leaf.drives) {
    const stops = drive.model?.facts['stops-in']?.value;
    if (stops === undefined) return undefined;
    longest = Math.max(longest ?? 0, stops);
  }
  return longest === undefined ? undefined : longest * (leaf.installation.motion?.facts.speed?.value ?? 1);
}
