// What a lead-acid battery gives, and what sun fills it again. SI: coulombs, amperes, seconds, watts, joules.

/** A capacity and the time in which the battery is emptied to give it. */
export interface Capacity {
  /** Coulombs. */
  readonly charge: number;
  /** Seconds. */
  readonly time: number;
}

/** Peukert exponent taken where the data sheet gives one capacity only, from memory (lead-acid). */
export const usualExponent = 1.25;

/**
 * Time in s until a battery of `capacity` is empty at `current` A: t = H·(C/(I·H))^k. Infinite at no current; undefined where
 * a value makes no sense. Source: Peukert’s law with the capacity rated at H hours.
 */
export function dischargeTime({ charge, time }: Capacity, current: number, exponent: number): number | undefined {
  if (!(charge > 0) || !(time > 0) || !(current >= 0) || !(exponent >= 1)) return undefined;
  return time * (charge / (current * time)) ** exponent;
}

/** Coulombs that the battery gives at `current` A: never more than its capacity, which a current below the rated one does not raise. */
export function chargeAt(capacity: Capacity, current: number, exponent: number): number | undefined {
  const time = dischargeTime(capacity, current, exponent);
  if (time === undefined) return undefined;
  return current === 0 ? capacity.charge : Math.min(capacity.charge, current * time);
}

/** Peukert exponent from two ratings of one battery: k = ln(t1/t2)/ln(I2/I1), at least 1; undefined where the two do not differ. */
export function exponentFrom(one: Capacity, other: Capacity): number | undefined {
  const exponent = Math.log(one.time / other.time) / Math.log(other.charge / other.time / (one.charge / one.time));
  return Number.isFinite(exponent) && exponent > 0 ? Math.max(1, exponent) : undefined;
}

/** How much more capacity a cold battery needs: °F and factor. Source: simplified IEEE method for lead-acid banks. */
const cold: readonly (readonly [fahrenheit: number, factor: number])[] = [
  [80, 1],
  [70, 1.04],
  [60, 1.11],
  [50, 1.19],
  [40, 1.3],
  [30, 1.4],
  [20, 1.59],
];

/** Where that table ends, K: 20 °F. */
export const coldest = ((20 + 459.67) * 5) / 9;

/**
 * That factor at a temperature in K, straight between the values of the table: 1 above 80 °F, 1.59 below 20 °F, where it should be more.
 */
export function coldFactor(kelvin: number): number {
  const fahrenheit = (kelvin * 9) / 5 - 459.67;
  const first = cold[0] as readonly [number, number];
  if (fahrenheit >= first[0]) return first[1];
  for (let i = 1; i < cold.length; i++) {
    const [to, high] = cold[i] as readonly [number, number];
    const [from, low] = cold[i - 1] as readonly [number, number];
    if (fahrenheit >= to) return low + ((high - low) * (from - fahrenheit)) / (from - to);
  }
  return 1.59;
}

/** Capacity in C for `daily` C a day over `days` with a share `discharge` of it used: daily·days·fT/DoD. Source: simplified IEEE method. */
export function capacityNeeded(daily: number, days: number, discharge: number, factor: number): number {
  return (daily * days * factor) / discharge;
}

/** C a day: what is drawn all day, and what each of `cycles` movements back and forth draws, C. */
export function dailyCharge(standby: number, cycles: number, cycleCharge: number): number {
  return standby * 24 * 3600 + cycles * cycleCharge;
}

/** Joules a day that a solar panel of `peak` W gives with `sun` s of full sun a day and a share `efficiency` left: Wp·PSH·η. */
export function solarYield(peak: number, sun: number, efficiency: number): number {
  return peak * sun * efficiency;
}

/** Rated W of a solar panel for `daily` J a day: Wp = Wh/(PSH·η). */
export function solarNeeded(daily: number, sun: number, efficiency: number): number {
  return daily / (sun * efficiency);
}
