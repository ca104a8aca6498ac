import { closingStopOf, openingStopOf, type EdgeStop } from '../../figures/overtravel/figure.ts';
import { factPlace, headPlace, type Leaf } from '../../model/index.ts';
import { measuresFor } from '../protection.ts';
import { millimetres, shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Overtravel that is allowed to a leaf without a pressure-sensitive device, m. */
const withoutEdge = 0.05;

export const rule = installationRule({
  name: 'edge-overtravel-too-long',
  severity: 'error',
  title: 'After its edge has tripped, the leaf runs on further than the edge gives.',
  why: 'Once the edge is squashed flat, the rest of the leaf’s energy and the push of the drive go into whoever is in the way.',
  remedy: 'Move slower, let the drive stop faster, or fit an edge with more deformation travel.',
  source: { text: 'ASR A1.7, section 6', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    if (installation.site?.facts.rules?.value === 'north-america') return;
    for (const leaf of installation.leaves) {
      const closing = closingStopOf(leaf);
      if (closing === undefined) continue;
      if (closing.edge === undefined) {
        if (closing.distance > withoutEdge + 1e-9 && !measuresFor(leaf, 'closing', false).E)
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
      if (edge === undefined || deformation === undefined || distance <= deformation + 1e-9) return;
      report({
        at: factPlace(edge, edge.facts.on),
        what: `While ${way}, ${quoted(leaf.name)} runs on ${rounded(distance)} after ${quoted(edge.name)} has tripped${energy(stop)}, and that edge gives ${millimetres(deformation)}.`,
        remedy: `At most ${shown(slowerBy(stop) * 100)} % of the speed, a drive that stops faster, or an edge that gives ${rounded(distance)} are each enough.`,
        related: [{ message: 'the leaf that it sits on', ...headPlace(leaf) }],
      });
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
