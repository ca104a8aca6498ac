import { factPlace, type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { inDegrees, type FigureKind, type Give, type Input, type Source } from '../figure.ts';
import { motionOf } from '../run-time/figure.ts';
import { leastLag, type LeastLag, type OverlappingLeaves } from './maths.ts';

export interface OverlapWorkings {
  /** The leaf that covers the other: it opens first and closes last. */
  readonly covering: Leaf;
  readonly covered: Leaf;
  readonly opening: LeastLag;
  readonly closing: LeastLag;
  readonly leaves: OverlappingLeaves;
  /** s. */
  readonly runTimes: { readonly covering: number; readonly covered: number };
}

/** The least lags of each pair of leaves that overlap, in the order of the text; pairs whose motion cannot be worked out are left out. */
export const overlapsOf = perSubject((installation: Installation): readonly OverlapWorkings[] => {
  const overlaps: OverlapWorkings[] = [];
  for (const leaf of installation.leaves) {
    const overlap = leaf.covers === undefined ? undefined : overlapOf(leaf, leaf.covers);
    if (overlap !== undefined) overlaps.push(overlap);
  }
  return overlaps;
});

/** The pair that needs the greatest lag in a movement: one lag serves all pairs. Undefined where none is known. */
export function decidingOverlap(installation: Installation, movement: 'opening' | 'closing'): OverlapWorkings | undefined {
  let deciding: OverlapWorkings | undefined;
  for (const overlap of overlapsOf(installation)) if (deciding === undefined || overlap[movement].lag > deciding[movement].lag) deciding = overlap;
  return deciding;
}

function overlapOf(covering: Leaf, covered: Leaf): OverlapWorkings | undefined {
  const { closes, width, opens } = covering.facts;
  const coveredWidth = covered.facts.width;
  // Both must swing to the same side; a sliding leaf has no such lag.
  if (closes === undefined || width === undefined || coveredWidth === undefined || opens === undefined || opens.way !== covered.facts.opens?.way) return undefined;
  const first = motionOf(covering);
  const second = motionOf(covered);
  if (first === undefined || second === undefined) return undefined;
  const leaves = {
    covering: { width: width.value, linkage: first.linkage, profile: first.profile },
    covered: { width: coveredWidth.value, linkage: second.linkage, profile: second.profile },
    overlap: closes.overlap,
    gap: closes.gap,
  };
  const opening = leastLag(leaves, 'opening');
  const closing = leastLag(leaves, 'closing');
  return opening === undefined || closing === undefined ? undefined : { covering, covered, opening, closing, leaves, runTimes: { covering: first.runTime, covered: second.runTime } };
}

const source: Source = { text: 'plane geometry and constant-acceleration motion of both leaves', standing: 'derived' };

function inputsOf({ covering, covered, leaves, runTimes }: OverlapWorkings, moment: LeastLag): Input[] {
  return [
    { name: `width of ${covering.name}, which covers`, value: leaves.covering.width, unit: 'm' },
    { name: `width of ${covered.name}, which is covered`, value: leaves.covered.width, unit: 'm' },
    { name: 'overlap', value: leaves.overlap, unit: 'm' },
    { name: 'gap', value: leaves.gap, unit: 'm' },
    { name: `run time of ${covering.name}`, value: runTimes.covering, unit: 's', from: `leaf.${covering.name}.run-time` },
    { name: `run time of ${covered.name}`, value: runTimes.covered, unit: 's', from: `leaf.${covered.name}.run-time` },
    { name: `nearest when ${covering.name} is at`, value: inDegrees(moment.angleCovering), unit: 'deg' },
    { name: `and ${covered.name} is at`, value: inDegrees(moment.angleCovered), unit: 'deg' },
  ];
}

function kind(id: string, movement: 'opening' | 'closing', title: string): FigureKind {
  return {
    id,
    title,
    unit: 's',
    topic: 'timing',
    formula: 'the least delay of the second start for which the two leaves, each on its true motion, never cross',
    source,
    changedBy: 'overlap, the widths, and the speed of one leaf against the other',
    work: (installation: Installation, give: Give) => {
      const overlap = decidingOverlap(installation, movement);
      if (overlap === undefined) return;
      const lag = installation.motion?.facts.lag.find((each) => each.movement === movement);
      give('', overlap[movement].lag, lag === undefined ? factPlace(overlap.covering, overlap.covering.facts.closes) : lag.line, () => inputsOf(overlap, overlap[movement]));
    },
  };
}

export const figures: readonly FigureKind[] = [
  kind('motion.least-lag', 'opening', 'Least lag between the two starts when opening'),
  kind('motion.least-lag-closing', 'closing', 'Least lag between the two starts when closing'),
];
