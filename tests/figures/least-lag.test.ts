import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LeastLag, leastLag, neededToPass, type OverlappingLeaves, type SwingLeaf } from '../../server/figures/least-lag/maths.ts';
import type { Linkage } from '../../server/figures/linkage/maths.ts';
import {
  type Direction,
  type Profile,
  type ProfileSpec,
  profileOf,
  runTime,
  travelAt,
  wholeTravel,
} from '../../server/figures/motion-profile/maths.ts';

const degree = Math.PI / 180;

// Leaves, each with the exact relation of drive and angle next to its samples: the check below never reads the samples.

interface Mounting {
  readonly drive: (angle: number) => number;
  readonly rate: (angle: number) => number;
  readonly angle: (drive: number) => number;
}
const direct: Mounting = { drive: (angle) => angle, rate: () => 1, angle: (drive) => drive };

/** Pulling ram, by the law of cosines: L² = a² + b² − 2ab·cosφ. */
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

/** The leaves cross, or the covering leaf is on the wrong side of any of the covered leaf within its reach. */
function collides(pair: Pair, angleCovering: number, angleCovered: number): boolean {
  const reach = pair.covering.width + pair.gap + pair.overlap;
  const apart = pair.covering.width + pair.gap + pair.covered.width;
  const hinge: Point = { x: 0, y: 0 };
  const tip: Point = { x: reach * Math.cos(angleCovering), y: reach * Math.sin(angleCovering) };
  const otherHinge: Point = { x: apart, y: 0 };
  const otherTip: Point = { x: apart - pair.covered.width * Math.cos(angleCovered), y: pair.covered.width * Math.sin(angleCovered) };
  if (distanceToSegment(hinge, otherHinge, otherTip) > reach) return false;

  const crosses =
    side(hinge, tip, otherHinge) * side(hinge, tip, otherTip) < 0 &&
    side(otherHinge, otherTip, hinge) * side(otherHinge, otherTip, tip) < 0;
  if (crosses && Math.min(angleCovering, angleCovered) > 1e-9) return true;
  for (let i = 0; i <= 12; i += 1) {
    const along = (pair.covered.width * i) / 12;
    const x = apart - along * Math.cos(angleCovered);
    const y = along * Math.sin(angleCovered);
    if (Math.hypot(x, y) <= reach && angleCovering < Math.atan2(y, x) - 1e-9) return true;
  }
  return false;
}

const angleAt = ({ mounting, profile }: TestLeaf, time: number, direction: Direction): number =>
  mounting.angle(direction === 'opening' ? travelAt(profile, time) : wholeTravel(profile) - travelAt(profile, time));

function collidesAt(pair: Pair, direction: Direction, lag: number, time: number): boolean {
  const own = direction === 'opening' ? 0 : lag;
  const other = direction === 'opening' ? lag : 0;
  return collides(pair, angleAt(pair.covering, time - own, direction), angleAt(pair.covered, time - other, direction));
}

/** Steps through time, s: usual ones, and such that nothing which lasts for a tenth of a millisecond falls between two. */
const usualStep = 0.004;
const smallStep = 2e-5;
function collidesEver(pair: Pair, direction: Direction, lag: number, step = usualStep): boolean {
  const end = lag + Math.max(runTime(pair.covering.profile), runTime(pair.covered.profile)) + step;
  for (let t = 0; t <= end; t += step) if (collidesAt(pair, direction, lag, t)) return true;
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
  for (let i = -1500; i <= 1500; i += 1) if (collidesAt(pair, direction, lag, moment + i * smallStep)) return true;
  return false;
}

const tolerance = 0.005;

