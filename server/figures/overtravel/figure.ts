import { isEdge, isHeard, sensorsFor, watches } from '../../circuits/index.ts';
import { factPlace, perSubject, type Leaf, type Sensor } from '../../model/index.ts';
import { travelPlace } from '../common.ts';
import { inDegrees, type FigureKind, type Input, type Source } from '../figure.ts';
import { inertiaOf } from '../leaf-inertia/figure.ts';
import { motionOf, type LeafMotion } from '../run-time/figure.ts';
import type { Direction } from '../motion-profile/maths.ts';
import { greatestOvertravel, type Overtravel } from './maths.ts';

export interface EdgeStop extends Overtravel {
  readonly motion: LeafMotion;
  /** The edge that trips; undefined where the leaf has none on that side. */
  readonly edge: Sensor | undefined;
  /** How far it still gives after it has tripped, m; undefined without an edge. */
  readonly deformation: number | undefined;
  /** s. */
  readonly reaction: number;
  /** Of the drive, m/s² or rad/s². */
  readonly deceleration: number;
  /** Energy of the leaf where the edge trips, J; undefined where the mass is not known. */
  readonly energy: number | undefined;
}

/** Whether a sensor is an edge that leads in a movement of the leaf that it sits on, and stops it there. */
function leads(sensor: Sensor, leaf: Leaf, movement: Direction): boolean {
  const leading = movement === 'closing' ? 'closing-edge' : 'opening-edge';
  return sensor.facts.on?.edge === leading && isEdge(sensor) && watches(sensor, movement) && isHeard(sensor, leaf);
}

/** The slowest reaction of what is to stop the closing leaf; 0 where none is stated. */
function slowestFor(leaf: Leaf): number {
  let slowest = 0;
  for (const sensor of sensorsFor(leaf))
    if (watches(sensor, 'closing') && isHeard(sensor, leaf)) slowest = Math.max(slowest, sensor.model?.facts.reaction?.value ?? 0);
  return slowest;
}

function stopOf(leaf: Leaf, movement: Direction): EdgeStop | undefined {
  const motion = motionOf(leaf);
  const width = leaf.facts.width?.value;
  const stopsIn = motion?.model.facts['stops-in'];
  if (motion === undefined || stopsIn === undefined || width === undefined) return undefined;
  // When it is told to stop at once.
  const deceleration = motion.fullSpeed / stopsIn.value;
  let worst: EdgeStop | undefined;
  let mostBeyond = -Infinity;
  let hasEdge = false;
  for (const sensor of leaf.sensors) {
    if (!leads(sensor, leaf, movement)) continue;
    hasEdge = true;
    const { reaction, deformation } = sensor.model?.facts ?? {};
    // An edge of which this is not stated could be the worst one.
    if (reaction === undefined || deformation === undefined) return undefined;
    const found = runOn(leaf, motion, movement, width, deceleration, reaction.value, sensor, deformation.value);
    if (found === undefined) continue;
    const beyond = found.distance - deformation.value;
    if (beyond <= mostBeyond) continue;
    mostBeyond = beyond;
    worst = found;
  }
  if (hasEdge) return worst;
  // Without an edge that leads, only the closing movement is of interest: it ends on somebody.
  return movement === 'opening' ? undefined : runOn(leaf, motion, movement, width, deceleration, slowestFor(leaf), undefined, undefined);
}

function runOn(leaf: Leaf, motion: LeafMotion, movement: Direction, width: number, deceleration: number, reaction: number, edge: Sensor | undefined, deformation: number | undefined): EdgeStop | undefined {
  const swing = leaf.facts.opens !== undefined;
  const found = greatestOvertravel(motion.linkage, motion.profile, movement, reaction, deceleration, swing ? width : 1);
  if (found === undefined) return undefined;
  const heft = swing ? inertiaOf(leaf) : leaf.facts.mass?.value;
  const { distance, at, edgeSpeed, leafSpeed } = found;
  return { motion, distance, at, edgeSpeed, leafSpeed, edge, deformation, reaction, deceleration, energy: heft === undefined ? undefined : (heft * leafSpeed * leafSpeed) / 2 };
}

/** The worst stop of the closing edge while the leaf closes. */
export const closingStopOf = perSubject((leaf: Leaf) => stopOf(leaf, 'closing'));
/** The worst stop of the opening edge while the leaf opens. */
export const openingStopOf = perSubject((leaf: Leaf) => stopOf(leaf, 'opening'));

const source: Source = { text: 'constant-acceleration motion; what it is held against: ASR A1.7, section 6', standing: 'derived' };

function inputsOf(leaf: Leaf, stop: EdgeStop): Input[] {
  const swing = leaf.facts.opens !== undefined;
  const rotary = stop.motion.unit === 'rad';
  const edgeModel = `sensor-model ${stop.edge?.model?.name ?? ''}`;
  return [
    { name: 'v, speed of the edge when it trips', value: stop.edgeSpeed, unit: 'm/s' },
    swing ? { name: 'at an opening of', value: inDegrees(stop.at), unit: 'deg' } : { name: 'at an opening of', value: stop.at, unit: 'm' },
    { name: 't, reaction', value: stop.reaction, unit: 's', from: stop.edge === undefined ? 'no edge; the slowest of what else is to stop it' : edgeModel },
    { name: 'a, deceleration of the drive', value: rotary ? inDegrees(stop.deceleration) : stop.deceleration, unit: rotary ? 'deg/s²' : 'm/s²', from: `drive-model ${stop.motion.model.name}` },
    ...(stop.deformation === undefined ? [] : [{ name: 'what the edge still gives', value: stop.deformation, unit: 'm', from: edgeModel }]),
    ...(stop.energy === undefined ? [] : [{ name: 'energy of the leaf when it trips', value: stop.energy, unit: 'J' }]),
  ];
}

const words = (stop: EdgeStop): string => {
  const millimetres = (metres: number): string => `${Number((metres * 1000).toPrecision(3))} mm`;
  const energy = stop.energy === undefined ? '' : `, with ${Number(stop.energy.toPrecision(3))} J in the leaf`;
  return stop.deformation === undefined ? `No edge on that side${energy}` : `The edge gives ${millimetres(stop.deformation)}${energy}`;
};

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.overtravel',
    title: 'How far the closing edge runs on after its sensor has tripped, at the worst place while closing',
    unit: 'm',
    topic: 'impact',
    formula: 's = (u·t + u²/(2·a))·w / r: u the drive’s speed, r its lever there, w the width (for a sliding leaf w / r is 1)',
    source,
    changedBy: 'the speed most of all, then the reaction and how fast the drive stops',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const stop = closingStopOf(leaf);
        if (stop !== undefined) give(leaf.name, stop.distance, stop.edge === undefined ? travelPlace(leaf) : factPlace(stop.edge, stop.edge.facts.on), () => inputsOf(leaf, stop), () => words(stop));
      }
    },
  },
  {
    id: 'leaf.NAME.overtravel-when-opening',
    title: 'How far the edge that leads while opening runs on after its sensor has tripped, at the worst place',
    unit: 'm',
    topic: 'impact',
    formula: 's = (u·t + u²/(2·a))·w / r: u the drive’s speed, r its lever there, w the width (for a sliding leaf w / r is 1)',
    source,
    changedBy: 'the speed most of all, then the reaction and how fast the drive stops',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const stop = openingStopOf(leaf);
        if (stop?.edge !== undefined) give(leaf.name, stop.distance, factPlace(stop.edge, stop.edge.facts.on), () => inputsOf(leaf, stop), () => words(stop));
      }
    },
  },
];
