import { factPlace, type Installation } from '../../model/index.ts';
import { type FigureKind, type Give, type Input, inDegrees, type Source } from '../kind.ts';
import type { LeastLag } from './maths.ts';
import { decidingOverlap, type OverlapWorkings, spread, startsApart } from './working.ts';

const source: Source = {
  text: 'plane geometry and constant-acceleration motion of both leaves; what is added for wind, wear and cold: common practice, no source',
  standing: 'derived',
};

function inputsOf(
  { covering, covered, leaves, runTimes, exact }: OverlapWorkings,
  movement: 'opening' | 'closing',
  moment: LeastLag,
): Input[] {
  return [
    { name: `width of ${covering.name}, which covers`, value: leaves.covering.width, unit: 'm' },
    { name: `width of ${covered.name}, which is covered`, value: leaves.covered.width, unit: 'm' },
    { name: 'overlap', value: leaves.overlap, unit: 'm' },
    { name: 'gap', value: leaves.gap, unit: 'm' },
    { name: `run time of ${covering.name}`, value: runTimes.covering, unit: 's', from: `leaf.${covering.name}.run-time` },
    { name: `run time of ${covered.name}`, value: runTimes.covered, unit: 's', from: `leaf.${covered.name}.run-time` },
    { name: 'the same with both drives exactly as stated', value: exact[movement].lag, unit: 's' },
    { name: 'slower and quicker than stated by', value: spread, unit: '1' },
    { name: 'apart when told to start together', value: startsApart, unit: 's' },
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
    formula:
      'the least delay of the second start for which the two leaves never cross, the first 5 % slower and the second 5 % quicker than stated, and 0.2 s',
    source,
    changedBy: 'overlap, the widths, and the speed of one leaf against the other',
    work: (installation: Installation, give: Give) => {
      const overlap = decidingOverlap(installation, movement);
      if (overlap === undefined) return;
      const lag = installation.motion?.facts.lag.find((each) => each.movement === movement);
      give('', overlap[movement].lag, lag === undefined ? factPlace(overlap.covering, overlap.covering.facts.closes) : lag.line, () =>
        inputsOf(overlap, movement, overlap[movement]),
      );
    },
  };
}

export const figures: readonly FigureKind[] = [
  kind('motion.least-lag', 'opening', 'Least lag between the two starts when opening'),
  kind('motion.least-lag-closing', 'closing', 'Least lag between the two starts when closing'),
];