/** What is wrong with the answer; an empty text if nothing. */
function faultIn(pair: Pair, direction: Direction): string {
  const said = leastLag(pair, direction);
  if (said === undefined) {
    // Even the longest wait does not help. A covering leaf that stops a hair too early is in the way for a moment only.
    const lag = runTime(direction === 'opening' ? pair.covering.profile : pair.covered.profile) + 1;
    const isInTheWay = collidesEver(pair, direction, lag) || collidesEver(pair, direction, lag, smallStep);
    return isInTheWay ? '' : 'undefined, yet free with a whole run of lag';
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
    const pair = {
      covering: leafOf(covering, direct, 90 * degree, steady(0.1)),
      covered: leafOf(3, direct, 90 * degree, steady(0.5)),
      overlap,
      gap: 0,
    };
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
    const pair = {
      covering: leafOf(3, direct, 60 * degree, steady(0.1)),
      covered: leafOf(3, direct, 90 * degree, steady(0.1)),
      overlap,
      gap: 0,
    };
    const said = leastLag(pair, 'closing')!;
    expect(said.lag).toBeCloseTo((30 * degree) / 0.1, 9);
    expect(said.angleCovered).toBe(0);
    expect(said.angleCovering).toBe(0);
  });

  test('a covering leaf that stops in the way', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    const short = leafOf(3, direct, 5 * degree, steady(0.1));
    expect(leastLag({ covering: short, covered: leaf, overlap, gap: 0 }, 'opening')).toBeUndefined();
    expect(leastLag({ covering: short, covered: leaf, overlap, gap: 0 }, 'closing')).toBeUndefined();
    expect(leastLag({ covering: short, covered: leafOf(3, direct, 4 * degree, steady(0.1)), overlap, gap: 0 }, 'opening')).toBeDefined();
  });

  test('a covering leaf that opens just as far as it must, and one that stops a hair before', () => {
    const fast = leafOf(3, direct, 90 * degree, steady(0.5));
    const opening = (end: number): LeastLag | undefined =>
      leastLag({ covering: leafOf(covering, direct, end, steady(0.1)), covered: fast, overlap, gap: 0 }, 'opening');
    expect(opening(atCovering)!.lag).toBeCloseTo(atCovering / 0.1 - atCovered / 0.5, 9);
    expect(opening(atCovering * (1 - 5e-10))!.lag).toBeCloseTo(atCovering / 0.1 - atCovered / 0.5, 7);
    expect(opening(atCovering * (1 - 1e-8))).toBeUndefined();
  });

  test('a gap between the leaves lengthens the strip and moves the hinges apart', () => {
    // Widths 2 m and 3 m, gap 1 m: the closed covered leaf ends 3 m from the covering hinge, as above.
    const pair = {
      covering: leafOf(2, direct, 90 * degree, steady(0.1)),
      covered: leafOf(3, direct, 90 * degree, steady(0.5)),
      overlap,
      gap: 1,
    };
    expect(leastLag(pair, 'opening')!.lag).toBeCloseTo(atCovering / 0.1 - atCovered / 0.5, 9);
  });

  test('a strip so long that the leaves first stand square to each other', () => {
    // Hinges 6 m apart, 3 m leaf: square at acos(3/6) = 60°, where the covering leaf stands at 30°. The strip reaches there from
    // sqrt(36 − 9) = 5.196 m on, so past the covered leaf's end from 2.196 m. Before that the tip clears by the cosine rule.
    const pair = {
      covering: leafOf(3, direct, 90 * degree, steady(0.01)),
      covered: leafOf(3, direct, 90 * degree, steady(1000)),
      overlap: 2,
      gap: 0,
    };
    for (const strip of [2.1962, 2.2, 2.5, 2.999]) {
      const said = leastLag({ ...pair, overlap: strip }, 'opening')!;
      expect(said.angleCovered).toBeCloseTo(60 * degree, 4);
      expect(said.angleCovering).toBeCloseTo(30 * degree, 7);
      expect(said.lag).toBeCloseTo((30 * degree) / 0.01 - (60 * degree) / 1000, 6);
    }
    // Triangle of 6, 3 and 5 m.
    expect(leastLag(pair, 'opening')!.angleCovered).toBeCloseTo(Math.acos(20 / 36), 9);
    expect(leastLag(pair, 'opening')!.angleCovering).toBeCloseTo(Math.acos(52 / 60), 9);
  });

  // Both at an even speed: the lag asked for is required(φ)/u − φ/v, and required′ = w(D·cos φ − w)/(D² + w² − 2Dw·cos φ), so the
  // greatest is where required′ = u/v =: k, cos φ = (w² + k(D² + w²)) / (wD(1 + 2k)). Derived by calculus.
  test.each([
    [0.2, 0.9, 3],
    [0.2, 0.95, 3],
    [0.5, 0.5, 8],
    [0.5, 0.8, 4],
    [0.97, 0.12, 3],
    [0.8, 0.3, 8],
    [0.8, 0.5, 9],
    [0.8, 0.6, 9],
    [0.8, 0.7, 9],
    [0.8, 0.95, 3],
    [0.9, 0.4, 6],
    [0.9, 0.75, 7],
    [0.97, 0.35, 5],
    [0.97, 0.65, 9],
    [0.99, 0.55, 9],
  ])('a covering leaf at %d of the other’s speed is asked for most at %d of the way to clearing, %d decimals', (k, share, decimals) => {
    const [w, apart, u] = [3, 6, 0.02];
    const angle = Math.acos((w * w + k * (apart * apart + w * w)) / (w * apart * (1 + 2 * k)));
    const required = Math.atan2(w * Math.sin(angle), apart - w * Math.cos(angle));
    const overlap = Math.sqrt(apart * apart + w * w - 2 * apart * w * Math.cos(angle / share)) - 3;
    expect(angle / share).toBeLessThan(61 * degree);
    const pair = {
      covering: leafOf(3, direct, 90 * degree, steady(u)),
      covered: leafOf(w, direct, 100 * degree, steady(u / k)),
      overlap,
      gap: 0,
    };
    const opening = leastLag(pair, 'opening')!;
    expect(opening.lag).toBeCloseTo(required / u - (angle * k) / u, decimals);
    expect(opening.angleCovered).toBeCloseTo(angle, decimals / 2);
    expect(opening.angleCovering).toBeCloseTo(required, decimals / 2);
    // Closing, each comes back from its own end, the covered one from so far that the other has to wait.
    const far = { ...pair, covered: leafOf(w, direct, 170 * degree, steady(u / k)), covering: leafOf(3, direct, 75 * degree, steady(u)) };
    const closing = leastLag(far, 'closing')!;
    expect(closing.lag).toBeCloseTo(Math.max(0, required / u - (angle * k) / u + (170 * degree * k) / u - (75 * degree) / u), decimals);
  });

  test('a covering leaf with an end 180° off is the last that can be', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    for (const [end, is] of [
      [Math.PI, true],
      [Math.PI * 1.001, false],
    ] as const) {
      const far = leafOf(3, direct, end, steady(0.1));
      expect(leastLag({ covering: far, covered: leaf, overlap, gap: 0 }, 'opening') !== undefined).toBe(is);
      expect(leastLag({ covering: leaf, covered: far, overlap, gap: 0 }, 'opening') !== undefined).toBe(is);
    }
  });

  test('what cannot be', () => {
    const leaf = leafOf(3, direct, 90 * degree, steady(0.1));
    const good: OverlappingLeaves = { covering: leaf, covered: leaf, overlap, gap: 0.01 };
    const tooLong = { ...leaf, profile: profileOf({ ...steady(0.1), travel: 2 })! };
    expect(leastLag(good, 'opening')).toBeDefined();
    const bad: Partial<OverlappingLeaves>[] = [
      { overlap: -0.01 },
      { overlap: 0 },
      { overlap: 3 },
      { overlap: NaN },
      { gap: -0.01 },
      { gap: NaN },
      { gap: Infinity },
      { covering: { ...leaf, width: 0 } },
      { covering: { ...leaf, width: -0.005 } },
      { covering: { ...leaf, width: NaN } },
      { covering: { ...leaf, width: Infinity } },
      { covered: { ...leaf, width: 0 } },
      { covered: { ...leaf, width: -1 } },
      { covered: { ...leaf, width: NaN } },
      { covered: { ...leaf, width: Infinity } },
      { covering: tooLong },
      { covered: tooLong },
    ];
    for (const change of bad)
      for (const direction of ['opening', 'closing'] as const)
        expect(leastLag({ ...good, ...change }, direction), JSON.stringify(Object.entries(change)[0])).toBeUndefined();
    expect(leastLag({ ...good, overlap: 2.999 }, 'opening')).toBeDefined();
    expect(leastLag({ ...good, gap: 0 }, 'opening')).toBeDefined();
  });
});

