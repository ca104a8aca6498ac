// The cycle at one moment: where the leaves are, and what happens, in words.
import type { CycleAnswer, CycleLeaf } from '../../server/lsp/requests.ts';

/** A moment within the cycle, in seconds. */
export const within = (cycle: CycleAnswer, time: number): number => Math.min(Math.max(Number.isFinite(time) ? time : 0, 0), cycle.duration);

/**
 * The value of a leaf at a time in seconds (degrees, or a share of 0 to 1): straight lines between its points, and as at the nearest end
 * outside of them.
 */
export function valueAt({ times, values }: Pick<CycleLeaf, 'times' | 'values'>, time: number): number {
  const after = times.findIndex((at) => at >= time);
  if (after === 0) return values[0] ?? 0;
  if (after < 0) return values[Math.min(times.length, values.length) - 1] ?? 0;
  const [from, to] = [times[after - 1] ?? 0, times[after] ?? 0];
  const [first, last] = [values[after - 1] ?? 0, values[after] ?? 0];
  return to > from ? first + ((last - first) * (time - from)) / (to - from) : last;
}

/** Short enough to read in the markup, and a thousandth of a degree or of the drawing's unit at most beside the mark. */
const round = (value: number): number => Math.round(value * 1000) / 1000;

/** The leaf's place at a time in seconds, as SVG's `transform`. */
export function transformAt(leaf: CycleLeaf, time: number): string {
  const value = valueAt(leaf, time);
  const { kind, x, y } = leaf.motion;
  return kind === 'turn' ? `rotate(${round(value)} ${round(x)} ${round(y)})` : `translate(${round(value * x)} ${round(value * y)})`;
}

/** What happens at a time in seconds; at the border of two stretches, what begins. Empty where nothing is said. */
export function phasesAt({ phases, duration }: Pick<CycleAnswer, 'phases' | 'duration'>, time: number): string[] {
  return phases.filter(({ from, to }) => from <= time && (time < to || (time >= duration && to >= duration))).map((phase) => phase.label);
}

/** In tenths, and from a hundred on in whole seconds, as the drawings write it. */
const seconds = (value: number): string => `${value.toFixed(value < 99.95 ? 1 : 0)} s`;

/** "12.3 s of 45.0 s: closing"; where nobody knows how long it stands open, "3.2 s after the command to close: closing". */
export function momentText(cycle: Pick<CycleAnswer, 'phases' | 'duration' | 'total' | 'told'>, time: number): string {
  const phases = phasesAt(cycle, time);
  const { told, total } = cycle;
  const moment =
    told !== undefined && time >= told
      ? `${seconds(time - told)} after the command to close`
      : `${seconds(time)}${total === undefined ? '' : ` of ${total}`}`;
  return `${moment}${phases.length === 0 ? '' : `: ${phases.join(', ')}`}`;
}

/**
 * The moment that comes next for those who want no motion on the screen: the end of the present stretch, so that each still
 * picture shows another one.
 */
export function nextStill({ phases, duration }: Pick<CycleAnswer, 'phases' | 'duration'>, time: number): number {
  const borders = phases.flatMap(({ from, to }) => [from, to]).filter((border) => border > time + 0.05);
  return Math.min(duration, ...borders);
}
