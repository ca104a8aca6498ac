// Reliability of safety functions as EN ISO 13849-1 reckons it. Mean times in years of 8760 h, failures an hour.
import { hair, leastCommonCause, tabledPfhd } from './annex.ts';

/** Performance level: 0 none, 1 to 5 for a to e. */
export type Level = 0 | 1 | 2 | 3 | 4 | 5;
export type LevelLetter = 'a' | 'b' | 'c' | 'd' | 'e';
/** Category: 0 for B. */
export type Category = 0 | 1 | 2 | 3 | 4;

const letters = ['a', 'b', 'c', 'd', 'e'] as const;
export const levelOf = (letter: LevelLetter): Level => (letters.indexOf(letter) + 1) as Level;
export const letterOf = (level: Level): string => (level === 0 ? 'none' : (letters[level - 1] as string));
export const categoryName = (category: Category): string => (category === 0 ? 'B' : String(category));

/** Failures an hour from which on the levels e to a are no longer reached, by level: `limits[3]` is that of c. */
const limits = [Infinity, 1e-4, 1e-5, 3e-6, 1e-6, 1e-7] as const;

/**
 * The performance level of a probability of dangerous failure an hour: a below 1e-4, b below 1e-5, c below 3e-6, d below
 * 1e-6, e below 1e-7. EN ISO 13849-1 (the limit between b and c from memory; the others are those of the SIL too).
 */
export function levelFromPfhd(pfhd: number): Level {
  let level: Level = 0;
  for (let next = 1; next <= 5; next++) if (pfhd < (limits[next] as number) * (1 - hair)) level = next as Level;
  return level;
}

/** The best level that published limits alone still allow: between 1e-6 and 1e-5 b and c are not told apart. */
export function levelPublished(pfhd: number): Level {
  const level = levelFromPfhd(pfhd);
  return level === 2 ? 3 : level;
}

/** The range of failures an hour that a level stands for, by published limits alone; the lower end of e is 0. */
export const leastPfhdOf = (level: Level): number => (level === 5 ? 0 : level === 2 ? 1e-6 : (limits[level + 1] as number));
/** The most failures an hour of a part of which only the level is declared: just below the limit. */
export const mostPfhdOf = (level: Level): number => (limits[level] as number) * (1 - 1e-6);

/** Operations a year: days a year · hours a day · 3600 / seconds of a cycle. EN ISO 13849-1, Annex C. Undefined for a cycle of no time. */
export function operationsPerYear(days: number, hours: number, cycleSeconds: number): number | undefined {
  return cycleSeconds > 0 ? (days * hours * 3600) / cycleSeconds : undefined;
}

/** MTTFD = B10D / (0.1 · operations a year), years. EN ISO 13849-1, Annex C. */
export const mttfdFromB10d = (b10d: number, operations: number): number => b10d / (0.1 * operations);

/** T10D = B10D / operations a year: years after which a tenth have failed, and the part is to be replaced. */
export const t10d = (b10d: number, operations: number): number => b10d / operations;

/** Mean time of parts in series, years: 1/M = Σ 1/Mi. EN ISO 13849-1, Annex D. Undefined for no parts. */
export function inSeries(years: readonly number[]): number | undefined {
  let rate = 0;
  for (const each of years) rate += 1 / each;
  return rate > 0 ? 1 / rate : undefined;
}

/** One mean time for two channels that differ, years: 2/3 · (a + b − 1 / (1/a + 1/b)). EN ISO 13849-1, Annex D. */
export const symmetrised = (a: number, b: number): number => (2 / 3) * (a + b - 1 / (1 / a + 1 / b));

/** Average diagnostic coverage: Σ (DCi/Mi) / Σ (1/Mi). EN ISO 13849-1, Annex E. Undefined for no parts. */
export function averageCoverage(parts: readonly { readonly mttfd: number; readonly coverage: number }[]): number | undefined {
  let found = 0;
  let all = 0;
  for (const { mttfd, coverage } of parts) {
    found += coverage / mttfd;
    all += 1 / mttfd;
  }
  return all > 0 ? found / all : undefined;
}

export type Band = 'none' | 'low' | 'medium' | 'high';

/** Mean time of a channel: low from 3 years, medium from 10, high from 30 (from memory). */
export const mttfdBand = (years: number): Band => band(years, 3, 10, 30);
/** Diagnostic coverage: low from 60 %, medium from 90 %, high from 99 % (from memory). */
export const coverageBand = (share: number): Band => band(share, 0.6, 0.9, 0.99);

function band(value: number, low: number, medium: number, high: number): Band {
  const reaches = (limit: number): boolean => value >= limit * (1 - hair);
  return reaches(high) ? 'high' : reaches(medium) ? 'medium' : reaches(low) ? 'low' : 'none';
}

/** Greatest mean time that counts for a channel, years: 100, and 2500 in category 4 (from memory). */
export const cap = (category: Category): number => (category === 4 ? 2500 : 100);

/** Category B counts no more than a medium mean time: the last row of its column in Table K.1 (from memory). */
const capOfB = 27;

/** One channel without tests: every dangerous failure of it is one of the function. Failures an hour, 1 / (8760 · M). */
export const singleChannelPfhd = (years: number): number => 1 / (8760 * years);

/**
 * The level by the simplified table of the standard (from memory), a band and no more: Table K.1 counts where a number is
 * known. Undefined where the table has no entry.
 */
