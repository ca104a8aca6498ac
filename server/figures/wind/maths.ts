// Wind pressure on a gate by EN 1991-1-4:2005+A1: from the basic wind speed to the peak pressure, and from there to the
// force on a leaf and the moment about its hinge.
//
// SI throughout: m, m/s, Pa, N, N·m. Anything impossible gives undefined. Orography, direction and season count as 1.

/** Density of air that the standard's qb is reckoned with, kg/m³ (EN 1991-1-4, 4.5, recommended value). */
export const airDensity = 1.25;

export type Terrain = 'zero' | 'I' | 'II' | 'III' | 'IV';

/** Roughness length z0 and the height below which the profile is taken as even, zmin, both in m (EN 1991-1-4, Table 4.1). */
const categories: Readonly<Record<Terrain, { readonly roughness: number; readonly least: number }>> = {
  zero: { roughness: 0.003, least: 1 },
  I: { roughness: 0.01, least: 1 },
  II: { roughness: 0.05, least: 2 },
  III: { roughness: 0.3, least: 5 },
  IV: { roughness: 1, least: 10 },
};

const above = (value: number): boolean => Number.isFinite(value) && value > 0;
const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;

/** Pressure of air at `speed` (m/s, 0 or above) brought to rest: ½ρv², Pa. */
export function dynamicPressure(speed: number): number | undefined {
  return amount(speed) ? (airDensity * speed * speed) / 2 : undefined;
}

/**
 * Factor on the basic wind speed for a wind that is passed once in `years` (above 1): EN 1991-1-4, 4.2, note 4, with
 * K = 0.2 and n = 0.5. 1 for 50 years.
 */
export function probabilityFactor(years: number): number | undefined {
  if (!(years > 1) || !Number.isFinite(years)) return undefined;
  const share = (chance: number): number => 1 - 0.2 * Math.log(-Math.log(1 - chance));
  return Math.sqrt(share(1 / years) / share(0.02));
}

export interface WindAtHeight {
  /** kr, from the roughness of the terrain. */
  readonly terrainFactor: number;
  /** cr, mean speed as a share of the basic speed. */
  readonly roughnessFactor: number;
  /** vm, ten-minute mean, m/s. */
  readonly mean: number;
  /** Iv. */
  readonly turbulence: number;
  /** qp, Pa. */
  readonly peakPressure: number;
  /** The speed whose dynamic pressure is qp: that of a short gust, m/s. */
  readonly gust: number;
}

/**
 * The wind at `height` (m, 0 or above) over a terrain for the basic speed `basic` (m/s, 0 or above), EN 1991-1-4, 4.3 to 4.5:
 * kr = 0.19·(z0/0.05)^0.07, cr = kr·ln(z/z0), vm = cr·vb, Iv = 1/ln(z/z0), qp = (1 + 7·Iv)·½ρ·vm². Below zmin as at zmin.
 */
export function windAt(terrain: Terrain, basic: number, height: number): WindAtHeight | undefined {
  if (!amount(basic) || !amount(height)) return undefined;
  const { roughness, least } = categories[terrain];
  const logarithm = Math.log(Math.max(height, least) / roughness);
  const terrainFactor = 0.19 * Math.pow(roughness / 0.05, 0.07);
  const roughnessFactor = terrainFactor * logarithm;
  const mean = roughnessFactor * basic;
  const turbulence = 1 / logarithm;
  const gusts = 1 + 7 * turbulence;
  return {
    terrainFactor,
    roughnessFactor,
    mean,
    turbulence,
    peakPressure: (gusts * airDensity * mean * mean) / 2,
    gust: mean * Math.sqrt(gusts),
  };
}

/** Net pressure coefficients of the zones A to D, from a free end inwards: to 0.3, 2, 4 heights, and beyond. */
export type Zones = readonly [number, number, number, number];

// EN 1991-1-4, Table 7.9.
const short: Zones = [2.3, 1.4, 1.2, 1.2];
const middling: Zones = [2.9, 1.8, 1.4, 1.2];
const long: Zones = [3.4, 2.1, 1.7, 1.2];
const returned: Zones = [2.1, 1.8, 1.4, 1.2];
const gapped: Zones = [1.2, 1.2, 1.2, 1.2];

const between = (from: Zones, to: Zones, share: number): Zones => [
  from[0] + share * (to[0] - from[0]),
  from[1] + share * (to[1] - from[1]),
  from[2] + share * (to[2] - from[2]),
  // Far from the ends it is the same in every column.
  from[3],
];

