// Functional safety against what EN ISO 13849-1 prints, as far as it is known here (most of it from memory, as marked), and
// against an independent two-state model for Table K.1.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Column, tabledPfhd, tabledYears, typical } from '../../server/figures/safety-function/annex.ts';
import {
  averageCoverage,
  categoryName,
  coverageBand,
  inSeries,
  leastPfhdOf,
  letterOf,
  levelFromPfhd,
  levelFromRisk,
  levelOf,
  levelPublished,
  mostPfhdOf,
  mttfdBand,
  mttfdFromB10d,
  operationsPerYear,
  reckon,
  type Structure,
  simplifiedLevel,
  singleChannelPfhd,
  symmetrised,
  t10d,
} from '../../server/figures/safety-function/maths.ts';
import { judge } from '../kit/pages.ts';

const letter = (pfhd: number): string => letterOf(levelFromPfhd(pfhd));

describe('operations, B10D and T10D (EN ISO 13849-1, Annex C; the formula as GT Engineering restates it, 2025)', () => {
  it('the valve of Annex C: 220 d, 16 h, 5 s, B10D 60 million (inputs and results from memory)', () => {
    const operations = operationsPerYear(220, 16, 5) as number;
    expect(operations).toBe(2_534_400);
    expect(t10d(60e6, operations)).toBeCloseTo(23.7, 1);
    expect(mttfdFromB10d(60e6, operations)).toBeCloseTo(237, 0);
  });
  it('a switch at one operation a minute, 8 h on 220 d', () => {
    const operations = operationsPerYear(220, 8, 60) as number;
    expect(operations).toBe(105_600);
    expect(mttfdFromB10d(100_000, operations)).toBeCloseTo(9.47, 2);
  });
  // Computed by hand with B10D of Table C.1 (from memory): operations a day, B10D, MTTFD, T10D.
  it.each([
    [20, 1_300_000, 1781, 178],
    [60, 1_300_000, 594, 59.4],
    [200, 1_300_000, 178, 17.8],
    [500, 1_300_000, 71.2, 7.12],
    [20, 400_000, 548, 54.8],
    [60, 400_000, 183, 18.3],
    [100, 400_000, 109.6, 10.96],
    [200, 400_000, 54.8, 5.48],
    [500, 400_000, 21.9, 2.19],
  ])('%i cycles a day, B10D %i', (perDay, b10d, mean, life) => {
    const operations = perDay * 365;
    expect(mttfdFromB10d(b10d, operations) / mean).toBeCloseTo(1, 2);
    expect(t10d(b10d, operations) / life).toBeCloseTo(1, 2);
  });
  it('a cycle of no time has no operations', () => expect(operationsPerYear(220, 16, 0)).toBeUndefined());
  it('the contactor counts by the newer and lower of two editions', () => expect(typical['contactor-full-load'].b10d).toBe(1_300_000));
});

