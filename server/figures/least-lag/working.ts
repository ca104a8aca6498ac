import { type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { motionOf } from '../run-time/working.ts';
import { type LeastLag, leastLag, neededToPass, type OverlappingLeaves } from './maths.ts';

/**
 * By which share of its time wind, wear and cold may make the first leaf slower and the second quicker, and how far apart, in seconds, two
 * drives may start that are told to at the same moment. Common practice, no source.
 */
export const spread = 0.05;
export const startsApart = 0.2;

export interface OverlapWorkings {
  /** The leaf that covers the other: it opens first and closes last. */
  readonly covering: Leaf;
  readonly covered: Leaf;
  /** With what wind, wear and cold may take away, so that it is above 0 for any two leaves. */
  readonly opening: LeastLag;
  readonly closing: LeastLag;
  /** With both drives exactly as they are stated: below it the leaves surely meet. */
  readonly exact: { readonly opening: LeastLag; readonly closing: LeastLag };
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
  const openingInHand = inHand(leastLag(leaves, 'opening', spread));
  const closingInHand = inHand(leastLag(leaves, 'closing', spread));
  if (opening === undefined || closing === undefined || openingInHand === undefined || closingInHand === undefined) return undefined;
  return {
    covering,
    covered,
    opening: openingInHand,
    closing: closingInHand,
    exact: { opening, closing },
    leaves,
    runTimes: { covering: first.runTime, covered: second.runTime },
  };
}

const inHand = (least: LeastLag | undefined): LeastLag | undefined =>
  least === undefined ? undefined : { ...least, lag: least.lag + startsApart };

/** Why two leaves cannot overlap as they are said to. Lengths in metres, angles in radians. */
export type OverlapFault =
  | { readonly kind: 'one slides'; readonly swings: Leaf['facts']['opens']; readonly slides: Leaf['facts']['slides'] }
  | { readonly kind: 'two sides' }
  | { readonly kind: 'too wide'; readonly overlap: number }
  | { readonly kind: 'in the way'; readonly needed: number; readonly opens: number };

/** Undefined where they can, and where too little is stated to tell. */
export function overlapFaultOf(covering: Leaf, covered: Leaf): OverlapFault | undefined {
  const { closes, opens, slides, width } = covering.facts;
  const { opens: otherOpens, slides: otherSlides, width: otherWidth } = covered.facts;
  // A leaf that is said to do both is reported for that.
  if (closes === undefined || (opens !== undefined && slides !== undefined) || (otherOpens !== undefined && otherSlides !== undefined))
    return undefined;
  if ((opens !== undefined && otherSlides !== undefined) || (slides !== undefined && otherOpens !== undefined))
    return { kind: 'one slides', swings: opens ?? otherOpens, slides: slides ?? otherSlides };
  if (opens !== undefined && otherOpens !== undefined && opens.way !== otherOpens.way) return { kind: 'two sides' };
  if (otherWidth !== undefined && closes.overlap >= otherWidth.value) return { kind: 'too wide', overlap: closes.overlap };
  if (opens === undefined || otherOpens === undefined || width === undefined || otherWidth === undefined) return undefined;
  const needed = neededToPass(width.value, otherWidth.value, closes.overlap, closes.gap, otherOpens.angle);
  return needed !== undefined && needed > opens.angle * (1 + 1e-9) ? { kind: 'in the way', needed, opens: opens.angle } : undefined;
}
