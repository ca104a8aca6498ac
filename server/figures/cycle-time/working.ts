import { type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { motionOf } from '../run-time/working.ts';

export interface CycleTimes {
  /** From the first start to the last leaf at its stop, seconds. */
  readonly opening: number;
  readonly closing: number;
  readonly preWarning: number;
  readonly lagOpening: number;
  readonly lagClosing: number;
}

const usualWarning = blocks.motion.lines['pre-warning'].slots.value.fallback;

/** The times of the whole gate: every driven leaf, each starting when the lags let it. */
export const cycleOf = perSubject((installation: Installation): CycleTimes | undefined => {
  const facts = installation.motion?.facts;
  const lagOpening = facts?.lag.find((lag) => lag.movement === 'opening')?.time ?? 0;
  const lagClosing = facts?.lag.find((lag) => lag.movement === 'closing')?.time ?? 0;
  let opening = 0;
  let closing = 0;
  for (const leaf of installation.leaves) {
    if (leaf.drives.length === 0) continue;
    const run = motionOf(leaf)?.runTime;
    if (run === undefined) return undefined;
    opening = Math.max(opening, run + (startsSecond(leaf, 'opening') ? lagOpening : 0));
    closing = Math.max(closing, run + (startsSecond(leaf, 'closing') ? lagClosing : 0));
  }
  if (opening === 0) return undefined;
  return { opening, closing, preWarning: facts?.['pre-warning']?.value ?? usualWarning, lagOpening, lagClosing };
});

/** The second of the stated order; else the covered leaf in opening and the covering one in closing. */
export function startsSecond(leaf: Leaf, movement: 'opening' | 'closing'): boolean {
  const order = leaf.installation.motion?.facts.order.find((each) => each.movement === movement);
  if (order !== undefined) return order.leaves.length > 1 && order.leaves[0]?.text !== leaf.name;
  return movement === 'opening' ? leaf.coveredBy !== undefined : leaf.covers !== undefined;
}
