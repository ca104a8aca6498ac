// Which hazards stand where in the plan.
import { type HazardKind, hazardsOf, type Unstated } from '../../figures/hazards/working.ts';
import type { Installation, Steps } from '../../model/index.ts';
import { type Finding, tellerOfHazards } from '../../rules/index.ts';
import type { JudgedHazard } from '../../safeguards/index.ts';
import { onGround, type PlacedLeaf, type Slide, type Swing } from './opening.ts';
import type { Point } from './point.ts';

/** A hazard of a leaf, judged. */
export interface MarkedHazard {
  readonly leaf: PlacedLeaf;
  readonly judged: JudgedHazard;
  /** Of the hazards of this leaf that are of the same kind, counted from 1. */
  readonly nth: number;
  /** Its number in the plan: a letter would be taken for that of a measure. From 1, over all leaves. */
  readonly number: number;
}

/** A place of a leaf that cannot be judged, as facts are missing. */
export interface UnjudgedHazard {
  readonly leaf: PlacedLeaf;
  readonly kind: HazardKind;
  readonly missing: Unstated;
  /** Its number in the plan, after those of the hazards that are judged. */
  readonly number: number;
}

/** The hazards of these leaves; `findings` decide, together with what covers each, which of them are shown as covered. */
export function* markedHazardsOf(
  installation: Installation,
  leaves: readonly PlacedLeaf[],
  findings: readonly Finding[],
): Steps<MarkedHazard[]> {
  const marked: MarkedHazard[] = [];
  const toldOf = tellerOfHazards(installation, findings);
  for (const leaf of leaves) {
    yield;
    const counts = new Map<HazardKind, number>();
    for (const judged of toldOf(leaf.leaf)) {
      const nth = (counts.get(judged.hazard.kind) ?? 0) + 1;
      counts.set(judged.hazard.kind, nth);
      marked.push({ leaf, judged, nth, number: marked.length + 1 });
    }
  }
  return marked;
}

/** `judged` is how many hazards of these leaves are judged. */
export const unjudgedHazardsOf = (leaves: readonly PlacedLeaf[], judged: number): UnjudgedHazard[] =>
  leaves
    .flatMap((leaf) => (hazardsOf(leaf.leaf)?.unstated ?? []).map((missing) => ({ leaf, kind: kindMissing(missing), missing })))
    .map((unjudged, index) => ({ ...unjudged, number: judged + index + 1 }));

/** What kind of place it is that cannot be judged; told by the fact that is missing. */
function kindMissing({ facts }: Unstated): HazardKind {
  if (facts.includes('room-when-open')) return 'opening-side';
  if (facts.includes('ground-gap')) return 'underside';
  return facts.includes('passes') || facts.includes('infill-opening') ? 'running-past' : 'hinge';
}

/** Where on the ground a hazard is marked. */
export const hazardPlace = (leaf: PlacedLeaf, kind: HazardKind): Point =>
  leaf.kind === 'swing' ? swingHazardPlace(leaf, kind) : slideHazardPlace(leaf, kind);

function swingHazardPlace(leaf: Swing, kind: HazardKind): Point {
  const { width, box, angle, post } = leaf;
  switch (kind) {
    case 'closing-edge':
      return onGround(leaf, width, 0);
    case 'hinge':
      return onGround(leaf, (post.face + box.x) / 2, box.y + box.height);
    case 'underside':
      return onGround(leaf, width * 0.62, 0);
    default:
      return onGround(leaf, width * 0.9, box.y + box.height, angle);
  }
}

function slideHazardPlace({ edge, way, distance, length }: Slide, kind: HazardKind): Point {
  switch (kind) {
    case 'opening-side':
      return { x: edge.x + way * (distance + length), y: edge.y };
    case 'reach-through':
    case 'running-past':
      return { x: edge.x + way * distance, y: edge.y };
    default:
      return { x: edge.x, y: edge.y };
  }
}
