import { factPlace, headPlace, type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { fallback, mechanics } from '../common.ts';
import type { FigureKind, Input } from '../figure.ts';
import { motionOf } from '../run-time/figure.ts';

export interface CycleTimes {
  /** From the first start to the last leaf at its stop, seconds. */
  readonly opening: number;
  readonly closing: number;
  readonly preWarning: number;
  readonly lagOpening: number;
  readonly lagClosing: number;
}

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
  return { opening, closing, preWarning: facts?.['pre-warning']?.value ?? fallback.preWarning, lagOpening, lagClosing };
});

/** The second of the stated order; else the covered leaf in opening and the covering one in closing. */
export function startsSecond(leaf: Leaf, movement: 'opening' | 'closing'): boolean {
  const order = leaf.installation.motion?.facts.order.find((each) => each.movement === movement);
  if (order !== undefined) return order.leaves.length > 1 && order.leaves[0]?.text !== leaf.name;
  return movement === 'opening' ? leaf.coveredBy !== undefined : leaf.covers !== undefined;
}

const runs = ({ leaves }: Installation): Input[] =>
  leaves.flatMap((leaf) => {
    const run = motionOf(leaf)?.runTime;
    return run === undefined ? [] : [{ name: `run time of ${leaf.name}`, value: run, unit: 's', from: `leaf.${leaf.name}.run-time` }];
  });

const place = (installation: Installation): { start: number; end: number } => {
  const { motion, leaves } = installation;
  const block = motion ?? leaves[0];
  return block === undefined ? { start: 0, end: 0 } : headPlace(block);
};

export const figures: readonly FigureKind[] = [
  {
    id: 'motion.opening-time',
    title: 'Time from the first start to the whole gate open',
    unit: 's',
    topic: 'timing',
    formula: 'the greatest, over the leaves, of run time + lag when opening',
    source: mechanics,
    changedBy: 'the lag, and all that changes the run times',
    work: (installation, give) => {
      const cycle = cycleOf(installation);
      if (cycle !== undefined) give('', cycle.opening, place(installation), () => [...runs(installation), { name: 'lag opening', value: cycle.lagOpening, unit: 's' }]);
    },
  },
  {
    id: 'motion.closing-time',
    title: 'Time from the first start to the whole gate closed',
    unit: 's',
    topic: 'timing',
    formula: 'the greatest, over the leaves, of run time + lag when closing',
    source: mechanics,
    changedBy: 'the lag, and all that changes the run times',
    work: (installation, give) => {
      const cycle = cycleOf(installation);
      if (cycle !== undefined) give('', cycle.closing, place(installation), () => [...runs(installation), { name: 'lag closing', value: cycle.lagClosing, unit: 's' }]);
    },
  },
  {
    id: 'motion.cycle-time',
    title: 'Time of a whole cycle: warn, open, stand open, warn, close',
    unit: 's',
    topic: 'timing',
    formula: 'pre-warning + opening + dwell + pre-warning + closing',
    source: mechanics,
    changedBy: 'the dwell, and all that changes opening and closing',
    work: (installation, give) => {
      const cycle = cycleOf(installation);
      const dwell = installation.motion?.facts.dwell;
      if (cycle === undefined || dwell === undefined) return;
      give('', cycle.opening + cycle.closing + dwell.value + 2 * cycle.preWarning, factPlace({ at: dwell.line }, dwell), () => [
        { name: 'pre-warning', value: cycle.preWarning, unit: 's' },
        { name: 'opening', value: cycle.opening, unit: 's', from: 'motion.opening-time' },
        { name: 'dwell', value: dwell.value, unit: 's' },
        { name: 'closing', value: cycle.closing, unit: 's', from: 'motion.closing-time' },
      ]);
    },
  },
];
