// Small things that several figures share.
import { factPlace, type Drive, type Installation, type Leaf } from '../model/index.ts';
import { blocks } from '../vocabulary/index.ts';
import type { Source } from './figure.ts';
import type { ArmMounting } from './articulated-arm/maths.ts';
import type { RamMounting } from './linear-ram/maths.ts';

export const mechanics: Source = { text: 'plane kinematics, any mechanics textbook', standing: 'derived' };

/** Travel of a leaf between closed and open: radians for a swing leaf, metres for a sliding one. */
export function travelOf(leaf: Leaf): number | undefined {
  return leaf.facts.opens?.angle ?? leaf.facts.slides?.distance;
}

/** The line of the leaf that says how far it opens; its head where none does. */
export function travelPlace(leaf: Leaf): { start: number; end: number } {
  return factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides);
}

/** The mounting of a linear ram, where all of it is stated. */
export function ramMountingOf(drive: Drive): RamMounting | undefined {
  const post = drive.facts['post-bracket'];
  const bracket = drive.facts['leaf-bracket'];
  if (drive.model?.facts.kind?.value !== 'linear-ram' || post === undefined || bracket === undefined) return undefined;
  return { along: post.along, out: post.out, leafBracket: bracket.value };
}

/** The mounting of an articulated arm, where all of it is stated. */
export function armMountingOf(drive: Drive): ArmMounting | undefined {
  const { shaft, 'leaf-bracket': bracket } = drive.facts;
  const arms = drive.model?.facts.arms;
  if (drive.model?.facts.kind?.value !== 'articulated-arm' || shaft === undefined || bracket === undefined || arms === undefined) return undefined;
  return { along: shaft.along, out: shaft.out, driveArm: arms.drive, linkArm: arms.link, leafBracket: bracket.value };
}

const motionLines = blocks.motion.lines;
const driveLines = blocks['drive-model'].lines;
/** What holds where a file does not say. */
export const fallback = {
  speed: motionLines.speed.slots.value.fallback,
  preWarning: motionLines['pre-warning'].slots.value.fallback,
  slowSpeed: driveLines['slow-speed'].slots.value.fallback,
  ramp: driveLines.ramp.slots.value.fallback,
  clearance: blocks.site.lines.clearance.slots.value.fallback,
  sweep: blocks['panel-model'].blocks.adjuster.lines.sweep.slots.value.fallback,
} as const;

/** For `onlyWhere`. */
export const hasCables = ({ cables }: Installation): boolean => cables.length > 0;
/** True where some drive says how hard it pushes or turns. */
export const hasPush = ({ drives }: Installation): boolean => drives.some(({ model }) => model?.facts.thrust !== undefined || model?.facts.torque !== undefined);
