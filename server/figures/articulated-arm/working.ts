import { type Drive, perSubject } from '../../model/index.ts';
import { type ArmDeadPoint, type ArmMounting, armDeadPoint, newPose, poseAt } from './maths.ts';

// The linkage walks along the poses; drawings show the shaft.
export { type ArmMounting, armDeadPoint, newPose, poseAt, shaftAngle } from './maths.ts';

export interface ArmWorkings {
  readonly mounting: ArmMounting;
  /** Opening angle asked for, radians. */
  readonly opening: number;
  /** Turn of the shaft over the travel, radians; undefined where the arm does not reach so far. */
  readonly shaftTurn: number | undefined;
  readonly deadPoint: ArmDeadPoint | undefined;
  /** How far the arm opens the leaf, radians, at most the opening asked for; undefined where it does not even fit when closed. */
  readonly reach: number | undefined;
  /** Smallest transmission angle over the travel, radians. */
  readonly leastTransmission: number | undefined;
}

const steps = 16;

/** The geometry of an articulated arm over the leaf's travel. */
export const armOf = perSubject((drive: Drive): ArmWorkings | undefined => {
  const mounting = armMountingOf(drive);
  const opening = drive.leaf?.facts.opens?.angle;
  if (mounting === undefined || opening === undefined) return undefined;
  const pose = newPose();
  const closed = poseAt(mounting, 0, pose) ? pose.shaft : undefined;
  // The tangent serves as well for finding the least angle.
  let least = closed === undefined ? undefined : pose.transmission;
  let open: number | undefined;
  for (let i = 1; i <= steps; i++) {
    open = poseAt(mounting, (opening * i) / steps, pose) ? pose.shaft : undefined;
    if (open !== undefined && (least === undefined || pose.transmission < least)) least = pose.transmission;
  }
  const deadPoint = armDeadPoint(mounting, opening);
  return {
    mounting,
    opening,
    shaftTurn: closed === undefined || open === undefined ? undefined : Math.abs(open - closed),
    deadPoint,
    reach: closed === undefined ? undefined : (deadPoint?.angle ?? opening),
    leastTransmission: least === undefined ? undefined : Math.atan(least),
  };
});

/** The mounting of an articulated arm, where all of it is stated. */
export function armMountingOf(drive: Drive): ArmMounting | undefined {
  const { shaft, 'leaf-bracket': bracket } = drive.facts;
  const arms = drive.model?.facts.arms;
  if (drive.model?.facts.kind?.value !== 'articulated-arm' || shaft === undefined || bracket === undefined || arms === undefined)
    return undefined;
  return { along: shaft.along, out: shaft.out, driveArm: arms.drive, linkArm: arms.link, leafBracket: bracket.value };
}
