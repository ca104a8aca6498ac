// What a device can do by what it is, whatever is claimed of it.
import type { Leaf, Sensor } from '../model/index.ts';

export type Movement = 'closing' | 'opening' | 'pedestrian';
export const movements: readonly Movement[] = ['closing', 'opening', 'pedestrian'];

/** Ways of EN 12453 to protect: C limits the force, D sees who is there, E lets the leaf touch nobody. */
export type Measure = 'C' | 'D' | 'E';

export const isEdge = (sensor: Sensor): boolean => sensor.model?.facts.kind?.value === 'edge';

/**
 * What a sensor counts as; undefined where its model claims nothing, or what no such device can do. A loop in the ground feels
 * vehicles, not people; what has to see a person limits no force, and what has to be pressed has touched somebody already.
 */
export function measureOf(sensor: Sensor): Measure | undefined {
  const { kind, measure } = sensor.model?.facts ?? {};
  if (measure === undefined || kind?.value === 'loop') return undefined;
  if (measure.value === 'C' && (kind?.value === 'beam' || kind?.value === 'curtain')) return undefined;
  return measure.value === 'E' && kind?.value === 'edge' ? undefined : measure.value;
}

/** True when it says of the sensor that it watches that movement. */
export const watches = (sensor: Sensor, movement: Movement): boolean => sensor.facts.watches?.movements.includes(movement) === true;

/**
 * True when the sensor is meant for that movement of that leaf. One that sits on no leaf guards the whole opening; an edge has to sit on
 * one.
 */
export function isMeantFor(sensor: Sensor, leaf: Leaf, movement: Movement): boolean {
  if (!watches(sensor, movement)) return false;
  const on = sensor.facts.on;
  if (on === undefined) return !isEdge(sensor);
  if (sensor.leaf !== leaf) return false;
  if (movement !== 'opening') return on.edge === 'closing-edge';
  // A sliding leaf has no hinge.
  return on.edge === 'opening-edge' || (on.edge === 'hinge-edge' && leaf.facts.slides === undefined);
}
