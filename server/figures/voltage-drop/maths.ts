// Voltage drop in a two-core copper run.

/** A cross-section in m² as the tables are looked up by: in ten-thousandths of a square millimetre. */
export const sizeOf = (area: number): number => Math.round(area * 1e10);
/** Values of a table by cross-section in mm². */
export type Sizes = ReadonlyMap<number, number>;
export const bySize = (values: Readonly<Record<number, number>>): Sizes => new Map(Object.entries(values).map(([size, value]) => [sizeOf(Number(size) * 1e-6), value]));

/** Greatest resistance of plain copper conductors at 20 °C, ohm/km, by cross-section in mm²: IEC 60228. */
const solidAndStranded = bySize({ 0.5: 36, 0.75: 24.5, 1: 18.1, 1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83 });
/** The sizes under 0.5 mm² are those of DIN VDE 0295; where plain and tinned copper differ, the greater value. */
const flexible = bySize({ 0.14: 138, 0.22: 99, 0.25: 79, 0.34: 56, 0.5: 39, 0.75: 26, 1: 19.5, 1.5: 13.3, 2.5: 7.98, 4: 4.95, 6: 3.3, 10: 1.91 });

export type Insulation = 'pvc' | 'xlpe' | 'rubber';

/** The warmest that a conductor in this insulation may run, °C. Source: BS 7671, Appendix 4 (the heads of Tables 4D, 4E and 4F). */
export const warmest: Readonly<Record<Insulation, number>> = { pvc: 70, xlpe: 90, rubber: 60 };

/** Tabulated drop of two-core cables for one phase or direct current, mV/A/m, by cross-section in mm²: BS 7671, Appendix 4. */
const fixedPvc = bySize({ 1: 44, 1.5: 29, 2.5: 18, 4: 11, 6: 7.3, 10: 4.4, 16: 2.8 });
const fixedXlpe = bySize({ 1.5: 31, 2.5: 19, 4: 12, 6: 7.9, 10: 4.7 });
const flexibleAt60 = bySize({ 0.5: 93, 0.75: 62, 1: 46, 1.25: 37, 1.5: 32, 2.5: 19, 4: 12 });

/** Resistivity of annealed copper at 20 °C, ohm·m (IEC 60028: 1/58 ohm·mm²/m). */
const copper = 1 / 58e6;
/** Temperature coefficient of annealed copper at 20 °C, 1/K (IEC 60028). */
const coefficient = 0.00393;

/**
 * Resistance of one metre of one conductor at 20 °C, ohm/m. `area` in m²; `conductorClass` as in IEC 60228. A size of
 * that standard's tables has the greatest resistance that it allows; any other size, as an American wire gauge, has that
 * of plain copper (IEC 60028). Undefined without a cross-section.
 */
export function resistancePerMetre(area: number, conductorClass: number): { readonly value: number; readonly fromTable: boolean } | undefined {
  if (!(area > 0)) return undefined;
  const listed = (conductorClass >= 5 ? flexible : solidAndStranded).get(sizeOf(area));
  return listed === undefined ? { value: copper / area, fromTable: false } : { value: listed / 1000, fromTable: true };
}

/** Resistance at a conductor temperature (°C) from that at 20 °C. Source: IEC 60028. */
export function atTemperature(resistance: number, celsius: number): number {
  return resistance * (1 + coefficient * (celsius - 20));
}

/** Drop there and back, volts: `perMetre` in ohm/m at the working temperature, `length` one way in metres, `current` in amperes. */
export function voltageDrop(perMetre: number, length: number, current: number): number {
  return 2 * perMetre * length * current;
}

export interface TabulatedDrop {
  /** V for each ampere and metre of the run, there and back. */
  readonly value: number;
  readonly table: string;
}

/**
 * The drop that BS 7671, Appendix 4, tabulates for this conductor, there and back, at its warmest: V/(A·m). `area` in m².
 * Undefined where no table has it. Tables 4D2B (fixed, 70 °C), 4E4B (fixed, 90 °C), 4F3B (flexible, 60 °C).
 */
export function tabulatedDrop(area: number, conductorClass: number, insulation: Insulation): TabulatedDrop | undefined {
  const isFlexible = conductorClass >= 5;
  if (isFlexible && insulation === 'xlpe') return undefined;
  if (!isFlexible && insulation === 'rubber') return undefined;
  const listed = (isFlexible ? flexibleAt60 : insulation === 'xlpe' ? fixedXlpe : fixedPvc).get(sizeOf(area));
  return listed === undefined ? undefined : { value: listed / 1000, table: isFlexible ? 'Table 4F3B' : insulation === 'xlpe' ? 'Table 4E4B' : 'Table 4D2B' };
}

/**
 * The share of the nominal voltage that may be lost from the origin to the load. `length` of the whole run in metres: beyond
 * 100 m it grows by 0.005 % a metre, by 0.5 % at the most. Source: BS 7671, Appendix 4, Table 4Ab; the private supply
 * (6 % and 8 %) from memory.
 */
export function allowedShare(use: { readonly lighting: boolean; readonly privateSupply: boolean }, length: number): number {
  const base = use.privateSupply ? (use.lighting ? 0.06 : 0.08) : use.lighting ? 0.03 : 0.05;
  return base + Math.min(0.005, Math.max(0, length - 100) * 0.00005);
}
