// Values to places on paper, and round marks between.

/** Metres, and newtons, of the units that American readers have on their axes. */
export const foot = 0.3048;
export const poundForce = 4.4482216;

export interface Scale {
  readonly from: number;
  readonly to: number;
  /** The place of a value. */
  readonly at: (value: number) => number;
}

/** A straight scale from the values `low` to `high` on the places `from` to `to`; values that are all alike stand at `from`. */
export function scaleOf(low: number, high: number, from: number, to: number): Scale {
  const span = high - low;
  return { from: low, to: high, at: (value) => (span > 0 && Number.isFinite(value) ? from + ((value - low) / span) * (to - from) : from) };
}

/** The round number (1, 2 or 5 times a power of ten) nearest above `value`, which is above 0. */
export function roundAbove(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const share = value / power;
  return power * (share <= 1 + 1e-9 ? 1 : share <= 2 + 1e-9 ? 2 : share <= 5 + 1e-9 ? 5 : 10);
}

/**
 * Round values from `low` to `high`, about `count` of them; empty where there is no span. `steps` are the steps that may be taken,
 * rising; else 1, 2, 5.
 */
export function ticks(low: number, high: number, count: number, steps?: readonly number[]): number[] {
  const span = high - low;
  if (!(span > 0) || !Number.isFinite(span) || !(count >= 1)) return [];
  const step = steps?.find((each) => span / each <= count) ?? roundAbove(span / count);
  const found: number[] = [];
  const last = high + step * 1e-9;
  for (let i = Math.ceil(low / step - 1e-9); i * step <= last && found.length < 200; i++) found.push(Number((i * step).toPrecision(12)));
  return found;
}
