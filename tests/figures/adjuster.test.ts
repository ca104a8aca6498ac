import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AdjusterScale, type Curve, positionFor, turnInWords, valueAt } from '../../server/figures/adjuster/maths.ts';

const turn = 2 * Math.PI;

describe('position and value', () => {
  test('linear', () => {
    const scale: AdjusterScale = { low: 5, high: 125, curve: 'linear' };
    expect(positionFor(scale, 5)).toBe(0);
    expect(positionFor(scale, 35)).toBe(0.25);
    expect(positionFor(scale, 125)).toBe(1);
    expect(valueAt(scale, 0.5)).toBe(65);
  });
  test('logarithmic: half way is the geometric mean', () => {
    const scale: AdjusterScale = { low: 1, high: 100, curve: 'logarithmic' };
    expect(positionFor(scale, 10)).toBeCloseTo(0.5, 12);
    expect(valueAt(scale, 0.5)).toBeCloseTo(10, 12);
    expect(valueAt(scale, 1)).toBe(100);
  });
  test('turning up may make the value smaller', () => {
    const scale: AdjusterScale = { low: 100, high: 20, curve: 'linear' };
    expect(positionFor(scale, 40)).toBe(0.75);
    expect(valueAt(scale, 0.75)).toBe(40);
  });
  test('out of range, no scale, no zero on a logarithmic scale', () => {
    const linear: AdjusterScale = { low: 0, high: 10, curve: 'linear' };
    for (const value of [-0.001, 10.001, NaN, Infinity, -Infinity]) expect(positionFor(linear, value)).toBeUndefined();
    for (const fraction of [-0.001, 1.001, NaN]) expect(valueAt(linear, fraction)).toBeUndefined();
    expect(positionFor({ low: 0, high: 10, curve: 'logarithmic' }, 5)).toBeUndefined();
    expect(valueAt({ low: 0, high: 10, curve: 'logarithmic' }, 0.5)).toBeUndefined();
    expect(positionFor({ low: -5, high: -1, curve: 'logarithmic' }, -2)).toBeUndefined();
    expect(positionFor({ low: 1, high: 10, curve: 'logarithmic' }, -2)).toBeUndefined();
    expect(positionFor({ low: 3, high: 3, curve: 'linear' }, 3)).toBeUndefined();
    expect(positionFor({ low: 0, high: Infinity, curve: 'linear' }, 3)).toBeUndefined();
  });
  test('a scale that cannot be has no value at all, not even at its stops', () => {
    const linear: readonly (readonly [low: number, high: number])[] = [
      [3, 3],
      [NaN, 10],
      [0, NaN],
      [-Infinity, 10],
      [0, Infinity],
      [-1.7e308, 1.7e308],
    ];
    const logarithmic: readonly (readonly [low: number, high: number])[] = [
      ...linear,
      [0, 10],
      [10, 0],
      [-5, 5],
      [5, -5],
      [-5, -1],
      [1e-300, 1e300],
      [1e300, 1e-300],
    ];
    for (const [curve, scales] of [
      ['linear', linear],
      ['logarithmic', logarithmic],
    ] as const)
      for (const [low, high] of scales)
        for (const fraction of [0, 0.5, 1]) {
          expect(valueAt({ low, high, curve }, fraction), `${curve} ${low} .. ${high}`).toBeUndefined();
          expect(positionFor({ low, high, curve }, fraction * high), `${curve} ${low} .. ${high}`).toBeUndefined();
        }
  });
  test('at the stops it is the value of the stop, to the last digit', () => {
    // Neither 3 + (0.7 − 3) nor 0.1 · (5.9 / 0.1) is in binary what it is on paper.
    for (let low = 1; low <= 60; low++)
      for (let high = 1; high <= 60; high++)
        if (low !== high)
          for (const curve of ['linear', 'logarithmic'] as const)
            expect([0, 1].map((share) => valueAt({ low: low / 10, high: high / 10, curve }, share))).toEqual([low / 10, high / 10]);
    for (const curve of ['linear', 'logarithmic'] as const) {
      expect(valueAt({ low: 0.1, high: 0.7, curve }, 0)).toBe(0.1);
      expect(valueAt({ low: 0.1, high: 0.7, curve }, 1)).toBe(0.7);
    }
    expect(positionFor({ low: -4, high: 4, curve: 'linear' }, -2)).toBe(0.25);
  });
  test('half way between two words', () => {
    expect(turnInWords(1 / 2, turn / 8)).toBe('about an eighth of a turn from the low stop');
    expect(turnInWords(1 / 2, turn / 16)).toBe('just off the low stop');
  });
  test('rounding at a stop is the stop', () => {
    expect(positionFor({ low: 0, high: 0.3, curve: 'linear' }, 0.1 + 0.2)).toBe(1);
  });
  test('position and value are each other’s opposite', () => {
    const curves = fc.constantFrom<Curve>('linear', 'logarithmic');
    const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, curves, fc.double({ min: 0, max: 1, noNaN: true }), (low, high, curve, fraction) => {
        fc.pre(Math.abs(high - low) > 0.01 * low);
        const scale = { low, high, curve };
        const value = valueAt(scale, fraction)!;
        expect(value).toBeGreaterThanOrEqual(Math.min(low, high) * (1 - 1e-12));
        expect(value).toBeLessThanOrEqual(Math.max(low, high) * (1 + 1e-12));
        expect(positionFor(scale, value)).toBeCloseTo(fraction, 9);
      }),
    );
  });
});

