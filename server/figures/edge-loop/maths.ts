// Resistors that end an edge loop: side by side, one behind the other, and the values that are made.
//
// SI throughout: ohms; a tolerance is a share (0.05 is ± 5 %).

/** A resistance and how far the real one may be from it. */
export interface Resistor {
  /** In ohms, 0 or above. */
  readonly resistance: number;
  /** A share, from 0 to below 1. */
  readonly tolerance: number;
}

/** The least and the greatest resistance that a part may have, in ohms. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

const possible = (resistance: number): boolean => resistance >= 0;

/**
 * Resistance in ohms of resistors side by side: 1/R = Σ 1/Rᵢ. None at all is an open line and gives Infinity, as does
 * Infinity for a part; a part of 0 ohms shorts all others. Undefined where a resistance is below 0 or not a number.
 * Source: Kirchhoff’s laws.
 */
export function parallel(resistances: readonly number[]): number | undefined {
  let conductance = 0;
  for (const resistance of resistances) {
    if (!possible(resistance)) return undefined;
    conductance += 1 / resistance;
  }
  return 1 / conductance;
}

/**
 * Resistance in ohms of resistors one behind the other: R = Σ Rᵢ; 0 for none. Undefined where a resistance is below 0 or
 * not a number. Source: Kirchhoff’s laws.
 */
export function series(resistances: readonly number[]): number | undefined {
  let sum = 0;
  for (const resistance of resistances) {
    if (!possible(resistance)) return undefined;
    sum += resistance;
  }
  return sum;
}

/** What a resistor may really have. Undefined where the resistance is below 0 or the tolerance is not from 0 to below 1. */
export function bandOf({ resistance, tolerance }: Resistor): Band | undefined {
  if (!possible(resistance) || !(tolerance >= 0 && tolerance < 1)) return undefined;
  return { low: resistance * (1 - tolerance), high: resistance * (1 + tolerance) };
}

/**
 * What resistors side by side may have together, in the worst case; it grows with each of them, so the ends do it. Undefined as for its
 * parts.
 */
export function parallelBand(resistors: readonly Resistor[]): Band | undefined {
  const conductance = { most: 0, least: 0 };
  for (const resistor of resistors) {
    const band = bandOf(resistor);
    if (band === undefined) return undefined;
    conductance.most += 1 / band.low;
    conductance.least += 1 / band.high;
  }
  return { low: 1 / conductance.most, high: 1 / conductance.least };
}

/**
 * What a loop may show in each of its states, in ohms: the worst case of its parts. In `open` the greatest is Infinity.
 * `doubled` is the loop with a second terminator by mistake.
 */
export interface LoopStates {
  readonly rest: Band;
  readonly pressed: Band;
  readonly open: Band;
  readonly doubled: Band;
}

export interface LoopParts {
  readonly terminator: Resistor;
  /** Cable there and back with its conductors warm, ohms. */
  readonly cable: number;
  /** Greatest resistance of an edge while it is pressed, ohms. */
  readonly pressed: number;
  /** Least resistance of damp across the line, ohms; Infinity for dry. */
  readonly leakage: number;
  /** Tolerance of the panel's own resistor, a share: it makes every loop look that much greater or smaller. */
  readonly panel: number;
}

/** The states of a loop with one terminator. Undefined where a part makes no sense. Source: Kirchhoff’s laws. */
export function statesOf({ terminator, cable, pressed, leakage, panel }: LoopParts): LoopStates | undefined {
  const band = bandOf(terminator);
  if (band === undefined || !(cable >= 0) || !(pressed >= 0) || !(leakage >= 0) || !(panel >= 0 && panel < 1)) return undefined;
  const damp = (resistance: number): number => 1 / (1 / resistance + 1 / leakage);
  const seen = (low: number, high: number): Band => ({ low: low / (1 + panel), high: high / (1 - panel) });
  return {
    rest: seen(damp(band.low), band.high + cable),
    pressed: seen(0, pressed + cable),
    // A cut next to the terminator leaves all the damp.
    open: seen(leakage, Number.POSITIVE_INFINITY),
    doubled: seen(damp(band.low / 2), band.high / 2 + cable),
  };
}

/**
 * Voltage in V at an input: U = Us·RL/(RP + RL), of `supply` V over `pull` ohm with `loop` ohm to the common; that of the supply for an
 * open loop. Source: Kirchhoff’s laws.
 */
export function dividerVoltage(supply: number, pull: number, loop: number): number {
  return loop === Number.POSITIVE_INFINITY ? supply : (supply * loop) / (pull + loop);
}

/** True where two bands share a value. */
export const overlap = (one: Band, other: Band): boolean => one.low <= other.high && other.low <= one.high;

/** Values of one decade, as whole numbers: of two digits for E12 and E24, of three for E96. Source: IEC 60063. */
export const decades = {
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
  // E96 is the rounded geometric series without exception; E12 and E24 are not.
  E96: Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96))),
} as const satisfies Readonly<Record<string, readonly number[]>>;
export type Series = keyof typeof decades;

/** The tolerance that belongs to each series, as a share. Source: IEC 60063. */
export const toleranceOf: Readonly<Record<Series, number>> = { E12: 0.1, E24: 0.05, E96: 0.01 };

/**
 * The value of a series that is nearest to `resistance` (ohms, above 0 and finite) by ratio, in ohms. Undefined for
 * anything else. Source: IEC 60063.
 */
export function nearestStandard(resistance: number, of: Series): number | undefined {
  if (!(resistance > 0) || !Number.isFinite(resistance)) return undefined;
  const decade = decades[of];
  const first = decade[0];
  const power = Math.floor(Math.log10(resistance / first));
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  // One decade more on either side: the nearest value may lie across the border, and the logarithm may be a hair off.
  for (let exponent = power - 1; exponent <= power + 1; exponent++)
    for (const digits of decade) {
      const value = exponent < 0 ? digits / 10 ** -exponent : digits * 10 ** exponent;
      const distance = Math.abs(Math.log(value / resistance));
      if (distance < least) {
        least = distance;
        best = value;
      }
    }
  return best;
}

/** True when a resistance in ohms is a value of the series, but for rounding. */
export function isStandard(resistance: number, of: Series): boolean {
  return Math.abs((nearestStandard(resistance, of) ?? Number.NaN) / resistance - 1) < 1e-9;
}
