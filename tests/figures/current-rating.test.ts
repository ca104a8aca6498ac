// Current ratings and their factors, against BS 7671:2018, Appendix 4, as restated in public: Tables 4D1A (two copies that
// agree), 4D2A columns A to C (SANS 10142-1:2019, Table 6.3(a), methods 1 to 3, the same numbers) and 4C1 (a quoted copy).
import { describe, expect, it } from 'vitest';
import {
  ambientFactor,
  ambientFactorAt60,
  type CableKind,
  conductorTemperature,
  gaugeCurrent,
  groundFactor,
  groupingFactor,
  type Method,
  tabulatedCurrent,
  tabulatedNeeded,
} from '../../server/figures/current-rating/maths.ts';
import { judge } from '../kit/pages.ts';

const sizes = [1, 1.5, 2.5, 4, 6, 10];

describe('tabulated current', () => {
  it.each<[CableKind, Method, string, number[]]>([
    ['singles', 'A', 'BS 7671, Table 4D1A', [11, 14.5, 20, 26, 34, 46]],
    ['singles', 'B', 'BS 7671, Table 4D1A', [13.5, 17.5, 24, 32, 41, 57]],
    ['singles', 'C', 'BS 7671, Table 4D1A', [15.5, 20, 27, 37, 47, 65]],
    ['multicore', 'A', 'BS 7671, Table 4D2A', [11, 14, 18.5, 25, 32, 43]],
    ['multicore', 'B', 'BS 7671, Table 4D2A', [13, 16.5, 23, 30, 38, 52]],
    ['multicore', 'C', 'BS 7671, Table 4D2A', [15, 19.5, 27, 36, 46, 63]],
  ])('%s, method %s', (kind, method, table, values) => {
    expect(sizes.map((size) => tabulatedCurrent(size * 1e-6, kind, method))).toEqual(
      values.map((current) => ({ current, table, standing: 'published' })),
    );
  });

  it('grows with the size, and from A to B to C to E', () => {
    for (const size of sizes) {
      const of = (method: Method): number => tabulatedCurrent(size * 1e-6, 'multicore', method)?.current ?? Number.NaN;
      expect([of('A'), of('B'), of('C'), of('E')]).toEqual([of('A'), of('B'), of('C'), of('E')].sort((a, b) => a - b));
    }
  });

  it('is from memory where the table is', () => {
    for (const [kind, method] of [
      ['multicore', 'E'],
      ['multicore', 'D'],
      ['flat', 'A'],
      ['flat', 'C'],
      ['flat', 'over-ceiling'],
      ['flat', 'under-insulation'],
      ['flat', 'stud-wall-touching'],
      ['flat', 'stud-wall'],
    ] as const)
      expect(tabulatedCurrent(2.5e-6, kind, method)?.standing, `${kind} ${method}`).toBe('from memory');
    for (const gauge of [18, 16, 14, 12, 10, 8])
      expect(gaugeCurrent((Math.PI / 4) * (0.127e-3 * 92 ** ((36 - gauge) / 39)) ** 2)?.standing).toBe('from memory');
    expect(gaugeCurrent(1.5e-6)).toBeUndefined();
  });

  it('is none where there is no such column or size', () => {
    expect(tabulatedCurrent(2.5e-6, 'singles', 'D')).toBeUndefined();
    expect(tabulatedCurrent(2.5e-6, 'flat', 'B')).toBeUndefined();
    expect(tabulatedCurrent(0.5e-6, 'multicore', 'C')).toBeUndefined();
    expect(tabulatedCurrent(3e-6, 'multicore', 'C')).toBeUndefined();
  });
});

describe('factors', () => {
  it.each([
    [25, 1.03],
    [30, 1],
    [35, 0.94],
    [40, 0.87],
    [45, 0.79],
    [50, 0.71],
    [55, 0.61],
  ])('%i °C: Ca %f', (celsius, factor) => {
    expect(ambientFactor(celsius)).toBeCloseTo(factor, 12);
    // The law behind the table, √((70 − t)/40); the table is rounded, and at 25 °C holds back.
    if (celsius > 25) expect(Math.abs(Math.sqrt((70 - celsius) / 40) - factor)).toBeLessThan(0.008);
  });
  it('only fall with the temperature, to nothing at 70 °C', () => {
    for (let celsius = -20; celsius < 80; celsius += 0.5) {
      expect(ambientFactor(celsius + 0.5)).toBeLessThanOrEqual(ambientFactor(celsius));
      expect(groundFactor(celsius + 0.5)).toBeLessThanOrEqual(groundFactor(celsius));
      if (celsius >= 30) expect(ambientFactor(celsius)).toBeLessThanOrEqual(Math.sqrt(Math.max(0, 70 - celsius) / 40) + 0.006);
    }
    expect(ambientFactor(70)).toBe(0);
    expect(groundFactor(20)).toBe(1);
  });
  it('for groups', () => {
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9].map((circuits) => groupingFactor(circuits, false))).toEqual([
      1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5,
    ]);
    expect(groupingFactor(10, false)).toBeUndefined();
    for (let circuits = 2; circuits <= 9; circuits++)
      expect(groupingFactor(circuits, true)).toBeLessThan(groupingFactor(circuits, false) as number);
  });
  // A published example of an electrical contractor: 40 A at 35 °C, one circuit: It ≥ 42.55 A.
  it('ask for a cable of 42.55 A behind 40 A at 35 °C', () => expect(tabulatedNeeded(40, ambientFactor(35), 1)).toBeCloseTo(42.553, 3));
});

