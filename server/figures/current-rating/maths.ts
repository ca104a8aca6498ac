// How much current a cable may carry, and how warm its conductors get.
import { bySize, type Insulation, type Sizes, sizeOf, warmest } from '../cables/working.ts';
import type { Standing } from '../kind.ts';

export type Method = 'A' | 'B' | 'C' | 'D' | 'E' | 'over-ceiling' | 'under-insulation' | 'stud-wall-touching' | 'stud-wall';
export type CableKind = 'multicore' | 'singles' | 'flat';

interface Tabulated {
  /** Amperes at 30 °C around it (20 °C in the ground), alone, in 70 °C thermoplastic. */
  readonly current: number;
  readonly table: string;
  readonly standing: Standing;
}

const sizes = [1, 1.5, 2.5, 4, 6, 10] as const;
/** The values of a table from 1 mm² on. */
const column = (...values: readonly number[]): Sizes => new Map(values.map((value, i) => [sizeOf((sizes[i] as number) * 1e-6), value]));

/** BS 7671, Table 4D1A: single cores, 70 °C thermoplastic, one phase, A. */
const singles: Partial<Record<Method, Sizes>> = {
  A: column(11, 14.5, 20, 26, 34, 46),
  B: column(13.5, 17.5, 24, 32, 41, 57),
  C: column(15.5, 20, 27, 37, 47, 65),
};
/** BS 7671, Table 4D2A: multicore, 70 °C thermoplastic, one phase, A. Columns A to C as also in SANS 10142-1, Table 6.3(a). */
const multicore: Partial<Record<Method, Sizes>> = {
  A: column(11, 14, 18.5, 25, 32, 43),
  B: column(13, 16.5, 23, 30, 38, 52),
  C: column(15, 19.5, 27, 36, 46, 63),
};
/** Column E of that table, from memory. */
const inAir = column(17, 22, 30, 40, 51, 70);
/** Method D, multicore in the ground at 20 °C, 1.5 mm² and up, from memory. */
const inGround = bySize({ 1.5: 22, 2.5: 29, 4: 37, 6: 46, 10: 60 });
/** BS 7671, Table 4D5: flat twin and earth, A, all from memory. */
const flat: Partial<Record<Method, Sizes>> = {
  A: column(11.5, 14.5, 20, 26, 32),
  C: column(16, 20, 27, 37, 47),
  'over-ceiling': column(13, 16, 21, 27, 34),
  'under-insulation': column(10.5, 13, 17, 22, 27),
  'stud-wall-touching': column(13, 16, 21, 27, 35),
  'stud-wall': column(8, 10, 13.5, 17.5, 23.5),
};
/** Greatest current of small American gauges by the branch-circuit rules of the NEC, A, from memory. */
const byGauge: readonly (readonly [gauge: number, current: number])[] = [
  [18, 7],
  [16, 10],
  [14, 15],
  [12, 20],
  [10, 30],
  [8, 40],
];

/** The tabulated current of a conductor, `area` in m². Undefined where no table here has it. Source: BS 7671, Appendix 4. */
export function tabulatedCurrent(area: number, kind: CableKind, method: Method): Tabulated | undefined {
  const given = (of: Sizes | undefined, table: string, standing: Standing): Tabulated | undefined => {
    const current = of?.get(sizeOf(area));
    return current === undefined ? undefined : { current, table, standing };
  };
  if (kind === 'flat') return given(flat[method], 'BS 7671, Table 4D5', 'from memory');
  if (method === 'D') return kind === 'multicore' ? given(inGround, 'IEC 60364-5-52, method D', 'from memory') : undefined;
  if (kind === 'singles') return given(singles[method], 'BS 7671, Table 4D1A', 'published');
  if (method === 'E') return given(inAir, 'BS 7671, Table 4D2A', 'from memory');
  return given(multicore[method], 'BS 7671, Table 4D2A', 'published');
}

/** Tables by kind of cable and method, without regard to where each value is from. */
const tables: Readonly<Record<CableKind, Partial<Record<Method, Sizes>>>> = {
  multicore: { ...multicore, D: inGround, E: inAir },
  singles: { ...singles, D: inGround, E: inAir },
  flat,
};

/** The thinnest conductor in any of the tables, m². */
const thinnest = 1e-6;

/** The most that a conductor can carry. */
export interface Most {
  /** A. */
  readonly current: number;
  /** True where it is derived, as the conductor is thinner than any in the tables; else columns from memory have a part in it. */
  readonly derived: boolean;
}

/**
 * More than this no conductor of `area` m² can carry at its warmest, laid by that method, or by any where it is undefined; `air` and
 * `ground` are the ambient factors. Of a size that a table does not have it is derived from the next larger one: a thinner cable loses no
 * more heat, so its current is at most smaller as the root of the area. Undefined above the tables. Source: all tables above.
 */
export function mostCurrent(area: number, method: Method | undefined, air: number, ground: number): Most | undefined {
  let most: number | undefined;
  let derived = true;
  for (const kind of ['multicore', 'singles', 'flat'] as const)
    for (const [of, sizes] of Object.entries(tables[kind])) {
      if (method !== undefined && of !== method) continue;
      const next = nextLarger(sizes, area);
      if (next === undefined) return undefined;
      const share = Math.min(1, area / next.area);
      // Between two sizes of a table, or at one, the table itself decides.
      if (area >= thinnest) derived = false;
      most = Math.max(most ?? 0, next.current * Math.sqrt(share) * (of === 'D' ? ground : air));
    }
  return most === undefined ? undefined : { current: most, derived };
}

