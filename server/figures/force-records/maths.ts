// Judging measured forces and planning where to measure, by EN 12453, Annexes A and C.
//
// SI throughout: m, N.
import { limits } from '../force-window/working.ts';

/** One reading of the force over time. */
export interface Reading {
  /** Greatest force. */
  readonly peak: number;
  /** Greatest force later than 0.75 s after the impact. */
  readonly static: number;
  /** Greatest force later than 5 s. */
  readonly end: number;
}

/** Residual force after 5 s, N: EN 12453, Annex A. */
export const residualLimit = 25;

/** The peak that is allowed at a gap, N. A gap of just 500 mm counts as one in which a person is crushed. */
export function peakLimit(gap: number): number {
  return gap <= limits.greatestGap + 1e-9 ? limits.crush : limits.free;
}

export type Excess = { readonly which: 'peak' | 'static' | 'end'; readonly value: number; readonly limit: number };

/** By how much a limit may be passed in reckoning, N. */
export const slack = 1e-9;

/** What of a reading at a gap (m) is held against which limit. */
const heldAt = (gap: number, reading: Reading): Excess[] => [
  { which: 'peak', value: reading.peak, limit: peakLimit(gap) },
  { which: 'static', value: reading.static, limit: limits.static },
  { which: 'end', value: reading.end, limit: residualLimit },
];

/** What a reading at a gap (m) has too much of; empty where it passes. A number that is no number must not pass. */
export const excessOf = (gap: number, reading: Reading): Excess[] =>
  heldAt(gap, reading).filter(({ value, limit }) => !(value <= limit + slack));

/** What of a reading at a gap (m) comes nearest to its limit, as a share of it. */
export const nearestOf = (gap: number, reading: Reading): Excess =>
  heldAt(gap, reading).reduce((worst, each) => (each.value / each.limit > worst.value / worst.limit ? each : worst));

/** Readings that are asked for at each point; their mean is held against the limits. */
export const repeats = 3;

/**
 * What stands for several readings at one point: of three the mean, with fewer the worst of each, of more the mean of the three worst.
 * So from three on no further reading ever helps: what was too strong cannot be thinned out by what was not.
 */
export function judged(readings: readonly Reading[]): Reading | undefined {
  if (readings.length === 0) return undefined;
  const of = (pick: (reading: Reading) => number): number => {
    const values = readings.map(pick);
    if (values.length < repeats) return Math.max(...values);
    // A value that is no number is among the worst, wherever it stands.
    const worst = values.sort((a, b) => (Number.isNaN(a) ? -1 : Number.isNaN(b) ? 1 : b - a)).slice(0, repeats);
    return worst.reduce((sum, value) => sum + value, 0) / repeats;
  };
  return { peak: of((reading) => reading.peak), static: of((reading) => reading.static), end: of((reading) => reading.end) };
}

/** A point at which forces are to be measured. */
export interface Point {
  readonly movement: 'closing' | 'opening';
  /** m; undefined where any will do. */
  readonly gap: number | undefined;
  /** Above the bottom of the leaf, m; undefined where any will do: at the most prominent point. */
  readonly height: number | undefined;
}

/**
 * How far from its point a reading may have been taken: gap and height, m. Points that are nearer to each other are one. It says which
 * point a reading counts for, and never changes the limit, which is that of the point. Common practice, no source.
 */
export const tolerance = { gap: 0.02, height: 0.06 } as const;

export const gaps = [0.05, 0.3, 0.5] as const;
const highest = 2.5;
const opening = 1;

/** Heights of the points on a leaf: 50 mm above its bottom, the middle, 300 mm below its top but no higher than 2.5 m. */
export function heightsOf(height: number): number[] {
  const wanted = [0.05, height / 2, Math.min(height - 0.3, highest)].filter((each) => each >= 0.05 - 1e-9).sort((a, b) => a - b);
  return wanted.filter((each, i) => i === 0 || each - (wanted[i - 1] as number) > tolerance.height);
}

/** How near an open leaf something fixed must be for its opening to be measured too, m: nearer than this. */
export const nearWhenOpen = 0.5;

/**
 * The points of a leaf of `height` (m, above 0). Closing: each gap at each height. Opening, only where `room` (m) behind the
 * open leaf is stated and below 500 mm: for a swing leaf one point 1 m high or where it sticks out most, for a sliding one
 * all of them again. Each is measured three times.
 */
export function planOf(height: number, swing: boolean, room: number | undefined): Point[] {
  if (!(height > 0) || !Number.isFinite(height)) return [];
  const heights = heightsOf(height);
  const all = (movement: 'closing' | 'opening'): Point[] =>
    gaps.flatMap((gap) => heights.map((each): Point => ({ movement, gap, height: each })));
  const near = (room ?? Infinity) < nearWhenOpen;
  return [
    ...all('closing'),
    ...(!near
      ? []
      : swing
        ? [{ movement: 'opening', gap: undefined, height: height >= opening ? opening : undefined } as const]
        : all('opening')),
  ];
}

/**
 * The point of the plan that a reading at a gap and a height (m) belongs to, by its place in the plan: the nearest within the
 * tolerance. On opening a swing leaf is measured where it sticks out most, so there any place counts. −1 where it is none's.
 */
export function pointAt(plan: readonly Point[], movement: 'closing' | 'opening', gap: number, height: number): number {
  let nearest = -1;
  let distance = Infinity;
  for (let i = 0; i < plan.length; i++) {
    const point = plan[i] as Point;
    if (point.movement !== movement) continue;
    if (point.gap === undefined) return i;
    const off = Math.abs(height - (point.height ?? height));
    if (Math.abs(gap - point.gap) > tolerance.gap + 1e-9 || off > tolerance.height + 1e-9 || off >= distance) continue;
    nearest = i;
    distance = off;
  }
  return nearest;
}
