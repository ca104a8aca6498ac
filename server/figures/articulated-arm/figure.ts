import { type Drive, factPlace, perSubject } from '../../model/index.ts';
import { armMountingOf } from '../common.ts';
import { inDegrees, type FigureKind, type Input, type Source } from '../figure.ts';
import { armDeadPoint, newPose, poseAt, type ArmDeadPoint, type ArmMounting } from './maths.ts';

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

const fourBar: Source = { text: 'four-bar linkage, R. L. Norton, Design of Machinery, ch. 4 and 6', standing: 'published' };

function inputsOf({ mounting, opening }: ArmWorkings): Input[] {
  return [
    { name: 'shaft behind the hinge', value: mounting.along, unit: 'm' },
    { name: 'shaft towards the opening side', value: mounting.out, unit: 'm' },
    { name: 'arm on the shaft', value: mounting.driveArm, unit: 'm', from: 'the drive’s model' },
    { name: 'arm on the leaf', value: mounting.linkArm, unit: 'm', from: 'the drive’s model' },
    { name: 'leaf bracket from the hinge', value: mounting.leafBracket, unit: 'm' },
    { name: 'opening angle', value: inDegrees(opening), unit: 'deg' },
  ];
}

export const figures: readonly FigureKind[] = [
  {
    id: 'drive.NAME.shaft-turn',
    title: 'Angle that the shaft of an articulated arm turns between closed and open',
    unit: 'deg',
    topic: 'travel',
    formula: 'difference of the shaft angles of the four-bar linkage at closed and at open',
    source: fourBar,
    changedBy: 'where the shaft stands, the arms, the leaf bracket and the opening angle',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const arm = armOf(drive);
        if (arm?.shaftTurn !== undefined) give(drive.name, inDegrees(arm.shaftTurn), factPlace(drive, drive.facts.shaft), () => inputsOf(arm));
      }
    },
  },
  {
    id: 'drive.NAME.transmission-angle',
    title: 'Smallest angle between the arm on the leaf and the leaf over the travel',
    unit: 'deg',
    topic: 'travel',
    formula: 'least |θ3 − θ4| of the four-bar linkage, taken to the nearer right angle; at 0° the arm only pushes along the leaf',
    source: fourBar,
    changedBy: 'the leaf bracket and the place of the shaft',
    work: ({ drives }, give) => {
      for (const drive of drives) {
        const arm = armOf(drive);
        if (arm?.leastTransmission !== undefined) give(drive.name, inDegrees(arm.leastTransmission), factPlace(drive, drive.facts['leaf-bracket']), () => inputsOf(arm));
      }
    },
  },
];
