import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  deadPoint,
  lengthRate,
  leverArm,
  type RamMounting,
  ramLength,
  reachableAngle,
  strokeUsed,
} from '../../server/figures/linear-ram/maths.ts';

const degrees = Math.PI / 180;
const inDegrees = (angle: number | undefined): number | undefined => (angle === undefined ? undefined : angle / degrees);

/** A ram on the side the leaf opens to, as most are. */
const usual: RamMounting = { along: 0.15, out: 0.15, leafBracket: 0.8 };
/** The same post bracket on the wrong side of the leaf's line. */
const wrongSide: RamMounting = { along: 0.15, out: -0.15, leafBracket: 0.8 };

/** The angle at which a ram stands that has moved as it has to for `angle`. */
const thereAndBack = (m: RamMounting, angle: number, upTo: number): number | undefined =>
  reachableAngle(m, Math.abs((ramLength(m, angle) ?? Number.NaN) - (ramLength(m, 0) ?? Number.NaN)), upTo);

const mounting = fc.record({
  along: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
  out: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
  leafBracket: fc.double({ min: 0.7, max: 2.5, noNaN: true }),
});
const leafAngle = fc.double({ min: 0, max: 150 * degrees, noNaN: true });

describe('the bracket triangle of a ram', () => {
  // Computed by law of cosines, by coordinates and by the cross product of force and arm, which agree: along = out = 0.15 m,
  // leaf bracket 0.80 m, 2000 N, 0.016 m/s.
  const table = [
    [0, 0.961769, 0.12477, 249.54, 7.3474],
    [10, 0.937912, 0.148217, 296.44, 6.1851],
    [30, 0.879117, 0.186463, 372.93, 4.9164],
    [45, 0.827647, 0.205046, 410.09, 4.4709],
    [60, 0.772757, 0.212127, 424.26, 4.3216],
    [90, 0.667083, 0.179888, 359.78, 5.0961],
    [110, 0.61432, 0.116748, 233.5, 7.8522],
  ] as const;

  it.each(table)('at %d° gives length, lever arm, torque and speed of the reference table', (angle, length, lever, torque, speed) => {
    expect(ramLength(usual, angle * degrees)).toBeCloseTo(length, 6);
    const arm = leverArm(usual, angle * degrees) ?? Number.NaN;
    expect(arm).toBeCloseTo(lever, 6);
    expect(2000 * arm).toBeCloseTo(torque, 1);
    expect(0.016 / arm / degrees).toBeCloseTo(speed, 3);
    expect(lengthRate(usual, angle * degrees)).toBe(-arm);
  });

  it('uses the stroke of the reference table, and reaches its angles', () => {
    // Same computation: stroke to 90°, and angle reached with a given stroke.
    expect(strokeUsed(usual, 90 * degrees)).toBeCloseTo(0.294686, 6);
    expect((strokeUsed(usual, 90 * degrees) ?? 0) / 0.016).toBeCloseTo(18.418, 3);
    expect(inDegrees(reachableAngle(usual, 0.25, Math.PI))).toBeCloseTo(76.707, 3);
    expect(inDegrees(reachableAngle(usual, 0.3, Math.PI))).toBeCloseTo(91.712, 3);
    expect(inDegrees(reachableAngle(usual, 0.35, Math.PI))).toBeCloseTo(111.28, 3);
    expect(reachableAngle(usual, 0.3, 90 * degrees)).toBe(90 * degrees);
  });

  it('agrees with the second mounting of the reference table', () => {
    // Computed: along 0.20, out 0.14, leaf bracket 0.70. L0² = (along + b)² + out², L90² = along² + (b − out)².
    const second: RamMounting = { along: 0.2, out: 0.14, leafBracket: 0.7 };
    expect(ramLength(second, 0)).toBeCloseTo(0.910824, 6);
    expect(ramLength(second, 90 * degrees)).toBeCloseTo(0.594643, 6);
    expect(strokeUsed(second, 90 * degrees)).toBeCloseTo(0.316181, 6);
  });

  it('finds the dead point of a bracket on the wrong side, and the stroke it hides', () => {
    // Computed: length rises from 0.96177 to 1.01213 m at 45°, where the lever arm is 0, and falls again symmetrically.
    expect(ramLength(wrongSide, 0)).toBeCloseTo(0.96177, 5);
    expect(ramLength(wrongSide, 45 * degrees)).toBeCloseTo(1.01213, 5);
    expect(leverArm(wrongSide, 45 * degrees)).toBeCloseTo(0, 12);
    expect(inDegrees(deadPoint(wrongSide, 90 * degrees))).toBeCloseTo(45, 9);
    expect(deadPoint(wrongSide, 44.9 * degrees)).toBeUndefined();
    expect(ramLength(wrongSide, 90 * degrees)).toBeCloseTo(0.96177, 5);
    expect(strokeUsed(wrongSide, 90 * degrees)).toBeCloseTo(1.01213 - 0.96177, 5);
    expect(inDegrees(reachableAngle(wrongSide, 0.35, 90 * degrees))).toBeCloseTo(45, 9);
  });

  it('agrees with a published virtual-work problem', () => {
    // solve.club, virtual work: a = b = 0.5 m with 120° between them, 400 N gives L = 0.8660 m and 100 N·m.
    // Post bracket in line behind the hinge; 60° of leaf leave 120° between the sides.
    const equal: RamMounting = { along: 0.5, out: 0, leafBracket: 0.5 };
    expect(ramLength(equal, 60 * degrees)).toBeCloseTo(0.866, 4);
    expect(400 * (leverArm(equal, 60 * degrees) ?? 0)).toBeCloseTo(100, 9);
  });
});

