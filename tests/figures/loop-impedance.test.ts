// Fault protection, against BS 7671:2018, Table 41.3 with Cmin (two public restatements that agree), Table 41.5 as quoted
// in public, and the worked examples of Linsley, Basic Electrical Installation Work, pp. 250–251.
import { describe, expect, it } from 'vitest';
import {
  type Curve,
  copperInPvc,
  fuseImpedanceLimit,
  fusingCurrent,
  loopImpedance,
  loopImpedanceLimit,
  protectiveConductorLeast,
} from '../../server/figures/loop-impedance/maths.ts';
import { electrodeLimit, touchVoltage } from '../../server/figures/residual-current/maths.ts';
import { judge } from '../kit/pages.ts';

describe('greatest loop impedance', () => {
  it.each([
    [6, 7.28, 3.64, 1.82],
    [10, 4.37, 2.19, 1.09],
    [16, 2.73, 1.37, 0.68],
    [20, 2.19, 1.09, 0.55],
    [32, 1.37, 0.68, 0.34],
  ])('%i A: B %f, C %f, D %f ohm', (rating, b, c, d) => {
    const printed = { B: b, C: c, D: d } satisfies Record<Curve, number>;
    // Half a unit in the last place printed, and a hair: 16 A of D is 0.6828.
    for (const curve of ['B', 'C', 'D'] as const)
      expect(Math.abs((loopImpedanceLimit(230, curve, rating) ?? 0) - printed[curve]), curve).toBeLessThan(0.0051);
  });
  it('is none without a rating', () => expect(loopImpedanceLimit(230, 'B', 0)).toBeUndefined());
});

// BS 7671, Tables 41.2 and 41.4 with Cmin, gG fuses to BS 88, as sparkyhub.co.uk/references/max-zs-tables prints them.
describe('greatest loop impedance of a fuse', () => {
  it.each([
    [16, 2.42],
    [20, 1.84],
    [25, 1.61],
    [32, 1.04],
    [40, 1.7],
    [50, 1.4],
    [63, 1.1],
    [80, 0.84],
    [100, 0.67],
    [125, 0.54],
  ])('%i A: %f ohm', (rating, ohms) => {
    expect(fuseImpedanceLimit(230, rating)).toEqual({ limit: expect.closeTo(ohms, 9), standing: 'published' });
    // It never asks for less current than melts a fuse at all.
    expect((230 * 0.95) / ohms).toBeGreaterThan(fusingCurrent(rating));
  });
  it('is from memory below 16 A, and none without a rating', () => {
    expect(fuseImpedanceLimit(230, 10)).toEqual({ limit: 4.65, standing: 'from memory' });
    expect(fuseImpedanceLimit(115, 10)?.limit).toBeCloseTo(2.325, 9);
    expect(fuseImpedanceLimit(230, 0)).toBeUndefined();
    expect(fuseImpedanceLimit(0, 10)).toBeUndefined();
  });
  // IEC 60269-1, conventional fusing current of gG.
  it('of another rating is that of the current that melts it at all', () => {
    expect([2, 4, 5, 10, 15, 16, 63].map(fusingCurrent)).toEqual(
      [4.2, 8.4, 9.5, 19, 28.5, 25.6, 100.8].map((amperes) => expect.closeTo(amperes, 9)),
    );
    expect(fuseImpedanceLimit(230, 35)?.limit).toBeCloseTo(230 / 56, 9);
  });
});

describe('protective conductor', () => {
  // Linsley: 230 V over 1.15 ohm are 200 A; 0.4 s, k 115: 1.10 mm². 90 A: 0.49 mm².
  it('of 1.10 mm² for 200 A in 0.4 s', () => {
    expect(230 / loopImpedance(0.75, 0.15, 0.25)).toBeCloseTo(200, 9);
    expect(protectiveConductorLeast(200, 0.4, copperInPvc) * 1e6).toBeCloseTo(1.1, 2);
    expect(protectiveConductorLeast(90, 0.4, copperInPvc) * 1e6).toBeCloseTo(0.495, 3);
  });
  // Worked twice by hand: 2500 A, 0.1 s; 575 A, 0.1 s, k 143.
  it('of 6.87 and 1.27 mm²', () => {
    expect(protectiveConductorLeast(2500, 0.1, copperInPvc) * 1e6).toBeCloseTo(6.87, 2);
    expect(protectiveConductorLeast(575, 0.1, 143) * 1e6).toBeCloseTo(1.27, 2);
  });
});

