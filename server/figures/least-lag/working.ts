import { type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { motionOf } from '../run-time/working.ts';
import { type LeastLag, leastLag, type OverlappingLeaves } from './maths.ts';

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
  for (const overlap of overlapsOf(installation))
    if (deciding === undefined || overlap[movement].lag > deciding[movement].lag) deciding = overlap;
  return deciding;
}

function overlapOf(covering: Leaf, covered: Leaf): OverlapWorkings | undefined {
  const { closes, width, opens } = covering.facts;
  const coveredWidth = covered.facts.width;
  // Both must swing to the same side; a sliding leaf has no such lag.
  if (
    closes === undefined ||
    width === undefined ||
    coveredWidth === undefined ||
    opens === undefined ||
    opens.way !== covered.facts.opens?.way
  )
    return undefined;
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
  return opening === undefined || closing === undefined
    ? undefined
    : { covering, covered, opening, closing, leaves, runTimes: { covering: first.runTime, covered: second.runTime } };
}