describe('the corners of a mounting', () => {
  it('is dead at closed when the post bracket stands on the line of the leaf', () => {
    for (const along of [0.15, -0.15]) {
      for (const out of [0, -0]) expect(deadPoint({ along, out, leafBracket: 0.8 }, 1)).toBe(0);
      expect(reachableAngle({ along, out: 0, leafBracket: 0.8 }, 0.3, 1)).toBe(0);
    }
  });

  it('gives the ends of its travel back, and goes no further with more stroke', () => {
    for (const m of [usual, wrongSide]) {
      const dead = deadPoint(m, Math.PI) ?? Number.NaN;
      const stroke = Math.abs((ramLength(m, dead) ?? Number.NaN) - (ramLength(m, 0) ?? Number.NaN));
      expect(reachableAngle(m, stroke * 1e-6, Math.PI)).toBeLessThan(1e-4);
      expect(reachableAngle(m, stroke * (1 - 1e-9), Math.PI)).toBeCloseTo(dead, 3);
      for (const more of [stroke * (1 + 1e-9), 2 * stroke, 100]) expect(reachableAngle(m, more, Math.PI)).toBe(dead);
    }
  });

  it('has nothing to say of travel below 0, however little', () => {
    const line: RamMounting = { along: 0.15, out: 0, leafBracket: 0.8 };
    expect(deadPoint(line, 0)).toBe(0);
    expect(deadPoint(line, -1e-12)).toBeUndefined();
    expect(reachableAngle(usual, 0.3, 0)).toBe(0);
    expect(reachableAngle(usual, 0.3, -0.1)).toBeUndefined();
    expect(reachableAngle(usual, 0, 1)).toBeCloseTo(0, 7);
  });

  it('sees a bracket that is off that line by rounding only as on it', () => {
    for (const along of [0.15, -0.15])
      for (const out of [1e-17, -1e-17]) expect(deadPoint({ along, out, leafBracket: 0.8 }, 1)).toBeCloseTo(0, 12);
  });

  it('is dead everywhere when the post bracket is the hinge', () => {
    const onHinge: RamMounting = { along: 0, out: 0, leafBracket: 0.8 };
    expect(deadPoint(onHinge, 1)).toBe(0);
    expect(leverArm(onHinge, 0.7)).toBeCloseTo(0, 15);
    expect(strokeUsed(onHinge, 1.5)).toBeCloseTo(0, 15);
    expect(reachableAngle(onHinge, 0.3, 1)).toBe(0);
  });

  it('is dead everywhere, too, a tenth of a micrometre from the hinge', () => {
    const almost: RamMounting = { along: 0, out: 1e-7, leafBracket: 0.8 };
    expect(deadPoint(almost, 1)).toBe(0);
    expect(reachableAngle(almost, 0.3, 1)).toBe(0);
    expect(strokeUsed(almost, Math.PI)).toBeCloseTo(1e-7, 12);
    // A millionth of the leaf's side is the limit, however long that is.
    for (const leafBracket of [0.5, 2]) {
      expect(deadPoint({ along: 0.75e-6 * leafBracket, out: 0.2e-6 * leafBracket, leafBracket }, 1)).toBe(0);
      expect(deadPoint({ along: 0.8e-6 * leafBracket, out: 0.3e-6 * leafBracket, leafBracket }, 1)).toBeUndefined();
    }
  });

  it('has no dead point within a quarter turn on the usual side, and none at all below it', () => {
    expect(deadPoint(usual, 90 * degrees)).toBeUndefined();
    expect(inDegrees(deadPoint(usual, Math.PI))).toBeCloseTo(135, 9);
  });

  it('opens outwards with a ram that pushes', () => {
    // A bracket behind the hinge's far side: the ram gets longer while the leaf opens, up to the dead point at 100°-odd.
    const pushing: RamMounting = { along: -0.05, out: -0.25, leafBracket: 0.7 };
    expect(lengthRate(pushing, 0)).toBeGreaterThan(0);
    const dead = deadPoint(pushing, Math.PI) ?? Number.NaN;
    expect(dead).toBeCloseTo(Math.PI - Math.atan2(0.25, 0.05), 12);
    const reached = reachableAngle(pushing, 0.1, Math.PI) ?? Number.NaN;
    expect((ramLength(pushing, reached) ?? 0) - (ramLength(pushing, 0) ?? 0)).toBeCloseTo(0.1, 12);
  });

  it('says nothing about what cannot be', () => {
    for (const leafBracket of [0, -0.5, Number.NaN, Infinity]) {
      const broken: RamMounting = { along: 0.1, out: 0.1, leafBracket };
      expect(ramLength(broken, 0)).toBeUndefined();
      expect(lengthRate(broken, 0)).toBeUndefined();
      expect(leverArm(broken, 0)).toBeUndefined();
      expect(deadPoint(broken, 1)).toBeUndefined();
      expect(strokeUsed(broken, 1)).toBeUndefined();
      expect(reachableAngle(broken, 0.3, 1)).toBeUndefined();
    }
    expect(ramLength({ ...usual, out: Number.NaN }, 0)).toBeUndefined();
    expect(ramLength(usual, Number.NaN)).toBeUndefined();
    for (const bad of [-0.1, Number.NaN, Infinity]) {
      expect(strokeUsed(usual, bad)).toBeUndefined();
      expect(reachableAngle(usual, bad, 1)).toBeUndefined();
      expect(reachableAngle(usual, 0.3, bad)).toBeUndefined();
    }
    expect(deadPoint(wrongSide, -0.1)).toBeUndefined();
    expect(reachableAngle(usual, -0.1, 1)).toBeUndefined();
    expect(reachableAngle(usual, 0.3, Number.NaN)).toBeUndefined();
    // Both pins in one place: no direction, so no lever arm, and a dead point there.
    const meeting: RamMounting = { along: 0, out: 0.8, leafBracket: 0.8 };
    expect(lengthRate({ along: -0.8, out: 0, leafBracket: 0.8 }, 0)).toBeUndefined();
    expect(deadPoint(meeting, 2)).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('for any mounting', () => {
  it('the rate is the slope of the length', () => {
    fc.assert(
      fc.property(mounting, leafAngle, (m, angle) => {
        const length = ramLength(m, angle) ?? 0;
        fc.pre(length > 0.05);
        const h = 1e-5;
        const slope = ((ramLength(m, angle + h) ?? 0) - (ramLength(m, angle - h) ?? 0)) / (2 * h);
        expect(lengthRate(m, angle)).toBeCloseTo(slope, 6);
      }),
    );
  });

  it('the lever arm is the distance of the ram from the hinge and never more than the shorter side', () => {
    fc.assert(
      fc.property(mounting, leafAngle, (m, angle) => {
        const length = ramLength(m, angle) ?? 0;
        fc.pre(length > 0.05);
        const cross = -m.along * m.leafBracket * Math.sin(angle) - m.out * m.leafBracket * Math.cos(angle);
        const lever = leverArm(m, angle) ?? Number.NaN;
        expect(lever).toBeCloseTo(Math.abs(cross) / length, 12);
        expect(lever).toBeLessThanOrEqual(Math.min(Math.hypot(m.along, m.out), m.leafBracket) + 1e-12);
      }),
    );
  });

  it('the stroke gives the angle back up to the dead point', () => {
    fc.assert(
      fc.property(mounting, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (m, share) => {
        const end = deadPoint(m, Math.PI) ?? Math.PI;
        fc.pre(end > 0.05 && Math.hypot(m.along, m.out) > 0.01);
        const angle = share * end;
        expect(thereAndBack(m, angle, Math.PI)).toBeCloseTo(angle, 7);
      }),
    );
  });

  it('the length runs one way only up to the dead point, turns there, and nowhere before has no lever arm', () => {
    fc.assert(
      fc.property(mounting, (m) => {
        const end = deadPoint(m, Math.PI) ?? Number.NaN;
        fc.pre(end > 0.05 && Math.hypot(m.along, m.out) > 0.01);
        const direction = Math.sign(lengthRate(m, 0) ?? 0);
        for (let i = 1; i < 20; i++) expect(Math.sign(lengthRate(m, (end * i) / 20) ?? 0)).toBe(direction);
        expect(Math.sign(lengthRate(m, end + 0.01) ?? 0)).toBe(-direction);
        expect(leverArm(m, end) ?? 0).toBeLessThan(1e-6);
      }),
    );
  });

  it('the stroke used is what a fine sweep finds, and grows with the angle', () => {
    fc.assert(
      fc.property(mounting, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (m, angle) => {
        const swept = Array.from({ length: 2001 }, (_, i) => ramLength(m, (angle * i) / 2000) ?? Number.NaN);
        const stroke = strokeUsed(m, angle) ?? Number.NaN;
        const found = Math.max(...swept) - Math.min(...swept);
        expect(stroke).toBeGreaterThanOrEqual(found - 1e-8);
        expect(stroke).toBeLessThan(found + 1e-5);
        expect(strokeUsed(m, angle * 0.9) ?? 0).toBeLessThanOrEqual(stroke + 1e-8);
      }),
    );
  });

  it('the angle reached needs no more than the stroke, and a little further would', () => {
    fc.assert(
      fc.property(mounting, fc.double({ min: 0, max: 0.8, noNaN: true }), (m, stroke) => {
        const upTo = 120 * degrees;
        const reached = reachableAngle(m, stroke, upTo) ?? Number.NaN;
        expect(reached).toBeGreaterThanOrEqual(0);
        expect(reached).toBeLessThanOrEqual(upTo);
        expect(strokeUsed(m, reached) ?? 1).toBeLessThanOrEqual(stroke + 1e-7);
        const end = deadPoint(m, upTo) ?? upTo;
        expect(reached).toBeLessThanOrEqual(end);
        if (reached < end - 1e-3) expect(strokeUsed(m, reached + 1e-3) ?? 0).toBeGreaterThan(stroke);
      }),
    );
  });
});
