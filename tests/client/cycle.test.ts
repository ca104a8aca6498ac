// The time slider's arithmetic and words.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { momentText, nextStill, phasesAt, transformAt, valueAt, within } from '../../client/preview/cycle.ts';
import type { CycleAnswer, CycleLeaf } from '../../server/lsp/requests.ts';

const west: CycleLeaf = {
  thing: 'leaf.west',
  motion: { kind: 'turn', x: 100, y: 50 },
  times: [0, 2, 10, 30, 40],
  values: [0, 0, -90, -90, 0],
};
const slide: CycleLeaf = { thing: 'leaf.slide', motion: { kind: 'shift', x: -200, y: 0 }, times: [0, 10], values: [0, 1] };
const cycle: CycleAnswer = {
  duration: 40,
  total: '40 s',
  phases: [
    { from: 0, to: 2, label: 'warning before it opens' },
    { from: 2, to: 10, label: 'west opens' },
    { from: 8, to: 10, label: 'slow zone' },
    { from: 10, to: 30, label: 'waits open' },
    { from: 30, to: 40, label: 'west closes' },
  ],
  leaves: [west, slide],
};

describe('where a leaf is', () => {
  test.each([
    [-1, 0],
    [0, 0],
    [1, 0],
    [2, 0],
    [6, -45],
    [10, -90],
    [20, -90],
    [35, -45],
    [40, 0],
    [99, 0],
  ])('at %s s it has turned %s°', (time, value) => {
    expect(valueAt(west, time)).toBeCloseTo(value, 10);
  });
  test('it never leaves the values that it has', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: -120, max: 120, noNaN: true })), { minLength: 1 }),
        fc.double({ min: -5, max: 500, noNaN: true }),
        (steps, time) => {
          let at = 0;
          const leaf = { times: steps.map(([step]) => (at += step)), values: steps.map(([, value]) => value) };
          const value = valueAt(leaf, time);
          expect(value).toBeGreaterThanOrEqual(Math.min(...leaf.values) - 1e-9);
          expect(value).toBeLessThanOrEqual(Math.max(...leaf.values) + 1e-9);
        },
      ),
    );
  });
  test('two points at one time make no gap', () => {
    expect(valueAt({ times: [0, 5, 5, 6], values: [0, 1, 3, 3] }, 5)).toBe(1);
    expect(valueAt({ times: [0, 5, 5, 6], values: [0, 1, 3, 3] }, 5.5)).toBe(3);
  });
  test('without points it stays', () => {
    expect(valueAt({ times: [], values: [] }, 3)).toBe(0);
  });
  test('as a transform', () => {
    expect(transformAt(west, 6)).toBe('rotate(-45 100 50)');
    expect(transformAt(slide, 2.5)).toBe('translate(-50 0)');
    expect(transformAt(slide, 10 / 3)).toBe('translate(-66.667 0)');
  });
});

describe('what happens', () => {
  test('in words, with all that happens at once', () => {
    expect(momentText(cycle, 8.96)).toBe('9.0 s of 40 s: west opens, slow zone');
    expect(momentText(cycle, 0)).toBe('0.0 s of 40 s: warning before it opens');
  });
  test('at a border what begins, and at the end what ends', () => {
    expect(phasesAt(cycle, 10)).toEqual(['waits open']);
    expect(phasesAt(cycle, 40)).toEqual(['west closes']);
  });
  test('only the time where nothing is said', () => {
    expect(momentText({ duration: 5, total: '5 s', phases: [] }, 1)).toBe('1.0 s of 5 s');
    expect(momentText({ duration: 300, total: '300 s', phases: [] }, 120.44)).toBe('120 s of 300 s');
  });
  test('where nobody knows how long it stands open, from the command to close on', () => {
    expect(momentText({ duration: 50, told: 20, phases: [] }, 12)).toBe('12.0 s');
    expect(momentText({ duration: 50, told: 20, phases: [] }, 23.5)).toBe('3.5 s after the command to close');
  });
  test('a moment is kept within the cycle', () => {
    expect([within(cycle, -3), within(cycle, 12), within(cycle, 99), within(cycle, Number.NaN)]).toEqual([0, 12, 40, 0]);
  });
});

test('stills go from border to border, and end', () => {
  const seen: number[] = [];
  for (let time = 0; time < cycle.duration && seen.length < 20; ) seen.push((time = nextStill(cycle, time)));
  expect(seen).toEqual([2, 8, 10, 30, 40]);
  expect(nextStill({ duration: 7, phases: [] }, 0)).toBe(7);
});
