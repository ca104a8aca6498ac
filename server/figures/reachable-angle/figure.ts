import { type Drive, headPlace, perSubject } from '../../model/index.ts';
import { armOf } from '../articulated-arm/figure.ts';
import { inDegrees, type FigureKind, type Input } from '../figure.ts';
import { reachableAngle } from '../linear-ram/maths.ts';
import { ramOf } from '../linear-ram/figure.ts';
import { mechanics } from '../common.ts';

/** Farthest that a leaf is ever asked to open; where a drive could go on, the figure says this much. Radians. */
const farthest = Math.PI;

export interface Reach {
  /** Radians. */
  readonly angle: number;
  /** What of the drive ends the travel there; undefined for a ram’s stroke and a dead point, of which figures of their own tell. */
  readonly endedBy: 'rotation' | 'arms' | undefined;
  readonly inputs: () => readonly Input[];
}

/** How far a drive can open its swing leaf. */
export const reachOf = perSubject((drive: Drive): Reach | undefined => {
  const { leaf, model } = drive;
  if (model?.facts.kind === undefined || leaf?.facts.opens === undefined) return undefined;
  const { facts } = model;
  const from = `drive-model ${model.name}`;
  switch (model.facts.kind.value) {
    case 'linear-ram': {
      const ram = ramOf(drive);
      const stroke = facts.stroke?.value;
      if (ram === undefined || stroke === undefined) return undefined;
      const angle = reachableAngle(ram.mounting, stroke, farthest);
      if (angle === undefined) return undefined;
      return { angle, endedBy: undefined, inputs: () => [{ name: 'stroke that the ram has', value: stroke, unit: 'm', from }] };
    }
    case 'articulated-arm': {
      const arm = armOf(drive);
      if (arm === undefined) return undefined;
      return { angle: arm.reach ?? 0, endedBy: arm.deadPoint === undefined ? 'arms' : undefined, inputs: () => [] };
    }
    case 'direct': {
      const rotation = facts.rotation?.value;
      return rotation === undefined ? undefined : { angle: rotation, endedBy: 'rotation', inputs: () => [{ name: 'rotation of the shaft', value: inDegrees(rotation), unit: 'deg', from }] };
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
