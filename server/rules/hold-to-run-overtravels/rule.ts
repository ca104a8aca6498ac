import { edgeSpeedsOf } from '../../figures/edge-speed/working.ts';
import { letGoReactionOf } from '../../figures/overtravel/working.ts';
import { isSlowSpeedStated } from '../../figures/run-time/working.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { judgedHeldControlOf } from '../../safeguards/index.ts';
import { type Bound, bound, keeps } from '../bounds.ts';
import { millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** What counts as narrow: less than this is left, metres. EN 12453:2000, from memory, as the limits below. */
const narrowFrom = 0.5;
/** Most that the edge may run on, metres: where it is narrow, and elsewhere. */
const most = { narrow: 0.05, wide: 0.1 } as const;
const slack = 1e-9;
const held = {
  narrow: { name: 'run-on near closed when let go', unit: 'm', way: 'most' },
  wide: { name: 'run-on when let go', unit: 'm', way: 'most' },
} as const;

function boundsOf(leaf: Leaf): { readonly narrow: Bound | undefined; readonly wide: Bound } | undefined {
  const speeds = edgeSpeedsOf(leaf);
  const stops = brakingOf(leaf);
  if (speeds === undefined || stops === undefined) return undefined;
  const reaction = letGoReactionOf(leaf);
  if (reaction === undefined) return undefined;
  const { edge } = speeds;
  const wide = edge * reaction + (edge * stops) / 2;
  const slow = isSlowWhereNarrow(leaf) ? speeds.edgeInSlowZone : undefined;
  // Even braking takes as much less time from a lower speed, so that part of the way shrinks with its square.
  const narrow = slow === undefined || edge === 0 ? wide : slow * reaction + ((slow / edge) ** 2 * edge * stops) / 2;
  return {
    narrow: slow === undefined || isSlowSpeedStated(leaf) ? bound(held.narrow, leaf.name, narrow, most.narrow, slack) : undefined,
    wide: bound(held.wide, leaf.name, wide, most.wide, slack),
  };
}

/** Whether the slow zone begins before less than 500 mm are left: its share of the way of the edge. */
function isSlowWhereNarrow(leaf: Leaf): boolean {
  const share = leaf.installation.motion?.facts['slow-zone']?.last ?? 0;
  const { opens, slides, width } = leaf.facts;
  const way = slides?.distance ?? (opens?.angle ?? 0) * (width?.value ?? 0);
  return share * way >= narrowFrom;
}

export const rule = installationRule({
  name: 'hold-to-run-overtravels',
  severity: 'warning',
  title: 'A leaf runs on too far when a hold-to-run control is let go.',
  why: 'Whoever lets go because somebody is in the way counts on the leaf to stop at once.',
  remedy: 'Choose a drive that stops sooner or a panel that answers sooner, lower the speed, or make the slow zone slower.',
  source: { text: 'EN 12453:2000, from memory', standing: 'from memory' },
  acceptable: true,
  holds: (installation, hold) => {
    const control = judgedHeldControlOf(installation);
    if (control === undefined) return;
    for (const leaf of installation.leaves) {
      const bounds = boundsOf(leaf);
      if (bounds === undefined) continue;
      const holdTo = (to: Bound, where: string): void =>
        hold(to, factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides), () => ({
          what: `The edge of ${quoted(leaf.name)} runs on by ${millimetres(to.value)} ${where} when ${quoted(control.name)} is let go; ${millimetres(to.limit)} are allowed (from memory).`,
          related: toFact('this control', control.facts.acts),
        }));
      if (bounds.narrow !== undefined) holdTo(bounds.narrow, 'near its closed position');
      // What is too far near the closed position need not be said again of the rest of the way.
      if (bounds.narrow === undefined || keeps(bounds.narrow)) holdTo(bounds.wide, 'in full movement');
    }
  },
});

/** Time from the greatest speed to standstill, s; undefined where a drive does not say. */
function brakingOf(leaf: Leaf): number | undefined {
  let longest = 0;
  for (const drive of leaf.drives) {
    const stops = drive.model?.facts['stops-in']?.value;
    if (stops === undefined) return undefined;
    longest = Math.max(longest, stops);
  }
  return longest * (leaf.installation.motion?.facts.speed?.value ?? 1);
}