export function simplifiedLevel(category: Category, mttfd: Band, coverage: Band): Level | undefined {
  const row = (['low', 'medium', 'high'] as readonly Band[]).indexOf(mttfd);
  const pick = (...levels: readonly (Level | undefined)[]): Level | undefined => levels[row];
  const isLow = coverage === 'low';
  switch (category) {
    case 0:
      return pick(1, 2, undefined);
    case 1:
      return pick(undefined, undefined, 3);
    case 2:
      return coverage === 'none' ? undefined : isLow ? pick(1, 2, 3) : pick(2, 3, 4);
    case 3:
      return coverage === 'none' ? undefined : isLow ? pick(2, 3, 4) : pick(3, 4, 4);
    case 4:
      return coverage === 'high' ? pick(undefined, undefined, 5) : undefined;
  }
}

/** What a subsystem is made of. */
export interface Structure {
  /** As claimed. */
  readonly category: Category;
  /** Mean time of each channel, years, not yet capped; the second one where there is one. */
  readonly first: number;
  readonly second: number | undefined;
  /** Average diagnostic coverage, 0 to 1. */
  readonly coverage: number;
  /** Points against common cause; undefined where none are shown. */
  readonly commonCause: number | undefined;
  /** Tests for each demand, `Infinity` for a test at each demand; undefined where nothing is shown. Of category 2 only. */
  readonly tests: number | undefined;
  /** Mean time of what tests, years; undefined where nothing is shown. Of category 2 only. */
  readonly tester: number | undefined;
}

export interface Reckoned {
  /** The category that could be counted. */
  readonly category: Category;
  /** Why it is not the one claimed; empty where it is. */
  readonly because: string;
  /** Mean time of a channel as it counts: capped, and one for two. */
  readonly mttfd: number;
  readonly coverage: number;
  readonly pfhd: number;
  readonly level: Level;
  /** By the simplified table; undefined where that has no entry. */
  readonly simplified: Level | undefined;
}

/** Failures an hour of a subsystem by its structure. A category whose conditions are not shown does not count. */
export function reckon(given: Structure): Reckoned {
  const { category } = given;
  const because = shortfall(given);
  if (category >= 2 && because === '') {
    const counted: Category =
      category === 4 && (coverageBand(given.coverage) !== 'high' || channelOf(given, 4) < 30 * (1 - hair)) ? 3 : category;
    const mttfd = channelOf(given, counted);
    const column =
      counted === 4
        ? 'category 4'
        : (`category ${counted as 2 | 3}, ${coverageBand(given.coverage) === 'low' ? 'low' : 'medium'} coverage` as const);
    const tabled = tabledPfhd(column, mttfd);
    if (tabled !== undefined) {
      const pfhd = tabled.pfhd * (counted === 2 && (given.tests ?? 0) < 100 ? 1.1 : 1);
      const why = counted === category ? '' : 'category 4 asks for a coverage of 99 % and a mean time of 30 years';
      return {
        category: counted,
        because: why,
        mttfd,
        coverage: given.coverage,
        pfhd,
        level: levelFromPfhd(pfhd),
        simplified: simplifiedLevel(counted, mttfdBand(mttfd), coverageBand(given.coverage)),
      };
    }
  }
  return single(given, because);
}

/** What the category asks for and is not there; empty where nothing lacks. */
function shortfall({ category, first, second, coverage, commonCause, tests, tester }: Structure): string {
  if (category === 0) return '';
  if (category === 1) return first < 30 * (1 - hair) ? 'category 1 asks for a mean time of 30 years' : '';
  if (category >= 3 && second === undefined) return `category ${category} asks for two channels`;
  if (mttfdBand(Math.min(first, second ?? first)) === 'none') return 'a channel has a mean time of less than 3 years';
  if (coverageBand(coverage) === 'none') return `category ${category} asks for a diagnostic coverage of at least 60 %`;
  if (commonCause === undefined) return 'nothing is said against failures by a common cause';
  if (commonCause < leastCommonCause) return `it has ${commonCause} of the ${leastCommonCause} points against failures by a common cause`;
  if (category === 2 && (tests === undefined || tests < 25))
    return tests === undefined ? 'how often it is tested is not said' : 'it is tested less than 25 times for each demand';
  if (category === 2 && tester === undefined) return 'what tests it is not said';
  if (category === 2 && (tester as number) < first / 2) return 'what tests it fails more than twice as often as what is tested';
  return '';
}

/** The mean time of a channel as a category from 2 on counts it. */
function channelOf({ first, second }: Structure, category: Category): number {
  const most = cap(category);
  const [a, b] = [Math.min(first, most), Math.min(second ?? first, most)];
  return category < 3 ? Math.min(a, b) : symmetrised(a, b);
}

/** One channel, nothing counted for tests: category 1 where it is claimed and shown, else B. */
function single(given: Structure, because: string): Reckoned {
  const worse = Math.min(given.first, given.second ?? given.first);
  const category: Category = given.category === 1 && because === '' ? 1 : 0;
  const mttfd = Math.min(worse, category === 1 ? cap(1) : capOfB);
  const pfhd = singleChannelPfhd(mttfd);
  const band = mttfdBand(mttfd);
  return {
    category,
    because,
    mttfd,
    coverage: given.coverage,
    pfhd,
    // The caps leave no more than b, and c in category 1.
    level: band === 'none' ? 0 : levelFromPfhd(pfhd),
    simplified: simplifiedLevel(category, band, 'none'),
  };
}

/** The level that the risk graph asks for (from memory): S2 F1 P1 gives c. */
export function levelFromRisk(serious: boolean, often: boolean, unavoidable: boolean): Level {
  return (1 + (serious ? 2 : 0) + (often ? 1 : 0) + (unavoidable ? 1 : 0)) as Level;
}
