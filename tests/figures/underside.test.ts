// The gap under a leaf, against points turned about the real axis in space over a sloping plane.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearance } from '../../server/figures/underside/maths.ts';

const deg = Math.PI / 180;

/** Height over the ground of a point of the underside, by turning it about the leaning axis with Rodrigues’ formula. */
function inSpace(
  out: number,
  angle: number,
  gap: number,
  slope: number,
  rises: number,
  travel: number,
  tilt: number,
  lowest: 'closed' | 'open',
): number {
  // The axis leans so that the leaf hangs lowest in one position: away from that position.
  const down = lowest === 'closed' ? 0 : travel;
  const axis = [Math.sin(tilt) * Math.cos(down), Math.sin(tilt) * Math.sin(down), Math.cos(tilt)] as const;
  // The leaf where it hangs lowest, square to the axis.
  const start = [out * Math.cos(tilt) * Math.cos(down), out * Math.cos(tilt) * Math.sin(down), -out * Math.sin(tilt)] as const;
  const turned = (by: number): number => {
    const cross = axis[0] * start[1] - axis[1] * start[0];
    const dot = axis[0] * start[0] + axis[1] * start[1] + axis[2] * start[2];
    return start[2] * Math.cos(by) + cross * Math.sin(by) + axis[2] * dot * (1 - Math.cos(by));
  };
  const closed = turned(0 - down);
  return gap + turned(angle - down) - closed + (rises * angle) / travel - slope * out * Math.sin(angle);
}

describe('the gap under a leaf', () => {
  it('is what turning it in space leaves, to a tenth of a millimetre, and that at its angle', () => {
    const share = fc.integer({ min: -300, max: 300 }).map((value) => value / 1000);
    fc.assert(
      fc.property(
        fc.record({
          width: fc.integer({ min: 5, max: 50 }).map((value) => value / 10),
          slope: share,
          rises: fc.integer({ min: 0, max: 200 }).map((value) => value / 1000),
          tilt: fc.integer({ min: 0, max: 10 }),
          travel: fc.integer({ min: 30, max: 180 }),
          lowest: fc.constantFrom('closed', 'open'),
        }),
        ({ width, slope, rises, tilt, travel, lowest }) => {
          const found = clearance({ gap: 0.2, width, slope, rises, tilt: tilt * deg, lowest }, travel * deg);
          let [least, greatest] = [Infinity, -Infinity];
          for (const out of [0, width / 3, width])
            for (let i = 0; i <= 500; i++) {
              const here = inSpace(out, (travel * deg * i) / 500, 0.2, slope, rises, travel * deg, tilt * deg, lowest);
              least = Math.min(least, here);
              greatest = Math.max(greatest, here);
            }
          expect(Math.abs((found?.least ?? Number.NaN) - least)).toBeLessThan(0.0001);
          expect(Math.abs((found?.greatest ?? Number.NaN) - greatest)).toBeLessThan(0.0001);
          const there = (out: number): number => inSpace(out, found?.at ?? Number.NaN, 0.2, slope, rises, travel * deg, tilt * deg, lowest);
          expect(Math.min(there(0), there(width))).toBeCloseTo(found?.least ?? Number.NaN, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it.each([
    // A leaf that opens uphill to 90° needs its width times the slope.
    [3, 0.02, 90, 0.06],
    [2.4, 0.05, 90, 0.12],
    [2, 0.1, 30, 0.1],
    [2, 0.1, 120, 0.2],
    [2, -0.1, 90, 0],
  ])('of %d m on a slope of %d, open by %d°, shrinks by %d m', (width, slope, travel, loss) => {
    expect(
      0.5 - (clearance({ gap: 0.5, width, slope, rises: 0, tilt: 0, lowest: 'closed' }, travel * deg)?.least ?? Number.NaN),
    ).toBeCloseTo(loss, 9);
  });

  // On even ground, by hand: a point w out on an axis that leans by β falls or rises by w·sin β·(1 − cos θ) from where it hangs lowest.
  it.each([
    ['closed', 90, 0, 0.5, 0, 0.5 + 2 * Math.sin(3 * deg)],
    ['open', 90, 0, 0.5 - 2 * Math.sin(3 * deg), 90, 0.5],
    ['open', 60, 0, 0.5 - Math.sin(3 * deg), 60, 0.5],
    ['closed', 120, 0, 0.5, 0, 0.5 + 3 * Math.sin(3 * deg)],
    ['open', 120, 0, 0.5 - 3 * Math.sin(3 * deg), 120, 0.5],
    // Lifted by more than the lean takes: least when closed, greatest at the hinge when open.
    ['open', 90, 0.3, 0.5, 0, 0.8],
  ] as const)(
    'of a leaf 2 m wide that hangs lowest %s, open by %d°, with hinges that lift it by %d m',
    (lowest, travel, rises, least, at, greatest) => {
      const found = clearance({ gap: 0.5, width: 2, slope: 0, rises, tilt: 3 * deg, lowest }, travel * deg);
      expect(found?.least).toBeCloseTo(least, 9);
      expect(found?.at).toBeCloseTo(at * deg, 9);
      expect(found?.greatest).toBeCloseTo(greatest, 9);
    },
  );

  it('of rising hinges on rising ground: least and greatest where both are as steep', () => {
    // gap + r·θ/Θ − w·s·sin θ turns where cos θ = r / (Θ·w·s), here a half: at 60°, and beyond a half turn only again.
    const travel = 120 * deg;
    const [width, slope] = [2, 0.1];
    const rises = 0.5 * travel * width * slope;
    const up = clearance({ gap: 0.5, width, slope, rises, tilt: 0, lowest: 'closed' }, travel);
    expect(up?.at).toBeCloseTo(60 * deg, 9);
    expect(up?.least).toBeCloseTo(0.5 + rises / 2 - width * slope * Math.sin(60 * deg), 9);
    expect(up?.greatest).toBeCloseTo(0.5 + rises, 9);
    // Falling ground: greatest at 120° of 170°.
    const far = 170 * deg;
    const lift = 0.5 * far * width * slope;
    const down = clearance({ gap: 0.5, width, slope: -slope, rises: lift, tilt: 0, lowest: 'closed' }, far);
    expect(down?.greatest).toBeCloseTo(0.5 + (lift * 120) / 170 + width * slope * Math.sin(120 * deg), 9);
    expect(down?.least).toBe(0.5);
    // Hinges that lift it more than the ground rises anywhere: nothing less than when closed.
    expect(clearance({ gap: 0.5, width, slope, rises: 1.01 * travel * width * slope, tilt: 0, lowest: 'closed' }, travel)).toMatchObject({
      least: 0.5,
      at: 0,
    });
  });

  it('says nothing of what cannot be', () => {
    const leaf = { gap: 0.1, width: 2, slope: 0, rises: 0, tilt: 0, lowest: 'closed' } as const;
    for (const wrong of [{ gap: -0.1 }, { width: 0 }, { slope: Infinity }, { rises: -1 }, { tilt: 2 }])
      expect(clearance({ ...leaf, ...wrong }, 1)).toBeUndefined();
    expect(clearance(leaf, 0)).toBeUndefined();
  });
});