describe('parts in series, channels, coverage (Annexes D and E, from memory; arithmetic by hand)', () => {
  it('parts count of Annex D', () => {
    const years = [
      ...Array<number>(2).fill(1142),
      ...Array<number>(5).fill(22_831),
      ...Array<number>(4).fill(11_416),
      ...Array<number>(4).fill(315),
      31,
    ];
    expect(1 / (inSeries(years) as number)).toBeCloseTo(0.047277, 6);
    expect(inSeries(years)).toBeCloseTo(21.15, 2);
  });
  it('50, 100 and 200 years', () => expect(inSeries([50, 100, 200])).toBeCloseTo(28.571, 3));
  it('no parts', () => {
    expect(inSeries([])).toBeUndefined();
    expect(averageCoverage([])).toBeUndefined();
  });
  // The standard prints 66 for 3 and 100 years (from memory).
  it.each([
    [3, 100, 66.72],
    [20, 50, 37.14],
    [10, 40, 28],
    [30, 30, 30],
    [100, 100, 100],
  ])('channels of %f and %f years', (a, b, both) => {
    expect(symmetrised(a, b)).toBeCloseTo(both, 2);
    expect(symmetrised(b, a)).toBeCloseTo(both, 2);
  });
  it('two channels count for no more than the better and no less than the worse one', () => {
    const years = fc.double({ min: 3, max: 2500, noNaN: true });
    fc.assert(
      fc.property(years, years, (a, b) => {
        const both = symmetrised(a, b);
        expect(both).toBeGreaterThanOrEqual(Math.min(a, b) * (1 - 1e-12));
        expect(both).toBeLessThanOrEqual(Math.max(a, b) * (1 + 1e-12));
      }),
    );
  });
  it.each([
    [
      [
        [0.99, 100],
        [0.6, 50],
        [0.9, 25],
      ],
      0.82714,
    ],
    [
      [
        [0.99, 1000],
        [0.9, 150],
        [0, 500],
      ],
      0.7231,
    ],
  ] as const)('average coverage %j', (parts, average) => {
    const found = averageCoverage(parts.map(([coverage, mttfd]) => ({ coverage, mttfd }))) as number;
    expect(found).toBeCloseTo(average, 5);
    expect(coverageBand(found)).toBe('low');
  });
});

describe('bands and levels (from memory; the limits that are those of the SIL too: IEC 62061)', () => {
  it.each([
    [1e-4, 'none'],
    [9.99e-5, 'a'],
    [1e-5, 'a'],
    [9.99e-6, 'b'],
    [3e-6, 'b'],
    [2.99e-6, 'c'],
    [1e-6, 'c'],
    [9.99e-7, 'd'],
    [1e-7, 'd'],
    [9.99e-8, 'e'],
    [1e-12, 'e'],
  ] as const)('%f an hour is PL %s', (pfhd, level) => expect(letter(pfhd)).toBe(level));
  it('the lower ends, by published limits alone: those of b and c are one, below e there is none', () => {
    expect(([0, 1, 2, 3, 4, 5] as const).map(leastPfhdOf)).toEqual([1e-4, 1e-5, 1e-6, 1e-6, 1e-7, 0]);
    expect([1e-3, 5e-5, 5e-6, 2e-6, 5e-7, 5e-8].map(levelPublished)).toEqual([0, 1, 3, 3, 4, 5]);
  });
  it('categories by name', () => expect(([0, 1, 2, 3, 4] as const).map(categoryName)).toEqual(['B', '1', '2', '3', '4']));
  it('a limit that is a hair off by rounding stays a limit', () => {
    expect(letter(1e-7 * 10 * (1 - 1e-15))).toBe('c');
    expect(letter(0.1e-6 + 0.2e-6 + 0.7e-6)).toBe('c');
  });
  it('the ends of each level belong to it', () => {
    for (const each of ['a', 'b', 'c', 'd', 'e'] as const) {
      expect(letter(mostPfhdOf(levelOf(each)))).toBe(each);
      expect(leastPfhdOf(levelOf(each))).toBeLessThan(mostPfhdOf(levelOf(each)));
    }
  });
  it.each([
    [2.9, 'none'],
    [3, 'low'],
    [9.9, 'low'],
    [10, 'medium'],
    [29.9, 'medium'],
    [30, 'high'],
    [100, 'high'],
  ] as const)('%f years are %s', (years, band) => expect(mttfdBand(years)).toBe(band));
  it.each([
    [0.59, 'none'],
    [0.6, 'low'],
    [0.89, 'low'],
    [0.9, 'medium'],
    [0.989, 'medium'],
    [0.99, 'high'],
  ] as const)('a coverage of %f is %s', (share, band) => expect(coverageBand(share)).toBe(band));
  it('the risk graph (from memory)', () => {
    const graph = [false, true]
      .flatMap((serious) =>
        [false, true].flatMap((often) => [false, true].map((unavoidable) => letterOf(levelFromRisk(serious, often, unavoidable)))),
      )
      .join('');
    // S1 F1 P1, S1 F1 P2, S1 F2 P1, S1 F2 P2, then the same with S2.
    expect(graph).toBe('abbccdde');
  });
  it('the simplified table (from memory)', () => {
    const rows = { low: 'a-abbc-', medium: 'b-bccd-', high: '-ccddde' } as const;
    const of: readonly (readonly [0 | 1 | 2 | 3 | 4, 'none' | 'low' | 'medium' | 'high'])[] = [
      [0, 'none'],
      [1, 'none'],
      [2, 'low'],
      [2, 'medium'],
      [3, 'low'],
      [3, 'medium'],
      [4, 'high'],
    ];
    for (const [band, row] of Object.entries(rows))
      expect(
        of
          .map(([category, coverage]) => {
            const level = simplifiedLevel(category, band as 'low', coverage);
            return level === undefined ? '-' : letterOf(level);
          })
          .join(''),
      ).toBe(row);
  });
});

