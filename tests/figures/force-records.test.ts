import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  excessOf,
  gaps,
  heightsOf,
  judged,
  nearestOf,
  peakLimit,
  planOf,
  pointAt,
  type Reading,
  repeats,
} from '../../server/figures/force-records/maths.ts';
import { aYearAfter } from '../../server/figures/force-records/working.ts';
import { daysBetween } from '../../server/vocabulary/index.ts';
import { told } from './told.ts';

describe('limits of EN 12453, Annex A', () => {
  // Traces made up for the limits that DHF, Powered Gate Myth Buster #2, restates: gap mm, peak, after 0.75 s, after 5 s.
  it.each([
    [300, 380, 140, 20, true],
    [300, 410, 140, 20, false],
    [600, 900, 140, 20, true],
    [600, 900, 160, 20, false],
    [300, 380, 140, 26, false],
    // Boundaries: just the limit passes; a gap of just 500 mm is one of 400 N.
    [500, 400, 150, 25, true],
    [500, 401, 150, 25, false],
    [500.1, 1400, 150, 25, true],
    [501, 1401, 0, 0, false],
    [50, 400, 150, 25, true],
  ])('%d mm: %d, %d, %d N', (gap, peak, later, end, passes) => {
    expect(excessOf(gap / 1000, { peak, static: later, end }).length === 0).toBe(passes);
  });
  it('names what is too much, and a number that is none is too much', () => {
    expect(excessOf(0.3, { peak: 410, static: 160, end: 26 }).map((each) => [each.which, each.limit])).toEqual([
      ['peak', 400],
      ['static', 150],
      ['end', 25],
    ]);
    expect(excessOf(0.3, { peak: NaN, static: 0, end: 0 })).toHaveLength(1);
    expect([peakLimit(0.05), peakLimit(0.5), peakLimit(0.501)]).toEqual([400, 400, 1400]);
  });
});

describe('what comes nearest to its limit', () => {
  it.each([
    [0.3, 399, 100, 10, 'peak'],
    [0.3, 300, 140, 10, 'static'],
    [0.3, 300, 100, 24, 'end'],
    [0.6, 1000, 100, 10, 'peak'],
    [0.6, 800, 100, 10, 'static'],
    // Where several are alike, the first of them in time.
    [0.3, 400, 150, 25, 'peak'],
    [0.3, 200, 150, 25, 'static'],
    [0.3, 800, 300, 50, 'peak'],
  ] as const)('%d m: %d, %d, %d N', (gap, peak, later, end, which) => {
    expect(nearestOf(gap, { peak, static: later, end }).which).toBe(which);
  });
});

describe('readings of one point', () => {
  const reading = (peak: number): Reading => ({ peak, static: peak / 10, end: peak / 40 });
  it('three make a mean; fewer are as bad as their worst', () => {
    expect(judged([reading(390), reading(400), reading(410)])?.peak).toBeCloseTo(400, 9);
    expect(judged([reading(390), reading(410)])?.peak).toBe(410);
    expect(judged([reading(410)])?.peak).toBe(410);
    expect(judged([])).toBeUndefined();
  });
  it('of more than three the three worst make the mean, of each force for itself', () => {
    // By hand: (410 + 403 + 390) / 3 = 401; (41 + 40.3 + 39) / 3 = 40.1.
    expect(judged([reading(390), reading(100), reading(410), reading(403)])?.peak).toBeCloseTo(401, 9);
    expect(
      judged([
        { peak: 100, static: 90, end: 1 },
        { peak: 90, static: 100, end: 2 },
        { peak: 80, static: 80, end: 30 },
        { peak: 10, static: 110, end: 10 },
      ]),
    ).toEqual({ peak: 90, static: 100, end: 14 });
    expect(judged([reading(1), reading(2), reading(3), reading(NaN)])?.peak).toBeNaN();
  });
  it('from three on no further reading helps, however good, and up to three none within the limits harms', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 0, max: 400 }),
        fc.nat(),
        (peaks, good, at) => {
          const passes = (list: number[]): boolean =>
            excessOf(0.3, judged(list.map((peak) => ({ peak, static: 0, end: 0 }))) as Reading).length === 0;
          const more = [...peaks.slice(0, at % (peaks.length + 1)), good, ...peaks.slice(at % (peaks.length + 1))];
          if (peaks.length >= repeats && !passes(peaks)) expect(passes(more)).toBe(false);
          if (peaks.length < repeats && passes(peaks)) expect(passes(more)).toBe(true);
        },
      ),
    );
  });
});