/**
 * Zones of a free-standing wall, EN 1991-1-4, Table 7.9: `infill` is its solidity (0.8 to 1), the other two are length and
 * return corner as multiples of the height (0 or above). Between the columns, and between no return and one as long as the
 * wall is high, the value is interpolated. Undefined below 0.8: that is a lattice (see latticeCoefficient).
 */
export function wallZones(infill: number, lengthByHeight: number, returnByHeight: number): Zones | undefined {
  if (!(infill >= 0.8 && infill <= 1) || !above(lengthByHeight) || !amount(returnByHeight)) return undefined;
  const free =
    lengthByHeight < 5
      ? between(short, middling, Math.max(0, (lengthByHeight - 3) / 2))
      : between(middling, long, Math.min(1, (lengthByHeight - 5) / 5));
  const solid = between(free, returned, Math.min(1, returnByHeight));
  return between(gapped, solid, (infill - 0.8) / 0.2);
}

/** Force coefficient of a plane lattice of flat or angular members, 0.2 ≤ φ ≤ 0.8: EN 1991-1-4, figure 7.33, from memory. */
export const latticeForceCoefficient = 1.6;

/** Force in N on a lattice: cf,0·ψλ·qp·A with A the solid area (EN 1991-1-4, 7.11, with cs·cd = 1). */
export function latticeForce(peakPressure: number, solidArea: number, coefficient: number, endEffect: number): number | undefined {
  return amount(peakPressure) && above(solidArea) && above(coefficient) && above(endEffect)
    ? coefficient * endEffect * peakPressure * solidArea
    : undefined;
}

/** A leaf in the wind, as a stretch of a free-standing wall. */
export interface Exposure {
  /** Width of the leaf and height, m, above 0. */
  readonly width: number;
  readonly height: number;
  /** Solidity, above 0, at most 1. */
  readonly infill: number;
  /** Length of the whole wall, m, at least the width. */
  readonly wall: number;
  /** From the free edge on to the end of the wall, m: the width of the other leaf, or 0. The hinge is always an end. */
  readonly beyond: number;
  /** Length of the return corners at its ends, m, 0 for none. */
  readonly corner: number;
}

/** Force and hinge moment for each pascal of pressure: m² and m³. */
export interface Grip {
  readonly force: number;
  readonly moment: number;
}

/**
 * What each pascal of peak pressure does to a leaf: its force (m²) and its moment about the hinge (m³), with the zones of
 * Table 7.9 from both ends of the wall, the greater counting. Below a solidity of 0.8 the lattice of 7.11, without the
 * easing of the end effect.
 */
export function gripOf(exposure: Exposure): Grip | undefined {
  const { width, height, infill, wall, beyond, corner } = exposure;
  if (!above(width) || !above(height) || !(infill > 0) || !(wall >= width * (1 - 1e-9)) || !Number.isFinite(wall) || !amount(beyond))
    return undefined;
  if (infill < 0.8) {
    const each = latticeForceCoefficient * infill * height;
    return { force: each * width, moment: (each * width * width) / 2 };
  }
  const zones = wallZones(infill, wall / height, corner / height);
  if (zones === undefined) return undefined;
  // Where zones begin, from the hinge: those counted from the hinge's end, and those from the other end of the wall.
  const cuts = [0, width];
  for (const heights of [0.3, 2, 4]) {
    const here = heights * height;
    const there = width + beyond - here;
    if (here < width) cuts.push(here);
    if (there > 0 && there < width) cuts.push(there);
  }
  cuts.sort((a, b) => a - b);
  let force = 0;
  let moment = 0;
  for (let i = 1; i < cuts.length; i++) {
    const from = cuts[i - 1] as number;
    const to = cuts[i] as number;
    const middle = (from + to) / 2;
    const coefficient = Math.max(zoneAt(zones, middle / height), zoneAt(zones, (width + beyond - middle) / height));
    force += coefficient * height * (to - from);
    moment += (coefficient * height * (to * to - from * from)) / 2;
  }
  return { force, moment };
}

const zoneAt = (zones: Zones, heights: number): number =>
  heights < 0.3 ? zones[0] : heights < 2 ? zones[1] : heights < 4 ? zones[2] : zones[3];

/** Moment about the hinge in N·m of an even pressure (Pa) with coefficient `c` on a leaf: c·q·A·w/2. All above 0. */
export function evenHingeMoment(c: number, pressure: number, width: number, height: number): number | undefined {
  return above(c) && amount(pressure) && above(width) && above(height) ? (c * pressure * width * height * width) / 2 : undefined;
}
