// Voltage drop in a two-core copper run.

/** Greatest resistance of plain copper conductors at 20 °C, ohm/km, by cross-section in mm²: IEC 60228. */
const solidAndStranded: Readonly<Record<string, number>> = { 0.5: 36, 0.75: 24.5, 1: 18.1, 1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83 };
const flexible: Readonly<Record<string, number>> = { 0.5: 39, 0.75: 26, 1: 19.5, 1.5: 13.3, 2.5: 7.98, 4: 4.95, 6: 3.3, 10: 1.91 };

/** Resistivity of annealed copper at 20 °C, ohm·m (IEC 60028: 1/58 ohm·mm²/m). */
const copper = 1 / 58e6;
/** Temperature coefficient of annealed copper at 20 °C, 1/K (IEC 60028). */
const coefficient = 0.00393;

/**
 * Resistance of one metre of one conductor at 20 °C, ohm/m. `area` in m²; `conductorClass` as in IEC 60228. A size of
 * that standard's tables has the greatest resistance that it allows; any other size has that of plain copper.
 */
export function resistancePerMetre(area: number, conductorClass: number): { readonly value: number; readonly fromTable: boolean } | undefined {
  if (!(area > 0)) return undefined;
  const square = String(Number((area * 1e6).toPrecision(6)));
  const listed = (conductorClass >= 5 ? flexible : solidAndStranded)[square];
  return listed === undefined ? { value: copper / area, fromTable: false } : { value: listed / 1000, fromTable: true };
}

/** Resistance at a conductor temperature (°C) from that at 20 °C. */
export function atTemperature(resistance: number, celsius: number): number {
  return resistance * (1 + coefficient * (celsius - 20));
}

/** Drop there and back, volts: `perMetre` in ohm/m at the working temperature, `length` one way in metres, `current` in amperes. */
export function voltageDrop(perMetre: number, length: number, current: number): number {
  return 2 * perMetre * length * current;
}
