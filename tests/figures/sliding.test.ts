import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rackSpeed, stoppingDistance, travelForce } from '../../server/figures/sliding/maths.ts';

const turnsAMinute = (2 * Math.PI) / 60;

describe('a rack', () => {
  it.each([
    // Computed: module 4, 1400/30 turns a minute.
    [0.004, 16, 1400 / 30, 9.383],
    [0.004, 18, 1400 / 30, 10.556],
    [0.004, 20, 1400 / 30, 11.729],
    // By hand, π times the pitch diameter times the turns: pitch diameter 40 mm at 159.15 turns a minute runs 20 m/min;
    // module 3, 20 teeth at 636.6 turns a minute runs 2 m/s.
    [0.002, 20, 159.15, 20],
    [0.003, 20, 636.6, 120],
  ])('of module %d m with %d teeth at %d turns a minute runs %d m/min', (module, teeth, turns, metresAMinute) => {
    expect((rackSpeed(module, teeth, turns * turnsAMinute) ?? 0) * 60).toBeCloseTo(metresAMinute, 2);
  });

  it('has a speed only with whole teeth and a module', () => {
    expect(rackSpeed(0.004, 18, -3)).toBeCloseTo(-0.108, 12);
    for (const module of [0, -0.004, Number.NaN, Infinity]) expect(rackSpeed(module, 18, 1)).toBeUndefined();
    for (const teeth of [0, -18, 17.5, Number.NaN]) expect(rackSpeed(0.004, teeth, 1)).toBeUndefined();
    expect(rackSpeed(0.004, 18, Infinity)).toBeUndefined();
  });
});

describe('the force to move a leaf', () => {
  it.each([
    // Computed for 500 kg: coefficient, slope as a share, newtons.
    [0.015, 0, 73.55],
    [0.02, 0, 98.07],
    [0.02, 0.02, 196.09],
    [0.02, 0.05, 342.8],
  ])('with coefficient %d on a slope of %d is %d N', (coefficient, slope, force) => {
    expect(travelForce(500, coefficient, Math.atan(slope))).toBeCloseTo(force, 2);
  });

  it('turns negative downhill once the slope beats the rolling resistance, and grows with the slope', () => {
    expect(travelForce(500, 0.02, -Math.atan(0.05)) ?? 0).toBeLessThan(0);
    expect(travelForce(500, 0.02, -Math.atan(0.02))).toBeCloseTo(0, 9);
    const part = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(part, part, (one, other) => {
        fc.pre(Math.abs(one - other) > 1e-6);
        const [lower, upper] = [travelForce(300, 0.03, Math.min(one, other)), travelForce(300, 0.03, Math.max(one, other))];
        expect(upper ?? Number.NaN).toBeGreaterThan(lower ?? Number.NaN);
      }),
    );
  });

  it('says nothing about what cannot be', () => {
    for (const mass of [0, -1, Number.NaN, Infinity]) expect(travelForce(mass, 0.02, 0)).toBeUndefined();
    for (const coefficient of [-0.01, Number.NaN, Infinity]) expect(travelForce(500, coefficient, 0)).toBeUndefined();
    for (const slope of [Math.PI / 2, -2, Number.NaN]) expect(travelForce(500, 0.02, slope)).toBeUndefined();
  });
});

describe('stopping', () => {
  it('takes the way of the reaction and the way of the braking', () => {
    // Computed: 0.2 m/s, 0.1 s, 0.5 m/s² gives 0.060 m.
    expect(stoppingDistance(0.2, 0.1, 0.5)).toBeCloseTo(0.06, 12);
    expect(stoppingDistance(0, 0.1, 0.5)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: 0.05, max: 3, noNaN: true }), (speed, braking) => {
        // Twice the speed, four times the braking way.
        expect((stoppingDistance(2 * speed, 0, braking) ?? 0) / (stoppingDistance(speed, 0, braking) ?? 1)).toBeCloseTo(4, 9);
      }),
    );
  });

  it('says nothing about what cannot be', () => {
    for (const speed of [-0.1, Number.NaN, Infinity]) expect(stoppingDistance(speed, 0.1, 0.5)).toBeUndefined();
    for (const reaction of [-0.1, Number.NaN, Infinity]) expect(stoppingDistance(0.2, reaction, 0.5)).toBeUndefined();
    for (const braking of [0, -1, Number.NaN, Infinity]) expect(stoppingDistance(0.2, 0.1, braking)).toBeUndefined();
  });
});
