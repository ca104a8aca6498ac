import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kineticEnergy, kineticEnergyLinear } from '../../server/figures/kinetic-energy/maths.ts';
import { type FramedLeaf, framedLeafInertia, parallelAxis, uniformLeafInertia } from '../../server/figures/leaf-inertia/maths.ts';

const positive = fc.double({ min: 0.1, max: 1000, noNaN: true });

describe('inertia of a leaf', () => {
  it('agrees with published doors', () => {
    // Serway and Jewett, Physics for Scientists and Engineers, 9th edition, chapter 10: 23.0 kg, 0.870 m gives 5.80 kg·m².
    expect(uniformLeafInertia(23, 0.87)).toBeCloseTo(5.8, 2);
    // By hand: 24.5 · 0.810² / 3 = 5.358.
    expect(uniformLeafInertia(24.5, 0.81)).toBeCloseTo(5.358, 3);
    // Knight, Physics for Scientists and Engineers, 5th edition, chapter 12 problem 16 (data; results computed): 25 kg, 0.91 m,
    // about an edge, and about an axis 0.15 m in from the edge.
    expect(uniformLeafInertia(25, 0.91)).toBeCloseTo(6.901, 3);
    expect(parallelAxis((25 * 0.91 ** 2) / 12, 25, 0.91 / 2 - 0.15)).toBeCloseTo(4.051, 3);
  });

  it('turns a door of four slabs with the energy the formula gives', () => {
    // Homework page: 4 slabs of 39.5 kg, 1.50 m, one turn in 10.5 s; it prints 117.9 and 21.1, the formula gives 118.5 and 21.22.
    const inertia = 4 * (uniformLeafInertia(39.5, 1.5) ?? Number.NaN);
    expect(inertia).toBeCloseTo(118.5, 9);
    expect(kineticEnergy(inertia, (2 * Math.PI) / 10.5)).toBeCloseTo(21.22, 2);
  });

  it('adds up a frame', () => {
    // Computed: rails 2 × 15, stiles 2 × 10, infill 80 kg, 3 m wide; an even leaf of the same 130 kg has 390.
    expect(framedLeafInertia({ width: 3, rails: 30, hingeStile: 10, freeStile: 10, infill: 80 })).toBeCloseTo(420, 9);
    expect(uniformLeafInertia(130, 3)).toBeCloseTo(390, 9);
  });

  it('gives the energy of a swing leaf and of a sliding one', () => {
    // Computed: 250 kg, 3 m, 90° in 15 s gives 750 kg·m², 0.10472 rad/s and 4.112 J. 500 kg at 0.2 m/s 10.0 J, 800 kg at 0.17 m/s 11.56 J.
    expect(uniformLeafInertia(250, 3)).toBeCloseTo(750, 9);
    expect(kineticEnergy(750, Math.PI / 2 / 15)).toBeCloseTo(4.112, 3);
    expect(kineticEnergyLinear(500, 0.2)).toBeCloseTo(10, 9);
    expect(kineticEnergyLinear(800, 0.17)).toBeCloseTo(11.56, 9);
  });

  it('is the same from the edge and from the centre, and for a frame that is all infill', () => {
    fc.assert(
      fc.property(positive, positive, (mass, width) => {
        const edge = uniformLeafInertia(mass, width) ?? Number.NaN;
        expect((parallelAxis((mass * width ** 2) / 12, mass, width / 2) ?? Number.NaN) / edge).toBeCloseTo(1, 12);
        expect((parallelAxis((mass * width ** 2) / 12, mass, -width / 2) ?? Number.NaN) / edge).toBeCloseTo(1, 12);
        expect((framedLeafInertia({ width, rails: 0, hingeStile: 0, freeStile: 0, infill: mass }) ?? Number.NaN) / edge).toBeCloseTo(1, 12);
        expect(kineticEnergy(edge, 0.3)).toBe(kineticEnergy(edge, -0.3));
      }),
    );
  });

  it('says nothing about what cannot be', () => {
    const leaf: FramedLeaf = { width: 3, rails: 30, hingeStile: 10, freeStile: 10, infill: 0 };
    expect(framedLeafInertia(leaf)).toBeDefined();
    expect(framedLeafInertia({ ...leaf, width: 0 })).toBeUndefined();
    expect(framedLeafInertia({ ...leaf, rails: -1 })).toBeUndefined();
    expect(framedLeafInertia({ ...leaf, freeStile: Number.NaN })).toBeUndefined();
    expect(framedLeafInertia({ width: 3, rails: 0, hingeStile: 0, freeStile: 0, infill: 0 })).toBeUndefined();
    for (const bad of [0, -1, Number.NaN, Infinity]) {
      expect(uniformLeafInertia(bad, 3)).toBeUndefined();
      expect(uniformLeafInertia(100, bad)).toBeUndefined();
      expect(parallelAxis(1, bad, 1)).toBeUndefined();
      expect(kineticEnergyLinear(bad, 1)).toBeUndefined();
    }
    expect(parallelAxis(-1, 1, 1)).toBeUndefined();
    expect(parallelAxis(1, 1, Number.NaN)).toBeUndefined();
    expect(kineticEnergy(-1, 1)).toBeUndefined();
    expect(kineticEnergy(1, Infinity)).toBeUndefined();
    expect(kineticEnergyLinear(1, Number.NaN)).toBeUndefined();
  });
});
