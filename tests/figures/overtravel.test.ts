import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Linkage, leafAt, rackLinkage, ramLinkage } from '../../server/figures/linkage/maths.ts';
import { type Profile, type ProfileSpec, profileOf, runTime, speedAt, travelAt } from '../../server/figures/motion-profile/maths.ts';
import { greatestOvertravel } from '../../server/figures/overtravel/maths.ts';

const rack = rackLinkage(5) as Linkage;
const even = (speed: number): Profile =>
  profileOf({ travel: 5, speed, acceleration: Infinity, slowTravel: 0, slowSpeed: speed }) as Profile;

describe('how far the edge runs on', () => {
  // s = v·t + v²/(2a), by hand: 40 mm at 0.2 m/s and 75 mm at 0.3 m/s; 60 mm with half the deceleration.
  it.each([
    [0.2, 0.1, 1, 0.04],
    [0.3, 0.1, 1, 0.075],
    [0.2, 0.1, 0.5, 0.06],
  ])('%d m/s, %d s, %d m/s²', (speed, reaction, deceleration, distance) => {
    for (const way of ['opening', 'closing'] as const)
      expect(greatestOvertravel(rack, even(speed), way, reaction, deceleration, 1)?.distance).toBeCloseTo(distance, 10);
  });

  it('is what a drive that is stopped at any moment leaves to run, in small steps of time', () => {
    fc.assert(
      fc.property(
        fc.record({
          along: fc.double({ min: 0.12, max: 0.2, noNaN: true }),
          out: fc.double({ min: 0.1, max: 0.18, noNaN: true }),
          leafBracket: fc.double({ min: 0.6, max: 0.9, noNaN: true }),
        }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.constantFrom('opening' as const, 'closing' as const),
        (mounting, reaction, slowShare, way) => {
          const linkage = ramLinkage(mounting, Math.PI / 2) as Linkage;
          const travel = linkage.drive[48] as number;
          const profile = profileOf({
            travel,
            speed: 0.016,
            acceleration: 0.03,
            slowTravel: slowShare * travel,
            slowSpeed: 0.006,
          }) as Profile;
          const deceleration = 0.08;
          const arm = 2.2;
          const found = greatestOvertravel(linkage, profile, way, reaction, deceleration, arm);
          // Trip at many moments; run on at the speed there, then brake; follow the leaf by the linkage itself.
          let worst = 0;
          const whole = runTime(profile);
          for (let i = 0; i <= 400; i++) {
            const at = (i * whole) / 400;
            const speed = speedAt(profile, at);
            const from = travelAt(profile, at);
            const to = Math.min(travel, from + speed * reaction + (speed * speed) / (2 * deceleration));
            const leaf = (driven: number): number => leafAt(linkage, way === 'opening' ? driven : travel - driven) ?? NaN;
            worst = Math.max(worst, Math.abs(leaf(to) - leaf(from)) * arm);
          }
          // The lever changes over the stop, by little.
          expect(found?.distance).toBeGreaterThan(worst * 0.93);
          expect(found?.distance).toBeLessThan(worst * 1.07 + 1e-4);
        },
      ),
      { numRuns: 60 },
    );
  });

  // Linkages of few samples, so that every place and lever can be worked out by hand. Reaction 0.5 s and 0.1 m/s² throughout: 0.1 m/s
  // runs on by 0.05 + 0.05 = 0.1 m of drive, 0.2 m/s by 0.1 + 0.2 = 0.3 m; on the leaf that is divided by the lever, times the arm of 3 m.
  const linkageOf = (leaf: readonly number[], drive: readonly number[], rate: readonly number[]): Linkage => ({ leaf, drive, rate });
  const stroke = (spec: Partial<ProfileSpec>): Profile =>
    profileOf({ travel: 3, speed: 0.1, acceleration: Infinity, slowTravel: 0, slowSpeed: 0.1, ...spec }) as Profile;
  const both = ['opening', 'closing'] as const;

  it('is greatest at the sample with the shortest lever', () => {
    for (const way of both) {
      const found = greatestOvertravel(linkageOf([0, 1, 2], [0, 1, 3], [2, 0.5, 2]), stroke({}), way, 0.5, 0.1, 3);
      expect(found?.distance).toBeCloseTo((0.1 / 0.5) * 3, 12);
      expect(found?.at).toBe(1);
      expect(found?.leafSpeed).toBeCloseTo(0.2, 12);
      expect(found?.edgeSpeed).toBeCloseTo(0.6, 12);
    }
  });

  it('is greatest just before the slow zone, between two samples', () => {
    // Opening: the zone begins at 2 m of drive, half way from the sample at 1 m to that at 3 m. Closing: at 0.5 m from closed.
    const opening = greatestOvertravel(
      linkageOf([0, 1, 2], [0, 1, 3], [4, 2, 1]),
      stroke({ speed: 0.2, slowTravel: 1 }),
      'opening',
      0.5,
      0.1,
      3,
    );
    expect(opening?.at).toBeCloseTo(1.5, 12);
    expect(opening?.distance).toBeCloseTo((0.3 / 1.5) * 3, 12);
    expect(opening?.edgeSpeed).toBeCloseTo((0.2 / 1.5) * 3, 12);
    const closing = greatestOvertravel(
      linkageOf([0, 1, 4], [0, 2, 3], [1, 3, 4]),
      stroke({ speed: 0.2, slowTravel: 0.5 }),
      'closing',
      0.5,
      0.1,
      3,
    );
    expect(closing?.at).toBeCloseTo(0.25, 12);
    expect(closing?.distance).toBeCloseTo((0.3 / 1.5) * 3, 12);
    expect(closing?.leafSpeed).toBeCloseTo(0.2 / 1.5, 12);
  });

  it('is greatest where a drive without ramps is at its end', () => {
    const found = (rate: readonly number[], way: 'opening' | 'closing'): unknown =>
      greatestOvertravel(linkageOf([0, 1, 2], [0, 1, 3], rate), stroke({}), way, 0.5, 0.1, 3);
    expect(found([4, 2, 1], 'opening')).toMatchObject({ at: 2, leafSpeed: 0.1 });
    expect(found([4, 2, 1], 'closing')).toMatchObject({ at: 2, leafSpeed: 0.1 });
    expect(found([1, 2, 4], 'opening')).toMatchObject({ at: 0, leafSpeed: 0.1 });
    expect(found([1, 2, 4], 'closing')).toMatchObject({ at: 0, leafSpeed: 0.1 });
  });

  it('is said for the first place of the movement where it holds over a stretch', () => {
    expect(greatestOvertravel(rack, even(0.2), 'opening', 0.1, 1, 1)?.at).toBe(0);
    expect(greatestOvertravel(rack, even(0.2), 'closing', 0.1, 1, 1)?.at).toBe(5);
    // 1 m/s at 0.5 m/s² is reached after 1 m.
    const ramped = profileOf({ travel: 5, speed: 1, acceleration: 0.5, slowTravel: 0, slowSpeed: 1 }) as Profile;
    expect(greatestOvertravel(rack, ramped, 'opening', 0.1, 1, 1)).toEqual({ distance: 0.6, at: 1, edgeSpeed: 1, leafSpeed: 1 });
    expect(greatestOvertravel(rack, ramped, 'closing', 0.1, 1, 1)).toEqual({ distance: 0.6, at: 4, edgeSpeed: 1, leafSpeed: 1 });
  });

  it('goes by the speed that the drive has there, in every piece of the stroke', () => {
    // 3 m of drive at 0.5 m/s²: full speed 1 m/s from 1 m to 1.25 m, 0.5 m/s from 2 m on, braking from 2.75 m. Of one sample
    // the lever is a hundredth, so that it decides, whatever the speed there.
    const profile = stroke({ speed: 1, acceleration: 0.5, slowTravel: 1, slowSpeed: 0.5 });
    for (const [place, squared] of [
      [0.25, 0.25],
      [0.75, 0.75],
      [1.125, 1],
      [1.5, 0.75],
      [1.75, 0.5],
      [2.5, 0.25],
      [2.875, 0.125],
    ] as const) {
      const speed = Math.sqrt(squared);
      for (const way of both) {
        const drive = way === 'opening' ? [0, place, 3] : [0, 3 - place, 3];
        const found = greatestOvertravel(linkageOf([0, 1, 2], drive, [1, 0.01, 1]), profile, way, 0.2, 1, 1);
        expect(found?.at, `${way} ${place}`).toBe(1);
        expect(found?.distance).toBeCloseTo((speed * 0.2 + squared / 2) / 0.01, 9);
        expect(found?.leafSpeed).toBeCloseTo(speed / 0.01, 9);
      }
    }
  });

  it('leaves out what the stroke does not use of its linkage', () => {
    // 3.5 m of 4 m; the lever at 3.5 m is half way between 2 and 0.1, so 1.05, and the shortest is 1 at closed.
    const linkage = linkageOf([0, 1, 2, 3, 4], [0, 1, 2, 3, 4], [1, 2, 2, 2, 0.1]);
    for (const way of both) {
      const found = greatestOvertravel(linkage, stroke({ travel: 3.5 }), way, 0.5, 0.1, 1);
      expect(found?.at).toBe(0);
      expect(found?.distance).toBeCloseTo(0.1, 12);
      const far = greatestOvertravel({ ...linkage, rate: [2, 2, 2, 2, 0.1] }, stroke({ travel: 3.5 }), way, 0.5, 0.1, 1);
      expect(far?.at).toBeCloseTo(3.5, 12);
      expect(far?.distance).toBeCloseTo(0.1 / 1.05, 12);
      const short = greatestOvertravel({ ...linkage, rate: [1, 2, 2, 0.2, 0.1] }, stroke({ travel: 2.25 }), way, 0.5, 0.1, 1);
      expect(short?.at).toBe(0);
      expect(short?.distance).toBeCloseTo(0.1, 12);
    }
  });

  it('has no answer for a stroke beyond the linkage, but for rounding', () => {
    for (const way of both) {
      const linkage = linkageOf([0, 1, 2], [0, 1, 3], [4, 2, 1]);
      const found = greatestOvertravel(linkage, stroke({ travel: 3 * (1 + 5e-10) }), way, 0.5, 0.1, 1);
      expect(found?.distance).toBeCloseTo(0.1, 8);
      expect(found?.at).toBeCloseTo(2, 8);
      expect(greatestOvertravel(rack, stroke({ travel: 5 * (1 + 2e-9) }), way, 0.5, 0.1, 1)).toBeUndefined();
    }
  });

  it('comes to nothing without a reaction and with the hardest braking', () => {
    expect(greatestOvertravel(rack, even(0.2), 'closing', 0, 1e9, 1)?.distance).toBeCloseTo(0, 9);
    expect(greatestOvertravel(rack, even(0.2), 'closing', 0, 1e9, 1)?.edgeSpeed).toBe(0.2);
  });

  it('is undefined for what cannot be', () => {
    for (const [reaction, deceleration, arm] of [
      [-0.1, 1, 1],
      [NaN, 1, 1],
      [Infinity, 1, 1],
      [0.1, 0, 1],
      [0.1, -1, 1],
      [0.1, NaN, 1],
      [0.1, Infinity, 1],
      [0.1, 1, 0],
      [0.1, 1, -1],
      [0.1, 1, NaN],
      [0.1, 1, Infinity],
    ] as const)
      expect(greatestOvertravel(rack, even(0.2), 'closing', reaction, deceleration, arm)).toBeUndefined();
  });
});
