import { isEdge, isHeard, panelsByDrive, sensorsFor, watches } from '../../circuits/index.ts';
import { type Leaf, type Panel, perSubject, type Sensor } from '../../model/index.ts';
import { inertiaOf } from '../leaf-inertia/working.ts';
import type { Direction } from '../motion-profile/working.ts';
import { type LeafMotion, motionOf } from '../run-time/working.ts';
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

/** The panels to which the drives of a leaf are wired; in a site of one panel that one, wired or not. */
export const stoppingPanelsOf = perSubject(({ drives, installation }: Leaf): readonly Panel[] => {
  if (installation.panels.length === 1) return installation.panels;
  const byDrive = panelsByDrive(installation);
  return [...new Set(drives.flatMap((drive) => byDrive.get(drive) ?? []))];
});

/** How soon a leaf is told to stop when a control is let go, s; undefined where its panel is not known or does not say. */
export const letGoReactionOf = perSubject((leaf: Leaf): number | undefined => {
  let slowest: number | undefined;
  for (const { model } of stoppingPanelsOf(leaf)) {
    const reaction = model?.facts.reaction?.value;
    if (reaction === undefined) return undefined;
    slowest = Math.max(slowest ?? 0, reaction);
  }
  return slowest;
});

/** The slowest reaction of what is to stop the closing leaf, or of its panel where no sensor is; undefined where one is not stated. */
function slowestFor(leaf: Leaf): number | undefined {
  let slowest: number | undefined;
  for (const sensor of sensorsFor(leaf)) {
    if (!watches(sensor, 'closing') || !isHeard(sensor, leaf)) continue;
    const reaction = sensor.model?.facts.reaction?.value;
    if (reaction === undefined) return undefined;
    slowest = Math.max(slowest ?? 0, reaction);
  }
  return slowest ?? letGoReactionOf(leaf);
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
  const slowest = movement === 'opening' ? undefined : slowestFor(leaf);
  return slowest === undefined ? undefined : runOn(leaf, motion, movement, width, deceleration, slowest, undefined, undefined);
}

function runOn(
  leaf: Leaf,
  motion: LeafMotion,
  movement: Direction,
  width: number,
  deceleration: number,
  reaction: number,
  edge: Sensor | undefined,
  deformation: number | undefined,
): EdgeStop | undefined {
  const swing = leaf.facts.opens !== undefined;
  const found = greatestOvertravel(motion.linkage, motion.profile, movement, reaction, deceleration, swing ? width : 1);
  if (found === undefined) return undefined;
  const heft = swing ? inertiaOf(leaf) : leaf.facts.mass?.value;
  const { distance, at, edgeSpeed, leafSpeed } = found;
  return {
    motion,
    distance,
    at,
    edgeSpeed,
    leafSpeed,
    edge,
    deformation,
    reaction,
    deceleration,
    energy: heft === undefined ? undefined : (heft * leafSpeed * leafSpeed) / 2,
  };
}

/** The worst stop of the closing edge while the leaf closes. */
export const closingStopOf = perSubject((leaf: Leaf) => stopOf(leaf, 'closing'));
/** The worst stop of the opening edge while the leaf opens. */
export const openingStopOf = perSubject((leaf: Leaf) => stopOf(leaf, 'opening'));