describe('words', () => {
  test('in full', () => {
    const sweep = 1.75 * turn;
    const at = (turns: number): string | undefined => turnInWords(turns / 1.75, sweep);
    expect(at(0)).toBe('at the low stop');
    expect(at(0.02)).toBe('just off the low stop');
    expect(at(0.125)).toBe('about an eighth of a turn from the low stop');
    expect(at(0.25)).toBe('about a quarter turn from the low stop');
    expect(at(0.26)).toBe('about a quarter turn from the low stop');
    expect(at(0.375)).toBe('about three eighths of a turn from the low stop');
    expect(at(0.5)).toBe('about half a turn from the low stop');
    expect(at(0.625)).toBe('about five eighths of a turn from the low stop');
    expect(at(0.75)).toBe('about three quarters of a turn from the low stop');
    expect(at(0.875)).toBe('about seven eighths of a turn from the low stop');
    expect(at(1)).toBe('about one turn from the low stop');
    expect(at(1.125)).toBe('about one and an eighth turns from the low stop');
    expect(at(1.5)).toBe('about one and a half turns from the low stop');
    expect(at(1.74)).toBe('just short of the high stop');
    expect(at(1.75)).toBe('at the high stop');
    expect(turnInWords(0.5, 4 * turn)).toBe('about two turns from the low stop');
    expect(turnInWords(0.9, turn / 16)).toBe('just short of the high stop');
    expect(turnInWords(0.1, turn / 16)).toBe('just off the low stop');
    expect(turnInWords(0.5, 27 * turn)).toBe('about 13 and a half turns from the low stop');
  });
  test('what cannot be', () => {
    for (const fraction of [-0.1, 1.1, NaN]) expect(turnInWords(fraction, turn)).toBeUndefined();
    for (const sweep of [0, -1, NaN, Infinity]) expect(turnInWords(0.5, sweep)).toBeUndefined();
  });

  // Reads the words back, with a table of its own.
  const parts: Record<string, number> = {
    'an eighth': 1,
    'a quarter': 2,
    'three eighths': 3,
    'a half': 4,
    half: 4,
    'five eighths': 5,
    'three quarters': 6,
    'seven eighths': 7,
  };
  const wholes = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
  function eighthsIn(words: string): number {
    const said = /^about (.+) from the low stop$/.exec(words)![1]!.replace(/( of a| a)? turns?$/, '');
    const [whole, part] = said.includes(' and ') ? said.split(' and ') : parts[said] === undefined ? [said] : [undefined, said];
    const inEighths = part === undefined ? 0 : parts[part]!;
    if (whole === undefined) return inEighths;
    return 8 * (wholes.includes(whole) ? wholes.indexOf(whole) : Number(whole)) + inEighths;
  }

  test('they grow with the position and are never further out than a sixteenth of a turn', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 30, noNaN: true }), (turns) => {
        const sweep = turns * turn;
        const steps = 400;
        let previous = -Infinity;
        for (let i = 0; i <= steps; i += 1) {
          const fraction = i / steps;
          const words = turnInWords(fraction, sweep)!;
          const exact = fraction * turns * 8;
          let rank: number;
          if (words === 'at the low stop') {
            rank = -2;
            expect(i).toBe(0);
          } else if (words === 'just off the low stop') {
            rank = -1;
            expect(exact).toBeLessThan(0.5);
          } else if (words === 'just short of the high stop') {
            rank = 1e6;
            expect(turns * 8 - exact).toBeLessThan(0.5);
          } else if (words === 'at the high stop') {
            rank = 2e6;
            expect(i).toBe(steps);
          } else {
            rank = eighthsIn(words);
            expect(Math.abs(rank - exact)).toBeLessThanOrEqual(0.5 + 1e-9);
          }
          expect(rank).toBeGreaterThanOrEqual(previous);
          previous = rank;
        }
      }),
    );
  });
});
