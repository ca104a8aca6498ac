// What flows when a line conductor touches earthed metal, and what the protective device and conductor make of it.
import type { Standing } from '../kind.ts';

export type Curve = 'B' | 'C' | 'D';

/** Times its rated current at which a breaker trips at once at the latest. Source: EN 60898-1. */
export const tripsAt: Readonly<Record<Curve, number>> = { B: 5, C: 10, D: 20 };

/** How low the voltage of a public supply may be, as a share. Source: BS 7671, 411.4.4 (Cmin). */
export const leastSupply = 0.95;

/** A voltage above this is one between two lines of a three-phase supply, V: 230 V and a tenth. */
const mostToEarth = 254;

/** Voltage to earth, V, of a circuit of `voltage` V. */
export const toEarth = (voltage: number): number => (voltage > mostToEarth ? voltage / Math.sqrt(3) : voltage);

/**
 * Greatest earth fault loop impedance, ohm, with which a device that cuts off in time from `current` A on does so at `voltage` V to
 * earth: U0·Cmin/Ia. Undefined where a value is not above 0. Source: BS 7671, 411.4.4 (a residual-current device: its rated residual
 * current).
 */
export function impedanceLimit(voltage: number, current: number): number | undefined {
  const limit = (voltage * leastSupply) / current;
  return limit > 0 && Number.isFinite(limit) ? limit : undefined;
}

/** That limit for a breaker of `rating` A: U0·Cmin/(m·In). Source: BS 7671, 411.4.4 and Table 41.3. */
export const loopImpedanceLimit = (voltage: number, curve: Curve, rating: number): number | undefined =>
  impedanceLimit(voltage, tripsAt[curve] * rating);

/** Ohm at 230 V, by rated current: up to 32 A for 0.4 s, above for 5 s. Source: BS 7671, Tables 41.2 and 41.4, gG fuses to BS 88. */
const fuses: Readonly<Record<number, number>> = {
  16: 2.42,
  20: 1.84,
  25: 1.61,
  32: 1.04,
  40: 1.7,
  50: 1.4,
  63: 1.1,
  80: 0.84,
  100: 0.67,
  125: 0.54,
};
/** The small ones of those tables, from memory. */
const smallFuses: Readonly<Record<number, number>> = { 2: 33.1, 4: 15.6, 6: 7.8, 10: 4.65 };

/**
 * Greatest earth fault loop impedance, ohm, with which a gG fuse of `rating` A cuts off in time at `voltage` V to earth. A rating that no
 * table has is held to the current below which a fuse does not melt at all (`fusingCurrent`). Undefined where a value is not above 0.
 */
export function fuseImpedanceLimit(voltage: number, rating: number): { readonly limit: number; readonly standing: Standing } | undefined {
  if (!(voltage > 0) || !(rating > 0)) return undefined;
  const published = fuses[rating];
  if (published !== undefined) return { limit: (published * voltage) / 230, standing: 'published' };
  const remembered = smallFuses[rating];
  if (remembered !== undefined) return { limit: (remembered * voltage) / 230, standing: 'from memory' };
  return { limit: voltage / fusingCurrent(rating), standing: 'published' };
}

/**
 * Current in A below which a gG fuse of `rating` A need not melt within an hour, so that it never cuts off a fault: 1.6 times its rated
 * current, 1.9 times below 16 A, 2.1 times up to 4 A. Source: IEC 60269-1 and IEC 60269-3 (conventional fusing current).
 */
export const fusingCurrent = (rating: number): number => rating * (rating >= 16 ? 1.6 : rating > 4 ? 1.9 : 2.1);

/** Earth fault loop impedance, ohm: Zs = Ze + (R1 + R2). Source: BS 7671, Part 2. */
export function loopImpedance(external: number, line: number, protective: number): number {
  return external + line + protective;
}

/**
 * Least cross-section in m² of a protective conductor that bears `current` A for `time` s (up to 5 s): S = √(I²·t)/k, with k
 * in A·√s/mm². Source: BS 7671, 543.1.3.
 */
export function protectiveConductorLeast(current: number, time: number, k: number): number {
  return ((current * Math.sqrt(time)) / k) * 1e-6;
}

/** A·√s/mm² of a copper conductor in a 70 °C thermoplastic cable. Source: BS 7671, Table 54.3. */
export const copperInPvc = 115;
/** s in which a breaker that trips at once has cut off, from memory (EN 60898-1). */
export const tripTime = 0.1;
