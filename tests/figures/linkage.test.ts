import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ArmMounting, reachableArmAngle, shaftAngle, shaftRatio } from '../../server/figures/articulated-arm/maths.ts';
import { deadPoint, leverArm, type RamMounting, ramLength, strokeUsed } from '../../server/figures/linear-ram/maths.ts';
import { armLinkage, directLinkage, driveAt, type Linkage, leafAt, rackLinkage, ramLinkage } from '../../server/figures/linkage/maths.ts';

const degrees = Math.PI / 180;

/** Shrinking a counterexample of these sweeps takes minutes; the first one found says enough. */
function holds<T>(property: fc.IProperty<T>, given: fc.Parameters<T> = {}): void {
  fc.assert(property, { ...given, endOnFailure: true });
}
const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ram = fc.record({ along: length(-0.4, 0.4), out: length(-0.4, 0.4), leafBracket: length(0.5, 2) });
const arm = fc.record({
  along: length(-0.4, 0.4),
  out: length(-0.5, 0.5),
  driveArm: length(0.2, 0.8),
  linkArm: length(0.2, 0.8),
  leafBracket: length(0.3, 1.2),
});
/** Share of the way to the dead point, up to hardly a hundredth of a percent before it. */
const nearness = fc.oneof(length(0.1, 0.99), length(0.99, 0.9999));

const usual: RamMounting = { along: 0.15, out: 0.15, leafBracket: 0.8 };

const last = (values: ArrayLike<number>): number => values[values.length - 1] as number;
const promises = (linkage: Linkage, opening: number): void => {
  expect([linkage.leaf.length, linkage.drive.length, linkage.rate.length]).toEqual([49, 49, 49]);
  expect([linkage.leaf[0], linkage.drive[0], last(linkage.leaf)]).toEqual([0, 0, opening]);
  for (let i = 1; i < 49; i++) {
    expect((linkage.leaf[i] as number) > (linkage.leaf[i - 1] as number)).toBe(true);
    expect((linkage.drive[i] as number) > (linkage.drive[i - 1] as number)).toBe(true);
  }
  expect(linkage.rate.every((rate) => rate > 0 && Number.isFinite(rate))).toBe(true);
};

/** Largest error of both readings against the exact drive travel, as a share of the whole travel. */
const worst = (linkage: Linkage, exact: (leaf: number) => number): { readonly drive: number; readonly leaf: number } => {
  let drive = 0;
  let leaf = 0;
  for (let i = 0; i <= 997; i++) {
    const at = (last(linkage.leaf) * i) / 997;
    drive = Math.max(drive, Math.abs((driveAt(linkage, at) ?? Number.NaN) - exact(at)) / last(linkage.drive));
    leaf = Math.max(leaf, Math.abs((leafAt(linkage, Math.min(exact(at), last(linkage.drive))) ?? Number.NaN) - at) / last(linkage.leaf));
  }
  return { drive, leaf };
};

