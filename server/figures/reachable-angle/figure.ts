import { headPlace, type Drive } from '../../model/index.ts';
import { armOf } from '../articulated-arm/figure.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { reachableAngle } from '../linear-ram/maths.ts';
import { ramOf } from '../linear-ram/figure.ts';
import { mechanics } from '../common.ts';
import { perSubject } from '../memo.ts';

/** Farthest that a leaf is ever asked to open; where a drive could go on, the figure says this much. Radians. */
const farthest = Math.PI;

export interface Reach {
  /** Radians. */
  readonly angle: number;
  /** What ends the travel there. */
  readonly endedBy: 'stroke' | 'dead point' | 'rotation' | 'arms';
  readonly inputs: () => readonly Input[];
}

/** How far a drive can open its swing leaf. */
export const reachOf = perSubject((drive: Drive): Reach | undefined => {
  const facts = drive.model?.facts;
  if (facts?.kind === undefined || drive.leaf?.facts.opens === undefined) return undefined;
  switch (facts.kind.value) {
    case 'linear-ram': {
      const ram = ramOf(drive);
      const stroke = facts.stroke?.value;
      if (ram === undefined || stroke === undefined) return undefined;
      const angle = reachableAngle(ram.mounting, stroke, farthest);
      if (angle === undefined) return undefined;
      const dead = ram.deadPoint !== undefined && angle >= ram.deadPoint - 1e-9;
      return { angle, endedBy: dead ? 'dead point' : 'stroke', inputs: () => [{ name: 'stroke that the ram has', value: stroke, unit: 'm', from: `drive-model ${drive.model?.name ?? ''}` }] };
    }
    case 'articulated-arm': {
      const arm = armOf(drive);
      if (arm === undefined) return undefined;
      return { angle: arm.reach ?? 0, endedBy: arm.deadPoint === undefined ? 'arms' : 'dead point', inputs: () => [] };
    }
    case 'direct': {
      const rotation = facts.rotation?.value;
      return rotation === undefined ? undefined : { angle: rotation, endedBy: 'rotation', inputs: () => [{ name: 'rotation of the shaft', value: inDegrees(rotation), unit: 'deg', from: `drive-model ${drive.model?.name ?? ''}` }] };
    }
    case 'rack':
      return undefined;
  }
});

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.reachable-angle',
    title: 'How far the drive can open the leaf',
    unit: 'deg',
    topic: 'travel',
    formula: 'the angle at which a ram’s stroke is used up or a dead point is met; for an arm, at most the opening asked for; for a shaft in the hinge, its rotation',
    source: mechanics,
    changedBy: 'the brackets, or a drive with more stroke',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const reach = reachOf(drive);
        if (reach !== undefined) give(drive.name, inDegrees(reach.angle), headPlace(drive), reach.inputs);
      }
    },
  },
];
