import { type Drive, type DriveModel, factPlace, type Leaf, perSubject } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { type Linkage, leafAt, linkageOf } from '../linkage/working.ts';
import { type Profile, profileOf, runTime, timeAt, travelAt } from '../motion-profile/working.ts';

const motionLines = blocks.motion.lines;
const driveLines = blocks['drive-model'].lines;
/** What holds where a file does not say. */
export const fallback = {
  speed: motionLines.speed.slots.value.fallback,
  slowSpeed: driveLines['slow-speed'].slots.value.fallback,
  ramp: driveLines.ramp.slots.value.fallback,
} as const;

/** How one leaf moves from stop to stop. Opening and closing use the same profile, each from its own end. */
export interface LeafMotion {
  readonly drive: Drive;
  readonly model: DriveModel;
  readonly linkage: Linkage;
  readonly profile: Profile;
  /** Drive travel: metres of ram or rack, radians of shaft. */
  readonly travel: number;
  /** Drive travel run slowly at the end of each movement. */
  readonly slowTravel: number;
  /** What the drive can, what it is set to, and what it does in the slow zone: metres or radians a second. */
  readonly fullSpeed: number;
  readonly speed: number;
  readonly slowSpeed: number;
  /** Stop to stop, without the seat, seconds. */
  readonly runTime: number;
  readonly unit: 'm' | 'rad';
}

/** The motion of a leaf by its first drive; undefined where a fact is missing or the drive cannot make the travel. */
export const motionOf = perSubject((leaf: Leaf): LeafMotion | undefined => {
  const drive = leaf.drives[0];
  if (drive?.model?.facts.kind === undefined) return undefined;
  const { model } = drive;
  const { facts } = model;
  const kind = drive.model.facts.kind.value;
  const linkage = linkageOf(drive, kind, leaf);
  const unit = kind === 'linear-ram' || kind === 'rack' ? 'm' : 'rad';
  const full = unit === 'm' ? facts.speed?.value : facts['shaft-speed']?.value;
  if (linkage === undefined || full === undefined) return undefined;
  const motion = leaf.installation.motion?.facts;
  const zone = motion?.['slow-zone'];
  const ramp = facts.ramp?.value ?? fallback.ramp;
  const travel = linkage.drive[linkage.drive.length - 1] as number;
  const speed = full * (motion?.speed?.value ?? fallback.speed);
  const slowSpeed = full * (zone?.speed ?? facts['slow-speed']?.value ?? fallback.slowSpeed);
  const slowTravel = travel * (zone?.last ?? 0);
  const profile = profileOf({ travel, speed, acceleration: full / ramp, slowTravel, slowSpeed });
  if (profile === undefined) return undefined;
  return {
    drive,
    model,
    linkage,
    profile,
    travel,
    slowTravel,
    fullSpeed: full,
    speed,
    slowSpeed: Math.min(slowSpeed, speed),
    runTime: runTime(profile),
    unit,
  };
});

/** Whether it is stated how slow the slow zone is, by the motion or by the model of each drive of the leaf. */
export const isSlowSpeedStated = ({ drives, installation }: Leaf): boolean =>
  installation.motion?.facts['slow-zone']?.speed !== undefined ||
  drives.every(({ model }) => model === undefined || model.facts['slow-speed'] !== undefined);

/** Where the leaf stands so many seconds after it has started, from closed: radians or metres. */
export function leafAfter({ linkage, profile, travel }: LeafMotion, movement: 'opening' | 'closing', seconds: number): number | undefined {
  const driven = travelAt(profile, seconds);
  return leafAt(linkage, movement === 'opening' ? driven : travel - driven);
}

/** Seconds from the start until the slow zone begins; the whole run without one. */
export function untilSlow({ profile, travel, slowTravel, runTime: whole }: LeafMotion): number {
  return slowTravel > 0 ? timeAt(profile, travel - slowTravel) : whole;
}

/** The line of the leaf that says how far it opens; its head where none does. */
export function travelPlace(leaf: Leaf): { start: number; end: number } {
  return factPlace(leaf, leaf.facts.opens ?? leaf.facts.slides);
}