describe('the linkage of a ram', () => {
  it('has the stroke, times and lever arms of the reference table', () => {
    // Computed (see linear-ram): stroke to 90° 0.294686 m, 18.418 s at 0.016 m/s, mean 4.8866 °/s; lever arm at 45° 0.205046 m.
    const linkage = ramLinkage(usual, 90 * degrees);
    expect(linkage).toBeDefined();
    if (linkage === undefined) return;
    promises(linkage, 90 * degrees);
    expect(last(linkage.drive)).toBeCloseTo(0.294686, 6);
    expect(last(linkage.drive) / 0.016).toBeCloseTo(18.418, 3);
    expect(90 / (last(linkage.drive) / 0.016)).toBeCloseTo(4.8866, 4);
    expect(linkage.rate[24]).toBeCloseTo(0.205046, 6);
    // Stroke 0.25 m is reached at 76.707°.
    expect((leafAt(linkage, 0.25) ?? 0) / degrees).toBeCloseTo(76.707, 3);
    expect(driveAt(linkage, 60 * degrees)).toBeCloseTo(0.961769 - 0.772757, 6);
  });

  it('samples exactly, and reads between samples to a thousandth and better, up to close before a dead point', () => {
    holds(
      fc.property(ram, nearness, (m, share) => {
        const opening = share * Math.min(deadPoint(m, Math.PI) ?? Math.PI, 120 * degrees);
        fc.pre(opening > 0.05 && Math.hypot(m.along, m.out) > 0.02 && (ramLength(m, opening) ?? 0) > 0.05);
        const linkage = ramLinkage(m, opening);
        expect(linkage).toBeDefined();
        if (linkage === undefined) return;
        promises(linkage, opening);
        expect(last(linkage.drive)).toBeCloseTo(strokeUsed(m, opening) ?? Number.NaN, 12);
        for (let i = 0; i < 49; i++) expect(linkage.rate[i]).toBeCloseTo(leverArm(m, linkage.leaf[i] as number) ?? Number.NaN, 11);
        const closed = ramLength(m, 0) ?? Number.NaN;
        const error = worst(linkage, (leaf) => Math.abs((ramLength(m, leaf) ?? Number.NaN) - closed));
        expect(error.drive).toBeLessThan(1e-3);
        expect(error.leaf).toBeLessThan(1e-3);
      }),
    );
  });

  it('is not there with a dead point in the travel', () => {
    const wrongSide: RamMounting = { along: 0.15, out: -0.15, leafBracket: 0.8 };
    expect(ramLinkage(wrongSide, 90 * degrees)).toBeUndefined();
    expect(ramLinkage(wrongSide, 45 * degrees)).toBeUndefined();
    expect(ramLinkage(wrongSide, 44 * degrees)).toBeDefined();
    expect(ramLinkage({ ...usual, out: 0 }, 1)).toBeUndefined();
    expect(ramLinkage({ ...usual, along: 0, out: 0 }, 1)).toBeUndefined();
    expect(ramLinkage({ ...usual, leafBracket: 0 }, 1)).toBeUndefined();
    for (const opening of [0, -0.1, -1, Number.NaN, Infinity, 1e-322]) expect(ramLinkage(usual, opening)).toBeUndefined();
    for (const part of ['along', 'out', 'leafBracket'] as const) expect(ramLinkage({ ...usual, [part]: Number.NaN }, 1)).toBeUndefined();
  });
});

