import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastLag } from '../../server/figures/least-lag/maths.ts';
import type { LeastLag, OverlappingLeaves, SwingLeaf } from '../../server/figures/least-lag/maths.ts';
import type { Linkage } from '../../server/figures/linkage/maths.ts';
import { profileOf, runTime, travelAt, wholeTravel } from '../../server/figures/motion-profile/maths.ts';
import type { Direction, Profile, ProfileSpec } from '../../server/figures/motion-profile/maths.ts';

const degree = Math.PI / 180;

// Leaves, each with the exact relation of drive and angle next to its samples: the check below never reads the samples.

interface Mounting {
  readonly drive: (angle: number) => number;
  readonly rate: (angle: number) => number;
  readonly angle: (drive: number) => number;
}
const direct: Mounting = { drive: (angle) => angle, rate: () => 1, angle: (drive) => drive };

/** Pulling ram, reference 4: L² = a² + b² − 2ab·cosφ. */
function ram(along: number, out: number, arm: number): Mounting {
  const side = Math.hypot(along, out);
  const inner = Math.PI - Math.atan2(out, along);
  const length = (angle: number): number => Math.sqrt(side ** 2 + arm ** 2 - 2 * side * arm * Math.cos(inner - angle));
  return {
    drive: (angle) => length(0) - length(angle),
    rate: (angle) => (side * arm * Math.sin(inner - angle)) / length(angle),
    angle: (drive) => {
      const cosine = (side ** 2 + arm ** 2 - (length(0) - drive) ** 2) / (2 * side * arm);
      return Math.max(0, inner - Math.acos(Math.min(1, Math.max(-1, cosine))));
    },
  };
}

function sampled({ drive, rate }: Mounting, end: number): Linkage {
  const leaf = Float64Array.from({ length: 49 }, (_, i) => (i * end) / 48);
  return { leaf, drive: leaf.map(drive), rate: leaf.map(rate) };
}

interface TestLeaf extends SwingLeaf {
  readonly mounting: Mounting;
}
interface Pair extends OverlappingLeaves {
  readonly covering: TestLeaf;
  readonly covered: TestLeaf;
}

function leafOf(width: number, mounting: Mounting, end: number, spec: Omit<ProfileSpec, 'travel'>): TestLeaf {
  return { width, mounting, linkage: sampled(mounting, end), profile: profileOf({ ...spec, travel: mounting.drive(end) }) as Profile };
}
const steady = (speed: number): Omit<ProfileSpec, 'travel'> => ({ speed, acceleration: Infinity, slowTravel: 0, slowSpeed: 0 });

// The check: step through time, and at each step look at the two leaves as they stand. It knows nothing of required angles,
// of where the leaves clear or of which moment decides.

interface Point {
  readonly x: number;
  readonly y: number;
}

function distanceToSegment(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const share = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}
const side = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

/** The leaves cross, or the covering leaf is on the wrong side of any of the covered leaf within its reach, or they are too near. */
function collides(pair: Pair, angleCovering: number, angleCovered: number): boolean {
  const reach = pair.covering.width + pair.gap + pair.overlap;
  const apart = pair.covering.width + pair.gap + pair.covered.width;
  const clearance = pair.clearance ?? 0;
  const hinge: Point = { x: 0, y: 0 };
  const tip: Point = { x: reach * Math.cos(angleCovering), y: reach * Math.sin(angleCovering) };
  const otherHinge: Point = { x: apart, y: 0 };
  const otherTip: Point = { x: apart - pair.covered.width * Math.cos(angleCovered), y: pair.covered.width * Math.sin(angleCovered) };
  if (distanceToSegment(hinge, otherHinge, otherTip) > reach + clearance) return false;

  const crosses = side(hinge, tip, otherHinge) * side(hinge, tip, otherTip) < 0 && side(otherHinge, otherTip, hinge) * side(otherHinge, otherTip, tip) < 0;
  if (crosses && Math.min(angleCovering, angleCovered) > 1e-9) return true;
  for (let i = 0; i <= 12; i += 1) {
    const along = (pair.covered.width * i) / 12;
    const x = apart - along * Math.cos(angleCovered);
    const y = along * Math.sin(angleCovered);
    if (Math.hypot(x, y) <= reach && angleCovering < Math.atan2(y, x) - 1e-9) return true;
  }
  if (clearance === 0 || angleCovered <= 1e-9) return false;
  const nearest = Math.min(
    distanceToSegment(tip, otherHinge, otherTip),
    distanceToSegment(otherTip, hinge, tip),
    distanceToSegment(hinge, otherHinge, otherTip),
    distanceToSegment(otherHinge, hinge, tip),
  );
  return nearest < clearance - 1e-7;
}

