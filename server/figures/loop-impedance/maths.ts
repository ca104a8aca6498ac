// What flows when a line conductor touches earthed metal, and what the protective device and conductor make of it.

export type Curve = 'B' | 'C' | 'D';

/** Times its rated current at which a breaker trips at once at the latest. Source: EN 60898-1. */
export const tripsAt: Readonly<Record<Curve, number>> = { B: 5, C: 10, D: 20 };

/** How low the voltage of a public supply may be, as a share. Source: BS 7671, 411.4.4 (Cmin). */
export const leastSupply = 0.95;

/**
 * Greatest earth fault loop impedance, ohm, with which a breaker of `rating` A trips at once at `voltage` V to earth:
 * U0·Cmin/(m·In). Undefined where a value is not above 0. Source: BS 7671, 411.4.4 and Table 41.3.
 */
export function loopImpedanceLimit(voltage: number, curve: Curve, rating: number): number | undefined {
  const limit = (voltage * leastSupply) / (tripsAt[curve] * rating);
  return limit > 0 && Number.isFinite(limit) ? limit : undefined;
}

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
