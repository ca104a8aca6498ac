// How hard a drive must push to move its leaf, and how hard it may push at most before somebody whom the leaf holds is
// pressed too hard; both over the whole travel.
//
// SI throughout. A swing leaf is reckoned in N·m about its hinge and kg·m², a sliding one in N and kg; a drive in N (ram,
// rack) or N·m (shaft). Positions are leaf positions from closed, in rad or m.
import { gravity } from '../leaf-load/working.ts';
import type { Linkage } from '../linkage/working.ts';

/** EN 12453, Annex A. Newtons, and metres of gap between closing edges. */
export const limits = { crush: 400, free: 1400, static: 150, leastGap: 0.05, greatestGap: 0.5 } as const;

/** Stiffness of the spring in a force gauge for gates, N/m: 500 N/mm, from memory. */
export const gaugeStiffness = 500_000;

/**
 * The greatest force in N with which a leaf of kinetic energy `energy` (J, 0 or above) can strike a spring of `stiffness`
 * (N/m, above 0) with the drive off: √(2·k·E), which is v·√(k·m). Nothing gives but the spring, so it is an upper bound.
 */
export function elasticPeak(energy: number, stiffness: number): number | undefined {
  return energy >= 0 && Number.isFinite(energy) && stiffness > 0 && Number.isFinite(stiffness)
    ? Math.sqrt(2 * stiffness * energy)
    : undefined;
}

/** What protects people in one movement. */
export interface Guarded {
  /** The leading edge has a device that stops the leaf within what the device gives. */
  readonly edge: boolean;
  /** An edge along the bottom of the leaf watches this movement. */
  readonly bottom: boolean;
  /** Presence detection lets the leaf touch nobody. */
  readonly untouched: boolean;
}

export interface Load {
  readonly swing: boolean;
  readonly linkage: Linkage;
  /** m. */
  readonly width: number;
  readonly mass: number;
  /** kg·m², or kg for a sliding leaf. */
  readonly inertia: number;
  /** Of the drive from standstill, m/s² or rad/s²; 0 where it is not known. */
  readonly acceleration: number;
  /** N·m or N, against either movement. */
  readonly friction: number;
  /** Lean of the hinge axis, rad, and the position in which the leaf hangs lowest. */
  readonly tilt: number;
  readonly lowest: number;
  /** Moment of rising hinges, or force of a sloping track: N·m or N, against opening. */
  readonly climb: number;
  /** Of the gust in which the leaf is to work: N·m or N, against either movement. */
  readonly wind: number;
  /** The leaf is guarded from the hinge out to here, m; undefined where nothing is said. */
  readonly guard: number | undefined;
  /** Room behind the open leaf, m; undefined where nothing is said. */
  readonly room: number | undefined;
  /** The drive notices the obstacle and lets go within 0.75 s. */
  readonly relieved: boolean;
  readonly closing: Guarded;
  readonly opening: Guarded;
}

/** Gravity against opening at a position, N·m or N; negative where it helps. */
export function gravityAt(load: Pick<Load, 'tilt' | 'mass' | 'width' | 'lowest' | 'climb'>, at: number): number {
  return load.climb + (load.tilt === 0 ? 0 : ((load.mass * gravity * load.width) / 2) * Math.sin(load.tilt) * Math.sin(at - load.lowest));
}

export type Way = 'opening' | 'closing';

/**
 * The least push of the drive that moves the leaf from standstill at sample `i`: ((I·a / r) + friction ± gravity + wind) / r, 0 or above.
 */
export function needed(load: Load, i: number, way: Way): number {
  const lever = load.linkage.rate[i] as number;
  const weight = gravityAt(load, load.linkage.leaf[i] as number);
  return Math.max(
    0,
    ((load.inertia * load.acceleration) / lever + load.friction + (way === 'opening' ? weight : -weight) + load.wind) / lever,
  );
}

/** The most that the limits let the drive push at a place. */
export interface Allowed {
  /** N or N·m of the drive; Infinity where no limit holds. */
  readonly push: number;
  /** Distance from the hinge of the point that decides, m. For a sliding leaf 0. */
  readonly radius: number;
  /** The limit there, N. */
  readonly limit: number;
  /** The gap there, m; undefined for the static limit, which holds at any gap. */
  readonly gap: number | undefined;
  /** Whether the point is where the gap of 50 mm begins, which is a boundary from memory. */
  readonly fromMemory: boolean;
}

const free: Allowed = { push: Infinity, radius: 0, limit: Infinity, gap: undefined, fromMemory: false };
const hair = 1e-9;
const limitAt = (gap: number): number => (gap <= limits.greatestGap + hair ? limits.crush : limits.free);

/** Distance from the hinge inside which a leaf never sweeps 50 mm over its whole travel, m. */
export const sweptRadius = (travel: number): number => limits.leastGap / (2 * Math.sin(Math.min(travel, Math.PI) / 2));

/** The most that the force limits let the drive push at sample `i`; see allowedAt. */
export const allowed = (load: Load, i: number, way: Way): Allowed =>
  allowedAt(load, load.linkage.leaf[i] as number, load.linkage.rate[i] as number, way);

