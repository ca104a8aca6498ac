import { closingStopOf, openingStopOf, type EdgeStop } from '../../figures/overtravel/figure.ts';
import { factPlace, headPlace, type Leaf } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { measuresFor } from '../protection.ts';
import { millimetres, shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Overtravel that is allowed to a leaf without a pressure-sensitive device, m. */
const withoutEdge = 0.05;
const slack = 1e-9;
const held = {
  closing: { figure: 'leaf.NAME.overtravel', name: 'run-on when closing', unit: 'm', way: 'most' },
  opening: { figure: 'leaf.NAME.overtravel-when-opening', name: 'run-on when opening', unit: 'm', way: 'most' },
} as const;

/** Against what the edge gives; without an edge, against what is allowed then. */
function boundOf(leaf: Leaf, stop: EdgeStop, way: 'closing' | 'opening'): Bound | undefined {
  const most = stop.edge === undefined ? withoutEdge : stop.deformation;
  return most === undefined ? undefined : bound(held[way], leaf.name, stop.distance, most, slack);
}

/** Whether the 50 mm matter: nothing else keeps the closing edge from pressing on somebody. */
const isUnprotected = (leaf: Leaf): boolean => !measuresFor(leaf, 'closing', false).E;

export const rule = installationRule({
  name: 'edge-overtravel-too-long',
  severity: 'error',
  title: 'After its edge has tripped, the leaf runs on further than the edge gives.',
  why: 'Once the edge is squashed flat, the rest of the leaf’s energy and the push of the drive go into whoever is in the way.',
  remedy: 'Move slower, let the drive stop faster, or fit an edge with more deformation travel.',
  source: { text: 'ASR A1.7, section 6', standing: 'published' },
  acceptable: false,
  cost: 'idle',
  check: (installation, report) => {
    if (installation.site?.facts.rules?.value === 'north-america') return;
    for (const leaf of installation.leaves) {
      const closing = closingStopOf(leaf);
      if (closing === undefined) continue;
      if (closing.edge === undefined) {
        const runOn = boundOf(leaf, closing, 'closing');
        if (runOn !== undefined && !keeps(runOn) && isUnprotected(leaf))
          report({
            at: headPlace(leaf),
            severity: 'warning',
            what: `${quoted(leaf.name)} has no edge that stops it, and runs on ${rounded(closing.distance)} after it is told to stop${energy(closing)}; 50 mm are the most where that is dangerous.`,
            why: 'The leaf goes on into whoever is in the way until it stands.',
            remedy: 'Move slower, let the drive stop faster, or fit a pressure-sensitive edge.',
          });
        continue;
      }
      check(leaf, closing, 'closing');
      const opening = openingStopOf(leaf);
      if (opening?.edge !== undefined) check(leaf, opening, 'opening');
    }

    function check(leaf: Leaf, stop: EdgeStop, way: 'closing' | 'opening'): void {
      const { edge, deformation, distance } = stop;
      const runOn = boundOf(leaf, stop, way);
      if (edge === undefined || deformation === undefined || runOn === undefined || keeps(runOn)) return;
      report({
        at: factPlace(edge, edge.facts.on),
        what: `While ${way}, ${quoted(leaf.name)} runs on ${rounded(distance)} after ${quoted(edge.name)} has tripped${energy(stop)}, and that edge gives ${millimetres(deformation)}.`,
        remedy: `At most ${shown(slowerBy(stop) * 100)} % of the speed, a drive that stops faster, or an edge that gives ${rounded(distance)} are each enough.`,
        related: [{ message: 'the leaf that it sits on', ...headPlace(leaf) }],
      });
    }
  },
  margins: ({ site, leaves }, give) => {
    if (site?.facts.rules?.value === 'north-america') return;
    for (const leaf of leaves) {
      const closing = closingStopOf(leaf);
      if (closing === undefined) continue;
      for (const [way, stop] of [['closing', closing], ['opening', closing.edge === undefined ? undefined : openingStopOf(leaf)]] as const) {
        const runOn = stop === undefined ? undefined : boundOf(leaf, stop, way);
        if (runOn === undefined || stop === undefined || (stop.edge === undefined && (way === 'opening' || !isUnprotected(leaf)))) continue;
        give(runOn, stop.edge === undefined ? headPlace(leaf) : factPlace(stop.edge, stop.edge.facts.on));
      }
    }
  },
});

/** Rounded up, so that what is told is never less than it is. */
const rounded = (metres: number): string => `${Math.ceil(metres * 1000 - 1e-6)} mm`;

const energy = (stop: EdgeStop): string => (stop.energy === undefined ? '' : ` with ${shown(stop.energy)} J in it`);

/** The share of the speed at which the leaf stops within the edge, rounded down to a whole per cent: b·x² + r·x = d. */
function slowerBy({ distance, edgeSpeed, reaction, deformation }: EdgeStop): number {
  const reacting = edgeSpeed * reaction;
  const braking = distance - reacting;
  const room = deformation ?? 0;
  const share = braking > 0 ? (-reacting + Math.sqrt(reacting * reacting + 4 * braking * room)) / (2 * braking) : reacting > 0 ? room / reacting : 1;
  return Math.floor(share * 100 + 1e-9) / 100;
}