const angleAt = ({ mounting, profile }: TestLeaf, time: number, direction: Direction): number =>
  mounting.angle(direction === 'opening' ? travelAt(profile, time) : wholeTravel(profile) - travelAt(profile, time));

function collidesAt(pair: Pair, direction: Direction, lag: number, time: number): boolean {
  const own = direction === 'opening' ? 0 : lag;
  const other = direction === 'opening' ? lag : 0;
  return collides(pair, angleAt(pair.covering, time - own, direction), angleAt(pair.covered, time - other, direction));
}

const dt = 0.004;
function collidesEver(pair: Pair, direction: Direction, lag: number): boolean {
  const end = lag + Math.max(runTime(pair.covering.profile), runTime(pair.covered.profile)) + dt;
  for (let t = 0; t <= end; t += dt) if (collidesAt(pair, direction, lag, t)) return true;
  return false;
}

/** The same in small steps around the moment said to decide; a collision found is a collision, wherever it was looked for. */
function collidesNear(pair: Pair, direction: Direction, lag: number, said: LeastLag): boolean {
  let low = 0;
  let high = runTime(pair.covered.profile);
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    const isBeyond = angleAt(pair.covered, middle, direction) > said.angleCovered;
    if (isBeyond === (direction === 'opening')) high = middle;
    else low = middle;
  }
  const moment = low + (direction === 'opening' ? lag : 0);
  // Next to a fast leaf the collision may last for a tenth of a millisecond only.
  for (let i = -1500; i <= 1500; i += 1) if (collidesAt(pair, direction, lag, moment + i * 2e-5)) return true;
  return false;
}

const tolerance = 0.005;

/** What is wrong with the answer; an empty text if nothing. */
function faultIn(pair: Pair, direction: Direction): string {
  const said = leastLag(pair, direction);
  if (said === undefined) {
    // Even the longest wait does not help.
    const whole = runTime(direction === 'opening' ? pair.covering.profile : pair.covered.profile);
    return collidesEver(pair, direction, whole + 1) ? '' : 'undefined, yet free with a whole run of lag';
  }
  const more = said.lag + tolerance;
  if (collidesEver(pair, direction, more) || collidesNear(pair, direction, more, said)) return `collides with ${said.lag} + ${tolerance} s`;
  if (said.lag > tolerance) {
    const less = said.lag - tolerance;
    if (!collidesNear(pair, direction, less, said) && !collidesEver(pair, direction, less)) return `free with ${said.lag} − ${tolerance} s`;
  }
  return '';
}

describe('worked cases', () => {
  // 3 m leaves, no gap, 60 mm overlap. Where the ends meet the two hinges and that point make a triangle of 6, 3.06 and 3 m.
  const covering = 3;
  const overlap = 0.06;
  const atCovering = Math.acos((36 + 3.06 ** 2 - 9) / (2 * 6 * 3.06));
  const atCovered = Math.acos((36 + 9 - 3.06 ** 2) / (2 * 6 * 3));

  test('a much faster covered leaf: the ends decide, by the cosine rule', () => {
    const pair = { covering: leafOf(covering, direct, 90 * degree, steady(0.1)), covered: leafOf(3, direct, 90 * degree, steady(0.5)), overlap, gap: 0 };
    const said = leastLag(pair, 'opening')!;
    expect(said.lag).toBeCloseTo(atCovering / 0.1 - atCovered / 0.5, 9);
    expect(said.angleCovering).toBeCloseTo(atCovering, 9);
    expect(said.angleCovered).toBeCloseTo(atCovered, 9);
  });

  test('equal leaves in step never touch on opening, and on closing', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    for (const direction of ['opening', 'closing'] as const) {
      expect(leastLag({ covering: leaf, covered: leaf, overlap, gap: 0 }, direction)!.lag).toBeCloseTo(0, 9);
    }
  });

  test('closing, a covering leaf that has less far to come waits for the other to be shut', () => {
    // 90° and 60° at 0.1 rad/s: it must not be shut before the other is, so 30° worth of time.
    const pair = { covering: leafOf(3, direct, 60 * degree, steady(0.1)), covered: leafOf(3, direct, 90 * degree, steady(0.1)), overlap, gap: 0 };
    const said = leastLag(pair, 'closing')!;
    expect(said.lag).toBeCloseTo((30 * degree) / 0.1, 9);
    expect(said.angleCovered).toBe(0);
    expect(said.angleCovering).toBe(0);
  });

  test('clearance has to be there before the covered leaf starts, and until it is shut', () => {
    // 20 mm at the covered leaf's end, 3 m out: asin(0.02 / 3).
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    const pair = { covering: leaf, covered: leafOf(3, direct, 90 * degree, steady(0.02)), overlap, gap: 0, clearance: 0.02 };
    expect(leastLag(pair, 'opening')!.lag).toBeCloseTo(Math.asin(0.02 / 3) / 0.1, 9);
    const closing = leastLag({ ...pair, covered: leaf }, 'closing')!;
    expect(closing.lag).toBeCloseTo(Math.asin(0.02 / 3) / 0.1, 9);
    expect(closing.angleCovered).toBe(0);
  });

  test('a covering leaf that stops in the way', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    const short = leafOf(3, direct, 5 * degree, steady(0.1));
    expect(leastLag({ covering: short, covered: leaf, overlap, gap: 0 }, 'opening')).toBeUndefined();
    expect(leastLag({ covering: short, covered: leaf, overlap, gap: 0 }, 'closing')).toBeUndefined();
    expect(leastLag({ covering: short, covered: leafOf(3, direct, 4 * degree, steady(0.1)), overlap, gap: 0 }, 'opening')).toBeDefined();
  });

  test('what cannot be', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    const good: OverlappingLeaves = { covering: leaf, covered: leaf, overlap, gap: 0.01, clearance: 0.01 };
    expect(leastLag(good, 'opening')).toBeDefined();
    const bad: Partial<OverlappingLeaves>[] = [
      { overlap: -0.01 }, { overlap: 0 }, { overlap: 3 }, { overlap: NaN },
      { gap: -0.01 }, { gap: NaN }, { gap: Infinity }, { clearance: -0.01 }, { clearance: NaN }, { clearance: 2.99 },
      { covering: { ...leaf, width: 0 } }, { covered: { ...leaf, width: -1 } },
      { covering: { ...leaf, width: NaN } }, { covered: { ...leaf, width: Infinity } },
      { covering: { ...leaf, profile: profileOf({ ...steady(0.1), travel: 2 })! } },
      { covered: leafOf(3, direct, 200 * degree, steady(0.1)) },
    ];
    for (const change of bad) expect(leastLag({ ...good, ...change }, 'opening'), JSON.stringify(Object.entries(change)[0])).toBeUndefined();
  });
});