describe('earth electrode', () => {
  it.each([
    [0.03, 1667],
    [0.1, 500],
    [0.3, 167],
    [0.5, 100],
  ])('%f A: %i ohm', (residual, ohms) => {
    expect(Math.round(electrodeLimit(residual))).toBe(ohms);
    expect(touchVoltage(electrodeLimit(residual), residual)).toBeCloseTo(50, 12);
  });
});

const site = (lines: string): string => `site "Example" {\n  rules europe\n  users limited\n  supply 230 V 50 Hz\n${lines}\n}\n`;
const model = (lines: string): string => `cable-model c {\n  area 2.5 mm2\n  class 2\n${lines}\n}\n`;
const file = (siteLines: string, cableLines: string, modelLines = 'cores 3'): string =>
  `language 1\n${site(siteLines)}${model(modelLines)}cable run : c {\n  length 20 m\n  carries 4 A at 230 V\n${cableLines}\n}\n`;
const value = (text: string, id: string): number | undefined =>
  judge(text).figures.find((figure) => figure.id === `cable.run.${id}`)?.value;
const said = (text: string): string[] =>
  judge(text).findings.flatMap(({ rule, severity }) => (/^(loop-|protective-|residual-)/.test(rule) ? [`${severity} ${rule}`] : []));

describe('a cable on TN', () => {
  const tn = 'earthing TN\nexternal-impedance 0.35 ohm';
  it('has the loop of its own conductors', () => {
    // 20 m of 7.41 ohm/km twice, at 70 °C: 0.2964 · 1.1965 = 0.35464.
    expect(value(file(tn, 'breaker B 16 A'), 'loop-impedance')).toBeCloseTo(0.35 + 0.2964 * 1.1965, 6);
    // The protective conductor of 1.5 mm²: 7.41 and 12.1 ohm/km.
    expect(value(file(tn, 'breaker B 16 A', 'protective-conductor 1.5 mm2'), 'loop-impedance')).toBeCloseTo(
      0.35 + 0.02 * (7.41 + 12.1) * 1.1965,
      6,
    );
  });
  it('has none where the protective conductor is a guess, or the supply is another', () => {
    for (const [siteLines, modelLines] of [
      [tn, ''],
      [tn, 'cores 2'],
      [tn, 'cores 3\nkind flat'],
      ['earthing TN', 'cores 3'],
      ['earthing TT\nexternal-impedance 0.35 ohm', 'cores 3'],
      ['', 'cores 3'],
    ] as const)
      expect(value(file(siteLines, 'breaker B 16 A', modelLines), 'loop-impedance'), siteLines + modelLines).toBeUndefined();
    expect(value(file(tn, 'breaker B 16 A').replace('europe', 'north-america'), 'loop-impedance')).toBeUndefined();
  });
  it('is held to the table', () => {
    // At 2.40 ohm outside it is 2.7546 ohm, at 2.35 ohm 2.7046 ohm; B 16 A needs 2.731.
    expect(said(file('earthing TN\nexternal-impedance 2.35 ohm', 'breaker B 16 A'))).toEqual([]);
    expect(said(file('earthing TN\nexternal-impedance 2.4 ohm', 'breaker B 16 A'))).toEqual(['error loop-impedance-too-high']);
    // BS 7671, 411.4.5: a residual-current device cuts off from its rated residual current on.
    expect(said(file('earthing TN\nexternal-impedance 2.4 ohm', 'breaker B 16 A\nresidual-current 30 mA'))).toEqual([]);
    // 0.35464 ohm of the cable: 2.0654 ohm outside make 2.42.
    expect(said(file('earthing TN\nexternal-impedance 2.06 ohm', 'fuse 16 A'))).toEqual([]);
    expect(said(file('earthing TN\nexternal-impedance 2.07 ohm', 'fuse 16 A'))).toEqual(['error loop-impedance-too-high']);
  });
  it('is held to a fuse by what is certain: a current that it carries for an hour never melts it', () => {
    const at = (ohms: number, fuse: string) => said(file(`earthing TN\nexternal-impedance ${ohms - 0.35464} ohm`, fuse));
    // 230 V over 1.9 · 10 A are 12.1 ohm, over 2.1 · 4 A 27.4 ohm, over 1.6 · 35 A (a rating of no table) 4.107 ohm.
    expect(at(12.05, 'fuse 10 A')).toEqual(['warning loop-impedance-too-high']);
    expect(at(12.15, 'fuse 10 A')).toEqual(['error loop-impedance-too-high']);
    expect(at(27.3, 'fuse 4 A')).toEqual(['warning loop-impedance-too-high']);
    expect(at(27.5, 'fuse 4 A')).toEqual(['error loop-impedance-too-high']);
    expect(at(4.1, 'fuse 35 A')).toEqual([]);
    expect(at(4.12, 'fuse 35 A')).toEqual(['error loop-impedance-too-high']);
  });
  it('counts the device that bears the most, of one cable and of the one before its panel', () => {
    const tn = 'earthing TN\nexternal-impedance 20 ohm';
    expect(said(file(tn, 'breaker B 16 A\nfuse 1 A'))).toEqual([]);
    // 230 · 0.95/3 = 72.83 ohm, and with 80 ohm outside no longer.
    expect(said(file(tn, 'breaker B 16 A\nresidual-current 3 A'))).toEqual([]);
    expect(said(file('earthing TN\nexternal-impedance 80 ohm', 'breaker B 16 A\nresidual-current 3 A'))).toEqual([
      'error loop-impedance-too-high',
    ]);
  });
  it('is reckoned to earth where the voltage is one between lines', () => {
    const lines = file('earthing TN\nexternal-impedance 2.4 ohm', 'breaker B 16 A').replace('at 230 V', 'at 400 V');
    // 400/√3 · 0.95/80 = 2.7424 ohm; the loop is 2.7546.
    expect(value(lines, 'loop-impedance-limit')).toBeCloseTo(2.7424, 4);
    expect(said(lines)).toEqual(['error loop-impedance-too-high']);
  });
  it('needs its protective conductor only by warning: the time is from memory', () => {
    expect(said(file('earthing TN\nexternal-impedance 0.05 ohm', 'breaker B 16 A', 'protective-conductor 0.5 mm2'))).toEqual([
      'warning protective-conductor-too-small',
    ]);
  });
});