describe('the simplified table has no entry (from memory)', () => {
  const bands = ['none', 'low', 'medium', 'high'] as const;
  it('for a channel of less than 3 years', () => {
    for (const category of [0, 1, 2, 3, 4] as const)
      for (const coverage of bands) expect(simplifiedLevel(category, 'none', coverage)).toBeUndefined();
  });
  it('for categories 2 and 3 without coverage, and for 4 with less than a high one', () => {
    for (const mttfd of bands) {
      for (const category of [2, 3] as const) expect(simplifiedLevel(category, mttfd, 'none')).toBeUndefined();
      for (const coverage of ['none', 'low', 'medium'] as const) expect(simplifiedLevel(4, mttfd, coverage)).toBeUndefined();
    }
  });
  it('but more coverage is never worse', () => {
    expect(simplifiedLevel(2, 'high', 'high')).toBe(4);
    expect(simplifiedLevel(3, 'low', 'high')).toBe(3);
  });
});

describe('one channel: 1 / (8760 · MTTFD)', () => {
  it.each([
    [3, 3.805e-5],
    [10, 1.142e-5],
    [30, 3.805e-6],
    [100, 1.142e-6],
  ])('%f years', (years, pfhd) => expect(singleChannelPfhd(years) / pfhd).toBeCloseTo(1, 3));
  // Spot values of the columns B and 1 of Table K.1 (from memory).
  it.each([
    [3, 3.8e-5],
    [5.1, 2.24e-5],
    [10, 1.14e-5],
    [15, 7.61e-6],
    [27, 4.23e-6],
    [30, 3.8e-6],
    [43, 2.65e-6],
    [68, 1.68e-6],
    [100, 1.14e-6],
  ])('Table K.1 at %f years', (years, pfhd) => {
    expect(Math.abs(singleChannelPfhd(years) / pfhd - 1)).toBeLessThan(0.0036);
  });
});

