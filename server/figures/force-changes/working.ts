// Where the window is empty or narrow: which fact would open it. Each change is tried on the numbers themselves, a little
// at a time, and only those that do open it are told.
import { type ForceCase, settingWindow } from '../force-window/working.ts';
import { mostHingeGuard } from '../hinge-gap/working.ts';
import { ramMountingOf, reachableAngle } from '../linear-ram/working.ts';
import { ramLinkage } from '../linkage/working.ts';
import { gripsWith, infillOf, workingPressureOf } from '../wind/working.ts';

interface Attempt {
  /** The case with `share` (above 0, at most 1) of the furthest change; undefined where that cannot be. */
  readonly change: (of: ForceCase, share: number) => ForceCase | undefined;
  /** The fact as the file would state it. */
  readonly says: (of: ForceCase, share: number) => string;
}

const millimetres = (metres: number): string => `${Math.ceil(metres * 1000 - 1e-6)} mm`;
const shortened = (value: number): string => String(Number(value.toPrecision(3)));

/** From none as far as a guard at the hinge counts, and to all but the last tenth of a narrow leaf. */
const guardTo = (of: ForceCase, share: number): number => Math.max(of.guard ?? 0, share * Math.min(0.9 * of.width, mostHingeGuard));
/** Down to a fifth, below which the coefficient of a lattice does not hold. */
const leastInfill = 0.2;
const infillTo = (of: ForceCase, share: number): number => infillOf(of.subject) - share * Math.max(0, infillOf(of.subject) - leastInfill);
const bracketBy = (share: number): number => 0.1 * share;

const attempts: readonly Attempt[] = [
  {
    change: (of, share) => (of.swing && guardTo(of, share) > (of.guard ?? 0) ? { ...of, guard: guardTo(of, share) } : undefined),
    says: (of, share) => `a guard at the hinge side out to ${millimetres(guardTo(of, share))} (hinge-guard)`,
  },
  {
    change: (of, share) => {
      const height = of.subject.facts.height?.value;
      if (of.wind === 0 || height === undefined) return undefined;
      const grips = gripsWith(of.subject, of.width, height, infillTo(of, share));
      return grips === undefined
        ? undefined
        : { ...of, wind: workingPressureOf(of.subject.installation) * Math.max(grips.moving.moment, grips.closed.moment) };
    },
    says: (of, share) =>
      `an infill of at most ${Math.floor(infillTo(of, share) * 100)} %${infillTo(of, share) < 0.8 ? ' (from memory)' : ''}`,
  },
  {
    change: (of, share) => (of.wind === 0 ? undefined : { ...of, wind: of.wind * (1 - share) * (1 - share) }),
    says: (of, share) => {
      const speed = Math.floor((of.subject.installation.site?.facts['working-wind']?.value ?? 0) * (1 - share) * 10) / 10;
      return speed === 0 ? 'no use in wind (no working-wind)' : `no use in gusts above ${shortened(speed)} m/s (working-wind)`;
    },
  },
  {
    change: (of, share) => (of.acceleration === 0 ? undefined : { ...of, acceleration: of.acceleration / (1 + 5 * share) }),
    says: (of, share) =>
      `a softer start (a ramp of ${shortened(Math.ceil((of.drive.model?.facts.ramp?.value ?? 0) * (1 + 5 * share) * 10) / 10)} s)`,
  },
  {
    // Nothing moves without friction; a fifth of it is what new hinges or rollers may leave.
    change: (of, share) => (of.subject.facts.friction === undefined ? undefined : { ...of, friction: of.friction * (1 - 0.8 * share) }),
    says: (of, share) =>
      `hinges or rollers that go lighter (friction ${Math.floor((of.subject.facts.friction?.value ?? 0) * (1 - 0.8 * share) + 1e-9)} N)`,
  },
  {
    change: (of) => (of.relieved ? undefined : { ...of, relieved: true }),
    says: () => 'a drive that notices an obstacle and lets go (senses-obstacles)',
  },
  {
    change: (of, share) => withEdge(of, (stop) => stop.distance <= stop.deformation + share * 0.1),
    says: (of, share) =>
      `an edge with ${millimetres(Math.max(...edgesThatFail(of).map((stop) => Math.min(stop.distance, stop.deformation + share * 0.1))))} of deformation`,
  },
  {
    // Reaction and braking distance shrink with the speed and its square.
    change: (of, share) => withEdge(of, (stop) => slowed(stop, 1 - 0.8 * share) <= stop.deformation),
    says: (_, share) => `${Math.floor((1 - 0.8 * share) * 100)} % of the speed, as by a slower and longer slow zone`,
  },
  {
    change: (of, share) => movedBracket(of, 0, bracketBy(share)),
    says: (of, share) =>
      `a longer lever, by a post bracket ${millimetres((of.drive.facts['post-bracket']?.out ?? 0) + bracketBy(share))} out instead of ${millimetres(of.drive.facts['post-bracket']?.out ?? 0)}`,
  },
  {
    change: (of, share) => movedBracket(of, bracketBy(share), 0),
    says: (of, share) =>
      `a longer lever, by a post bracket ${millimetres((of.drive.facts['post-bracket']?.along ?? 0) + bracketBy(share))} behind the hinge instead of ${millimetres(of.drive.facts['post-bracket']?.along ?? 0)}`,
  },
];

