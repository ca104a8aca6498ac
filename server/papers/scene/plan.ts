// All that stands in a plan, in metres on the ground, and how much ground it takes.
import { type Installation, type Leaf, perSubject } from '../../model/index.ts';
import { type Field, fieldsOf } from './fields.ts';
import { mostDrawn } from './limit.ts';
import { mechanismAt } from './mechanism.ts';
import { assumed, type Gap, onGround, type PlacedLeaf, type PlacedOpening, placedOpeningOf, type Slide, type Swing } from './opening.ts';
import type { Point } from './point.ts';

export interface PlanScene {
  readonly opening: PlacedOpening;
  /** The gaps that are drawn, and their leaves: the first `mostDrawn` leaves, and the other one of the last gap. */
  readonly gaps: readonly Gap[];
  readonly leaves: readonly PlacedLeaf[];
  /** Leaves of further gaps: they are told, and not drawn. */
  readonly others: readonly PlacedLeaf[];
  /** All of them; the first `mostDrawn` are drawn. */
  readonly fields: readonly Field[];
  /** The corners of the ground that what is drawn takes. */
  readonly low: Point;
  readonly high: Point;
}

/** Undefined where no leaf can be drawn. */
export const planSceneOf = perSubject((installation: Installation): PlanScene | undefined => {
  const opening = placedOpeningOf(installation);
  if (opening.gaps.length === 0) return undefined;
  let count = 0;
  let drawn = 0;
  for (; drawn < opening.gaps.length && count < mostDrawn; drawn++) count += (opening.gaps[drawn] as Gap).leaves.length;
  const gaps = opening.gaps.slice(0, drawn);
  const fields = fieldsOf(installation, opening, gaps);
  const corners = cornersOf(gaps, fields.slice(0, mostDrawn));
  return {
    opening,
    gaps,
    leaves: gaps.flatMap((gap) => gap.leaves),
    others: opening.gaps.slice(drawn).flatMap((gap) => gap.leaves),
    fields,
    low: { x: Math.min(...corners.map(({ x }) => x)), y: Math.min(...corners.map(({ y }) => y)) },
    high: { x: Math.max(...corners.map(({ x }) => x)), y: Math.max(...corners.map(({ y }) => y)) },
  };
});

function cornersOf(gaps: readonly Gap[], fields: readonly Field[]): Point[] {
  const corners: Point[] = [];
  for (const gap of gaps) {
    corners.push({ x: gap.left - assumed.pillar, y: -assumed.pillar }, { x: gap.right + assumed.pillar, y: assumed.pillar });
    for (const leaf of gap.leaves) corners.push(...(leaf.kind === 'swing' ? swingCorners(leaf) : slideCorners(leaf)));
  }
  for (const { left, right, y, depth } of fields)
    corners.push({ x: left - 0.15, y: y - depth / 2 - 0.08 }, { x: right + 0.15, y: y + depth / 2 + 0.08 });
  return corners;
}

function swingCorners(leaf: Swing): Point[] {
  const corners: Point[] = [];
  for (let i = 0; i <= 12; i++) corners.push(onGround(leaf, leaf.width, 0, (leaf.angle * i) / 12));
  const room = drawnRoomOf(leaf.leaf);
  if (room !== undefined)
    for (const x of [leaf.width * 0.35, leaf.width]) corners.push(onGround(leaf, x, wallAcross(leaf, room.value) + 0.1, leaf.angle));
  for (const drive of leaf.leaf.drives.slice(0, mostDrawn))
    for (const angle of [0, leaf.angle]) {
      const found = mechanismAt(drive, angle);
      if (found === undefined) continue;
      const points = found.kind === 'ram' ? [found.post, found.bracket] : [found.shaft, found.elbow, found.bracket];
      for (const { x, y } of points) corners.push(onGround(leaf, x, y));
    }
  return corners;
}

function slideCorners({ leaf, edge, way, length, distance, thickness }: Slide): Point[] {
  const room = drawnRoomOf(leaf);
  const end = edge.x + way * (distance + length + (room !== undefined ? room.value + 0.12 : 0));
  return [
    { x: edge.x, y: edge.y - thickness },
    { x: end, y: edge.y + 0.45 },
  ];
}

/** Beyond this a wall behind an open leaf is told, not drawn, metres. */
const farWall = 1.3;

/** The stated room between an open leaf and what stands behind it, where that is near enough to be drawn. */
export function drawnRoomOf({ facts }: Leaf): NonNullable<Leaf['facts']['room-when-open']> | undefined {
  const room = facts['room-when-open'];
  return room !== undefined && room.value <= farWall ? room : undefined;
}

/** How far from the hinge axis, across the open leaf, what stands behind it begins, metres. */
export const wallAcross = ({ box }: Swing, room: number): number => box.y + box.height + room;

/** Where what stands behind an open sliding leaf begins, along the line of the gate, metres. */
export const wallAlong = ({ edge, way, distance, length }: Slide, room: number): number => edge.x + way * (distance + length + room);
