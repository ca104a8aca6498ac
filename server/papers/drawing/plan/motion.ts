// How everything in the plan moves through one full cycle, for a slider. The plan is drawn closed; each entry turns or
// shifts the element of its name. What is fixed to a leaf stands within the leaf's element and is carried along by it.
import type { Installation, Steps } from '../../../model/index.ts';
import { showSi } from '../../../vocabulary/index.ts';
import { type Move, movesOf, type Phase, phasesOf } from '../../scene/cycle.ts';
import { timesOf } from '../../scene/times.ts';
import { type PlanScale, planScaleOf } from './layout.ts';

export interface Moving {
  /** `data-moves` of its element. Parts of a drive move too, and may stand within a leaf that carries them along. */
  readonly thing: string;
  /** Turns about a point of the plan (in its viewBox), or moves along it. */
  readonly motion: { readonly kind: 'turn' | 'shift'; readonly x: number; readonly y: number };
  /** Seconds, rising. */
  readonly times: readonly number[];
  /** At each of them the angle in degrees as SVG turns, or the share 0 to 1 of the shift. Between them, straight lines. */
  readonly values: readonly number[];
}

export interface Cycle {
  /** Seconds of the whole cycle, from the first warning to the last leaf at its stop: the figure `motion.cycle-time`. */
  readonly duration: number;
  /** The same as every paper writes it; absent where no dwell is stated, for then nobody knows how long a cycle takes. */
  readonly total?: string;
  /** Where no dwell is stated: seconds to the command to close, from which on all times are told. */
  readonly told?: number;
  /** Stretches of it in words. */
  readonly phases: readonly Phase[];
  readonly leaves: readonly Moving[];
}

/** Undefined where there is no plan, or no leaf whose motion can be worked out. */
export function* cycleMotion(installation: Installation): Steps<Cycle | undefined> {
  const times = timesOf(installation);
  const scale = planScaleOf(installation);
  if (times === undefined || scale === undefined) return undefined;
  const moves = yield* movesOf(installation);
  if (moves.length === 0) return undefined;
  return {
    duration: times.closed,
    ...(times.dwell === undefined ? { told: times.warns } : { total: showSi(times.closed, 's') }),
    phases: phasesOf(times),
    leaves: moves.map((move) => moving(move, scale)),
  };
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

function moving({ part, motion, times, values }: Move, { at }: PlanScale): Moving {
  const turns = motion.kind === 'turn';
  const place = turns ? at(motion.about) : { x: at(motion.by).x - at({ x: 0, y: 0 }).x, y: 0 };
  return {
    thing: part,
    motion: { kind: motion.kind, x: rounded(place.x, 3), y: rounded(place.y, 3) },
    times: times.map((time) => rounded(time, 4)),
    values: values.map((value) => rounded(value, turns ? 3 : 5)),
  };
}