describe('a cable on TT', () => {
  const tt = (ohms: string): string => `earthing TT\nearth-electrode ${ohms}`;
  it('needs a residual-current device that its electrode suits', () => {
    expect(said(file(tt('160 ohm'), 'breaker B 10 A\nresidual-current 300 mA'))).toEqual([]);
    expect(said(file(tt('170 ohm'), 'breaker B 10 A\nresidual-current 300 mA'))).toEqual(['error residual-current-device-unfit']);
    expect(said(file(tt('200 ohm'), 'breaker B 10 A\nresidual-current 30 mA'))).toEqual([]);
    expect(said(file(tt('201 ohm'), 'breaker B 10 A\nresidual-current 30 mA'))).toEqual(['warning residual-current-device-unfit']);
    expect(said(file(tt('1600 ohm'), 'residual-current 30 mA'))).toEqual(['warning residual-current-device-unfit']);
    expect(said(file(tt('1700 ohm'), 'residual-current 30 mA'))).toEqual(['error residual-current-device-unfit']);
  });
  it('without one', () => {
    expect(said(file(tt('20 ohm'), 'breaker B 10 A'))).toEqual(['error residual-current-device-unfit']);
    // 50 V over 50 A is 1 ohm.
    expect(said(file(tt('1 ohm'), 'breaker B 10 A'))).toEqual([]);
    expect(said(file('earthing TT', 'breaker B 10 A'))).toEqual(['error residual-current-device-unfit']);
    expect(said(file('earthing TT', ''))).toEqual([]);
    expect(said(file('earthing TT', 'breaker B 10 A').replace('at 230 V', 'at 24 V'))).toEqual([]);
  });
});
