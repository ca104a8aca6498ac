import { type Leaf, perSubject } from '../../model/index.ts';
import { type GapRange, type HingeGaps, hingeGaps } from './maths.ts';

export interface HingeSide extends HingeGaps {
  /** The least and greatest were measured, and so hold for both sides. */
  readonly measured: boolean;
  /** The side on which the gap is least. */
  readonly worse: 'opening' | 'closing';
}

/**
 * As far from the hinge axis a guard at the hinge counts at most, metres: further out a whole body fits between leaf and post (EN ISO 13854:
 * 500 mm), and keeping people out there takes more than a guard.
 */
export const mostHingeGuard = 0.5;

/** How far from the hinge axis a guard keeps people out, metres; undefined where there is none. */
export function guardedFromHinge({ facts }: Leaf): number | undefined {
  const stated = facts['hinge-guard']?.value;
  return stated === undefined ? undefined : Math.min(stated, mostHingeGuard, facts.width?.value ?? mostHingeGuard);
}

/** The gaps that follow from the shape of a swing leaf and the place of its hinge; undefined where that is not stated, or impossible. */
export function shapedHingeOf({ facts }: Leaf): HingeGaps | undefined {
  const { opens, width, thickness, 'hinge-gap': gap, 'hinge-offset': offset, 'post-proud': proud } = facts;
  if (opens === undefined || gap === undefined || width === undefined || thickness === undefined || offset === undefined) return undefined;
  const hinge = {
    width: width.value,
    thickness: thickness.value,
    gap: gap.value,
    along: offset.along,
    out: offset.out,
    proud: proud?.value ?? 0,
  };
  return hingeGaps(hinge, opens.angle);
}

/** The gap at the hinge of a swing leaf; undefined where neither its shape nor what was measured is stated. */
export const hingeSideOf = perSubject((leaf: Leaf): HingeSide | undefined => {
  const { opens, 'hinge-gap': gap } = leaf.facts;
  if (opens === undefined || gap === undefined) return undefined;
  if (gap.least !== undefined && gap.greatest !== undefined) {
    const least = Math.min(gap.least, gap.value);
    const range: GapRange = { least, at: least < gap.value ? opens.angle / 2 : 0, greatest: Math.max(gap.greatest, gap.value) };
    return { opening: range, closing: range, measured: true, worse: 'opening' };
  }
  const gaps = shapedHingeOf(leaf);
  if (gaps === undefined) return undefined;
  return { ...gaps, measured: false, worse: gaps.opening.least < gaps.closing.least ? 'opening' : 'closing' };
});