describe('the linkage of an articulated arm', () => {
  it('samples exactly, and reads between samples to a thousandth and better, up to close before a dead point', () => {
    holds(
      fc.property(arm, nearness, (m, share) => {
        const opening = share * (reachableArmAngle(m, 110 * degrees) ?? 0);
        fc.pre(opening > 0.2 && (shaftRatio(m, 0) ?? 100) < 20 && (shaftRatio(m, 0) ?? 0) > 0.05);
        const linkage = armLinkage(m, opening);
        expect(linkage).toBeDefined();
        if (linkage === undefined) return;
        promises(linkage, opening);
        const closed = shaftAngle(m, 0) ?? Number.NaN;
        const error = worst(linkage, (leaf) => Math.abs((shaftAngle(m, leaf) ?? Number.NaN) - closed));
        expect(error.drive).toBeLessThan(1e-3);
        expect(error.leaf).toBeLessThan(1e-3);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    // Almost folded when open, so that the shaft turns without bound there; and a shaft that all but stops within two degrees.
    [{ along: 0.2, out: 0.25, driveArm: 0.3, linkArm: 0.7, leafBracket: 0.7 }, 113.43 * degrees],
    [{ along: 0.13918, out: -0.45264, driveArm: 0.578976, linkArm: 0.467949, leafBracket: 0.573365 }, 1.54],
  ])('follows the sharp bends of %o', (m: ArmMounting, opening) => {
    const linkage = armLinkage(m, opening);
    expect(linkage).toBeDefined();
    if (linkage === undefined) return;
    promises(linkage, opening);
    const closed = shaftAngle(m, 0) ?? Number.NaN;
    const error = worst(linkage, (leaf) => Math.abs((shaftAngle(m, leaf) ?? Number.NaN) - closed));
    expect(error.drive).toBeLessThan(2e-4);
    expect(error.leaf).toBeLessThan(2e-4);
  });

  it('moves its samples to where leaf, drive and logarithm of the rate together go equally far', () => {
    // The shaft stands almost still for most of this travel; with even steps of the leaf the largest share would be many times the least.
    const linkage = armLinkage(
      { along: -0.17383, out: 0.258422, driveArm: 0.535992, linkArm: 0.463858, leafBracket: 0.387014 },
      1.893041,
    ) as Linkage;
    promises(linkage, 1.893041);
    const ways = Array.from({ length: 48 }, (_, i) => {
      const step = (values: ArrayLike<number>): number => ((values[i + 1] as number) - (values[i] as number)) / last(values);
      return (
        step(linkage.leaf) + step(linkage.drive) + 0.3 * Math.abs(Math.log((linkage.rate[i + 1] as number) / (linkage.rate[i] as number)))
      );
    });
    expect(Math.max(...ways) / Math.min(...ways)).toBeLessThan(1.05);
  });

  it('does so too where a few steps take much of the drive’s travel, however slowly the rate changes', () => {
    const m: ArmMounting = { along: -0.35847, out: -0.408055, driveArm: 0.2506949, linkArm: 0.7803757, leafBracket: 0.7049514 };
    const linkage = armLinkage(m, 0.3635) as Linkage;
    const closed = shaftAngle(m, 0) ?? Number.NaN;
    expect(worst(linkage, (leaf) => Math.abs((shaftAngle(m, leaf) ?? Number.NaN) - closed)).drive).toBeLessThan(5e-6);
  });

  it('is not there with a dead point or an angle out of reach in the travel', () => {
    const usualArm: ArmMounting = { along: 0.2, out: 0.25, driveArm: 0.5, linkArm: 0.5, leafBracket: 0.7 };
    expect(armLinkage(usualArm, 90 * degrees)).toBeDefined();
    for (const stopped of [
      { ...usualArm, driveArm: 0.3, linkArm: 0.7 },
      { ...usualArm, driveArm: 0.7, linkArm: 0.3 },
    ]) {
      const end = reachableArmAngle(stopped, Math.PI) ?? Number.NaN;
      expect(end).toBeGreaterThan(0.5);
      expect(end).toBeLessThan(Math.PI - 0.1);
      expect(armLinkage(stopped, end)).toBeUndefined();
      expect(armLinkage(stopped, end + 0.05)).toBeUndefined();
      expect(armLinkage(stopped, end - 0.05)).toBeDefined();
    }
    expect(armLinkage({ ...usualArm, driveArm: 0.2, linkArm: 0.2 }, 1)).toBeUndefined();
    // The last so small that the shaft’s angle swallows it.
    for (const opening of [0, -0.1, -1, Number.NaN, Infinity, 1e-17]) expect(armLinkage(usualArm, opening)).toBeUndefined();
    for (const part of ['along', 'out', 'driveArm', 'linkArm', 'leafBracket'] as const)
      expect(armLinkage({ ...usualArm, [part]: Number.NaN }, 1)).toBeUndefined();
  });
});

describe('the linkage of a direct drive or a rack', () => {
  it('is one to one', () => {
    for (const make of [directLinkage, rackLinkage]) {
      const linkage = make(4.2);
      expect(linkage).toBeDefined();
      if (linkage === undefined) return;
      promises(linkage, 4.2);
      for (const at of [0, 0.01, 1, 3.3333, 4.2]) {
        expect(driveAt(linkage, at)).toBeCloseTo(at, 12);
        expect(leafAt(linkage, at)).toBeCloseTo(at, 12);
      }
      for (let i = 0; i <= 48; i++) for (const row of [linkage.leaf, linkage.drive]) expect(row[i]).toBeCloseTo(i * 0.0875, 14);
      expect(linkage.rate).toEqual(new Array(49).fill(1));
      for (const travel of [0, -1, Number.NaN, Infinity, -Infinity, 1e-322]) expect(make(travel)).toBeUndefined();
    }
  });
});

describe('reading a linkage', () => {
  it('gives the leaf back from the drive, always in the same order', () => {
    holds(
      fc.property(ram, nearness, length(0, 1), length(0, 1), (m, share, one, other) => {
        const linkage = ramLinkage(m, share * Math.min(deadPoint(m, Math.PI) ?? Math.PI, 120 * degrees));
        fc.pre(linkage !== undefined && last(linkage.drive) > 1e-3);
        const [low, high] = [Math.min(one, other) * last(linkage.drive), Math.max(one, other) * last(linkage.drive)];
        const [nearer, further] = [leafAt(linkage, low) ?? Number.NaN, leafAt(linkage, high) ?? Number.NaN];
        expect(nearer).toBeLessThanOrEqual(further + 1e-9);
        expect(driveAt(linkage, nearer)).toBeCloseTo(low, 10);
      }),
    );
  });

  // One piece from (0, 0) to (1, 1), t the share of the leaf and v that of the drive: the cubic Hermite curve v(t) in closed form
  // for four pairs of end slopes, and solved for t. Derived.
  it.each([
    { start: 3, end: 3, drive: (t: number) => (1 + (2 * t - 1) ** 3) / 2, leaf: (v: number) => (1 + Math.cbrt(2 * v - 1)) / 2 },
    { start: 3, end: 0, drive: (t: number) => 1 - (1 - t) ** 3, leaf: (v: number) => 1 - Math.cbrt(1 - v) },
    { start: 0, end: 3, drive: (t: number) => t ** 3, leaf: (v: number) => Math.cbrt(v) },
    { start: 0, end: 0, drive: (t: number) => t * t * (3 - 2 * t), leaf: (v: number) => 0.5 - Math.sin(Math.asin(1 - 2 * v) / 3) },
    { start: 1, end: 1, drive: (t: number) => t, leaf: (v: number) => v },
    { start: 2, end: 0, drive: (t: number) => t * (2 - t), leaf: (v: number) => 1 - Math.sqrt(1 - v) },
    { start: 0, end: 2, drive: (t: number) => t * t, leaf: (v: number) => Math.sqrt(v) },
  ])('is the curve with slopes $start and $end', ({ start, end, drive, leaf }) => {
    const piece: Linkage = { leaf: [0, 2], drive: [0, 5], rate: [start * 2.5, end * 2.5] };
    for (let i = 0; i <= 200; i++) {
      const share = i / 200;
      expect(driveAt(piece, 2 * share)).toBeCloseTo(5 * drive(share), 13);
      const found = leafAt(piece, 5 * share) ?? Number.NaN;
      // Where the curve is flat a rounding of the drive is the root of it on the leaf.
      expect(drive(found / 2)).toBeCloseTo(share, 14);
      if (share > 0.01 && share < 0.99 && Math.abs(share - 0.5) > 0.01) expect(found).toBeCloseTo(2 * leaf(share), 12);
    }
  });

  it('gives the leaf back for any pair of slopes', () => {
    for (let start = 0; start <= 3; start += 0.25) {
      for (let end = 0; end <= 3; end += 0.25) {
        const piece: Linkage = { leaf: [0, 1], drive: [0, 1], rate: [start, end] };
        for (const share of [1e-9, 0.001, 0.03, 0.2, 0.45, 0.5, 0.6, 0.9, 0.99, 0.9999, 1 - 1e-9])
          expect(driveAt(piece, leafAt(piece, share) ?? Number.NaN), `${start} ${end} ${share}`).toBeCloseTo(share, 14);
      }
    }
  });

  it('takes what rounding leaves outside, in proportion to the travel', () => {
    const rack = rackLinkage(8) as Linkage;
    for (const read of [leafAt, driveAt]) {
      expect([-5e-9, 8 * (1 + 5e-10)].map((at) => read(rack, at))).toEqual([0, 8]);
      expect([-9e-9, 8 * (1 + 2e-9)].map((at) => read(rack, at))).toEqual([undefined, undefined]);
    }
  });

  it('never turns back, whatever the slopes', () => {
    const steep: Linkage = { leaf: Float64Array.of(0, 1), drive: Float64Array.of(0, 1), rate: Float64Array.of(10, 10) };
    let before = 0;
    for (let i = 0; i <= 100; i++) {
      const drive = driveAt(steep, i / 100) ?? Number.NaN;
      expect(drive).toBeGreaterThanOrEqual(before - 1e-12);
      before = drive;
    }
    expect(before).toBeCloseTo(1, 12);
  });

  it('ends where the travel ends, but for rounding', () => {
    const linkage = ramLinkage(usual, 1.5);
    expect(linkage).toBeDefined();
    if (linkage === undefined) return;
    const end = last(linkage.drive);
    expect(leafAt(linkage, 0)).toBe(0);
    expect(leafAt(linkage, end)).toBeCloseTo(1.5, 14);
    expect(leafAt(linkage, end * (1 + 1e-12))).toBeCloseTo(1.5, 14);
    expect(leafAt(linkage, -1e-14)).toBe(0);
    expect(driveAt(linkage, 1.5)).toBeCloseTo(end, 14);
    for (const outside of [-0.01, end + 0.01, Number.NaN, Infinity]) expect(leafAt(linkage, outside)).toBeUndefined();
    for (const outside of [-0.01, 1.51, Number.NaN]) expect(driveAt(linkage, outside)).toBeUndefined();
  });
});
