// The gap at the hinge, held against brute force that shares nothing with it: the leaf’s corners are turned in the plane of
// the ground, and distances are taken between corners and sides of the two polygons, at many angles.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Hinge, hingeGaps } from '../../server/figures/hinge-gap/maths.ts';

type Point = readonly [number, number];

const deg = Math.PI / 180;

function toSide([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const t = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
}

const sides = (polygon: readonly Point[]): [Point, Point][] =>
  polygon.map((point, i) => [point, polygon[(i + 1) % polygon.length] as Point]);
const inside = (point: Point, polygon: readonly Point[]): boolean =>
  sides(polygon).every(([[ax, ay], [bx, by]]) => (bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax) >= 0);
const toPolygon = (point: Point, polygon: readonly Point[]): number =>
  inside(point, polygon) ? 0 : Math.min(...sides(polygon).map(([a, b]) => toSide(point, a, b)));

/** Leaf at an angle and post as polygons, counter-clockwise; the post reaches 9 m away. The ways in are past two places of it. */
function shapes(
  { width, thickness, gap, along, out, proud }: Hinge,
  angle: number,
): { leaf: Point[]; post: Point[]; ways: [Point, Point] } {
  const turned = ([x, y]: Point): Point => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
  const corners: Point[] = [
    [along, -out - thickness],
    [width, -out - thickness],
    [width, -out],
    [along, -out],
  ];
  const back = Math.min(-out, proud - out) - thickness;
  return {
    leaf: corners.map(turned),
    post: [
      [-9, -9],
      [along - gap, -9],
      [along - gap, proud - out],
      [-9, proud - out],
    ],
    ways: [
      [along - gap, proud - out],
      [along - gap, back],
    ],
  };
}

const polygonDistance = (one: readonly Point[], other: readonly Point[]): number =>
  Math.min(...one.map((point) => toPolygon(point, other)), ...other.map((point) => toPolygon(point, one)));

const millimetres = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max }).map((value) => value / 1000);
const hinges = fc.record({
  width: millimetres(900, 4000),
  thickness: millimetres(5, 120),
  gap: millimetres(0, 150),
  along: millimetres(-150, 100),
  out: millimetres(-100, 120),
  proud: millimetres(-80, 250),
});