describe('the plan of points', () => {
  it('27 readings for a swing leaf that closes; 3 more with something 450 mm behind it, none at 501 mm', () => {
    for (const [room, readings] of [
      [undefined, 27],
      [0.45, 30],
      [0.501, 27],
      [0.5, 27],
    ] as const)
      expect(planOf(1.8, true, room).length * repeats).toBe(readings);
  });
  it('a sliding leaf has all of them again when it opens onto something', () => {
    expect(planOf(2, false, undefined)).toHaveLength(9);
    expect(planOf(2, false, 0.4)).toHaveLength(18);
  });
  it('heights: 50 mm above the bottom, the middle, 300 mm below the top but no higher than 2.5 m', () => {
    const close = (height: number, wanted: number[]): void =>
      heightsOf(height).forEach((each, i) => expect(each).toBeCloseTo(wanted[i] as number, 9));
    close(1.8, [0.05, 0.9, 1.5]);
    close(4, [0.05, 2, 2.5]);
    close(2.8, [0.05, 1.4, 2.5]);
    expect(heightsOf(1.8)).toHaveLength(3);
    // A very low leaf has no point above its top or twice the same.
    for (const low of [0.3, 0.4, 0.6, 0.65, 0.7]) {
      const heights = heightsOf(low);
      expect(heights.length).toBeGreaterThanOrEqual(2);
      for (const [i, height] of heights.entries()) {
        expect(height).toBeGreaterThanOrEqual(0.05 - 1e-9);
        expect(height).toBeLessThan(low);
        if (i > 0) expect(height - (heights[i - 1] as number)).toBeGreaterThan(0.02);
      }
    }
  });
  it('are in order where the middle is not the second of them', () => {
    const close = (height: number, wanted: number[]): void => {
      expect(heightsOf(height)).toHaveLength(wanted.length);
      heightsOf(height).forEach((each, i) => expect(each).toBeCloseTo(wanted[i] as number, 9));
    };
    close(6, [0.05, 2.5, 3]);
    close(0.5, [0.05, 0.2]);
    close(0.4, [0.05, 0.2]);
    close(0.3, [0.05, 0.15]);
    // The middle falls on 300 mm below the top, and below 350 mm there is no such place.
    close(0.6, [0.05, 0.3]);
    close(0.34, [0.05, 0.17]);
  });
  it('a reading just as far off as it may be is the point’s, a little further it is none’s', () => {
    const plan = planOf(1.8, true, undefined);
    for (const [i, gap] of gaps.entries()) {
      for (const off of [-0.02, 0.02]) {
        expect(pointAt(plan, 'closing', gap + off, 0.9)).toBe(3 * i + 1);
        expect(pointAt(plan, 'closing', gap + off * 1.001, 0.9)).toBe(-1);
      }
      for (const off of [-0.06, 0.06]) {
        expect(pointAt(plan, 'closing', gap, 0.9 + off)).toBe(3 * i + 1);
        expect(pointAt(plan, 'closing', gap, 0.9 + off * 1.001)).toBe(-1);
      }
    }
  });
  it('half way between two points it is the first of them, and nearer to one it is that one’s', () => {
    const two = [0.5, 0.5625].map((height) => ({ movement: 'closing', gap: 0.25, height }) as const);
    expect([0.5, 0.515625, 0.53125, 0.546875, 0.5625].map((height) => pointAt(two, 'closing', 0.25, height))).toEqual([0, 0, 0, 1, 1]);
    const turned = [...two].reverse();
    expect([0.5, 0.515625, 0.53125, 0.546875, 0.5625].map((height) => pointAt(turned, 'closing', 0.25, height))).toEqual([1, 1, 0, 0, 0]);
  });
  it('on opening a swing leaf may be measured at any gap and height', () => {
    const plan = planOf(1.8, true, 0.3);
    for (const gap of [0.01, 0.2, 0.5]) for (const height of [0.05, 1, 1.7]) expect(pointAt(plan, 'opening', gap, height)).toBe(9);
    expect(plan[9]).toEqual({ movement: 'opening', gap: undefined, height: 1 });
    expect(planOf(0.9, true, 0.3).at(-1)).toEqual({ movement: 'opening', gap: undefined, height: undefined });
  });
  it('points nearer than a reading may be off are one, and a reading belongs to the nearest', () => {
    expect(heightsOf(4.92)).toHaveLength(2);
    expect(heightsOf(5)).toHaveLength(2);
    const plan = planOf(4.82, true, undefined);
    expect(plan.slice(0, 3).map((point) => point.height)).toEqual([0.05, 2.41, 2.5]);
    expect([2.43, 2.45, 2.46, 2.5, 2.55, 2.57].map((height) => pointAt(plan, 'closing', 0.05, height))).toEqual([1, 1, 2, 2, 2, -1]);
  });
  it('every point of a plan is met by a reading just there, and by no other point’s', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 6, noNaN: true }), (height) => {
        const plan = planOf(height, true, undefined);
        expect(plan).toHaveLength(gaps.length * heightsOf(height).length);
        for (const [i, point] of plan.entries()) {
          expect(pointAt(plan, 'closing', point.gap ?? NaN, point.height ?? NaN)).toBe(i);
          expect(pointAt(plan, 'opening', point.gap ?? NaN, point.height ?? NaN)).toBe(-1);
          expect(pointAt(plan, 'closing', (point.gap ?? NaN) + 0.021, point.height ?? NaN)).toBe(-1);
        }
      }),
    );
    for (const bad of [0, -1, NaN, Infinity]) expect(planOf(bad, true, undefined)).toEqual([]);
  });
});

