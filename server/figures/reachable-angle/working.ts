import { type Drive, perSubject } from '../../model/index.ts';
import { armOf } from '../articulated-arm/working.ts';
import { ramOf, reachableAngle } from '../linear-ram/working.ts';

/** Farthest that a leaf is ever asked to open; where a drive could go on, the figure says this much. Radians. */
const farthest = Math.PI;

export interface Reach {
  /** Radians. */
  readonly angle: number;
  /** What of the drive ends the travel there; undefined for a ram’s stroke and a dead point, of which figures of their own tell. */
  readonly endedBy: 'rotation' | 'arms' | undefined;
}

/** How far a drive can open its swing leaf. */
export const reachOf = perSubject((drive: Drive): Reach | undefined => {
  const { leaf, model } = drive;
  if (model?.facts.kind === undefined || leaf?.facts.opens === undefined) return undefined;
  const { facts } = model;
  switch (model.facts.kind.value) {
    case 'linear-ram': {
      const ram = ramOf(drive);
      const stroke = facts.stroke?.value;
      if (ram === undefined || stroke === undefined) return undefined;
      const angle = reachableAngle(ram.mounting, stroke, farthest);
      return angle === undefined ? undefined : { angle, endedBy: undefined };
    }
    case 'articulated-arm': {
      const arm = armOf(drive);
      return arm === undefined ? undefined : { angle: arm.reach ?? 0, endedBy: arm.deadPoint === undefined ? 'arms' : undefined };
    }
    case 'direct': {
      const rotation = facts.rotation?.value;
      return rotation === undefined ? undefined : { angle: rotation, endedBy: 'rotation' };
    }
    case 'rack':
      return undefined;
  }
});