// The second check: the lag asked for at each angle of the covered leaf, written from its definition and looked at densely. Only for
// drives on the hinge, where angle and drive are one, so that nothing stands between the two but the search.
describe('against a dense walk over the covered leaf’s angle', () => {
  interface Stroke {
    readonly travel: number;
    readonly speed: number;
    readonly acceleration: number;
    readonly slowTravel: number;
    readonly slowSpeed: number;
  }
  /** Time to travel `s`, piece by piece; v = √(u² ± 2as) throughout. */
  function timeOf({ travel, speed, acceleration, slowTravel, slowSpeed }: Stroke, s: number): number {
    const up = speed ** 2 / (2 * acceleration);
    const stop = slowSpeed ** 2 / (2 * acceleration);
    const zone = travel - slowTravel;
    const brake = zone - (speed ** 2 - slowSpeed ** 2) / (2 * acceleration);
    let time = Math.sqrt((2 * Math.min(s, up)) / acceleration);
    if (s > up) time += (Math.min(s, brake) - up) / speed;
    if (s > brake) time += (speed - Math.sqrt(speed ** 2 - 2 * acceleration * (Math.min(s, zone) - brake))) / acceleration;
    if (s > zone) time += (Math.min(s, travel - stop) - zone) / slowSpeed;
    if (s > travel - stop)
      time += (slowSpeed - Math.sqrt(Math.max(0, slowSpeed ** 2 - 2 * acceleration * (s - travel + stop)))) / acceleration;
    return time;
  }
  const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  // Room for every piece of the stroke, so that the pieces above are the true ones.
  const stroke = fc
    .record({
      travel: between(0.9, 1.8),
      speed: between(0.04, 0.25),
      ramp: between(0.3, 2),
      slowShare: between(0.1, 0.25),
      slow: between(0.3, 0.8),
    })
    .map(
      ({ travel, speed, ramp, slowShare, slow }): Stroke => ({
        travel,
        speed,
        acceleration: speed / Math.min(ramp, (0.2 * travel) / speed),
        slowTravel: slowShare * travel,
        slowSpeed: slow * speed,
      }),
    );

  test.each(['opening', 'closing'] as const)('%s', (direction) => {
    fc.assert(
      fc.property(
        stroke,
        stroke,
        between(1, 4),
        between(1, 4),
        between(0.01, 0.9),
        between(0, 0.05),
        (covering, covered, coveringWidth, coveredWidth, share, gap) => {
          const overlap = share * coveredWidth;
          const before = coveringWidth + gap;
          const opening = direction === 'opening';
          const requiredAt = (angle: number): number =>
            Math.atan2(coveredWidth * Math.sin(angle), before + coveredWidth - coveredWidth * Math.cos(angle));
          const distance = (angle: number): number =>
            Math.hypot(before + coveredWidth - coveredWidth * Math.cos(angle), coveredWidth * Math.sin(angle));
          // Every angle at which the covered leaf's end is within reach, also beyond where the covering leaf needs most.
          const reached = (angle: number): boolean => angle <= covered.travel && distance(angle) <= before + overlap;
          const asks = (angle: number): number => {
            const [first, second] = [requiredAt(angle), angle];
            if (first > covering.travel) return Infinity;
            return opening
              ? timeOf(covering, first) - timeOf(covered, second)
              : timeOf(covered, covered.travel - second) - timeOf(covering, covering.travel - first);
          };
          const at = (angle: number): number => (reached(angle) ? asks(angle) : -Infinity);
          const greatestOf = (angles: readonly number[]): number => angles.reduce((best, angle) => (at(angle) > at(best) ? angle : best));
          const evenly = (from: number, to: number, count: number): number[] =>
            Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
          const cells = evenly(0, 1, 1500).map((share) => Math.PI * share ** 2);
          const asked = cells.map(at);
          let greatest = Math.max(...asked);
          // Again, finer and finer, next to every angle that asks for more than its neighbours, and where the covered leaf's end goes out
          // of reach.
          for (let i = 0; i + 1 < cells.length; i += 1) {
            const here = asked[i]!;
            if (here === -Infinity || here < asked[i + 1]! || here < (asked[i - 1] ?? -Infinity)) continue;
            let [low, high] = [cells[Math.max(0, i - 1)]!, cells[i + 1]!];
            for (let round = 0; round < 4; round += 1) {
              const best = greatestOf(evenly(low, high, 60));
              greatest = Math.max(greatest, at(best));
              [low, high] = [Math.max(low, best - (high - low) / 60), Math.min(high, best + (high - low) / 60)];
            }
          }
          const out = cells[asked.indexOf(-Infinity)]!;
          let within = cells[asked.indexOf(-Infinity) - 1]!;
          for (let width = out - within, i = 0; i < 50; i += 1) if (reached(within + (width /= 2))) within += width;
          greatest = Math.max(greatest, at(within));
          const leaf = (width: number, spec: Stroke): TestLeaf => ({ ...leafOf(width, direct, spec.travel, spec) });
          const said = leastLag({ covering: leaf(coveringWidth, covering), covered: leaf(coveredWidth, covered), overlap, gap }, direction);
          if (greatest === Infinity) expect(said).toBeUndefined();
          else {
            // Never more than is asked for; less by far under a millisecond, where the search misses the very top.
            expect(said!.lag - Math.max(0, greatest)).toBeLessThan(1e-6);
            expect(said!.lag - Math.max(0, greatest)).toBeGreaterThan(-5e-4);
          }
        },
      ),
      { numRuns: 250, endOnFailure: true },
    );
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

  interface PairSketch {
    readonly covering: LeafSketch;
    readonly covered: LeafSketch;
    readonly overlapShare: number;
    readonly gap: number;
  }
  function pairFrom({ covering, covered, overlapShare, gap }: PairSketch): Pair {
    return { covering: leafFrom(covering), covered: leafFrom(covered), overlap: overlapShare * covered.width, gap };
  }

  function check(overlapShare: fc.Arbitrary<number>, end: fc.Arbitrary<number>, numRuns: number): void {
    fc.assert(
      fc.property(
        fc.record({ covering: leaves(end), covered: leaves(end), overlapShare, gap: between(0, 0.05) }),
        fc.constantFrom<Direction>('opening', 'closing'),
        (sketch, direction) => void expect(faultIn(pairFrom(sketch), direction)).toBe(''),
      ),
      // Every case is long to step through: the first that fails is shown as it is.
      { numRuns, endOnFailure: true },
    );
  }
  const usual = between(70, 105);

  test('ordinary overlaps', () => {
    check(between(0.005, 0.1), usual, 60);
  });
  test('strips far longer than any real one, leaves that open little', () => {
    check(between(0.1, 0.85), between(8, 105), 40);
  });

  test('a covering leaf that stops 0.05° before what it needs is in the way for less than 4 ms', () => {
    // Clearing at 18.484° it would have to stand at 17.365°: it stops at 17.317°, and the covered leaf passes 0.063° too near.
    const whole = { acceleration: Infinity, slowShare: 0, slowSpeed: 0.1 };
    const pair = pairFrom({
      covering: { ...whole, width: 0.9928, end: 17.317, speed: 0.4, ram: { along: 0.197, out: 0.1, arm: 0.8 } },
      covered: { ...whole, width: 1.0318, end: 86.5, speed: 0.375, ram: { along: 0.1, out: 0.1, arm: 0.5 } },
      overlapShare: 0.1,
      gap: 0,
    });
    for (const direction of ['opening', 'closing'] as const) {
      expect(leastLag(pair, direction)).toBeUndefined();
      expect(faultIn(pair, direction)).toBe('');
    }
  });
});

describe('what wind, wear and cold may take away', () => {
  // A motion that takes k times as long is one with speeds of 1/k and accelerations of 1/k² (by hand).
  const spec = { speed: 0.12, acceleration: 0.2, slowTravel: 0.2, slowSpeed: 0.05 };
  const longer = (k: number) => ({
    ...spec,
    speed: spec.speed / k,
    acceleration: spec.acceleration / k ** 2,
    slowSpeed: spec.slowSpeed / k,
  });
  const pairOf = (first: number, second: number): OverlappingLeaves => ({
    covering: leafOf(1.8, direct, 90 * degree, longer(first)),
    covered: leafOf(2.2, direct, 95 * degree, longer(second)),
    overlap: 0.05,
    gap: 0.02,
  });
  test.each([0, 0.05, 0.2])('a spread of %d is that of leaves that are so much slower and quicker', (spread) => {
    expect(leastLag(pairOf(1, 1), 'opening', spread)?.lag).toBeCloseTo(leastLag(pairOf(1 + spread, 1 - spread), 'opening')!.lag, 9);
    expect(leastLag(pairOf(1, 1), 'closing', spread)?.lag).toBeCloseTo(leastLag(pairOf(1 - spread, 1 + spread), 'closing')!.lag, 9);
  });
  test('the more it is, the greater the lag', () => {
    for (const direction of ['opening', 'closing'] as const)
      expect(leastLag(pairOf(1, 1), direction, 0.1)!.lag).toBeGreaterThan(leastLag(pairOf(1, 1), direction, 0.05)!.lag);
  });
  test('none that is no share', () => {
    for (const spread of [-0.1, 1, 2, NaN]) expect(leastLag(pairOf(1, 1), 'opening', spread)).toBeUndefined();
  });
});

test('what the covering leaf needs is found without any motion', () => {
  const leaf = leafOf(2, direct, 90 * degree, steady(0.1));
  const enough = neededToPass(2, 2, 0.3, 0, 90 * degree)!;
  const short = (angle: number) =>
    leastLag({ covering: leafOf(2, direct, angle, steady(0.1)), covered: leaf, overlap: 0.3, gap: 0 }, 'opening');
  expect(short(enough * 1.001)).toBeDefined();
  expect(short(enough * 0.999)).toBeUndefined();
  expect(neededToPass(2, 0.3, 0.3, 0, 90 * degree)).toBeUndefined();
});
