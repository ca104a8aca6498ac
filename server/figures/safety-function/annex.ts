// What EN ISO 13849-1 prints, as far as it is known here. All of it is from memory: nothing in this file decides an
// error on its own. Table K.1 was held against the relation for one channel and against a two-state model (see the tests).

/** Columns of Table K.1. */
export type Column =
  | 'category 2, low coverage'
  | 'category 2, medium coverage'
  | 'category 3, low coverage'
  | 'category 3, medium coverage'
  | 'category 4';

const columns: readonly Column[] = [
  'category 2, low coverage',
  'category 2, medium coverage',
  'category 3, low coverage',
  'category 3, medium coverage',
  'category 4',
];

/** Mean time of each channel in years, then dangerous failures an hour by column; NaN where the table has none. */
const rows: readonly (readonly number[])[] = [
  [3, 2.58e-5, 1.99e-5, 1.26e-5, 6.09e-6, NaN],
  [3.3, 2.33e-5, 1.79e-5, 1.13e-5, 5.41e-6, NaN],
  [3.6, 2.13e-5, 1.62e-5, 1.03e-5, 4.86e-6, NaN],
  [3.9, 1.95e-5, 1.48e-5, 9.37e-6, 4.4e-6, NaN],
  [4.3, 1.76e-5, 1.33e-5, 8.39e-6, 3.89e-6, NaN],
  [4.7, 1.6e-5, 1.2e-5, 7.58e-6, 3.48e-6, NaN],
  [5.1, 1.47e-5, 1.1e-5, 6.91e-6, 3.15e-6, NaN],
  [5.6, 1.33e-5, 9.87e-6, 6.21e-6, 2.8e-6, NaN],
  [6.2, 1.19e-5, 8.8e-6, 5.53e-6, 2.47e-6, NaN],
  [6.8, 1.08e-5, 7.93e-6, 4.98e-6, 2.2e-6, NaN],
  [7.5, 9.75e-6, 7.1e-6, 4.45e-6, 1.95e-6, NaN],
  [8.2, 8.87e-6, 6.43e-6, 4.02e-6, 1.74e-6, NaN],
  [9.1, 7.94e-6, 5.71e-6, 3.57e-6, 1.53e-6, NaN],
  [10, 7.18e-6, 5.14e-6, 3.21e-6, 1.36e-6, NaN],
  [11, 6.44e-6, 4.53e-6, 2.81e-6, 1.18e-6, NaN],
  [12, 5.84e-6, 4.04e-6, 2.49e-6, 1.04e-6, NaN],
  [13, 5.33e-6, 3.64e-6, 2.23e-6, 9.21e-7, NaN],
  [15, 4.53e-6, 3.01e-6, 1.82e-6, 7.44e-7, NaN],
  [16, 4.21e-6, 2.77e-6, 1.67e-6, 6.76e-7, NaN],
  [18, 3.68e-6, 2.37e-6, 1.41e-6, 5.67e-7, NaN],
  [20, 3.26e-6, 2.06e-6, 1.22e-6, 4.85e-7, NaN],
  [22, 2.93e-6, 1.82e-6, 1.07e-6, 4.21e-7, NaN],
  [24, 2.65e-6, 1.62e-6, 9.47e-7, 3.7e-7, NaN],
  [27, 2.32e-6, 1.39e-6, 8.04e-7, 3.1e-7, NaN],
  [30, 2.06e-6, 1.21e-6, 6.94e-7, 2.65e-7, 9.54e-8],
  [33, 1.85e-6, 1.06e-6, 5.94e-7, 2.3e-7, 8.57e-8],
  [36, 1.67e-6, 9.39e-7, 5.16e-7, 2.01e-7, 7.77e-8],
  [39, 1.53e-6, 8.4e-7, 4.53e-7, 1.78e-7, 7.11e-8],
  [43, 1.37e-6, 7.34e-7, 3.87e-7, 1.54e-7, 6.37e-8],
  [47, 1.24e-6, 6.49e-7, 3.35e-7, 1.34e-7, 5.76e-8],
  [51, 1.13e-6, 5.8e-7, 2.93e-7, 1.19e-7, 5.26e-8],
  [56, 1.02e-6, 5.1e-7, 2.52e-7, 1.03e-7, 4.73e-8],
  [62, 9.06e-7, 4.43e-7, 2.13e-7, 8.84e-8, 4.22e-8],
  [68, 8.17e-7, 3.9e-7, 1.84e-7, 7.68e-8, 3.8e-8],
  [75, 7.31e-7, 3.4e-7, 1.57e-7, 6.62e-8, 3.41e-8],
  [82, 6.61e-7, 3.01e-7, 1.35e-7, 5.79e-8, 3.08e-8],
  [91, 5.88e-7, 2.61e-7, 1.14e-7, 4.94e-8, 2.74e-8],
  [100, 5.28e-7, 2.29e-7, 1.01e-7, 4.29e-8, 2.47e-8],
  // Category 4 alone goes on, since 2015.
  [110, NaN, NaN, NaN, NaN, 2.23e-8],
  [120, NaN, NaN, NaN, NaN, 2.03e-8],
  [150, NaN, NaN, NaN, NaN, 1.61e-8],
  [200, NaN, NaN, NaN, NaN, 1.19e-8],
  [300, NaN, NaN, NaN, NaN, 7.76e-9],
  [510, NaN, NaN, NaN, NaN, 4.52e-9],
  [750, NaN, NaN, NaN, NaN, 3.05e-9],
  [1000, NaN, NaN, NaN, NaN, 2.28e-9],
  [1500, NaN, NaN, NaN, NaN, 1.51e-9],
  [2000, NaN, NaN, NaN, NaN, 1.13e-9],
  [2500, NaN, NaN, NaN, NaN, 9.06e-10],
];

/** A hair for the rounding of what stands exactly on a row or a limit. */
export const hair = 1e-9;

/**
 * Dangerous failures an hour by Table K.1 (from memory), at the row at or below the mean time of each channel in years:
 * nothing is gained by interpolating upward. Undefined below the first row that the column has.
 */
export function tabledPfhd(column: Column, years: number): { readonly pfhd: number; readonly row: number } | undefined {
  const at = columns.indexOf(column) + 1;
  let found: { readonly pfhd: number; readonly row: number } | undefined;
  for (const row of rows) {
    const [mean, pfhd] = [row[0] as number, row[at] as number];
    if (mean > years * (1 + hair)) break;
    if (pfhd > 0) found = { pfhd, row: mean };
  }
  return found;
}

/** Mean times of the rows, for tests. */
export const tabledYears: readonly number[] = rows.map((row) => row[0] as number);

/** Operations until a tenth have failed dangerously, Table C.1 (from memory); mean time in years for what does not switch. */
export const typical = {
  'relay-small-load': { b10d: 20_000_000 },
  'relay-full-load': { b10d: 400_000 },
  'contactor-small-load': { b10d: 20_000_000 },
  // 2 000 000 in the edition of 2006; the newer and lower one counts.
  'contactor-full-load': { b10d: 1_300_000 },
  'position-switch': { b10d: 20_000_000 },
  'interlock-switch': { b10d: 2_000_000 },
  'emergency-stop': { b10d: 100_000 },
  'push-button': { b10d: 100_000 },
  mechanical: { mttfd: 150 },
} as const;
export type Typical = keyof typeof typical;

/** Least points against failures by a common cause, Annex F (from memory). */
export const leastCommonCause = 65;

/** Years for which a safety part is meant to serve (from memory). */
export const missionTime = 20;