describe('Table K.1 (from memory)', () => {
  const columns: readonly Column[] = [
    'category 2, low coverage',
    'category 2, medium coverage',
    'category 3, low coverage',
    'category 3, medium coverage',
    'category 4',
  ];
  it.each([
    ['category 2, low coverage', 3, 2.58e-5, 'a'],
    ['category 2, low coverage', 22, 2.93e-6, 'c'],
    ['category 2, low coverage', 100, 5.28e-7, 'd'],
    ['category 2, medium coverage', 5.6, 9.87e-6, 'b'],
    ['category 2, medium coverage', 15, 3.01e-6, 'b'],
    ['category 2, medium coverage', 16, 2.77e-6, 'c'],
    ['category 2, medium coverage', 36, 9.39e-7, 'd'],
    ['category 3, low coverage', 10, 3.21e-6, 'b'],
    ['category 3, low coverage', 24, 9.47e-7, 'd'],
    ['category 3, low coverage', 100, 1.01e-7, 'd'],
    ['category 3, medium coverage', 12, 1.04e-6, 'c'],
    ['category 3, medium coverage', 13, 9.21e-7, 'd'],
    ['category 3, medium coverage', 62, 8.84e-8, 'e'],
    ['category 4', 30, 9.54e-8, 'e'],
    ['category 4', 100, 2.47e-8, 'e'],
    ['category 4', 2500, 9.06e-10, 'e'],
  ] as const)('%s at %f years', (column, years, pfhd, level) => {
    expect(tabledPfhd(column, years)).toEqual({ pfhd, row: years });
    expect(letter(pfhd)).toBe(level);
  });
  it('falls from row to row, and takes the row at or below', () => {
    for (const column of columns) {
      let before = Infinity;
      for (const years of tabledYears) {
        const here = tabledPfhd(column, years);
        if (here === undefined || here.row !== years) continue;
        expect(here.pfhd, `${column} at ${years}`).toBeLessThan(before);
        before = here.pfhd;
        expect(tabledPfhd(column, years * 1.01)?.row).toBe(years);
        expect(tabledPfhd(column, years * 0.99)?.row ?? 0).toBeLessThan(years);
      }
    }
    expect(tabledPfhd('category 4', 29.9)).toBeUndefined();
    expect(tabledPfhd('category 3, low coverage', 2.9)).toBeUndefined();
  });
  it('no digit slipped: each row lies within 2 % of the line between its neighbours, on a log scale', () => {
    const rows = tabledYears.filter((years) => years <= 100);
    for (const column of columns)
      for (let i = 1; i < rows.length - 1; i++) {
        const at = (years: number | undefined): number => Math.log(tabledPfhd(column, years ?? 0)?.pfhd ?? Number.NaN);
        const [before, here, after] = [rows[i - 1], rows[i], rows[i + 1]] as [number, number, number];
        const line = at(before) + ((at(after) - at(before)) * Math.log(here / before)) / Math.log(after / before);
        if (!Number.isNaN(line)) expect(Math.abs(Math.exp(at(here) - line) - 1), `${column} at ${here}`).toBeLessThan(0.02);
      }
  });
  it('categories 3 and 4 follow a two-state model of 20 years with 2 % of failures by a common cause', () => {
    // Two channels of rate λ; a share DC of failures is found at once and made good; the others stay until 20 years are over.
    // A dangerous failure of the whole: the other channel fails after one that was not found, or both by a common cause.
    const model = (years: number, coverage: number): number => {
      const rate = 1 / (8760 * years);
      const [hours, beta] = [20 * 8760, 0.02];
      const hidden = 2 * (1 - beta) * (1 - coverage) * rate;
      const steps = 4000;
      let [well, one, failed] = [1, 0, 0];
      for (let i = 0; i < steps; i++) {
        const dt = hours / steps;
        const fails = well * beta * rate * dt + one * rate * dt;
        const hides = well * hidden * dt;
        [well, one, failed] = [well - hides - well * beta * rate * dt, one + hides - one * rate * dt, failed + fails];
      }
      return failed / hours;
    };
    for (const years of [30, 51, 100]) {
      expect(Math.abs(model(years, 0.99) / (tabledPfhd('category 4', years)?.pfhd ?? 0) - 1), `category 4, ${years}`).toBeLessThan(0.05);
      expect(
        Math.abs(model(years, 0.9) / (tabledPfhd('category 3, medium coverage', years)?.pfhd ?? 0) - 1),
        `category 3, ${years}`,
      ).toBeLessThan(0.1);
    }
  });
});

