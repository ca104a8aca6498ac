// Where the fields of sensors lie in the plan. A file says on which edge of a leaf a sensor sits and how high it is, but not
// where it stands on the ground: what stands on the ground is put where there is room, and said to be put there.
import type { Control, Installation, Sensor } from '../../model/index.ts';
import { type Gap, onGround, type PlacedLeaf, type PlacedOpening, type Slide, type Swing } from './opening.ts';
import { between, type Point } from './point.ts';

export interface Field {
  readonly kind: 'beam' | 'curtain' | 'loop';
  readonly device: { readonly kind: 'sensor'; readonly it: Sensor } | { readonly kind: 'control'; readonly it: Control };
  /** Metres on the ground. */
  readonly left: number;
  readonly right: number;
  readonly y: number;
  readonly depth: number;
}

/** An edge, or a field that a leaf carries along. */
export interface Carried {
  readonly sensor: Sensor;
  readonly leaf: PlacedLeaf;
  readonly kind: 'edge' | 'beam' | 'curtain';
  readonly edge: NonNullable<Sensor['facts']['on']>['edge'];
}

const apart = 0.24;
const depths: Readonly<Record<Field['kind'], number>> = { beam: 0, curtain: 0.4, loop: 0.9 };

/** How far the leaves of an opening sweep to the inside (below) and to the outside (above), metres. */
function sweptDepth({ gaps }: PlacedOpening): { inside: number; outside: number } {
  let inside = 0;
  let outside = 0;
  for (const leaf of gaps.flatMap((gap) => gap.leaves)) {
    if (leaf.kind === 'slide') {
      inside = Math.max(inside, leaf.edge.y + leaf.thickness);
      continue;
    }
    const deep = leaf.width * (leaf.angle >= Math.PI / 2 ? 1 : Math.sin(leaf.angle));
    if (leaf.side === 1) inside = Math.max(inside, deep);
    else outside = Math.max(outside, deep);
  }
  return { inside, outside };
}

/** Fields that stand on the ground; they reach over the gaps that are drawn. */
export function fieldsOf(installation: Installation, opening: PlacedOpening, drawn: readonly Gap[]): Field[] {
  const first = drawn[0];
  const last = drawn[drawn.length - 1];
  if (first === undefined || last === undefined) return [];
  const swept = sweptDepth(opening);
  // On the side that the leaves sweep, fields lie beyond them; on the other, close to the line of the gate.
  const inward = swept.inside > 0.5 || swept.outside === 0;
  let beyond = (inward ? swept.inside : swept.outside) + 0.35;
  let close = 0.42;
  return groundDevices(installation).map(({ kind, device, sweptSide }) => {
    const depth = depths[kind];
    const at = sweptSide ? beyond : close;
    if (sweptSide) beyond += depth + apart;
    else close += depth + apart;
    const y = (at + depth / 2) * (sweptSide === inward ? 1 : -1);
    const inset = kind === 'loop' ? Math.min(0.5, (last.right - first.left) / 6) : 0;
    return { kind, device, left: first.left + inset, right: last.right - inset, y, depth };
  });
}

interface GroundDevice extends Pick<Field, 'kind' | 'device'> {
  /** Whether it lies on the side that the leaves sweep. */
  readonly sweptSide: boolean;
}

/** Sensors and controls that stand on the ground, in the order of the file. */
function groundDevices({ sensors, controls }: Installation): GroundDevice[] {
  const found: GroundDevice[] = [];
  for (const sensor of sensors) {
    const kind = sensor.model?.facts.kind?.value;
    if (kind === undefined || kind === 'edge' || (sensor.leaf !== undefined && sensor.facts.on !== undefined)) continue;
    const watches = sensor.facts.watches?.movements;
    const opens = watches?.includes('opening') === true && !watches.includes('closing');
    found.push({ kind, device: { kind: 'sensor', it: sensor }, sweptSide: opens || kind === 'loop' });
  }
  for (const control of controls)
    if (control.facts.by?.value === 'loop') found.push({ kind: 'loop', device: { kind: 'control', it: control }, sweptSide: true });
  return found;
}

/** Edges and fields on a leaf, in the order of the file. */
export function carriedBy(leaf: PlacedLeaf): Carried[] {
  const carried: Carried[] = [];
  for (const sensor of leaf.leaf.sensors) {
    const on = sensor.facts.on;
    const kind = sensor.model?.facts.kind?.value;
    if (on !== undefined && kind !== undefined && kind !== 'loop') carried.push({ sensor, leaf, kind, edge: on.edge });
  }
  return carried;
}

/** The two ends of the part of a leaf that an edge sits on, on the ground, with the leaf closed. */
export const edgeEnds = (leaf: PlacedLeaf, edge: Carried['edge']): readonly [Point, Point] =>
  leaf.kind === 'swing' ? swingEdgeEnds(leaf, edge) : slideEdgeEnds(leaf, edge);

function swingEdgeEnds(leaf: Swing, edge: Carried['edge']): readonly [Point, Point] {
  const { box, width } = leaf;
  const front = box.y + box.height;
  const at = (x: number, y: number): Point => onGround(leaf, x, y);
  switch (edge) {
    case 'closing-edge':
      return [at(width, box.y - 0.01), at(width, front + 0.01)];
    case 'opening-edge':
      return [at(width - 0.06, front + 0.015), at(width - 0.3, front + 0.015)];
    case 'hinge-edge':
      return [at(box.x + 0.02, front + 0.015), at(box.x + 0.26, front + 0.015)];
    case 'bottom-edge':
      return [at(box.x + 0.3, box.y + box.height / 2), at(width - 0.1, box.y + box.height / 2)];
    case 'post-edge':
      return [at(leaf.post.face, box.y), at(leaf.post.face, front)];
    case 'receiving-edge':
      return [at(width + 0.03, box.y - 0.01), at(width + 0.03, front + 0.01)];
  }
}

function slideEdgeEnds(leaf: Slide, edge: Carried['edge']): readonly [Point, Point] {
  const { edge: front, way, width, length, thickness, distance } = leaf;
  const y = front.y;
  const half = thickness / 2 + 0.02;
  switch (edge) {
    case 'closing-edge':
      return [
        { x: front.x, y: y - half },
        { x: front.x, y: y + half },
      ];
    case 'opening-edge':
    case 'hinge-edge':
      return [
        { x: front.x + way * length, y: y - half },
        { x: front.x + way * length, y: y + half },
      ];
    case 'bottom-edge':
      return [
        { x: front.x + way * 0.2, y },
        { x: front.x + way * (width - 0.2), y },
      ];
    case 'post-edge':
      // Where the leaf runs past its post: the end of the gap that it opens to.
      return [
        { x: front.x + way * distance, y: y - half - 0.05 },
        { x: front.x + way * (distance + 0.25), y: y - half - 0.05 },
      ];
    case 'receiving-edge':
      return [
        { x: front.x - way * 0.05, y: y - half },
        { x: front.x - way * 0.05, y: y + half },
      ];
  }
}

/** A point over the leaf that an edge sits on, so that its label stands on that leaf's side. */
export function besideEdge(leaf: PlacedLeaf, edge: Carried['edge']): Point {
  const [from, to] = edgeEnds(leaf, edge);
  const middle = between(from, to, 0.5);
  if (leaf.kind === 'slide') return middle;
  const back = leaf.width * 0.22 * (edge === 'hinge-edge' || edge === 'post-edge' ? 1 : edge === 'bottom-edge' ? 0 : -1);
  return { x: middle.x + leaf.along * back, y: middle.y };
}
