// Copper conductors: how much they resist, and how warm they may get.

/** A cross-section in m² as the tables are looked up by: in ten-thousandths of a square millimetre. */
export const sizeOf = (area: number): number => Math.round(area * 1e10);

/** Values of a table by cross-section in mm². */
export type Sizes = ReadonlyMap<number, number>;
export const bySize = (values: Readonly<Record<number, number>>): Sizes =>
  new Map(Object.entries(values).map(([size, value]) => [sizeOf(Number(size) * 1e-6), value]));

/** Greatest resistance of plain copper conductors at 20 °C, ohm/km, by cross-section in mm²: IEC 60228. */
const solidAndStranded = bySize({ 0.5: 36, 0.75: 24.5, 1: 18.1, 1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83 });

/** The sizes under 0.5 mm² are those of DIN VDE 0295; where plain and tinned copper differ, the greater value. */
const flexible = bySize({
  0.14: 138,
  0.22: 99,
  0.25: 79,
  0.34: 56,
  0.5: 39,
  0.75: 26,
  1: 19.5,
  1.5: 13.3,
  2.5: 7.98,
  4: 4.95,
  6: 3.3,
  10: 1.91,
});

export type Insulation = 'pvc' | 'xlpe' | 'rubber';

/** The warmest that a conductor in this insulation may run, °C. Source: BS 7671, Appendix 4 (the heads of Tables 4D, 4E and 4F). */
export const warmest: Readonly<Record<Insulation, number>> = { pvc: 70, xlpe: 90, rubber: 60 };

/** Resistivity of annealed copper at 20 °C, ohm·m (IEC 60028: 1/58 ohm·mm²/m). */
const copper = 1 / 58e6;
/** Temperature coefficient of annealed copper at 20 °C, 1/K (IEC 60028). */
const coefficient = 0.00393;

/**
 * Resistance of one metre of one conductor at 20 °C, ohm/m. `area` in m²; `conductorClass` as in IEC 60228. A size of
 * that standard's tables has the greatest resistance that it allows; any other size, as an American wire gauge, has that
 * of plain copper (IEC 60028). Undefined without a cross-section.
 */
export function resistancePerMetre(
  area: number,
  conductorClass: number,
): { readonly value: number; readonly fromTable: boolean } | undefined {
  if (!(area > 0)) return undefined;
  const listed = (conductorClass >= 5 ? flexible : solidAndStranded).get(sizeOf(area));
  return listed === undefined ? { value: copper / area, fromTable: false } : { value: listed / 1000, fromTable: true };
}

/** Resistance at a conductor temperature (°C) from that at 20 °C. Source: IEC 60028. */
export function atTemperature(resistance: number, celsius: number): number {
  return resistance * (1 + coefficient * (celsius - 20));
}

const zero = 273.15;
export const inCelsius = (kelvin: number): number => kelvin - zero;
export const inKelvin = (celsius: number): number => celsius + zero;