interface FailingEdge {
  readonly way: 'closing' | 'opening';
  readonly distance: number;
  readonly deformation: number;
  readonly reaction: number;
  readonly edgeSpeed: number;
}

function edgesThatFail(of: ForceCase): FailingEdge[] {
  return (['closing', 'opening'] as const).flatMap((way) => {
    const stop = of.stops[way];
    return stop?.deformation === undefined || of[way].edge
      ? []
      : [{ way, distance: stop.distance, deformation: stop.deformation, reaction: stop.reaction, edgeSpeed: stop.edgeSpeed }];
  });
}

function withEdge(of: ForceCase, stopsInTime: (stop: FailingEdge) => boolean): ForceCase | undefined {
  let changed: ForceCase | undefined;
  for (const stop of edgesThatFail(of))
    if (stopsInTime(stop)) changed = { ...(changed ?? of), [stop.way]: { ...of[stop.way], edge: true } };
  return changed;
}

function slowed(stop: FailingEdge, share: number): number {
  const reacting = stop.edgeSpeed * stop.reaction;
  return reacting * share + (stop.distance - reacting) * share * share;
}

function movedBracket(of: ForceCase, along: number, out: number): ForceCase | undefined {
  const mounting = ramMountingOf(of.drive);
  const opening = of.subject.facts.opens?.angle;
  const stroke = of.drive.model?.facts.stroke?.value;
  if (mounting === undefined || opening === undefined || stroke === undefined) return undefined;
  const moved = { ...mounting, along: mounting.along + along, out: mounting.out + out };
  const linkage = reachableAngle(moved, stroke, opening) === opening ? ramLinkage(moved, opening) : undefined;
  return linkage === undefined ? undefined : { ...of, linkage };
}

/** Halvings of the way to the smallest change: a thirty-second part of the furthest. */
const halvings = 5;

/** About the smallest share of a change that makes the window at least `wide`; undefined where neither all nor half of it does. */
function smallest(of: ForceCase, attempt: Attempt, wide: number): number | undefined {
  const opens = (share: number): boolean => {
    const changed = attempt.change(of, share);
    return changed !== undefined && isWide(changed, wide);
  };
  // A bracket moved too far can be worse again, so half the way is tried as well.
  let found = opens(1) ? 1 : opens(0.5) ? 0.5 : undefined;
  if (found === undefined) return undefined;
  let low = 0;
  for (let round = 0; round < halvings; round++) {
    const middle: number = (low + found) / 2;
    if (opens(middle)) found = middle;
    else low = middle;
  }
  return found;
}

/** True when a window is there and its greatest setting is at least `wide` times its least. */
export function isWide(of: ForceCase, wide: number): boolean {
  const { low, high } = settingWindow(of);
  return high >= low * wide;
}

/** Changes that open the window to `wide`, in words for a list: each by itself, or where none does so `alone`, pairs that do together. */
export function changesThatOpen(of: ForceCase, wide: number): { readonly alone: boolean; readonly changes: readonly string[] } {
  const single = attempts.flatMap((attempt) => {
    const share = smallest(of, attempt, wide);
    return share === undefined ? [] : [attempt.says(of, share)];
  });
  if (single.length > 0) return { alone: true, changes: single };
  const pairs: string[] = [];
  for (const [i, first] of attempts.entries())
    for (const second of attempts.slice(i + 1)) {
      // Half way with the first, then as much of the second as it takes.
      for (const share of [0.5, 1]) {
        const changed = first.change(of, share);
        const more = changed === undefined ? undefined : smallest(changed, second, wide);
        if (changed === undefined || more === undefined) continue;
        pairs.push(`${first.says(of, share)} together with ${second.says(changed, more)}`);
        break;
      }
      if (pairs.length >= 2) return { alone: false, changes: pairs };
    }
  return { alone: false, changes: pairs };
}
