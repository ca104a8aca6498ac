import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rackLinkage, ramLinkage, leafAt, type Linkage } from '../../server/figures/linkage/maths.ts';
import { profileOf, speedAt, travelAt, runTime, type Profile } from '../../server/figures/motion-profile/maths.ts';
import { greatestOvertravel } from '../../server/figures/overtravel/maths.ts';

const rack = rackLinkage(5) as Linkage;
const even = (speed: number): Profile => profileOf({ travel: 5, speed, acceleration: Infinity, slowTravel: 0, slowSpeed: speed }) as Profile;

describe('how far the edge runs on', () => {
  // s = v·t + v²/(2a), by hand: 40 mm at 0.2 m/s and 75 mm at 0.3 m/s; 60 mm with half the deceleration.
  it.each([
    [0.2, 0.1, 1, 0.04],
    [0.3, 0.1, 1, 0.075],
    [0.2, 0.1, 0.5, 0.06],
  ])('%d m/s, %d s, %d m/s²', (speed, reaction, deceleration, distance) => {
    for (const way of ['opening', 'closing'] as const) expect(greatestOvertravel(rack, even(speed), way, reaction, deceleration, 1)?.distance).toBeCloseTo(distance, 10);
  });

  it('is what a drive that is stopped at any moment leaves to run, in small steps of time', () => {
    fc.assert(
      fc.property(
        fc.record({ along: fc.double({ min: 0.12, max: 0.2, noNaN: true }), out: fc.double({ min: 0.1, max: 0.18, noNaN: true }), leafBracket: fc.double({ min: 0.6, max: 0.9, noNaN: true }) }),
        fc.double({ min: 0, max: 0.2, noNaN: true }), fc.double({ min: 0, max: 0.4, noNaN: true }), fc.constantFrom('opening' as const, 'closing' as const),
        (mounting, reaction, slowShare, way) => {
          const linkage = ramLinkage(mounting, Math.PI / 2) as Linkage;
          const travel = linkage.drive[48] as number;
          const profile = profileOf({ travel, speed: 0.016, acceleration: 0.03, slowTravel: slowShare * travel, slowSpeed: 0.006 }) as Profile;
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

  it('is undefined for what cannot be', () => {
    for (const [reaction, deceleration, arm] of [[-0.1, 1, 1], [NaN, 1, 1], [0.1, 0, 1], [0.1, NaN, 1], [0.1, Infinity, 1], [0.1, 1, 0], [0.1, 1, NaN]] as const)
      expect(greatestOvertravel(rack, even(0.2), 'closing', reaction, deceleration, arm)).toBeUndefined();
  });
});
