// What a device can do by what it is and where it is, whatever is claimed of it.
import { type Installation, type Leaf, perSubject, type Sensor } from '../model/index.ts';

export type Movement = 'closing' | 'opening' | 'pedestrian';
export const movements: readonly Movement[] = ['closing', 'opening', 'pedestrian'];

/** Ways of EN 12453 to protect: C limits the force, D sees who is there, E lets the leaf touch nobody. */
export type Measure = 'C' | 'D' | 'E';

type Kind = NonNullable<NonNullable<Sensor['model']>['facts']['kind']>['value'];

/**
 * What each kind of device can be: what is pressed limits the force and has touched somebody already; what sees limits no force; one ray
 * is passed over, under and behind; a loop in the ground feels vehicles and not people. EN 12453:2000, 5.5.1 (what C, D and E are).
 */
const possible: Readonly<Record<Kind, readonly Measure[]>> = { edge: ['C'], beam: ['D'], curtain: ['D', 'E'], loop: [] };

export const isEdge = (sensor: Sensor): boolean => sensor.model?.facts.kind?.value === 'edge';

/** What a sensor counts as; undefined where its model claims nothing, what no such device can do, or does not say what it is. */
export function measureOf(sensor: Sensor): Measure | undefined {
  const { kind, measure } = sensor.model?.facts ?? {};
  return kind !== undefined && measure !== undefined && possible[kind.value].includes(measure.value) ? measure.value : undefined;
}

/**
 * Greatest height of the lowest ray at which it still meets the test body on the ground, metres: 700 mm by 300 mm by 200 mm, so that
 * 300 mm is the most that it is high however it lies. DHF, Powered Gate Myth Buster #4 (700 mm by 300 mm).
 */
export const lowestRay = 0.3;

/** True where a beam or curtain surely passes over who lies on the ground. */
export const passesOver = ({ facts }: Sensor): boolean => facts.height !== undefined && facts.height.value > lowestRay + 1e-9;

type LineOfLeaf = NonNullable<Leaf['facts']['width']>['line'];

/** A width, metres, and the lines that make it as wide as it is. */
export interface Opening {
  readonly width: number;
  readonly parts: readonly LineOfLeaf[];
}

/**
 * What a ray has to span from one side of the opening to the other: the widths of the swing leaves and the travels of the sliding ones.
 * Undefined where one is not known.
 */
export const openingOf = perSubject(({ leaves }: Installation): Opening | undefined => {
  const parts: LineOfLeaf[] = [];
  let width = 0;
  for (const { facts, unread } of leaves) {
    const part = facts.slides ?? facts.width;
    if (unread.length > 0 || part === undefined) return undefined;
    parts.push(part.line);
    width += 'distance' in part ? part.distance : part.value;
  }
  return { width, parts };
});

/** True for a field that lies on places of a leaf and not across the opening. */
const liesElsewhere = (sensor: Sensor): boolean =>
  sensor.facts.guards.length > 0 && !watches(sensor, 'closing') && !watches(sensor, 'pedestrian');

/** True where the rays of a beam or curtain of the opening surely end before its other side. */
export function endsShort(sensor: Sensor): boolean {
  const reach = sensor.model?.facts.reach;
  if (reach === undefined || sensor.facts.on !== undefined || isEdge(sensor) || liesElsewhere(sensor)) return false;
  const opening = openingOf(sensor.installation);
  return opening !== undefined && opening.width > reach.value * (1 + 1e-9);
}

/** True for one ray that a moving leaf carries along: it spans nothing. */
export const ridesAlong = ({ facts, model }: Sensor): boolean => facts.on !== undefined && model?.facts.kind?.value === 'beam';

/** True where what a sensor sees is surely not who it is there for. */
export const missesPeople = (sensor: Sensor): boolean => !isEdge(sensor) && (passesOver(sensor) || endsShort(sensor) || ridesAlong(sensor));

/** True when it says of the sensor that it watches that movement. */
export const watches = (sensor: Sensor, movement: Movement): boolean => sensor.facts.watches?.movements.includes(movement) === true;

/** The edges on which what is pressed stops a closing leaf: its own, and that of what it closes against. */
const closingEdges = new Set(['closing-edge', 'receiving-edge']);

/**
 * True when the sensor is meant for that movement of that leaf. One that sits on no leaf guards the whole opening; an edge has to sit on
 * one.
 */
export function isMeantFor(sensor: Sensor, leaf: Leaf, movement: Movement): boolean {
  if (!watches(sensor, movement)) return false;
  const on = sensor.facts.on;
  if (on === undefined) return !isEdge(sensor);
  if (sensor.leaf !== leaf) return false;
  if (movement !== 'opening') return closingEdges.has(on.edge);
  // A sliding leaf has no hinge.
  return on.edge === 'opening-edge' || (on.edge === 'hinge-edge' && leaf.facts.slides === undefined);
}
