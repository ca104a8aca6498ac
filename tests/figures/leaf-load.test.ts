import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gravity, risingHingeEnergy, risingHingeMoment, tiltedHingeMoment, tiltedHingeRise } from '../../server/figures/leaf-load/maths.ts';

const degree = Math.PI / 180;

describe('a leaning hinge', () => {
  // Computed, and checked by the derivative of m·g·h below: kg, m, degrees of tilt and of opening, N·m, mm.
  it.each([
    [200, 3, 2, 90, 102.67, 52.35],
    [200, 3, 2, 45, 72.6, 15.33],
    [100, 2, 5, 30, 42.74, undefined],
  ])('%d kg, %d m wide, %d° of tilt, open by %d°', (mass, width, tilt, open, moment, rise) => {
    expect(tiltedHingeMoment(mass, width, tilt * degree, open * degree)).toBeCloseTo(moment, 2);
    if (rise !== undefined) expect((tiltedHingeRise(width, tilt * degree, open * degree) ?? 0) * 1000).toBeCloseTo(rise, 2);
  });
  it('gives the small swings that a textbook gives a door on such hinges', () => {
    // ω² = 3·g·sin α / (2·w): 0.9 m and 5° give 1.1935 rad/s; here from the moment for a small angle over m·w²/3.
    const small = 1e-6;
    const stiffness = (tiltedHingeMoment(20, 0.9, 5 * degree, small) ?? 0) / small;
    expect(Math.sqrt(stiffness / ((20 * 0.9 * 0.9) / 3))).toBeCloseTo(1.1935, 3);
  });
  it('its moment is the rise of the centre against the angle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (width, tilt, at) => {
          const step = 1e-5;
          const slope = ((tiltedHingeRise(width, tilt, at + step) ?? 0) - (tiltedHingeRise(width, tilt, at - step) ?? 0)) / (2 * step);
          expect(tiltedHingeMoment(100, width, tilt, at)).toBeCloseTo(100 * gravity * slope, 4);
        },
      ),
    );
  });
  it('hangs upright, or leans by less than a right angle', () => {
    expect(tiltedHingeMoment(100, 2, 0, 1)).toBe(0);
    expect(tiltedHingeRise(2, 0, 1)).toBe(0);
    // All but lying down: half of 100 kg · g · 2 m, and half a width up.
    expect(tiltedHingeMoment(100, 2, Math.PI / 2 - 1e-9, Math.PI / 2)).toBeCloseTo(980.665, 6);
    expect(tiltedHingeRise(2, Math.PI / 2 - 1e-9, Math.PI / 2)).toBeCloseTo(1, 9);
    for (const tilt of [-1e-9, -0.1, Math.PI / 2, 2, 7, NaN, Infinity]) {
      expect(tiltedHingeMoment(100, 2, tilt, 1)).toBeUndefined();
      expect(tiltedHingeRise(2, tilt, 1)).toBeUndefined();
    }
    for (const at of [NaN, Infinity, -Infinity]) {
      expect(tiltedHingeMoment(100, 2, 0.1, at)).toBeUndefined();
      expect(tiltedHingeRise(2, 0.1, at)).toBeUndefined();
    }
  });
  it('is undefined for a leaf of no mass, of no width, or of no travel; of no rise it needs nothing', () => {
    expect(tiltedHingeMoment(0, 2, 0.1, 0.1)).toBeUndefined();
    expect(tiltedHingeMoment(100, 0, 0.1, 0.1)).toBeUndefined();
    expect(tiltedHingeRise(0, 0.1, 0.1)).toBeUndefined();
    expect(risingHingeMoment(0, 0.1, 1)).toBeUndefined();
    expect(risingHingeMoment(100, 0.1, 0)).toBeUndefined();
    expect(risingHingeEnergy(0, 0.1)).toBeUndefined();
    expect(risingHingeMoment(100, 0, 1)).toBe(0);
    expect(risingHingeEnergy(100, 0)).toBe(0);
  });
  it('is undefined for what cannot be', () => {
    for (const bad of [NaN, -1, Infinity]) {
      expect(tiltedHingeMoment(bad, 2, 0.1, 0.1)).toBeUndefined();
      expect(tiltedHingeMoment(100, bad, 0.1, 0.1)).toBeUndefined();
      expect(tiltedHingeMoment(100, 2, bad, 0.1)).toBeUndefined();
      expect(tiltedHingeRise(bad, 0.1, 0.1)).toBeUndefined();
      expect(risingHingeMoment(100, bad, 1)).toBeUndefined();
      expect(risingHingeEnergy(bad, 0.1)).toBeUndefined();
    }
  });
});

describe('a rising hinge', () => {
  it('200 kg by 80 mm over 90°', () => {
    // By hand: m·g·h / Θ and m·g·h.
    expect(risingHingeMoment(200, 0.08, 90 * degree)).toBeCloseTo(99.89, 2);
    expect(risingHingeEnergy(200, 0.08)).toBeCloseTo(156.9, 1);
  });
});
