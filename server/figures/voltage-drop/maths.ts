// Voltage drop in a two-core copper run.
import { bySize, type Insulation, sizeOf } from '../cables/working.ts';

/** Tabulated drop of two-core cables for one phase or direct current, mV/A/m, by cross-section in mm²: BS 7671, Appendix 4. */
const fixedPvc = bySize({ 1: 44, 1.5: 29, 2.5: 18, 4: 11, 6: 7.3, 10: 4.4, 16: 2.8 });
const fixedXlpe = bySize({ 1.5: 31, 2.5: 19, 4: 12, 6: 7.9, 10: 4.7 });
const flexibleAt60 = bySize({ 0.5: 93, 0.75: 62, 1: 46, 1.25: 37, 1.5: 32, 2.5: 19, 4: 12 });

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
  return listed === undefined
    ? undefined
    : { value: listed / 1000, table: isFlexible ? 'Table 4F3B' : insulation === 'xlpe' ? 'Table 4E4B' : 'Table 4D2B' };
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