describe('against stepping through time', () => {
  const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  interface LeafSketch {
    readonly width: number;
    readonly end: number;
    readonly speed: number;
    readonly acceleration: number;
    readonly slowShare: number;
    readonly slowSpeed: number;
    readonly ram: { readonly along: number; readonly out: number; readonly arm: number } | undefined;
  }
  // Speeds in leaf terms (rad/s), brought to a ram's by about its lever.
  function leafFrom({ width, end, speed, acceleration, slowShare, slowSpeed, ram: r }: LeafSketch): TestLeaf {
    const mounting = r === undefined ? direct : ram(r.along, r.out, r.arm);
    const scale = r === undefined ? 1 : 0.15;
    const travel = mounting.drive(end * degree);
    return leafOf(width, mounting, end * degree, {
      speed: speed * scale,
      acceleration: acceleration * scale,
      slowTravel: slowShare * travel,
      slowSpeed: slowSpeed * scale,
    });
  }
  const leaves = (end: fc.Arbitrary<number>): fc.Arbitrary<LeafSketch> =>
    fc.record({
      width: between(0.8, 4),
      end,
      speed: between(0.05, 0.4),
      acceleration: fc.oneof(between(0.03, 0.6), fc.constant(Infinity)),
      slowShare: fc.oneof(fc.constant(0), between(0.02, 0.3)),
      slowSpeed: between(0.03, 0.2),
      ram: fc.oneof(fc.constant(undefined), fc.record({ along: between(0.1, 0.2), out: between(0.1, 0.2), arm: between(0.5, 1) })),
    });

  function check(overlapShare: fc.Arbitrary<number>, end: fc.Arbitrary<number>, clearance: fc.Arbitrary<number>, numRuns: number): void {
    fc.assert(
      fc.property(
        fc.record({ covering: leaves(end), covered: leaves(end), overlapShare, gap: between(0, 0.05), clearance }),
        fc.constantFrom<Direction>('opening', 'closing'),
        (sketch, direction) => {
          const pair: Pair = {
            covering: leafFrom(sketch.covering),
            covered: leafFrom(sketch.covered),
            overlap: sketch.overlapShare * sketch.covered.width,
            gap: sketch.gap,
            clearance: sketch.clearance,
          };
          expect(faultIn(pair, direction)).toBe('');
        },
      ),
      // Every case is long to step through: the first that fails is shown as it is.
      { numRuns, endOnFailure: true },
    );
  }
  const usual = between(70, 105);

  test('ordinary overlaps', () => {
    check(between(0.005, 0.1), usual, fc.constant(0), 60);
  });
  test('with clearance', () => {
    check(between(0.005, 0.1), usual, between(0.001, 0.08), 40);
  });
  test('strips far longer than any real one, leaves that open little, with and without clearance', () => {
    check(between(0.1, 0.85), between(8, 105), fc.oneof(fc.constant(0), between(0.001, 0.08)), 40);
  });
});
