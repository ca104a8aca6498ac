import { type Drive, perSubject } from '../../model/index.ts';
import { deadPoint, leverArm, type RamMounting, strokeUsed } from './maths.ts';

// For the linkage, for drawings, and for what would change if a bracket moved.
export { deadPoint, type RamMounting, ramLength, reachableAngle } from './maths.ts';

export interface RamWorkings {
  readonly mounting: RamMounting;
  /** Opening angle asked for, radians. */
  readonly opening: number;
  /** Metres. */
  readonly strokeUsed: number;
  /** The first angle within the travel at which the ram cannot move the leaf, radians. */
  readonly deadPoint: number | undefined;
  /** Smallest lever arm over the travel, metres. It lies at one end: between them the lever arm only grows and falls again. */
  readonly leastLeverArm: number;
}

/** The geometry of a linear ram's brackets over the leaf's travel. */
export const ramOf = perSubject((drive: Drive): RamWorkings | undefined => {
  const mounting = ramMountingOf(drive);
  const opening = drive.leaf === undefined ? undefined : drive.leaf.facts.opens?.angle;
  if (mounting === undefined || opening === undefined) return undefined;
  const stroke = strokeUsed(mounting, opening);
  const closed = leverArm(mounting, 0);
  const open = leverArm(mounting, opening);
  if (stroke === undefined || closed === undefined || open === undefined) return undefined;
  const dead = deadPoint(mounting, opening);
  return { mounting, opening, strokeUsed: stroke, deadPoint: dead, leastLeverArm: dead === undefined ? Math.min(closed, open) : 0 };
});

/** The mounting of a linear ram, where all of it is stated. */
export function ramMountingOf(drive: Drive): RamMounting | undefined {
  const post = drive.facts['post-bracket'];
  const bracket = drive.facts['leaf-bracket'];
  if (drive.model?.facts.kind?.value !== 'linear-ram' || post === undefined || bracket === undefined) return undefined;
  return { along: post.along, out: post.out, leafBracket: bracket.value };
}
