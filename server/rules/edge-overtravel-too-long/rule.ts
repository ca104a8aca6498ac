import { closingStopOf, type EdgeStop, openingStopOf } from '../../figures/overtravel/working.ts';
import { factPlace, headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import { heldInView, judgedHeldControlOf, measuresFor } from '../../safeguards/index.ts';
import { bound } from '../bounds.ts';
import { millimetres, shown } from '../numbers.ts';
import { type Hold, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Overtravel that is allowed to a leaf without a pressure-sensitive device, m. */
const withoutEdge = 0.05;
const slack = 1e-9;
const held = {
  closing: { figure: 'leaf.NAME.overtravel', name: 'run-on when closing', unit: 'm', way: 'most' },
  opening: { figure: 'leaf.NAME.overtravel-when-opening', name: 'run-on when opening', unit: 'm', way: 'most' },
} as const;

/**
 * Whether the 50 mm matter: nothing else keeps the closing edge from pressing on somebody, and it is not hold-to-run-overtravels that
 * judges it.
 */
function isUnprotected(leaf: Leaf): boolean {
  const { installation } = leaf;
  return !measuresFor(leaf, 'closing', false).E && !(heldInView(installation) && judgedHeldControlOf(installation) !== undefined);
}

export const rule = installationRule({
  name: 'edge-overtravel-too-long',
  severity: 'error',
  title: 'After its edge has tripped, the leaf runs on further than the edge gives.',
  why: 'Once the edge is squashed flat, the rest of the leaf’s energy and the push of the drive go into whoever is in the way.',
  remedy: 'Move slower, let the drive stop faster, or fit an edge with more deformation travel.',
  source: { text: 'ASR A1.7, section 6', standing: 'published' },
  acceptable: false,
  under: 'outside north-america',
  cost: 'idle',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const closing = closingStopOf(leaf);
      const opening = openingStopOf(leaf);
      if (closing?.edge !== undefined) holdEdge(leaf, closing, closing.edge, 'closing', hold);
      else if (closing !== undefined && isUnprotected(leaf)) holdWithoutEdge(leaf, closing, hold);
      if (opening?.edge !== undefined) holdEdge(leaf, opening, opening.edge, 'opening', hold);
    }
  },
});

/** Against what is allowed to a leaf that has no edge on its closing side. */
function holdWithoutEdge(leaf: Leaf, stop: EdgeStop, hold: Hold): void {
  hold(bound(held.closing, leaf.name, stop.distance, withoutEdge, slack), headPlace(leaf), () => ({
    severity: 'warning',
    what: `${quoted(leaf.name)} has no edge that stops it, and runs on ${rounded(stop.distance)} after it is told to stop${energy(stop)}; 50 mm are the most where that is dangerous.`,
    why: 'The leaf goes on into whoever is in the way until it stands.',
    remedy: 'Move slower, let the drive stop faster, or fit a pressure-sensitive edge.',
  }));
}

/** Against what the edge gives. */
function holdEdge(leaf: Leaf, stop: EdgeStop, edge: Sensor, way: 'closing' | 'opening', hold: Hold): void {
  const { deformation, distance } = stop;
  if (deformation === undefined) return;
  hold(bound(held[way], leaf.name, distance, deformation, slack), factPlace(edge, edge.facts.on), () => {
    const { share, brakingHelps } = slower(stop, deformation);
    return {
      what: `While ${way}, ${quoted(leaf.name)} runs on ${rounded(distance)} after ${quoted(edge.name)} has tripped${energy(stop)}, and that edge gives ${millimetres(deformation)}.`,
      remedy: `At most ${shown(share * 100)} % of the speed${brakingHelps ? ', a drive that stops faster,' : ''} or an edge that gives ${rounded(distance)} ${brakingHelps ? 'are each' : 'is'} enough.`,
      related: [{ message: 'the leaf that it sits on', ...headPlace(leaf) }],
    };
  });
}

/** Rounded up, so that what is told is never less than it is. */
const rounded = (metres: number): string => `${Math.ceil(metres * 1000 - 1e-6)} mm`;

const energy = (stop: EdgeStop): string => (stop.energy === undefined ? '' : ` with ${shown(stop.energy)} J in it`);

/**
 * The share of the speed at which the leaf stops within the edge, rounded down to a whole per cent: b·x² + r·x = d, solved so that
 * nothing divides by b. A drive that stops faster helps only where the leaf has not squashed the edge before it even brakes.
 */
function slower(
  { distance, edgeSpeed, reaction }: EdgeStop,
  deformation: number,
): { readonly share: number; readonly brakingHelps: boolean } {
  const reacting = edgeSpeed * reaction;
  const braking = distance - reacting;
  const share = (2 * deformation) / (reacting + Math.sqrt(reacting * reacting + 4 * braking * deformation));
  return { share: Math.floor(share * 100 + 1e-9) / 100, brakingHelps: reacting < deformation };
}
