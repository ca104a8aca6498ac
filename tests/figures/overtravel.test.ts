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
            // The greatest speed until the drive is told to stop.
            let speed = 0;
            for (let j = 0; j <= 8; j++) speed = Math.max(speed, speedAt(profile, Math.min(whole, at + (j * reaction) / 8)));
            const from = travelAt(profile, at);
            const to = Math.min(travel, from + speed * reaction + (speed * speed) / (2 * deceleration));
            const leaf = (driven: number): number => leafAt(linkage, way === 'opening' ? driven : travel - driven) ?? NaN;
            worst = Math.max(worst, Math.abs(leaf(to) - leaf(from)) * arm);
          }
          // Never less; a little more where the stop at the end of the travel would hold the leaf, which is not relied on.
          expect(found?.distance).toBeGreaterThan(worst * (1 - 2e-3));
          expect(found?.distance).toBeLessThan(worst * 1.02 + 1e-4);
        },
      ),
      { numRuns: 60 },
    );
  });

  const linkageOf = (leaf: readonly number[], drive: readonly number[], rate: readonly number[]): Linkage => ({ leaf, drive, rate });
  const stroke = (spec: Partial<ProfileSpec>): Profile =>
    profileOf({ travel: 3, speed: 0.1, acceleration: Infinity, slowTravel: 0, slowSpeed: 0.1, ...spec }) as Profile;
  const both = ['opening', 'closing'] as const;

  /** A lever that grows evenly from `least` by `growth` for each rad: drive = least·θ + growth·θ²/2, sampled as finely as any linkage. */
  const growing = (least: number, growth: number, end = 2): Linkage => {
    const leaf = Array.from({ length: 49 }, (_, i) => (i * end) / 48);
    return linkageOf(
      leaf,
      leaf.map((at) => least * at + (growth * at * at) / 2),
      leaf.map((at) => least + growth * at),
    );
  };
  const angleOf = (least: number, growth: number, drive: number): number =>
    (Math.sqrt(least * least + 2 * growth * drive) - least) / growth;

  it('follows a lever that changes while the leaf runs on', () => {
    // 0.1 m/s for 0.5 s and at 0.1 m/s² are 0.05 + 0.05 = 0.1 m of drive (by hand). From closed the lever grows, so the leaf makes less of
    // them than with the lever where it trips; towards closed it shrinks, and the leaf makes more: the last 0.1 m before closed.
    const linkage = growing(0.5, 0.4);
    const travel = linkage.drive[48] as number;
    const found = greatestOvertravel(linkage, stroke({ travel }), 'opening', 0.5, 0.1, 3);
    expect(found?.at).toBe(0);
    expect(found?.distance).toBeCloseTo(3 * angleOf(0.5, 0.4, 0.1), 6);
    expect(found?.distance).toBeLessThan((3 * 0.1) / 0.5);
    const slow = stroke({ travel, slowTravel: 0.3, slowSpeed: 0.05 });
    const back = greatestOvertravel(linkage, slow, 'closing', 0.5, 0.1, 3);
    expect(back?.at).toBeCloseTo(angleOf(0.5, 0.4, 0.3), 3);
    expect(back?.distance).toBeCloseTo(3 * (angleOf(0.5, 0.4, 0.3) - angleOf(0.5, 0.4, 0.2)), 4);
    expect(back?.distance).toBeGreaterThan((3 * 0.1) / (0.5 + 0.4 * angleOf(0.5, 0.4, 0.3)));
  });

  it('carries the last lever on behind the end of the travel', () => {
    const linkage = growing(0.5, 0.4);
    const travel = linkage.drive[48] as number;
    expect(greatestOvertravel(linkage, stroke({ travel }), 'closing', 0.5, 0.1, 3)).toMatchObject({ at: 0 });
    expect(greatestOvertravel(linkage, stroke({ travel }), 'closing', 0.5, 0.1, 3)?.distance).toBeCloseTo((3 * 0.1) / 0.5, 9);
  });

  it('counts the speed that a drive still gains until it is told to stop', () => {
    // 1 m/s² for 0.2 s more, from a travel too short for the full speed: 0.5 m/s half way of 0.25 m, and no more.
    const gaining = profileOf({ travel: 0.25, speed: 1, acceleration: 1, slowTravel: 0, slowSpeed: 1 }) as Profile;
    const found = greatestOvertravel(rackLinkage(0.25) as Linkage, gaining, 'opening', 0.2, 1, 1);
    expect(found?.distance).toBeCloseTo(0.5 * 0.2 + 0.25 / 2, 9);
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
    expect(greatestOvertravel(rack, ramped, 'opening', 0.1, 1, 1)).toMatchObject({ at: 1, edgeSpeed: 1, leafSpeed: 1 });
    expect(greatestOvertravel(rack, ramped, 'closing', 0.1, 1, 1)).toMatchObject({ at: 4, edgeSpeed: 1, leafSpeed: 1 });
    expect(greatestOvertravel(rack, ramped, 'closing', 0.1, 1, 1)?.distance).toBeCloseTo(0.6, 12);
  });

  it('leaves out what the stroke does not use of its linkage', () => {
    // The lever shrinks from 2 towards the open end; a stroke of half of it never comes there.
    const linkage = growing(2, -0.7);
    const whole = linkage.drive[48] as number;
    const reached = angleOf(2, -0.7, whole / 2);
    for (const way of both)
      expect(greatestOvertravel(linkage, stroke({ travel: whole / 2 }), way, 1e-6, 1e9, 1)?.leafSpeed).toBeCloseTo(
        0.1 / (2 - 0.7 * reached),
        3,
      );
  });

  it('has no answer for a stroke beyond the linkage, but for rounding', () => {
    for (const way of both) {
      const found = greatestOvertravel(rack, stroke({ travel: 5 * (1 + 5e-10) }), way, 0.5, 0.1, 1);
      expect(found?.distance).toBeCloseTo(0.1, 8);
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