describe('conductor temperature', () => {
  const given = { current: 0, tabulated: 20, cg: 1, ambient: 30, reference: 30, limit: 70 };
  it('is that of its surroundings without a current, and the limit at the tabulated one', () => {
    expect(conductorTemperature(given)).toBe(30);
    expect(conductorTemperature({ ...given, current: 20 })).toBe(70);
    expect(conductorTemperature({ ...given, ambient: 50 })).toBe(50);
  });
  it('is the limit at what the factors allow', () => {
    for (const ambient of [25, 35, 45, 55])
      for (const cg of [1, 0.8, 0.57]) {
        const ca = Math.sqrt((70 - ambient) / 40);
        expect(conductorTemperature({ ...given, ambient, cg, current: 20 * ca * cg })).toBeCloseTo(70, 9);
      }
  });
  // BS 7671, Appendix 4, 6.1, by another way: the drop is corrected by (230 + tp − (Ca²·Cg² − Ib²/It²)(tp − 30))/(230 + tp).
  it('agrees with the correction of the tabulated drop', () => {
    const t = conductorTemperature({ ...given, current: 10, ambient: 40 });
    const ct = (230 + 70 - (0.75 - 0.25) * 40) / 300;
    expect((230 + t) / 300).toBeCloseTo(ct, 9);
  });
});

const cable = (lines: string, model = 'area 2.5 mm2\n  class 2', site = ''): string =>
  `language 1\n${site}cable-model c {\n  ${model}\n}\ncable run : c {\n  length 5 m\n${lines}\n}\n`;
const rated = (text: string): number | undefined => judge(text).figures.find((figure) => figure.id === 'cable.run.current-rating')?.value;
const said = (text: string): string[] =>
  judge(text).findings.flatMap(({ rule, severity }) => (/^(cable-overloaded|protection-)/.test(rule) ? [`${severity} ${rule}`] : []));

