import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ArmMounting,
  armDeadPoint,
  newPose,
  poseAt,
  reachableArmAngle,
  shaftAngle,
  shaftRatio,
  transmissionAngle,
} from '../../server/figures/articulated-arm/maths.ts';

const degrees = Math.PI / 180;

/** Shrinking a counterexample of these sweeps takes minutes; the first one found says enough. */
function holds<T>(property: fc.IProperty<T>, given: fc.Parameters<T> = {}): void {
  fc.assert(property, { ...given, endOnFailure: true });
}
const usual: ArmMounting = { along: 0.2, out: 0.25, driveArm: 0.5, linkArm: 0.5, leafBracket: 0.7 };

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const mounting = fc.record({
  along: length(-0.5, 0.5),
  out: length(-0.5, 0.5),
  driveArm: length(0.2, 0.8),
  linkArm: length(0.2, 0.8),
  leafBracket: length(0.2, 1.2),
});
const assembled = mounting.filter((m) => shaftAngle(m, 0) !== undefined && armDeadPoint(m, 0) === undefined);

const elbowOf = (m: ArmMounting, angle: number): readonly [number, number] => {
  const shaft = shaftAngle(m, angle) ?? Number.NaN;
  return [m.driveArm * Math.cos(shaft) - m.along, m.driveArm * Math.sin(shaft) + m.out];
};
const bracketOf = (m: ArmMounting, angle: number): readonly [number, number] => [
  m.leafBracket * Math.cos(angle),
  m.leafBracket * Math.sin(angle),
];
/** The same angle, whole turns aside. */
const sameDirection = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

/** Inner angle of a triangle between `left` and `right`, `opposite` to the third side; undefined if the sides make no triangle. */
function innerAngle(left: number, right: number, opposite: number): number | undefined {
  const cosine = (left * left + right * right - opposite * opposite) / (2 * left * right);
  if (!(Math.abs(cosine) <= 1 + 1e-12)) return undefined;
  return Math.acos(Math.max(-1, Math.min(1, cosine)));
}

