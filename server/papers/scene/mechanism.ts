// Where the moving parts of a drive lie. Lengths in metres, angles in radians.
import { armMountingOf, shaftAngle } from '../../figures/articulated-arm/working.ts';
import { ramLength, ramMountingOf } from '../../figures/linear-ram/working.ts';
import type { Drive } from '../../model/index.ts';
import type { Slide } from './opening.ts';
import type { Point } from './point.ts';

/** A ram, in the coordinates of its closed leaf. */
export interface RamAt {
  readonly kind: 'ram';
  readonly post: Point;
  readonly bracket: Point;
  readonly length: number;
  /** Direction from post to bracket, radians. */
  readonly direction: number;
}

/** An articulated arm, in the same coordinates. */
export interface ArmAt {
  readonly kind: 'arm';
  readonly shaft: Point;
  readonly elbow: Point;
  readonly bracket: Point;
  /** Directions of the drive arm, and of the link from the bracket back to the elbow. */
  readonly direction: number;
  readonly link: number;
}

/** The mechanism of a drive on a swing leaf, with the leaf open by `angle`; undefined where its brackets are not stated or cannot reach. */
export function mechanismAt(drive: Drive, angle: number): RamAt | ArmAt | undefined {
  const ram = ramMountingOf(drive);
  if (ram !== undefined) {
    const length = ramLength(ram, angle);
    const post = { x: -ram.along, y: ram.out };
    const bracket = { x: ram.leafBracket * Math.cos(angle), y: ram.leafBracket * Math.sin(angle) };
    if (length === undefined) return undefined;
    return { kind: 'ram', post, bracket, length, direction: Math.atan2(bracket.y - post.y, bracket.x - post.x) };
  }
  const arm = armMountingOf(drive);
  const direction = arm === undefined ? undefined : shaftAngle(arm, angle);
  if (arm === undefined || direction === undefined) return undefined;
  const shaft = { x: -arm.along, y: arm.out };
  const elbow = { x: shaft.x + arm.driveArm * Math.cos(direction), y: shaft.y + arm.driveArm * Math.sin(direction) };
  const bracket = { x: arm.leafBracket * Math.cos(angle), y: arm.leafBracket * Math.sin(angle) };
  return { kind: 'arm', shaft, elbow, bracket, direction, link: Math.atan2(elbow.y - bracket.y, elbow.x - bracket.x) };
}

/** A rack drive stands at the post that the leaf runs past, inside of it; metres on the ground. */
export const rackPlace = ({ edge, way, distance, thickness }: Slide): Point => ({
  x: edge.x + way * (distance + 0.25),
  y: edge.y + thickness / 2 + 0.03,
});