describe('a cable in a file', () => {
  it('is rated by the way it is laid', () => {
    expect(rated(cable('carries 1 A at 230 V'))).toBeUndefined();
    expect(rated(cable('carries 1 A at 230 V\nmethod C'))).toBe(27);
    expect(rated(cable('carries 1 A at 230 V\nmethod B', 'area 2.5 mm2\n  kind singles'))).toBe(24);
    expect(rated(cable('carries 1 A at 230 V\nmethod C\nambient 40 °C\ngrouped 2'))).toBeCloseTo(27 * 0.87 * 0.8, 9);
    expect(rated(cable('carries 1 A at 230 V\nmethod D\nambient 20 °C'))).toBe(29);
    expect(rated(cable('carries 1 A at 230 V\nmethod C', 'area 2.5 mm2\n  insulation rubber'))).toBeUndefined();
  });
  it('is held to Ib ≤ In ≤ Iz', () => {
    expect(said(cable('carries 27 A at 230 V\nmethod C\nbreaker B 27 A'))).toEqual([]);
    expect(said(cable('carries 27.1 A at 230 V\nmethod C'))).toEqual(['error cable-overloaded']);
    expect(said(cable('carries 10 A at 230 V\nmethod C\nbreaker B 32 A'))).toEqual(['error protection-over-cable-rating']);
    expect(said(cable('carries 10 A at 230 V\nmethod C\nfuse 32 A'))).toEqual(['error protection-over-cable-rating']);
    expect(said(cable('carries 10 A at 230 V\nmethod C\nbreaker C 6 A'))).toEqual(['warning protection-below-load']);
  });
  it('is held to the most favourable way of laying it where none is stated', () => {
    // 2.5 mm² in the ground at 10 °C: 29 · 1.1 = 31.9 A, from memory; half as much again is too much in any case.
    expect(said(cable('carries 10 A at 230 V\nbreaker B 31 A'))).toEqual([]);
    expect(said(cable('carries 10 A at 230 V\nbreaker B 32 A'))).toEqual(['warning protection-over-cable-rating']);
    expect(said(cable('carries 10 A at 230 V\nbreaker B 47 A'))).toEqual(['warning protection-over-cable-rating']);
    expect(said(cable('carries 10 A at 230 V\nbreaker B 48 A'))).toEqual(['error protection-over-cable-rating']);
    expect(said(cable('carries 10 A at 230 V\nbreaker B 125 A'))).toEqual(['error protection-over-cable-rating']);
  });
  // NEC, Table 310.15(B)(1), column of 60 °C insulation (from memory).
  it.each([
    [25, 1.08],
    [30, 1],
    [35, 0.91],
    [40, 0.82],
    [45, 0.71],
    [50, 0.58],
    [55, 0.41],
    [60, 0],
  ])('of American 60 °C insulation is derated at %i °C by %f', (celsius, factor) => {
    expect(Math.abs(ambientFactorAt60(celsius) - factor)).toBeLessThan(0.005);
  });
  it('of a gauge is that of 60 °C insulation', () => {
    const gauge = cable('carries 10 A at 120 V\nmethod C\nambient 45 °C', 'area 14 AWG', 'site "Example" {\n  rules north-america\n}\n');
    // 15 A · √(15/30) = 10.6 A; in 70 °C insulation it would be 11.85 A.
    expect(rated(gauge)).toBeCloseTo(15 * Math.sqrt(0.5), 6);
  });
  it('of a thin conductor says how warm it gets at the most', () => {
    // 15 A · (0.5/1)^¾ = 8.919 A; 40 + (70 − 30)·(3/8.919)² − 0 = 44.5 °C.
    const text = cable('carries 3 A at 24 V\nmethod C\nambient 40 °C', 'area 0.5 mm2');
    const found = judge(text).figures.find(({ id }) => id.endsWith('.conductor-temperature'));
    expect((found?.value ?? 0) - 273.15).toBeCloseTo(40 + 40 * (3 / (15 * 0.5 ** 0.75)) ** 2, 6);
  });
  it('of a conductor thinner than any in the tables is less by the root of its area at the most', () => {
    const thin = 'area 0.05 mm2';
    // In the ground 22 · 1.1 · √(0.05/1.5) = 4.418 A.
    expect(said(cable('carries 4.41 A at 24 V', thin))).toEqual([]);
    expect(said(cable('carries 4.43 A at 24 V', thin))).toEqual(['error cable-overloaded']);
    // Clipped, flat or not: 16 · 1.03 · √0.05 = 3.685 A; at 40 °C 16 · 0.87 · √0.05 = 3.113 A; in 90 °C insulation √1.5 as much.
    expect(said(cable('carries 3.68 A at 24 V\nmethod C', thin))).toEqual([]);
    expect(said(cable('carries 3.69 A at 24 V\nmethod C', thin))).toEqual(['error cable-overloaded']);
    expect(said(cable('carries 3.12 A at 24 V\nmethod C\nambient 40 °C', thin))).toEqual(['error cable-overloaded']);
    expect(said(cable('carries 4.5 A at 24 V\nmethod C', `${thin}\n  insulation xlpe`))).toEqual([]);
    expect(said(cable('carries 4.52 A at 24 V\nmethod C', `${thin}\n  insulation xlpe`))).toEqual(['error cable-overloaded']);
  });
  it('is never condemned by a value from memory', () => {
    for (const [method, model] of [
      ['E', ''],
      ['D', ''],
      ['C', '\n  kind flat'],
      ['over-ceiling', '\n  kind flat'],
      ['C', '\n  insulation xlpe'],
    ] as const)
      expect(said(cable(`carries 90 A at 230 V\nmethod ${method}\nbreaker B 100 A`, `area 2.5 mm2${model}`)), method + model).toEqual([
        'warning cable-overloaded',
        'warning protection-over-cable-rating',
      ]);
    const american = 'site "Example" {\n  rules north-america\n  users limited\n}\n';
    expect(rated(cable('carries 1 A at 120 V', 'area 14 AWG', american))).toBe(15);
    expect(said(cable('carries 16 A at 120 V', 'area 14 AWG', american))).toEqual(['warning cable-overloaded']);
    expect(rated(cable('carries 1 A at 120 V', 'area 14 AWG'))).toBeUndefined();
  });
  it('says that a value is from memory', () => {
    const found = judge(cable('carries 90 A at 230 V\nmethod E')).findings.find((finding) => finding.rule === 'cable-overloaded');
    expect(found?.what).toContain('from memory');
    expect(found?.source).toContain('from memory');
  });
});