/** Room between what moves and what it closes against where the movement has ended, m; Infinity where nothing is near. */
function nearOf(load: Load, way: Way): number {
  if (way === 'closing') return 0;
  const room = load.room ?? Infinity;
  return room < limits.greatestGap ? room : Infinity;
}

/**
 * The most that the force limits let the drive push where the leaf is at `at` and the drive's lever is `lever`, by the lever rule F·r =
 * push·lever at every point of the
 * leaf that people can reach. Within a gap of 50 to 500 mm the peak is 400 N, beyond 1400 N; where the drive does not let
 * go, 150 N after 0.75 s hold at every gap. As limit·r grows outwards, the innermost open point decides.
 */
export function allowedAt(load: Load, at: number, lever: number, way: Way): Allowed {
  const { edge, bottom, untouched } = load[way];
  const { swing, width, relieved, linkage } = load;
  const guard = load.guard ?? 0;
  if (untouched || (edge && (bottom || !swing)) || (swing && guard >= width)) return free;
  const travel = linkage.leaf[linkage.leaf.length - 1] as number;
  const left = way === 'closing' ? at : travel - at;
  const near = nearOf(load, way);
  if (!swing) {
    const gap = near + left;
    if (relieved && gap < limits.leastGap - hair) return free;
    const limit = relieved ? limitAt(gap) : limits.static;
    return { push: limit / lever, radius: 0, limit, gap: relieved && gap < Infinity ? gap : undefined, fromMemory: false };
  }
  const chord = 2 * Math.sin(Math.min(left, Math.PI) / 2);
  const swept = sweptRadius(travel);
  const begins = relieved && near < limits.leastGap - hair ? Math.max(swept, (limits.leastGap - near) / chord) : swept;
  // An edge along the bottom takes all out but the free edge; at the free edge itself the device there counts.
  const inner = Math.max(bottom ? width : guard, begins);
  if (inner > width + (edge ? -hair : hair)) return free;
  const radius = Math.min(inner, width);
  const gap = near + chord * radius;
  const limit = relieved ? limitAt(gap) : limits.static;
  return {
    push: (limit * radius) / lever,
    radius,
    limit,
    gap: relieved && gap < Infinity ? gap : undefined,
    fromMemory: begins > guard && radius < width - hair,
  };
}

export interface ForceWindow {
  /** The most that any place needs, and the least that any place allows: between them a setting works everywhere. */
  readonly least: { readonly push: number; readonly at: number; readonly sample: number; readonly way: Way };
  readonly most: Allowed & { readonly at: number; readonly lever: number; readonly way: Way };
}

/** The window over the whole travel, both movements. `limited` is false where other rules than EN 12453's hold: then all is allowed. */
export function windowOf(load: Load, limited: boolean): ForceWindow {
  const { leaf, rate } = load.linkage;
  let greatest = -1;
  let sample = 0;
  let greatestWay: Way = 'opening';
  let most: Allowed = free;
  let mostAt = 0;
  let mostLever = 0;
  let mostWay: Way = 'closing';
  const hold = (at: number, lever: number, way: Way): void => {
    const here = allowedAt(load, at, lever, way);
    if (here.push >= most.push) return;
    most = here;
    mostAt = at;
    mostLever = lever;
    mostWay = way;
  };
  for (const way of ways) {
    for (let i = 0; i < leaf.length; i++) {
      const push = needed(load, i, way);
      if (push > greatest) {
        greatest = push;
        sample = i;
        greatestWay = way;
      }
      if (limited) hold(leaf[i] as number, rate[i] as number, way);
    }
    if (limited) for (const at of edgesOfLimits(load, way)) hold(at, leverAt(load.linkage, at), way);
  }
  const { push, radius, limit, gap, fromMemory } = most;
  return {
    least: { push: greatest, at: leaf[sample] as number, sample, way: greatestWay },
    most: { push, radius, limit, gap, fromMemory, at: mostAt, lever: mostLever, way: mostWay },
  };
}

export const ways = ['opening', 'closing'] as const;

/**
 * Positions within the travel at which a limit begins or ends at the guard or at the free edge: between samples the lever there may be the
 * longest.
 */
function edgesOfLimits(load: Load, way: Way): number[] {
  const { swing, width, guard = width } = load;
  const travel = load.linkage.leaf[load.linkage.leaf.length - 1] as number;
  const near = nearOf(load, way);
  const found: number[] = [];
  const look = (left: number): void => {
    if (left > 0 && left < travel) found.push(way === 'closing' ? left : travel - left);
  };
  for (const limit of [limits.leastGap, limits.greatestGap]) {
    // A swing leaf sweeps a chord; of one longer than the leaf can, or of something that is too far off, there is no angle.
    const gap = limit - near;
    if (!swing) look(gap);
    else for (const radius of [guard, width]) look(2 * Math.asin(gap / (2 * radius)));
  }
  return found;
}

/** The lever at a place within the travel, taken as even from one sample to the next. */
function leverAt({ leaf, rate }: Linkage, at: number): number {
  let i = 1;
  while ((leaf[i] as number) < at) i++;
  const from = leaf[i - 1] as number;
  const share = (at - from) / ((leaf[i] as number) - from);
  return (rate[i - 1] as number) + share * ((rate[i] as number) - (rate[i - 1] as number));
}