/** Lengths of a four-bar linkage in metres, all above 0: crank a, coupler b, rocker c, ground d (from crank pivot to rocker pivot). */
interface FourBar {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Directions of coupler (θ3) and rocker (θ4) in radians, in (−π, π], counted from the ground link. */
interface FourBarPosition {
  readonly θ3: number;
  readonly θ4: number;
}

/** Angular speeds of coupler (ω3) and rocker (ω4), in the unit of the crank's, positive in the sense of θ. */
interface FourBarSpeed {
  readonly ω3: number;
  readonly ω4: number;
}

interface BothAssemblies<Part> {
  readonly open: Part;
  readonly crossed: Part;
}

/** An angle brought into (−π, π]. */
const wrapped = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/**
 * Positions of a four-bar linkage for crank angle θ2 (radians, from the ground link), in both assemblies. `open` has the
 * pin between coupler and rocker to the left of the line from crank pin to rocker pivot. It is the pair of solutions of
 * Freudenstein's equation (1955; Norton, *Design of Machinery*, chapter 4), found as a triangle so that nothing divides by zero. It
 * shares nothing with the arm.
 * Undefined where the bars cannot be closed at this crank angle, and for lengths not above 0.
 */
function fourBar(bars: FourBar, θ2: number): BothAssemblies<FourBarPosition> | undefined {
  const { a, b, c, d } = bars;
  if (!(a > 0 && b > 0 && c > 0 && d > 0) || !Number.isFinite(a + b + c + d) || !Number.isFinite(θ2)) return undefined;
  const diagonalX = d - a * Math.cos(θ2);
  const diagonalY = -a * Math.sin(θ2);
  const diagonal = Math.hypot(diagonalX, diagonalY);
  if (diagonal === 0) return undefined;
  const atCrankPin = innerAngle(b, diagonal, c);
  const atRockerPivot = innerAngle(c, diagonal, b);
  if (atCrankPin === undefined || atRockerPivot === undefined) return undefined;
  const sight = Math.atan2(diagonalY, diagonalX);
  const assembled = (side: 1 | -1): FourBarPosition => ({
    θ3: wrapped(sight + side * atCrankPin),
    θ4: wrapped(sight + Math.PI - side * atRockerPivot),
  });
  return { open: assembled(1), crossed: assembled(-1) };
}

/**
 * Angular speeds of coupler and rocker for crank angle θ2 (radians) and crank speed ω2 (radians a second):
 * ω3 = aω2/b · sin(θ4 − θ2)/sin(θ3 − θ4), ω4 = aω2/c · sin(θ2 − θ3)/sin(θ4 − θ3) (Norton, *Design of Machinery*, chapter 6).
 * Undefined as for fourBar, and where coupler and rocker are in line (the speeds grow without bound there).
 */
function fourBarSpeeds(bars: FourBar, θ2: number, ω2: number): BothAssemblies<FourBarSpeed> | undefined {
  const positions = fourBar(bars, θ2);
  if (positions === undefined || !Number.isFinite(ω2)) return undefined;
  const open = speedOf(bars, positions.open, θ2, ω2);
  const crossed = speedOf(bars, positions.crossed, θ2, ω2);
  return open === undefined || crossed === undefined ? undefined : { open, crossed };
}

function speedOf({ a, b, c }: FourBar, { θ3, θ4 }: FourBarPosition, θ2: number, ω2: number): FourBarSpeed | undefined {
  const between = Math.sin(θ3 - θ4);
  if (Math.abs(between) <= 1e-12) return undefined;
  return {
    ω3: ((a * ω2) / b) * (Math.sin(θ4 - θ2) / between),
    ω4: ((a * ω2) / c) * (Math.sin(θ2 - θ3) / -between),
  };
}

describe('a four-bar linkage', () => {
  // First line: Norton, Design of Machinery, examples 4-1 and 6-7 (the printed 57.33, −98.01, 20.30, −60.98, 6.998 and −4.121
  // are from memory; the computation confirms them). Second: four-bar page of S. Hanneman, which gives 39.1° measured the other
  // way, 180 − 140.93. Third: data of a problem by Myszka (Machines and Mechanisms), result computed.
  const table = [
    [{ a: 40, b: 120, c: 80, d: 100 }, 40, 57.325, -98.005, 20.298, -60.978],
    [{ a: 2, b: 3, c: 4, d: 5 }, 120, 140.932, -173.136, 15.247, -47.451],
    [{ a: 40, b: 400, c: 140, d: 360 }, 45, 66.635, -76.382, 14.512, -24.26],
  ] as const;

  it.each(table)('%o at %d° stands as the reference says', (bars, crank, open4, crossed4, open3, crossed3) => {
    const found = fourBar(bars, crank * degrees);
    expect((found?.open.θ4 ?? Number.NaN) / degrees).toBeCloseTo(open4, 3);
    expect((found?.crossed.θ4 ?? Number.NaN) / degrees).toBeCloseTo(crossed4, 3);
    expect((found?.open.θ3 ?? Number.NaN) / degrees).toBeCloseTo(open3, 3);
    expect((found?.crossed.θ3 ?? Number.NaN) / degrees).toBeCloseTo(crossed3, 3);
  });

  it('turns as fast as the reference says', () => {
    // Norton example 6-7, from memory, confirmed by computation; then Myszka's data, computed.
    const norton = fourBarSpeeds(table[0][0], 40 * degrees, 25);
    expect(norton?.open.ω4).toBeCloseTo(6.998, 3);
    expect(norton?.open.ω3).toBeCloseTo(-4.121, 3);
    const myszka = fourBarSpeeds(table[2][0], 45 * degrees, 6);
    expect(myszka?.open.ω4).toBeCloseTo(1.1019, 4);
    expect(myszka?.open.ω3).toBeCloseTo(-0.2803, 4);
  });

  const bars = fc.record({ a: length(0.1, 1), b: length(0.1, 1), c: length(0.1, 1), d: length(0.1, 1) });

  it('closes its loop and obeys the Freudenstein equation, in both assemblies', () => {
    holds(
      fc.property(bars, length(-Math.PI, Math.PI), (m, crank) => {
        const found = fourBar(m, crank);
        fc.pre(found !== undefined);
        for (const { θ3, θ4 } of [found.open, found.crossed]) {
          expect(m.a * Math.cos(crank) + m.b * Math.cos(θ3)).toBeCloseTo(m.d + m.c * Math.cos(θ4), 7);
          expect(m.a * Math.sin(crank) + m.b * Math.sin(θ3)).toBeCloseTo(m.c * Math.sin(θ4), 7);
          const k3 = (m.a ** 2 - m.b ** 2 + m.c ** 2 + m.d ** 2) / (2 * m.a * m.c);
          expect((m.d / m.a) * Math.cos(θ4) - (m.d / m.c) * Math.cos(crank) + k3).toBeCloseTo(Math.cos(crank - θ4), 6);
        }
      }),
    );
  });

  it('moves at the speed its positions change', () => {
    holds(
      fc.property(bars, length(-Math.PI, Math.PI), (m, crank) => {
        const h = 1e-6;
        const [before, after, speeds] = [fourBar(m, crank - h), fourBar(m, crank + h), fourBarSpeeds(m, crank, 1)];
        fc.pre(before !== undefined && after !== undefined && speeds !== undefined);
        for (const way of ['open', 'crossed'] as const) {
          fc.pre(Math.abs(Math.sin(after[way].θ3 - after[way].θ4)) > 0.1);
          const change = (a: number, b: number): number => Math.atan2(Math.sin(a - b), Math.cos(a - b)) / (2 * h);
          expect(speeds[way].ω4).toBeCloseTo(change(after[way].θ4, before[way].θ4), 4);
          expect(speeds[way].ω3).toBeCloseTo(change(after[way].θ3, before[way].θ3), 4);
        }
      }),
    );
  });

  it('is not there when the bars do not meet', () => {
    expect(fourBar({ a: 1, b: 1, c: 1, d: 5 }, 0.3)).toBeUndefined();
    expect(fourBar({ a: 0, b: 1, c: 1, d: 1 }, 0.3)).toBeUndefined();
    expect(fourBar({ a: 1, b: 1, c: 1, d: 1 }, Number.NaN)).toBeUndefined();
    expect(fourBarSpeeds({ a: 1, b: 1, c: 1, d: 5 }, 0.3, 1)).toBeUndefined();
    // Coupler and rocker in one line.
    expect(fourBarSpeeds({ a: 1, b: 1, c: 1, d: 1 }, Math.PI, 1)).toBeUndefined();
  });
});

describe('an articulated arm', () => {
  it('keeps both arms as long as they are, its elbow on one side, and its shaft without jumps', () => {
    holds(
      fc.property(assembled, (m) => {
        const end = reachableArmAngle(m, 170 * degrees) ?? Number.NaN;
        let before = shaftAngle(m, 0) ?? Number.NaN;
        for (let i = 0; i < 400; i++) {
          const angle = (end * i) / 400;
          const [elbow, bracket] = [elbowOf(m, angle), bracketOf(m, angle)];
          expect(Math.hypot(elbow[0] - bracket[0], elbow[1] - bracket[1])).toBeCloseTo(m.linkArm, 7);
          const side = (bracket[0] + m.along) * (elbow[1] - m.out) - (bracket[1] - m.out) * (elbow[0] + m.along);
          expect(side * (m.out < 0 ? -1 : 1)).toBeGreaterThan(-1e-7);
          const shaft = shaftAngle(m, angle) ?? Number.NaN;
          expect(Math.abs(shaft - before)).toBeLessThan(1);
          before = shaft;
        }
      }),
    );
  });

  it('folds its elbow on the shaft side of the closed leaf, away from the middle of the opening when open', () => {
    expect(elbowOf(usual, 0)[1]).toBeGreaterThan(0);
    expect(elbowOf(usual, 90 * degrees)[0]).toBeLessThan(-usual.along);
    const outward: ArmMounting = { along: 0.15, out: -0.25, driveArm: 0.5, linkArm: 0.5, leafBracket: 0.7 };
    expect(elbowOf(outward, 0)[1]).toBeLessThan(0);
  });

  it('is the four-bar linkage of post, drive arm, link arm and leaf', () => {
    holds(
      fc.property(assembled, length(0.02, 0.98), (m, share) => {
        const angle = share * (reachableArmAngle(m, 120 * degrees) ?? Number.NaN);
        fc.pre(angle > 0.01 && Math.hypot(m.along, m.out) > 0.02);
        const toHinge = Math.atan2(-m.out, m.along);
        const bars = { a: m.driveArm, b: m.linkArm, c: m.leafBracket, d: Math.hypot(m.along, m.out) };
        const shaft = shaftAngle(m, angle) ?? Number.NaN;
        const positions = fourBar(bars, shaft - toHinge);
        const speeds = fourBarSpeeds(bars, shaft - toHinge, 1);
        // At a dead point of the link the two assemblies meet: leave a little room.
        const hold = transmissionAngle(m, angle) ?? 0;
        fc.pre(hold > 0.02 && (shaftRatio(m, angle) ?? 0) < 100);
        expect(positions).toBeDefined();
        expect(speeds).toBeDefined();
        if (positions === undefined || speeds === undefined) return;
        const way =
          sameDirection(positions.open.θ4, angle - toHinge) < sameDirection(positions.crossed.θ4, angle - toHinge) ? 'open' : 'crossed';
        expect(sameDirection(positions[way].θ4, angle - toHinge)).toBeLessThan(1e-7);
        expect((shaftRatio(m, angle) ?? Number.NaN) * Math.abs(speeds[way].ω4)).toBeCloseTo(1, 6);
        const between = sameDirection(positions[way].θ3, positions[way].θ4);
        expect(hold).toBeCloseTo(Math.min(between, Math.PI - between), 7);
      }),
    );
  });

  it('has the reference linkage as its arm', () => {
    // Norton's bars again (from memory, confirmed by computation), laid out as a gate: ground along the closed leaf, shaft 100 mm
    // behind the hinge; crank at 40° puts the rocker at 57.325° and turns it at 6.998/25 of the crank's speed.
    const m: ArmMounting = { along: 0.1, out: 0, driveArm: 0.04, linkArm: 0.12, leafBracket: 0.08 };
    const angle = 57.3249 * degrees;
    expect((shaftAngle(m, angle) ?? Number.NaN) / degrees).toBeCloseTo(40, 2);
    expect(1 / (shaftRatio(m, angle) ?? Number.NaN)).toBeCloseTo(6.998 / 25, 4);
    expect((transmissionAngle(m, angle) ?? Number.NaN) / degrees).toBeCloseTo(57.325 - 20.298, 2);
  });

  it('has the slope of the shaft angle as its ratio', () => {
    holds(
      fc.property(assembled, length(0.02, 0.98), (m, share) => {
        const angle = share * (reachableArmAngle(m, 150 * degrees) ?? Number.NaN);
        const h = 1e-6;
        fc.pre(angle > 0.01 && (shaftRatio(m, angle) ?? 100) < 20);
        const [before, after] = [shaftAngle(m, angle - h), shaftAngle(m, angle + h)];
        fc.pre(before !== undefined && after !== undefined);
        const slope = Math.abs(after - before) / (2 * h);
        expect(Math.abs((shaftRatio(m, angle) ?? Number.NaN) - slope)).toBeLessThan(1e-4 * (1 + slope ** 2));
      }),
    );
  });

  it('has its first dead point where a fine sweep finds the first loss of hold', () => {
    holds(
      fc.property(assembled, (m) => {
        const upTo = 170 * degrees;
        const steps = 1700;
        const direction = Math.sign((shaftAngle(m, 1e-7) ?? Number.NaN) - (shaftAngle(m, 0) ?? Number.NaN));
        let swept = upTo;
        let kind: string | undefined;
        for (let i = 1; i < steps && kind === undefined; i++) {
          const [before, now] = [shaftAngle(m, (upTo * (i - 1)) / steps), shaftAngle(m, (upTo * i) / steps)];
          if (now === undefined) [kind, swept] = ['arms-in-line', (upTo * i) / steps];
          else if (Math.sign(now - (before ?? Number.NaN)) === -direction) [kind, swept] = ['link-through-hinge', (upTo * i) / steps];
        }
        const found = armDeadPoint(m, upTo);
        if (kind === undefined)
          expect(found === undefined || found.angle > upTo * (1 - 2 / steps) || (shaftRatio(m, found.angle) ?? Infinity) > 1).toBe(true);
        else {
          expect(Math.abs((found?.angle ?? Number.NaN) - swept)).toBeLessThan((2.1 * upTo) / steps);
          expect(reachableArmAngle(m, upTo)).toBe(found?.angle);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('says which kind of dead point it is', () => {
    holds(
      fc.property(assembled, (m) => {
        const found = armDeadPoint(m, 170 * degrees);
        fc.pre(found !== undefined && found.angle > 1e-3);
        if (found.kind === 'link-through-hinge') expect(transmissionAngle(m, found.angle) ?? Number.NaN).toBeLessThan(1e-5);
        else {
          const [x, y] = bracketOf(m, found.angle);
          const reach = Math.hypot(x + m.along, y - m.out);
          expect(Math.min(Math.abs(reach - m.driveArm - m.linkArm), Math.abs(reach - Math.abs(m.driveArm - m.linkArm)))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it('knows arms that lie in one line with the leaf closed', () => {
    const straight: ArmMounting = { along: 0, out: 0.3, driveArm: 0.25, linkArm: 0.25, leafBracket: 0.4 };
    expect(armDeadPoint(straight, 1)).toEqual({ angle: 0, kind: 'arms-in-line' });
    expect(reachableArmAngle(straight, 1)).toBe(0);
    expect(shaftRatio(straight, 0)).toBeUndefined();
    // Shaft on the hinge axis: the arms keep their shape, so dead once is dead always.
    expect(armDeadPoint({ along: 0, out: 0, driveArm: 0.1, linkArm: 0.2, leafBracket: 0.3 }, 1)).toEqual({
      angle: 0,
      kind: 'arms-in-line',
    });
    const folded: ArmMounting = { along: 0.1, out: 0, driveArm: 0.6, linkArm: 0.1, leafBracket: 0.4 };
    expect(armDeadPoint(folded, 1)?.kind).toBe('arms-in-line');
  });

  it('knows a link arm that lies along the closed leaf', () => {
    // Elbow 0.2 m beyond the bracket on the leaf's own line: the link pulls straight at the hinge.
    const along: ArmMounting = { along: 0.1, out: 0.3, driveArm: Math.hypot(0.8, 0.3), linkArm: 0.2, leafBracket: 0.5 };
    expect(elbowOf(along, 0)[0]).toBeCloseTo(0.7, 9);
    expect(armDeadPoint(along, 1)).toEqual({ angle: 0, kind: 'link-through-hinge' });
    expect(reachableArmAngle(along, 1)).toBe(0);
    expect(shaftRatio(along, 0)).toBeCloseTo(0, 9);
    expect(transmissionAngle(along, 0)).toBeCloseTo(0, 9);
  });

  it('stops where the arms fold onto each other, and where the link arm points at the hinge', () => {
    // Link arm 0.4 m longer than the drive arm: folded onto each other when the bracket is 0.4 m from the shaft.
    const folding: ArmMounting = { ...usual, driveArm: 0.3, linkArm: 0.7 };
    expect(armDeadPoint({ ...usual, driveArm: 0.7, linkArm: 0.3 }, Math.PI)?.kind).toBe('link-through-hinge');
    expect(armDeadPoint(folding, Math.PI)?.kind).toBe('arms-in-line');
    const reachSquared = (angle: number): number =>
      usual.along ** 2 + usual.out ** 2 + 0.49 + 1.4 * (usual.along * Math.cos(angle) - usual.out * Math.sin(angle));
    expect(reachSquared(armDeadPoint(folding, Math.PI)?.angle ?? Number.NaN)).toBeCloseTo(0.16, 12);
  });

  it('sees arms that miss being in line at closed by rounding only', () => {
    for (const nudge of [1 - 1e-15, 1, 1 + 1e-15]) {
      const reach = Math.hypot(0.9, 0.25);
      const straight: ArmMounting = { along: 0.2, out: 0.25, driveArm: 0.4, linkArm: (reach - 0.4) * nudge, leafBracket: 0.7 };
      expect(armDeadPoint(straight, 1.5)).toEqual({ angle: 0, kind: 'arms-in-line' });
    }
    // A link arm along the leaf's line but for 1e-10 of it: the dead point lies a hair before closed, and is at closed.
    const along: ArmMounting = { along: 0.1, out: 0.3, driveArm: Math.hypot(0.8, 0.3) * (1 + 1e-11), linkArm: 0.2, leafBracket: 0.5 };
    const other: ArmMounting = { ...along, driveArm: Math.hypot(0.8, 0.3) * (1 - 1e-11) };
    for (const m of [along, other]) expect(armDeadPoint(m, 1)?.angle).toBeCloseTo(0, 9);
  });

  it('turns with the leaf when the shaft is the hinge', () => {
    const coaxial: ArmMounting = { along: 0, out: 0, driveArm: 0.3, linkArm: 0.4, leafBracket: 0.5 };
    expect(shaftRatio(coaxial, 0.4)).toBeCloseTo(1, 12);
    expect((shaftAngle(coaxial, 1) ?? 0) - (shaftAngle(coaxial, 0) ?? 0)).toBeCloseTo(1, 12);
    expect(armDeadPoint(coaxial, 2)).toBeUndefined();
  });

  it('says nothing about what cannot be', () => {
    const short: ArmMounting = { ...usual, driveArm: 0.2, linkArm: 0.2 };
    const broken: readonly ArmMounting[] = [
      short,
      { ...usual, driveArm: 0 },
      { ...usual, linkArm: -1 },
      { ...usual, leafBracket: 0 },
      { ...usual, along: Number.NaN },
    ];
    for (const m of broken) {
      expect(shaftAngle(m, 0)).toBeUndefined();
      expect(shaftRatio(m, 0)).toBeUndefined();
      expect(transmissionAngle(m, 0)).toBeUndefined();
      expect(armDeadPoint(m, 1)).toBeUndefined();
      expect(reachableArmAngle(m, 1)).toBeUndefined();
    }
    expect(shaftAngle(usual, Infinity)).toBeUndefined();
    expect(armDeadPoint(usual, -1)).toBeUndefined();
    expect(reachableArmAngle(usual, Number.NaN)).toBeUndefined();
    expect(shaftAngle({ along: -0.5, out: 0, driveArm: 0.3, linkArm: 0.3, leafBracket: 0.5 }, 0)).toBeUndefined();
  });

  it('is the same arm in millimetres and in kilometres, at its dead points too', () => {
    const scaled = (m: ArmMounting, by: number): ArmMounting => ({
      along: m.along * by,
      out: m.out * by,
      driveArm: m.driveArm * by,
      linkArm: m.linkArm * by,
      leafBracket: m.leafBracket * by,
    });
    const reach = Math.hypot(0.9, 0.25);
    for (const by of [1e-6, 1e-3, 1e3, 1e6]) {
      for (const angle of [0, 0.4, 1.2])
        expect(shaftRatio(scaled(usual, by), angle)).toBeCloseTo(shaftRatio(usual, angle) ?? Number.NaN, 9);
      expect(armDeadPoint(scaled({ ...usual, driveArm: 0.3, linkArm: 0.7 }, by), Math.PI)?.angle).toBeCloseTo(
        armDeadPoint({ ...usual, driveArm: 0.3, linkArm: 0.7 }, Math.PI)?.angle ?? Number.NaN,
        9,
      );
      for (const nudge of [1 - 1e-15, 1, 1 + 1e-15]) {
        // Stretched, and folded onto each other.
        for (const linkArm of [(reach - 0.4) * nudge, (reach + 0.4) * nudge]) {
          const straight = scaled({ along: 0.2, out: 0.25, driveArm: 0.4, linkArm, leafBracket: 0.7 }, by);
          expect(armDeadPoint(straight, 1.5)).toEqual({ angle: 0, kind: 'arms-in-line' });
        }
      }
      // A millionth of its length off that line it has a hold.
      const nearly = scaled({ along: 0.2, out: 0.25, driveArm: 0.4, linkArm: (reach - 0.4) * (1 + 1e-6), leafBracket: 0.7 }, by);
      expect(shaftRatio(nearly, 0)).toBeGreaterThan(100);
      expect(armDeadPoint(nearly, 1e-4)).toBeUndefined();
    }
    expect(shaftRatio({ along: 0.3, out: 0, driveArm: 0.5, linkArm: 0.5, leafBracket: 0.7 }, 0)).toBeUndefined();
    expect(shaftRatio({ along: 3e6, out: 0, driveArm: 5e6, linkArm: 5e6, leafBracket: 7e6 }, 0)).toBeUndefined();
  });

  it('is dead where it only just reaches, with shaft, hinge and bracket in one line', () => {
    // The shaft 0.3 m from the hinge on the one side and the bracket, at 90°, 0.4 m on the other: 0.7 m apart, which is both arms.
    for (const arms of [
      [0.35, 0.35],
      [0.2, 0.5],
    ] as const) {
      const found = armDeadPoint({ along: 0, out: -0.3, driveArm: arms[0], linkArm: arms[1], leafBracket: 0.4 }, 2);
      expect(found?.angle).toBeCloseTo(90 * degrees, 6);
    }
    // Folded, with shaft and bracket on one side: 0.1 m, the difference of the arms.
    expect(armDeadPoint({ along: 0, out: 0.3, driveArm: 0.6, linkArm: 0.5, leafBracket: 0.4 }, 2)?.angle).toBeCloseTo(90 * degrees, 6);
  });

  it('is asked up to closed at least', () => {
    const straight: ArmMounting = { along: 0, out: 0.3, driveArm: 0.25, linkArm: 0.25, leafBracket: 0.4 };
    expect(armDeadPoint(straight, 0)).toEqual({ angle: 0, kind: 'arms-in-line' });
    for (const upTo of [-1e-12, -1, Number.NaN, Infinity, -Infinity]) {
      for (const m of [straight, usual]) {
        expect(armDeadPoint(m, upTo)).toBeUndefined();
        expect(reachableArmAngle(m, upTo)).toBeUndefined();
      }
    }
    expect(reachableArmAngle(usual, 0)).toBe(0);
    expect(armDeadPoint(usual, 0)).toBeUndefined();
  });

  it('takes no number that is none, has no end or is nothing', () => {
    const pose = newPose();
    for (const key of ['along', 'out', 'driveArm', 'linkArm', 'leafBracket'] as const)
      for (const bad of [Number.NaN, Infinity, -Infinity]) {
        for (const angle of [0, 1]) expect(poseAt({ ...usual, [key]: bad }, angle, pose)).toBe(false);
        expect(armDeadPoint({ ...usual, [key]: bad }, 1)).toBeUndefined();
      }
    for (const angle of [Number.NaN, Infinity, -Infinity]) expect(poseAt(usual, angle, pose)).toBe(false);
    // Arms that would close if a length counted without its sign, or as nothing.
    for (const key of ['driveArm', 'linkArm', 'leafBracket'] as const)
      expect(poseAt({ ...usual, [key]: -usual[key] }, 0.3, pose)).toBe(false);
    expect(poseAt({ along: 0, out: 0.3, driveArm: 0.5, linkArm: 0, leafBracket: 0.4 }, 0, pose)).toBe(false);
    expect(poseAt({ along: 0, out: 0.3, driveArm: 0, linkArm: 0.5, leafBracket: 0.4 }, 0, pose)).toBe(false);
    expect(poseAt({ along: 0.3, out: 0, driveArm: 0.5, linkArm: 0.5, leafBracket: 0 }, 0, pose)).toBe(false);
  });
});