describe('subsystems', () => {
  const good: Structure = { category: 3, first: 50, second: 50, coverage: 0.9, commonCause: 65, tests: undefined, tester: undefined };
  it('counts the category where all of it is shown', () =>
    expect(reckon(good)).toMatchObject({ category: 3, because: '', mttfd: 50, pfhd: 1.34e-7, level: 4 }));
  it('caps a channel at 100 years before two are made one, and at 2500 in category 4', () => {
    expect(reckon({ ...good, first: 5000, second: 30 }).mttfd).toBeCloseTo(symmetrised(100, 30), 12);
    expect(reckon({ ...good, category: 4, coverage: 0.99, first: 9000, second: 9000 })).toMatchObject({ mttfd: 2500, pfhd: 9.06e-10 });
    expect(reckon({ ...good, category: 1, first: 5000, second: undefined })).toMatchObject({ category: 1, mttfd: 100, level: 3 });
  });
  it('category B reaches b at the most, and less than 3 years nothing', () => {
    expect(reckon({ ...good, category: 0, first: 5000, second: undefined })).toMatchObject({ category: 0, mttfd: 27, level: 2 });
    expect(reckon({ ...good, category: 0, first: 2.9, second: undefined }).level).toBe(0);
  });
  it.each([
    [{ second: undefined }, 'two channels'],
    [{ coverage: 0.59 }, '60 %'],
    [{ commonCause: 64 }, '64 of the 65'],
    [{ commonCause: undefined }, 'common cause'],
    [{ first: 2 }, '3 years'],
    [{ category: 1, first: 29, second: undefined }, '30 years'],
    [{ category: 2, second: undefined, tester: 50 }, 'how often'],
    [{ category: 2, second: undefined, tests: 24, tester: 50 }, 'less than 25'],
    [{ category: 2, second: undefined, tests: 100 }, 'what tests it'],
    [{ category: 2, second: undefined, tests: 100, tester: 24 }, 'twice as often'],
  ] as const)('counts as one channel of category B where %j', (change, because) => {
    const found = reckon({ ...good, ...change } as Structure);
    expect(found.category).toBe(0);
    expect(found.because).toContain(because);
    expect(found.pfhd).toBeCloseTo(singleChannelPfhd(Math.min(27, (change as Partial<Structure>).first ?? 50)), 12);
  });
  it('category 2: 100 tests for each demand count in full, from 25 on with 1.1 times the failures (from memory)', () => {
    const two: Structure = { ...good, category: 2, second: undefined, tests: 100, tester: 25 };
    expect(reckon(two)).toMatchObject({ category: 2, pfhd: 6.49e-7, mttfd: 50 });
    expect(reckon({ ...two, tests: 25 }).pfhd).toBeCloseTo(6.49e-7 * 1.1, 15);
    expect(reckon({ ...two, tests: Infinity }).pfhd).toBe(6.49e-7);
    expect(reckon({ ...two, coverage: 0.6 }).pfhd).toBe(1.24e-6);
  });
  it('category 4 without its coverage or its years counts as 3', () => {
    expect(reckon({ ...good, category: 4 })).toMatchObject({ category: 3, pfhd: 1.34e-7 });
    expect(reckon({ ...good, category: 4, coverage: 0.99, first: 20, second: 20 })).toMatchObject({ category: 3, pfhd: 4.85e-7 });
  });
  it('just 30 years are enough for categories 1 and 4, just 3 for the others', () => {
    expect(reckon({ ...good, category: 1, first: 30, second: undefined })).toMatchObject({ category: 1, because: '', mttfd: 30 });
    expect(reckon({ ...good, category: 1, first: 29.999, second: undefined })).toMatchObject({ category: 0, mttfd: 27 });
    expect(reckon({ ...good, category: 4, coverage: 0.99, first: 30, second: 30 })).toMatchObject({
      category: 4,
      because: '',
      pfhd: 9.54e-8,
    });
    expect(reckon({ ...good, category: 4, coverage: 0.99, first: 29.999, second: 29.999 }).category).toBe(3);
    expect(reckon({ ...good, first: 3, second: 3 })).toMatchObject({ category: 3, pfhd: 6.09e-6 });
    expect(reckon({ ...good, first: 2.999, second: 3 })).toMatchObject({ category: 0, level: 0 });
  });
  it('says why it is not the category claimed, and nothing where it is', () => {
    expect(reckon({ ...good, category: 4 }).because).toContain('99 %');
    for (const coverage of [0, 0.9])
      for (const first of [1, 50])
        expect(reckon({ ...good, category: 0, coverage, first, second: undefined, commonCause: undefined })).toMatchObject({
          category: 0,
          because: '',
        });
  });
  it('tests and what tests count in category 2 only', () => {
    for (const tests of [1, 50, 100, undefined])
      for (const tester of [1, 50, undefined]) expect(reckon({ ...good, tests, tester })).toEqual(reckon(good));
  });
  it('a second channel of category 2 makes it no better: the worse one counts', () => {
    const two: Structure = { ...good, category: 2, tests: 100, tester: 100 };
    expect(reckon({ ...two, first: 50, second: 20 })).toMatchObject({ category: 2, mttfd: 20, pfhd: 2.06e-6 });
    expect(reckon({ ...two, first: 20, second: 50 })).toMatchObject({ category: 2, mttfd: 20, pfhd: 2.06e-6 });
  });
  it('one channel reaches c in category 1 at the most and b in B, a from 3 years, and the worse of two counts', () => {
    const one = (category: 0 | 1, first: number, second?: number) => reckon({ ...good, category, first, second });
    expect([one(1, 30), one(1, 38.1), one(1, 1e6)].map(({ level }) => letterOf(level))).toEqual(['b', 'c', 'c']);
    expect([one(0, 2.999), one(0, 3), one(0, 11.4), one(0, 11.5), one(0, 1e6)].map(({ level }) => letterOf(level))).toEqual([
      'none',
      'a',
      'a',
      'b',
      'b',
    ]);
    expect(one(0, 20, 10).mttfd).toBe(10);
    expect(one(0, 10, 20).mttfd).toBe(10);
    expect(one(0, 10).simplified).toBe(2);
    expect(one(0, 2).simplified).toBeUndefined();
    expect(one(1, 40).simplified).toBe(3);
  });
  it('never gets better where something gets worse', () => {
    const structure = fc.record({
      category: fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const, 4 as const),
      first: fc.double({ min: 1, max: 3000, noNaN: true }),
      second: fc.option(fc.double({ min: 1, max: 3000, noNaN: true }), { nil: undefined }),
      coverage: fc.double({ min: 0, max: 1, noNaN: true }),
      commonCause: fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }),
      tests: fc.option(fc.integer({ min: 1, max: 200 }), { nil: undefined }),
      tester: fc.option(fc.double({ min: 1, max: 3000, noNaN: true }), { nil: undefined }),
    });
    fc.assert(
      fc.property(structure, fc.double({ min: 0.1, max: 1, noNaN: true }), (given, share) => {
        const before = reckon(given).pfhd * (1 + 1e-12);
        for (const worse of [
          { coverage: given.coverage * share },
          { commonCause: undefined },
          { tests: undefined },
          { first: given.first * share, second: given.second === undefined ? undefined : given.second * share },
        ] as const) {
          // A weaker channel makes what tests it look better beside it: then the test may begin to count.
          if ('first' in worse && given.category === 2) continue;
          expect(reckon({ ...given, ...worse }).pfhd * (1 + 1e-9)).toBeGreaterThanOrEqual(before * (1 - 1e-9));
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a function as a chain', () => {
  const figure = (text: string, id: string): number | undefined => judge(`language 1\n${text}`).figures.find((one) => one.id === id)?.value;
  const panel = (name: string, facts: string): string => `panel-model m-${name} {\n${facts}\n}\npanel ${name} : m-${name} {\n}\n`;
  it('failures add up, and the level is none better than that of any part', () => {
    const text =
      panel('p', 'pfhd 300 FIT\nperformance-level b') + panel('q', 'pfhd 450 FIT\nperformance-level e') + 'function f {\n parts p q\n}\n';
    expect(figure(text, 'function.f.pfhd')).toBeCloseTo(7.5e-7, 15);
    expect(figure(text, 'function.f.performance-level')).toBe(2);
  });
  it('is not worked out while a part says nothing', () =>
    expect(
      figure(panel('p', 'pfhd 300 FIT') + panel('q', 'leaves 1') + 'function f {\n parts p q\n}\n', 'function.f.pfhd'),
    ).toBeUndefined());
  it('electronics and the relay behind them are in series', () => {
    const text = 'site {\n cycles 100 /day\n}\n' + panel('p', 'mttfd 50 years\nb10d 400000') + 'function f {\n parts p\n}\n';
    // 1/50 + 1/109.589 → 34.335 years; category B counts 27.
    expect(figure(text, 'function.f.mttfd')).toBe(27);
    expect(figure(text.replace('mttfd', 'category 1\nmttfd'), 'function.f.mttfd')).toBeCloseTo(1 / (1 / 50 + 36_500 / 4e6), 9);
  });
});

describe('what decides an error', () => {
  const verdict = (text: string): string | undefined =>
    judge(`language 1\n${text}`).findings.find((finding) => finding.rule === 'performance-level-too-low')?.severity;
  const single = (years: number, lines: string): string =>
    `function f {\n${lines}\nsubsystem s {\n category 1\n component "x" mttfd ${years} years\n}\n}\n`;
  const europe = 'site {\n rules europe\n users public\n}\n';
  it('published relations and limits', () => {
    expect(verdict(single(8, 'required-level c'))).toBe('error');
    expect(verdict(single(90, 'required-level d'))).toBe('error');
  });
  it('not the limit between b and c, which is from memory', () => expect(verdict(single(35, 'required-level c'))).toBe('warning'));
  it('not the cap of 100 years, which is from memory', () => {
    expect(verdict(single(200, 'required-level d'))).toBe('warning');
  });
  it('not a level that nobody stated', () => {
    expect(verdict(europe + single(8, ''))).toBe('warning');
    expect(verdict(single(8, 'risk serious often avoidable'))).toBe('warning');
    expect(verdict(single(8, ''))).toBeUndefined();
    expect(verdict(europe.replace('europe', 'north-america') + single(8, ''))).toBeUndefined();
  });
  it('not Table K.1', () =>
    expect(
      verdict(
        'function f {\n required-level e\n subsystem s {\n category 3\n common-cause 70\n component "x" mttfd 20 years coverage 90 %\n component "y" channel second mttfd 20 years coverage 90 %\n}\n}\n',
      ),
    ).toBe('warning'));
  it('not two channels of which no category is claimed', () => {
    const text =
      'function f {\n required-level b\n subsystem s {\n component "x" mttfd 5 years\n component "y" channel second mttfd 5 years\n}\n}\n';
    expect(verdict(text)).toBe('warning');
    expect(verdict(text.replace('channel second', ''))).toBe('error');
  });
  it('the level that a maker declares', () =>
    expect(verdict('panel-model m {\n performance-level b\n}\npanel p : m {\n}\nfunction f {\n required-level c\n parts p\n}\n')).toBe(
      'error',
    ));
  it('not the worst of a level where no number is declared', () => {
    const text =
      'panel-model m {\n performance-level d\n}\npanel p : m {\n}\npanel q : m {\n}\nfunction f {\n required-level d\n parts p q\n}\n';
    expect(verdict(text)).toBe('warning');
  });
  it('not a number by the kind of a part', () => {
    const text = (how: string): string =>
      `site {\n cycles 2000 /day\n}\nfunction f {\n required-level c\n subsystem s {\n component "x" ${how}\n}\n}\n`;
    expect(verdict(text('b10d 400000'))).toBe('error');
    expect(verdict(text('kind relay-full-load'))).toBe('warning');
  });
});
