// The gap under a leaf, against points turned about the real axis in space over a sloping plane.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearance } from '../../server/figures/underside/maths.ts';

const deg = Math.PI / 180;

/** Height over the ground of a point of the underside, by turning it about the leaning axis with Rodrigues’ formula. */
function inSpace(out: number, angle: number, gap: number, slope: number, rises: number, travel: number, tilt: number, lowest: 'closed' | 'open'): number {
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
  it('is what turning it in space leaves, to a tenth of a millimetre', () => {
    const share = fc.integer({ min: -300, max: 300 }).map((value) => value / 1000);
    fc.assert(
      fc.property(
        fc.record({ width: fc.integer({ min: 5, max: 50 }).map((value) => value / 10), slope: share, rises: fc.integer({ min: 0, max: 200 }).map((value) => value / 1000), tilt: fc.integer({ min: 0, max: 10 }), travel: fc.integer({ min: 30, max: 180 }), lowest: fc.constantFrom('closed', 'open') }),
        ({ width, slope, rises, tilt, travel, lowest }) => {
          const found = clearance({ gap: 0.2, width, slope, rises, tilt: tilt * deg, lowest }, travel * deg);
          let least = Infinity;
          for (const out of [0, width / 3, width]) for (let i = 0; i <= 500; i++) least = Math.min(least, inSpace(out, (travel * deg * i) / 500, 0.2, slope, rises, travel * deg, tilt * deg, lowest));
          expect(Math.abs((found?.least ?? Number.NaN) - least)).toBeLessThan(0.0001);
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
    expect(0.5 - (clearance({ gap: 0.5, width, slope, rises: 0, tilt: 0, lowest: 'closed' }, travel * deg)?.least ?? Number.NaN)).toBeCloseTo(loss, 9);
  });

  it('says nothing of what cannot be', () => {
    const leaf = { gap: 0.1, width: 2, slope: 0, rises: 0, tilt: 0, lowest: 'closed' } as const;
    for (const wrong of [{ gap: -0.1 }, { width: 0 }, { slope: Infinity }, { rises: -1 }, { tilt: 2 }]) expect(clearance({ ...leaf, ...wrong }, 1)).toBeUndefined();
    expect(clearance(leaf, 0)).toBeUndefined();
  });
});