interface Row {
  readonly area: number;
  readonly current: number;
}

/** The row of a table for `area` m², or else for the next larger one; undefined above all. */
function nextLarger(sizes: Sizes, area: number): Row | undefined {
  let next: number | undefined;
  for (const size of sizes.keys()) if (size >= sizeOf(area) && (next === undefined || size < next)) next = size;
  return next === undefined ? undefined : { area: next * 1e-10, current: sizes.get(next) ?? 0 };
}

/**
 * The current, A, that a conductor thinner than any in the tables bears at the least, laid by that method. Derived from the thinnest in the
 * table: the heat that is lost goes with the surface at the least, and a thin cable is no thinner than its copper says; so the current is
 * smaller as the ¾ power of the area. Undefined where a table has the size, or none the method.
 */
export function leastCurrent(area: number, kind: CableKind, method: Method): Tabulated | undefined {
  if (!(area > 0) || area >= thinnest) return undefined;
  for (const size of sizes) {
    const found = tabulatedCurrent(size * 1e-6, kind, method);
    if (found !== undefined)
      return {
        current: found.current * (area / (size * 1e-6)) ** 0.75,
        table: `${found.table}, for ${size} mm²`,
        standing: found.standing,
      };
  }
  return undefined;
}

/**
 * The greatest current of an American gauge, `area` in m², in 60 °C insulation at 30 °C; undefined for what is none of 18 to 8. From
 * memory.
 */
export function gaugeCurrent(area: number): Tabulated | undefined {
  for (const [gauge, current] of byGauge) {
    const diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39);
    if (Math.abs(area / ((Math.PI / 4) * diameter * diameter) - 1) < 0.005)
      return { current, table: `NEC, ${gauge} AWG`, standing: 'from memory' };
  }
  return undefined;
}

/** BS 7671, Table 4C1 for 70 °C thermoplastic. */
const ambientFactors: readonly (readonly [celsius: number, factor: number])[] = [
  [25, 1.03],
  [30, 1],
  [35, 0.94],
  [40, 0.87],
  [45, 0.79],
  [50, 0.71],
  [55, 0.61],
];

/**
 * Ambient factor Ca in air, `celsius` in °C: BS 7671, Table 4C1, straight between its values, 1.03 below 25 °C. Above 55 °C
 * it is reckoned: √((70 − t)/40), as the heat that leaves a conductor goes with the difference and that made in it with the
 * square of the current. 0 from 70 °C on.
 */
export function ambientFactor(celsius: number): number {
  const first = ambientFactors[0] as readonly [number, number];
  if (celsius <= first[0]) return first[1];
  for (let i = 1; i < ambientFactors.length; i++) {
    const [to, high] = ambientFactors[i] as readonly [number, number];
    const [from, low] = ambientFactors[i - 1] as readonly [number, number];
    if (celsius <= to) return low + ((high - low) * (celsius - from)) / (to - from);
  }
  return Math.min(0.61, Math.sqrt(Math.max(0, 70 - celsius) / 40));
}

/**
 * Ambient factor of 60 °C insulation in air, `celsius` in °C: √((60 − t)/30), 1 at 30 °C, at most that of 25 °C. Derived as above; it gives
 * the 1.08, 0.91, 0.82, 0.71, 0.58 and 0.41 of the NEC, Table 310.15(B)(1), for 25 to 55 °C (from memory).
 */
export const ambientFactorAt60 = (celsius: number): number => Math.sqrt(Math.max(0, 60 - Math.max(25, celsius)) / 30);

/** Ambient factor in the ground, `celsius` in °C, 1 at 20 °C: √((70 − t)/50), at most 1.1 (10 °C). Derived as above. */
export function groundFactor(celsius: number): number {
  return Math.min(1.1, Math.sqrt(Math.max(0, 70 - celsius) / 50));
}

const grouped: readonly number[] = [1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5];
/** Cables in the ground, touching, from memory. */
const groupedInGround: readonly number[] = [1, 0.75, 0.65, 0.6, 0.55, 0.5, 0.45, 0.43, 0.41];

/**
 * Grouping factor Cg for 1 to 9 circuits, enclosed or clipped together; undefined outside. Source: BS 7671, Table 4C1; in the ground from
 * memory.
 */
export function groupingFactor(circuits: number, buried: boolean): number | undefined {
  return (buried ? groupedInGround : grouped)[circuits - 1];
}

/** Least tabulated current for a protective device of `rating`: It ≥ In/(Ca·Cg), A. Source: BS 7671, Appendix 4, section 5. */
export function tabulatedNeeded(rating: number, ca: number, cg: number): number {
  return rating / (ca * cg);
}

/**
 * Conductor temperature, °C, of a cable that carries `current` where `tabulated` would heat it from `reference` to `limit`
 * (all °C). Its own heat goes with the square of the current; neighbours of a group (`cg` below 1) are taken as fully
 * loaded. With current = It·Ca·Cg it is the limit. Derived; BS 7671, Appendix 4, section 6.1 says the same.
 */
export function conductorTemperature(given: {
  readonly current: number;
  readonly tabulated: number;
  readonly cg: number;
  readonly ambient: number;
  readonly reference: number;
  readonly limit: number;
}): number {
  const { current, tabulated, cg, ambient, reference, limit } = given;
  return limit - cg * cg * (limit - ambient) + (limit - reference) * (current / tabulated) ** 2;
}

/** The limit temperature of the tables above, °C. Cables with better insulation are held to it as well: the safe side. */
export const tableLimit = (insulation: Insulation): number => Math.min(warmest.pvc, warmest[insulation]);
