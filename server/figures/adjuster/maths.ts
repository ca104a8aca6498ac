// A rotary adjuster: a value against where its pointer stands.

export type Curve = 'linear' | 'logarithmic';

/** What an adjuster sets. Any one unit for both values. */
export interface AdjusterScale {
  /** Value at the low stop. Where turning up makes the value smaller, this is the greater of the two. */
  readonly low: number;
  /** Value at the high stop. */
  readonly high: number;
  readonly curve: Curve;
}

/** How far outside the scale, as a share of it, still counts as the stop: rounding of unit conversions. */
const rounding = 1e-9;

function isPossible({ low, high, curve }: AdjusterScale): boolean {
  const ratio = high / low;
  return low !== high && Number.isFinite(high - low) && (curve === 'linear' || (low > 0 && ratio > 0 && ratio < Infinity));
}

/**
 * Position for a value, as a share 0..1 of the sweep from the low stop.
 * Linear: equal turns add equal amounts. Logarithmic: equal turns multiply by equal ratios, so it has no zero:
 * with `low` or `high` at 0 or below there is no such scale and the answer is undefined.
 * undefined also for a value outside the scale, equal stops, or anything not a finite number.
 */
export function positionFor(scale: AdjusterScale, value: number): number | undefined {
  if (!isPossible(scale)) return undefined;
  const { low, high, curve } = scale;
  // Of a value at 0 or below there is no logarithm, and so no fraction.
  const fraction = curve === 'linear' ? (value - low) / (high - low) : Math.log(value / low) / Math.log(high / low);
  if (!(fraction >= -rounding && fraction <= 1 + rounding)) return undefined;
  return Math.min(1, Math.max(0, fraction));
}

/**
 * Value at a share 0..1 of the sweep from the low stop, in the scale's unit; undefined outside 0..1 and for an impossible scale (see
 * positionFor).
 */
export function valueAt(scale: AdjusterScale, fraction: number): number | undefined {
  if (!isPossible(scale) || !(fraction >= 0 && fraction <= 1)) return undefined;
  const { low, high, curve } = scale;
  // The stop itself, to the last digit.
  if (fraction === 1) return high;
  return curve === 'linear' ? low + (high - low) * fraction : low * Math.pow(high / low, fraction);
}

const eighths = ['', 'an eighth', 'a quarter', 'three eighths', 'a half', 'five eighths', 'three quarters', 'seven eighths'] as const;
const numbers = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'] as const;

function turns(count: number): string {
  const whole = Math.floor(count / 8);
  const part = count % 8;
  if (whole === 0) {
    if (part === 2) return 'a quarter turn';
    if (part === 4) return 'half a turn';
    return `${eighths[part]} of a turn`;
  }
  const inWords = numbers[whole] ?? String(whole);
  if (part === 0) return whole === 1 ? 'one turn' : `${inWords} turns`;
  return `${inWords} and ${eighths[part]} turns`;
}

/**
 * A position in plain English, for a hand and an eye: to the nearest eighth of a full turn (360°) from the low stop.
 * "At" a stop is said only of the stop itself; within a sixteenth of a turn of a stop, but not at it, the position is
 * "just off the low stop" or "just short of the high stop", whichever is nearer.
 * `fraction` 0..1 of the sweep, `sweep` in rad, > 0; undefined outside that.
 */
export function turnInWords(fraction: number, sweep: number): string | undefined {
  if (!(fraction >= 0 && fraction <= 1 && sweep > 0 && sweep < Infinity)) return undefined;
  if (fraction <= rounding) return 'at the low stop';
  if (fraction >= 1 - rounding) return 'at the high stop';
  const fromLow = (fraction * sweep) / (Math.PI / 4);
  const fromHigh = ((1 - fraction) * sweep) / (Math.PI / 4);
  if (fromLow < 0.5 && fromLow <= fromHigh) return 'just off the low stop';
  if (fromHigh < 0.5) return 'just short of the high stop';
  return `about ${turns(Math.round(fromLow))} from the low stop`;
}
