import { describe, expect, it } from 'vitest';
import { atTemperature, resistancePerMetre, voltageDrop } from '../../server/figures/voltage-drop/maths.ts';

describe('conductor resistance', () => {
  // IEC 60228, maximum conductor resistance at 20 °C, ohm/km.
  it.each([
    [0.5, 1, 36], [0.75, 1, 24.5], [1, 2, 18.1], [1.5, 1, 12.1], [2.5, 2, 7.41], [4, 1, 4.61], [6, 1, 3.08], [10, 2, 1.83],
    [0.5, 5, 39], [0.75, 5, 26], [1, 5, 19.5], [1.5, 5, 13.3], [2.5, 5, 7.98], [4, 5, 4.95], [6, 5, 3.3], [10, 5, 1.91],
  ])('%f mm², class %i: %f ohm/km', (area, conductorClass, perKilometre) => {
    const resistance = resistancePerMetre(area * 1e-6, conductorClass);
    expect((resistance?.value ?? 0) * 1000).toBeCloseTo(perKilometre, 6);
    expect(resistance?.fromTable).toBe(true);
  });

  // HyperPhysics, Georgia State University, table of copper wire (data from Floyd): 18 AWG 6.385 ohm/1000 ft, 20 AWG 10.15.
  it.each([
    [0.823, 20.95],
    [0.5176, 33.31],
  ])('%f mm², which is no IEC size: %f ohm/km', (area, perKilometre) => {
    expect((resistancePerMetre(area * 1e-6, 1)?.value ?? 0) * 1000).toBeCloseTo(perKilometre, 1);
  });

  it('is not known for no conductor', () => expect(resistancePerMetre(0, 5)).toBeUndefined());
});

describe('voltage drop', () => {
  // BS 7671, voltage drop in mV/A/m of two-core 70 °C thermoplastic copper: as printed in a wholesaler's catalogue after
  // Table 4D1B; reckoned values may differ from the printed ones by 2 %.
  it.each([
    [1, 44], [1.5, 29], [2.5, 18], [4, 11], [6, 7.3], [10, 4.4],
  ])('%f mm²: %f mV/A/m', (area, printed) => {
    const perMetre = atTemperature(resistancePerMetre(area * 1e-6, 1)?.value ?? 0, 70);
    expect(Math.abs(voltageDrop(perMetre, 1, 1) * 1000 - printed) / printed).toBeLessThan(0.02);
  });

  // Worked twice by hand: 24 V, 40 m of 0.5 mm² class 5, 0.3 A: 0.936 V at 20 °C, 1.1199 V at 70 °C.
  it('of a sensor’s feed', () => {
    const cold = resistancePerMetre(0.5e-6, 5)?.value ?? 0;
    expect(voltageDrop(cold, 40, 0.3)).toBeCloseTo(0.936, 6);
    expect(voltageDrop(atTemperature(cold, 70), 40, 0.3)).toBeCloseTo(1.1199, 4);
  });
});