describe('a year', () => {
  it.each([
    ['2025-11-25', '2026-11-25'],
    ['2024-02-29', '2025-02-28'],
    ['2023-03-01', '2024-03-01'],
  ])('after %s ends on %s', (day, end) => {
    expect(aYearAfter(day)).toBe(end);
    expect([365, 366]).toContain(daysBetween(day, end));
  });
});

describe('what a file says of its records', () => {
  const leaf = (name: string, lines = '  height 1.8 m\n'): string =>
    `leaf ${name} {\n  width 2 m\n${lines}  mass 150 kg\n  opens inward 90 deg\n}\n`;
  const force = (name: string, gap: string, peak: string, later = '100 N', end = '10 N', height = '900 mm'): string =>
    `  force ${name} closing gap ${gap} height ${height} peak ${peak} after-750-ms ${later} after-5-s ${end}\n`;
  const file = (leaves: string, forces: string, day = '  on 2026-05-14\n'): string =>
    `language 1\n${leaves}measured {\n${day}  by "KL"\n${forces}}\n`;
  const ids = (name: string): string[] => ['force-readings', 'force-readings-missing', 'force-share'].map((id) => `leaf.${name}.${id}`);

  it('is of the leaf that was measured, whatever others there are', () => {
    for (const leaves of [leaf('west') + leaf('east'), leaf('east') + leaf('west')]) {
      expect(told(file(leaves, force('west', '300 mm', '380 N')), ...ids('west'))).not.toContain('none');
      expect(told(file(leaves, force('west', '300 mm', '380 N')), ...ids('east'))).toBe(
        ids('east')
          .map((id) => `${id} none\n`)
          .join(''),
      );
    }
  });
  it('without the height of the leaf there is no plan, but the force is judged', () => {
    expect(told(file(leaf('west', ''), force('west', '600 mm', '700 N', '165 N')), ...ids('west'))).toBe(`leaf.west.force-readings none
leaf.west.force-readings-missing none
leaf.west.force-share 1.1 at “force west closing gap 600 mm  … 0-ms 165 N after-5-s 10 N”: Over a limit
  gap: 0.6 m
  height: 0.9 m
  peak: 700 N
  limit of the peak: 1400 N (EN 12453, Annex A)
  after 0.75 s: 165 N
  after 5 s: 10 N
  readings: 1
`);
  });
  it('of several places, the one nearest to its limit is told, and of two alike the first', () => {
    const share = (forces: string): string => told(file(leaf('west'), forces), 'leaf.west.force-share');
    const far = force('west', '50 mm', '300 N');
    const near = force('west', '300 mm', '380 N');
    for (const forces of [far + near, near + far])
      expect(share(forces)).toContain('leaf.west.force-share 0.95 at “force west closing gap 300 mm');
    expect(share(near + force('west', '500 mm', '380 N'))).toContain('  gap: 0.3 m\n');
    expect(share(force('west', '500 mm', '380 N') + near)).toContain('  gap: 0.5 m\n');
  });
  it('a measurement without its day counts for nothing, and all readings are missing', () => {
    expect(
      told(file(leaf('west'), force('west', '300 mm', '380 N'), ''), ...ids('west')),
    ).toBe(`leaf.west.force-readings 27 at “height 1.8 m”
  points: 9
  readings at each: 3
leaf.west.force-readings-missing 27 at “force west closing gap 300 mm  … 0-ms 100 N after-5-s 10 N”
  readings asked for: 27 (leaf.west.force-readings)
leaf.west.force-share none
`);
  });
});
