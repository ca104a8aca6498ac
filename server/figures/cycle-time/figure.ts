import { factPlace, headPlace, type Installation } from '../../model/index.ts';
import { type FigureKind, type Input, mechanics } from '../kind.ts';
import { motionOf } from '../run-time/working.ts';
import { cycleOf } from './working.ts';

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
      if (cycle !== undefined)
        give('', cycle.opening, place(installation), () => [
          ...runs(installation),
          { name: 'lag opening', value: cycle.lagOpening, unit: 's' },
        ]);
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
      if (cycle !== undefined)
        give('', cycle.closing, place(installation), () => [
          ...runs(installation),
          { name: 'lag closing', value: cycle.lagClosing, unit: 's' },
        ]);
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