describe('the gap at the hinge', () => {
  it('is nowhere less than what was found, and is that at the angle found', () => {
    fc.assert(
      fc.property(hinges, fc.integer({ min: 20, max: 120 }), (hinge, opening) => {
        const found = hingeGaps(hinge, opening * deg);
        expect(found).toBeDefined();
        if (found === undefined) return;
        const least = Math.min(found.opening.least, found.closing.least);
        let brute = Infinity;
        for (let i = 0; i <= 600; i++) {
          const { leaf, post } = shapes(hinge, (opening * deg * i) / 600);
          brute = Math.min(brute, polygonDistance(leaf, post));
        }
        // A step of 0.2° moves a corner that is 0.3 m out by 1 mm at most, and its distance by half of that from the nearest step.
        expect(Math.max(0, least)).toBeLessThanOrEqual(brute + 1e-9);
        expect(brute - Math.max(0, least)).toBeLessThan(0.001);
        const side = found.opening.least <= found.closing.least ? found.opening : found.closing;
        const there = shapes(hinge, side.at);
        if (least > 0) expect(polygonDistance(there.leaf, there.post)).toBeCloseTo(least, 8);
      }),
      { numRuns: 150 },
    );
  });

  it('has ways in that are as wide as the corners of the post are far from the leaf', () => {
    fc.assert(
      fc.property(hinges, fc.integer({ min: 20, max: 180 }), (hinge, opening) => {
        const found = hingeGaps(hinge, opening * deg);
        if (found === undefined) return;
        let [opens, closes] = [0, 0];
        for (let i = 0; i <= 600; i++) {
          const { leaf, ways } = shapes(hinge, (opening * deg * i) / 600);
          opens = Math.max(opens, toPolygon(ways[0], leaf));
          closes = Math.max(closes, toPolygon(ways[1], leaf));
        }
        expect(Math.max(0, found.opening.greatest) - opens).toBeGreaterThan(-1e-9);
        expect(Math.max(0, found.opening.greatest) - opens).toBeLessThan(0.002);
        expect(Math.max(0, found.closing.greatest) - closes).toBeGreaterThan(-1e-9);
        expect(Math.max(0, found.closing.greatest) - closes).toBeLessThan(0.002);
      }),
      { numRuns: 150 },
    );
  });

  // Worked by hand from the drawing: at 90° the face stands at x = b, the post at x = a − g.
  it.each([
    [
      'axis in the middle of the thickness, deep pillar',
      { width: 2, thickness: 0.05, gap: 0.04, along: 0.01, out: -0.025, proud: 0.1 },
      90,
      -0.025 - 0.01 + 0.04,
    ],
    ['axis out in front of the face, flush', { width: 2, thickness: 0.04, gap: 0.01, along: 0, out: 0.03, proud: 0 }, 90, 0.01],
    [
      'axis on the face, open by 180°: the leaf lies as far before the post as the axis twice',
      { width: 2, thickness: 0.04, gap: 0.03, along: 0, out: 0.01, proud: 0 },
      180,
      0.02,
    ],
  ])('%s', (_, hinge, opening, expected) => {
    expect(hingeGaps(hinge, opening * deg)?.opening.least).toBeCloseTo(expected, 9);
  });

  it('is below nothing where the leaf would pass through the post', () => {
    // The corner, 30 mm from the axis, comes to 30 mm behind it; the post stands 10 mm behind it.
    expect(hingeGaps({ width: 2, thickness: 0.06, gap: 0.01, along: 0, out: -0.03, proud: 0 }, 90 * deg)?.opening.least).toBeCloseTo(
      -0.02,
      9,
    );
  });

  it('sees a thin leaf that the corner of the post passes right through on the way', () => {
    // It is deepest half way through, 2.5 mm from either face: in the leaf’s own plane 3.5 mm from the axis, past it.
    const past = hingeGaps({ width: 0.9, thickness: 0.005, gap: 0.002, along: -0.009, out: -0.006, proud: 0.012 }, 119 * deg)?.opening;
    expect(past?.least).toBeCloseTo(-0.0025, 12);
    expect(past?.at).toBeCloseTo(Math.atan2(0.018, -0.011) - Math.asin(0.0035 / Math.hypot(0.018, 0.011)), 9);
    // Behind the axis: the corner, 60 mm behind and 90 mm out, rises through the last millimetres of a leaf 95 to 100 mm out.
    const behind = hingeGaps({ width: 2, thickness: 0.005, gap: 0.01, along: -0.05, out: -0.1, proud: -0.01 }, 10 * deg)?.opening;
    expect(behind?.least).toBeCloseTo(-0.0025, 12);
    expect(behind?.at).toBeCloseTo(Math.atan2(0.09, -0.06) - (Math.PI - Math.asin(0.0975 / Math.hypot(0.09, 0.06))), 9);
  });

  describe('where it is alike at two angles, the smaller one counts', () => {
    // Axis in the middle of the thickness, 100 mm within the leaf; the post stands so far back that its corner passes both
    // corners of the leaf, first the one on the closing side, each at the difference of their distances from the axis.
    const between = { width: 2, thickness: 0.06, gap: 0.02, along: -0.1, out: -0.03, proud: -0.11 };
    const corner = { x: -0.12, y: -0.05 - 0.03 };
    const least = Math.hypot(corner.x, corner.y) - Math.hypot(0.1, 0.03);
    const toFirst = Math.atan2(-corner.y, -corner.x) - Math.atan2(0.03, 0.1);
    const toSecond = Math.atan2(-corner.y, -corner.x) + Math.atan2(0.03, 0.1);
    it.each([
      ['well after the second', toSecond + 0.2],
      ['just at the second', toSecond],
      ['between the two', (toFirst + toSecond) / 2],
    ])('of two corners that pass, with a travel that ends %s', (_, travel) => {
      expect(hingeGaps(between, travel)?.opening.least).toBeCloseTo(least, 9);
      expect(hingeGaps(between, travel)?.opening.at).toBeCloseTo(toFirst, 9);
    });
    it('of the leaf’s own corner, which turns on the spot, and the post’s, which is as near at 90° only', () => {
      const found = hingeGaps({ width: 2, thickness: 0.04, gap: 0.02, along: 0, out: 0, proud: 0.1 }, 90 * deg)?.opening;
      expect(found?.least).toBeCloseTo(0.02, 9);
      expect(found?.at).toBe(0);
    });
    it('of the gap when closed and the leaf’s corner, which is as near at 90° only', () => {
      // The corner turns from 20 mm out to 20 mm behind the axis, straight above that of the post, 20 mm from it.
      const found = hingeGaps({ width: 2, thickness: 0.06, gap: 0.02, along: 0, out: -0.02, proud: -0.04 }, 90 * deg)?.opening;
      expect(found?.least).toBeCloseTo(0.02, 9);
      expect(found?.at).toBe(0);
    });
  });

  it('is the same whatever the leaf’s corner does on the axis itself', () => {
    // A corner of the leaf just on the axis has no direction.
    const found = hingeGaps({ width: 2, thickness: 0.04, gap: 0.02, along: 0, out: 0, proud: 0 }, 120 * deg);
    expect(found?.opening.least).toBeCloseTo(0.02 * Math.sin(60 * deg), 9);
    expect(found?.opening.at).toBeCloseTo(120 * deg, 9);
    expect(found?.opening.greatest).toBeCloseTo(0.02, 9);
  });

  it('says nothing of what cannot be', () => {
    const hinge = { width: 2, thickness: 0.04, gap: 0.01, along: 0, out: 0, proud: 0 };
    for (const wrong of [
      { width: -1 },
      { width: -1, along: -2 },
      { width: Number.NaN },
      { width: Infinity },
      { thickness: 0 },
      { thickness: -0.01 },
      { thickness: Number.NaN },
      { thickness: Infinity },
      { gap: -0.01 },
      { gap: Infinity },
      { along: 3 },
      { along: 2 },
      { along: -Infinity },
      { out: Number.NaN },
      { proud: Infinity },
    ])
      expect(hingeGaps({ ...hinge, ...wrong }, 1)).toBeUndefined();
    for (const travel of [0, -1, 4, Number.NaN]) expect(hingeGaps(hinge, travel)).toBeUndefined();
  });
});
