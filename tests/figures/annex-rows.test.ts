// The rows of Table K.1 of EN ISO 13849-1 (from memory), against a series that was printed long before it.
import { describe, expect, it } from 'vitest';
import { type Column, tabledPfhd, tabledYears } from '../../server/figures/safety-function/annex.ts';

/** IEC 60063, E24: one decade. */
const e24 = [1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];
const upTo100 = [...e24.filter((value) => value >= 3), ...e24.map((value) => Math.round(value * 10)), 100];
const beyond = [110, 120, 150, 200, 300, 510, 750, 1000, 1500, 2000, 2500];

describe('the rows', () => {
  it('are the series E24 from 3 to 100 years, and then those that category 4 alone has', () =>
    expect(tabledYears).toEqual([...upTo100, ...beyond]));
  it.each<[Column, number, number]>([
    ['category 2, low coverage', 3, 100],
    ['category 2, medium coverage', 3, 100],
    ['category 3, low coverage', 3, 100],
    ['category 3, medium coverage', 3, 100],
    ['category 4', 30, 2500],
  ])('each has its number of %s, from %d to %d years', (column, first, last) => {
    const all = [...upTo100, ...beyond];
    expect(all.filter((years) => tabledPfhd(column, years)?.row === years)).toEqual(all.filter((years) => years >= first && years <= last));
    // Beyond the last row nothing more is gained.
    expect(tabledPfhd(column, 1e6)?.row).toBe(last);
  });
  it('beyond 100 years the number falls about as the time grows', () => {
    for (const years of beyond) expect(((tabledPfhd('category 4', years)?.pfhd ?? NaN) * years) / (2.47e-8 * 100)).toBeCloseTo(0.96, 1);
  });
});
