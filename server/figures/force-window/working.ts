// What the file says of the forces on one leaf, as plain numbers for maths.ts.
import { isEdge, isHeard, measureOf, missesPeople, sensorsFor, watches } from '../../circuits/index.ts';
import { type Drive, type Installation, type Leaf, perSubject, regimeOf, type Sensor } from '../../model/index.ts';
import { guardedFromHinge } from '../hinge-gap/working.ts';
import { inertiaOf } from '../leaf-inertia/working.ts';
import { gravity, risingHingeMoment, rollingShare } from '../leaf-load/working.ts';
import { closingStopOf, type EdgeStop, openingStopOf } from '../overtravel/working.ts';
import { motionOf } from '../run-time/working.ts';
import { gripsOf, infillOf, workingPressureOf } from '../wind/working.ts';
import { type ForceWindow, type Guarded, type Load, type Way, windowOf } from './maths.ts';

// The force drawing shows both sides of the window at every place.
export { allowedAt, gravityAt, limits, needed, type Way, ways } from './maths.ts';

export interface ForceCase extends Load {
  readonly subject: Leaf;
  readonly drive: Drive;
  /** The drive's unit: newtons of a ram or rack, newton metres of a shaft. */
  readonly unit: 'N' | 'N·m';
  /** The most that the drive can be set to, the least, and what it is set to where that is stated. */
  readonly greatest: number;
  readonly lowestSetting: number;
  readonly setting: number | undefined;
  /** EN 12453's force limits hold. */
  readonly limited: boolean;
  /** Numbers from memory that the least push rests on. */
  readonly leastFromMemory: boolean;
  readonly stops: { readonly closing: EdgeStop | undefined; readonly opening: EdgeStop | undefined };
}

const fits = (stop: EdgeStop | undefined): boolean => stop?.deformation !== undefined && stop.distance <= stop.deformation + 1e-9;

/** What guards a leaf in a movement, as far as the force is concerned: of devices, those that a panel heeds which stops the leaf. */
function guardedIn(leaf: Leaf, way: Way, stop: EdgeStop | undefined): Guarded {
  let bottom = false;
  let untouched = false;
  for (const sensor of sensorsFor(leaf)) {
    if (!watches(sensor, way) || !isHeard(sensor, leaf)) continue;
    if (sensor.facts.on?.edge === 'bottom-edge' && isEdge(sensor)) bottom = true;
    if (measureOf(sensor) === 'E' && !missesPeople(sensor) && (way === 'closing' || liesBehind(sensor, leaf))) untouched = true;
  }
  return { edge: fits(stop), bottom, untouched };
}

/** A field across the opening sees nobody behind the leaf that opens. */
const liesBehind = ({ facts }: Sensor, leaf: Leaf): boolean =>
  facts.on !== undefined || facts.guards.some(({ leaf: named, places }) => named.text === leaf.name && places.includes('opening-side'));

/** The forces on a leaf; undefined where its drive does not say how hard it pushes, or the leaf's motion is not known. */
export const forceCaseOf = perSubject((leaf: Leaf): ForceCase | undefined => {
  const motion = motionOf(leaf);
  const model = motion?.drive.model?.facts;
  const { width, mass, opens, slides } = leaf.facts;
  if (motion === undefined || model === undefined || width === undefined || mass === undefined) return undefined;
  const unit = motion.unit === 'm' ? 'N' : 'N·m';
  // A thrust of a shaft, or a torque of a ram, says nothing.
  const own = unit === 'N' ? model.thrust : model.torque;
  if (own === undefined) return undefined;
  const swing = opens !== undefined;
  const inertia = swing ? inertiaOf(leaf) : mass.value;
  if (inertia === undefined) return undefined;
  const ramp = model.ramp?.value ?? 0;
  const full = (unit === 'N' ? model.speed?.value : model['shaft-speed']?.value) ?? 0;
  const travel = motion.linkage.leaf[motion.linkage.leaf.length - 1] as number;
  const slope = Math.atan(leaf.facts.slope?.value ?? 0);
  const stated = leaf.facts.friction?.value;
  const pressure = workingPressureOf(leaf.installation);
  const grip = swing && pressure > 0 ? gripsOf(leaf) : undefined;
  const moment = grip === undefined ? 0 : Math.max(grip.moving.moment, grip.closed.moment);
  const tilt = swing ? leaf.facts['hinge-tilt'] : undefined;
  const share = leaf.installation.motion?.facts.force?.value;
  const closing = closingStopOf(leaf);
  const opening = openingStopOf(leaf);
  return {
    subject: leaf,
    drive: motion.drive,
    swing,
    unit,
    linkage: motion.linkage,
    width: width.value,
    mass: mass.value,
    inertia,
    acceleration: ramp > 0 ? full / ramp : 0,
    friction: stated !== undefined ? stated * (swing ? width.value : 1) : swing ? 0 : mass.value * gravity * rollingShare * Math.cos(slope),
    tilt: tilt?.value ?? 0,
    lowest: tilt?.lowest === 'open' ? travel : 0,
    climb: swing ? (risingHingeMoment(mass.value, leaf.facts.rises?.value ?? 0, travel) ?? 0) : mass.value * gravity * Math.sin(slope),
    wind: pressure * moment,
    guard: guardedFromHinge(leaf),
    room: leaf.facts['room-when-open']?.value,
    relieved: model['senses-obstacles'] !== undefined,
    closing: guardedIn(leaf, 'closing', closing),
    opening: guardedIn(leaf, 'opening', opening),
    greatest: own.greatest,
    lowestSetting: Math.min(own.least, own.greatest),
    setting: share === undefined ? undefined : share * own.greatest,
    limited: regimeOf(leaf.installation).limitsForces,
    leastFromMemory: (slides !== undefined && stated === undefined) || (moment > 0 && infillOf(leaf) < 0.8),
    stops: { closing, opening },
  };
});

export interface SettingWindow extends ForceWindow {
  readonly of: ForceCase;
  /** The window as far as the drive can be set: N or N·m. Empty where `low` is above `high`. */
  readonly low: number;
  readonly high: number;
}

/** The window of settings that the limits and the drive's own range leave. */
export function settingWindow(of: ForceCase): SettingWindow {
  const { least, most } = windowOf(of, of.limited);
  return { least, most, of, low: Math.max(least.push, of.lowestSetting), high: Math.min(most.push, of.greatest) };
}

/** The force window of a leaf, worked out once. */
export const forceWindowOf = perSubject((leaf: Leaf): SettingWindow | undefined => {
  const of = forceCaseOf(leaf);
  return of === undefined ? undefined : settingWindow(of);
});

/** True where some drive says how hard it pushes or turns. */
export const hasPush = ({ drives }: Installation): boolean =>
  drives.some(({ model }) => model?.facts.thrust !== undefined || model?.facts.torque !== undefined);
