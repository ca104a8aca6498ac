// A leaf on two pairs of rollers, against the balance of forces and moments, and a worked example (6 m, tail 3 m, rollers
// 2.7 m apart, 450 kg: 4413.0 N, 6864.7 N, −2451.7 N).
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { rollerForces } from '../../server/figures/cantilever/maths.ts';

it('gives the worked example', () => {
  const forces = rollerForces({ mass: 450, overhang: 6, tail: 3, spacing: 2.7 }, 0);
  expect(forces?.front).toBeCloseTo(6864.7, 1);
  expect(forces?.rear).toBeCloseTo(-2451.7, 1);
  expect((forces?.front ?? 0) + (forces?.rear ?? 0)).toBeCloseTo(4413, 1);
});

it('balances the weight of every slice of the leaf, wherever it stands', () => {
  const length = fc.integer({ min: 10, max: 80 }).map((value) => value / 10);
  fc.assert(
    fc.property(length, length, length, length, (overhang, tail, spacing, open) => {
      const forces = rollerForces({ mass: 300, overhang, tail, spacing }, open);
      // Slices of the leaf, from its free end; places are counted forwards from the front rollers.
      const slices = 2000;
      let moment = 0;
      for (let i = 0; i < slices; i++) moment += ((300 * 9.80665) / slices) * (overhang - open - ((i + 0.5) / slices) * (overhang + tail));
      expect((forces?.rear ?? Number.NaN) * -spacing).toBeCloseTo(moment, 3);
      expect((forces?.front ?? 0) + (forces?.rear ?? 0)).toBeCloseTo(300 * 9.80665, 6);
    }),
  );
});

it('pulls nothing down where tail and leaf are alike', () =>
  expect(rollerForces({ mass: 300, overhang: 4, tail: 4, spacing: 2 }, 0)?.rear).toBeCloseTo(0, 12));

it('says nothing of what cannot be', () => {
  for (const wrong of [{ mass: 0 }, { overhang: -1 }, { tail: Number.NaN }, { spacing: 0 }])
    expect(rollerForces({ mass: 300, overhang: 4, tail: 2, spacing: 2, ...wrong }, 0)).toBeUndefined();
  expect(rollerForces({ mass: 300, overhang: 4, tail: 2, spacing: 2 }, -1)).toBeUndefined();
});
