// Battery and sun, against worked examples that others have published, named beside each.
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import {
  type Capacity,
  capacityNeeded,
  chargeAt,
  coldFactor,
  dailyCharge,
  dischargeTime,
  exponentFrom,
  solarNeeded,
  solarYield,
} from '../../server/figures/battery/maths.ts';
import { designCurrent } from '../../server/figures/design-current/maths.ts';
import { judge } from '../kit/pages.ts';

const Qty = createRequire(import.meta.url)('js-quantities') as (text: string) => { to(unit: string): { scalar: number } };
const hour = 3600;
const capacity = (ampereHours: number, hours: number): Capacity => ({
  charge: Qty(`${ampereHours} Ah`).to('C').scalar,
  time: hours * hour,
});
const hours = (of: Capacity, current: number, exponent: number): number => (dischargeTime(of, current, exponent) ?? Number.NaN) / hour;

describe('Peukert', () => {
  // By hand, t = C / I^k with the capacity at 1 A: 250 / 20^1.3 = 5.0886 h; 100 / 5^1.2 = 14.4956 h. Rated at 1 A, that is C hours,
  // ours is the same law.
  it('with the capacity at 1 A', () => {
    expect(hours(capacity(250, 250), 20, 1.3)).toBeCloseTo(5.0886, 3);
    expect(hours(capacity(100, 100), 5, 1.2)).toBeCloseTo(14.4956, 3);
  });
  // Worked twice: with the capacity rated at 20 h.
  it.each([
    [250, 20, 1.3, 10.856],
    [100, 5, 1.2, 20],
    [100, 10, 1.2, 8.7055],
    [100, 20, 1.2, 3.7893],
    [7, 1, 1.25, 5.384],
  ])('%f Ah at 20 h, %f A, k %f: %f h', (ampereHours, current, exponent, expected) =>
    expect(hours(capacity(ampereHours, 20), current, exponent)).toBeCloseTo(expected, 3),
  );
  it('gives 75.79 Ah of 100 at 20 A, and never more than all', () => {
    expect((chargeAt(capacity(100, 20), 20, 1.2) ?? 0) / hour).toBeCloseTo(75.79, 2);
    expect(chargeAt(capacity(100, 20), 0.1, 1.2)).toBe(100 * hour);
    expect(chargeAt(capacity(100, 20), 0, 1.2)).toBe(100 * hour);
  });
  it('takes its exponent from two ratings', () => {
    const exponent = exponentFrom(capacity(100, 20), capacity(85, 5)) ?? Number.NaN;
    expect(exponent).toBeCloseTo(1.1328, 4);
    expect(hours(capacity(100, 20), 17, exponent)).toBeCloseTo(5, 9);
    expect(exponentFrom(capacity(100, 20), capacity(100, 20))).toBeUndefined();
  });
  it('is not known for what cannot be', () => {
    expect(dischargeTime(capacity(0, 20), 1, 1.2)).toBeUndefined();
    expect(dischargeTime(capacity(7, 20), 1, 0.9)).toBeUndefined();
  });
});

describe('a bank', () => {
  // Simplified IEEE method, as restated in public: 1000 Wh a day, 2.5 days, 50 %, 40 °F (1.30), 12 V: 541.67 Ah.
  it('of 541.67 Ah', () => {
    const fahrenheit = (value: number): number => Qty(`${value} tempF`).to('tempK').scalar;
    expect(capacityNeeded((1000 / 12) * hour, 2.5, 0.5, coldFactor(fahrenheit(40))) / hour).toBeCloseTo(541.67, 2);
    for (const [at, factor] of [
      [80, 1],
      [70, 1.04],
      [60, 1.11],
      [50, 1.19],
      [40, 1.3],
      [30, 1.4],
      [20, 1.59],
      [100, 1],
      [0, 1.59],
      [55, 1.15],
    ] as const)
      expect(coldFactor(fahrenheit(at)), `${at} °F`).toBeCloseTo(factor, 9);
  });
  // Two published bank calculators: 5 kWh, 48 V, 80 %: 1 day “about 130”, 2 days “260” Ah.
  it.each([
    [1, 130.2],
    [2, 260.4],
  ])('of 48 V for %i days: %f Ah', (days, expected) =>
    expect(capacityNeeded((5000 / 48) * hour, days, 0.8, 1) / hour).toBeCloseTo(expected, 1),
  );
  // Worked twice: 0.15 A at rest, 30 cycles of 30 s at 6 A: 5.1 Ah a day; 3 days at 50 %: 30.6 Ah.
  it('for a gate', () => {
    const daily = dailyCharge(0.15, 30, 30 * 6);
    expect(daily / hour).toBeCloseTo(5.1, 9);
    expect(capacityNeeded(daily, 3, 0.5, 1) / hour).toBeCloseTo(30.6, 9);
  });
});

describe('sun', () => {
  // By hand: 50 Wh / (5 h · 75 %) = 13.33 W, 50 Wh / 75 % = 66.67 Wh; 10 W · 4 h · 0.85 = 34 Wh.
  it('of 5 h and of 4 h', () => {
    expect(solarNeeded(50 * hour, 5 * hour, 0.75)).toBeCloseTo(13.333, 3);
    expect(solarYield(50 / (5 * 0.75), 5 * hour, 1) / hour).toBeCloseTo(66.67, 2);
    expect(solarYield(10, 4 * hour, 0.85) / hour).toBeCloseTo(34, 9);
  });
});

// A published example of an electrical contractor: 4.5 kW, η 0.75, power factor 0.7, 230 V: 6000 W in, 37.27 A.
describe('a motor', () => {
  it('draws 37.27 A', () => {
    expect(designCurrent(4500, 0.75, 0.7, 230)).toBeCloseTo(37.27, 2);
    expect(designCurrent(4500, 0, 0.7, 230)).toBeUndefined();
  });
});

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/sensors.gate"\n';
const gate = (battery: string, more = ''): string =>
  `${head}panel-model p {\n  standby 100 mA\n  terminal D1 motor\n  terminal V1 supply-out\n  terminal G1 safety-input normally-closed common V1\n}\nleaf w {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\ndrive d : birch-floor {\n  moves w\n}\nsensor s : finch-relay {\n  watches closing\n}\npanel box : p {\n  wire d to D1\n  wire s to G1\n  wire s supply to V1\n  battery {\n    voltage 24 V\n${battery}\n  }\n${more}\n}\n`;
const value = (text: string, id: string): number | undefined =>
  judge(text).figures.find((figure) => figure.id === `panel.box.${id}`)?.value;
const said = (text: string): string[] =>
  judge(text).findings.flatMap(({ rule, severity }) => (/^(battery|solar)-/.test(rule) ? [`${severity} ${rule}`] : []));

describe('a battery in a file', () => {
  it('feeds what is wired, each once', () => expect(value(gate('capacity 7 Ah over 20 h'), 'standby-current')).toBeCloseTo(0.14, 12));
  it('at rest', () => expect((value(gate('capacity 7 Ah over 20 h'), 'standby-time') ?? 0) / hour).toBeCloseTo(7 / 0.14 / 2, 9));
  it('with movements: current, twice the run', () => {
    const text = gate('capacity 7 Ah over 20 h\ncycles 30 /day');
    const run = judge(text).figures.find((figure) => figure.id === 'leaf.w.run-time')?.value ?? Number.NaN;
    expect(value(text, 'daily-charge')).toBeCloseTo(0.14 * 86400 + 30 * 2 * 4.5 * run, 6);
    const ofTheSite = gate('capacity 7 Ah over 20 h').replace(
      'leaf w',
      'site "Example" {\n  rules europe\n  users limited\n  cycles 30 /day\n}\nleaf w',
    );
    expect(value(ofTheSite, 'daily-charge')).toBeCloseTo(value(text, 'daily-charge') as number, 6);
  });
  it('of half the voltage of the motor output gives twice the current: power carries over', () => {
    const text = gate('capacity 7 Ah over 20 h\ncycles 30 /day');
    const run = judge(text).figures.find((figure) => figure.id === 'leaf.w.run-time')?.value ?? Number.NaN;
    const at = (volts: number, output: string) =>
      value(text.replace('voltage 24 V', `voltage ${volts} V`).replace('  terminal G1', `${output}  terminal G1`), 'daily-charge');
    const atRest = 0.14 * 86400;
    const gives = '  output D1 gives 8 A at 24 V\n';
    expect(at(24, gives)).toBeCloseTo(atRest + 30 * 2 * 4.5 * run, 6);
    // What is fed at rest is raised with the highest output as well: 0.1 A of the panel, 0.04 A of the beam.
    expect(at(12, gives)).toBeCloseTo((0.1 + 2 * 0.04) * 86400 + 30 * 2 * 9 * run, 6);
    // A lower output may be made in ways that save nothing.
    expect(at(36, gives)).toBeCloseTo(atRest + 30 * 2 * 4.5 * run, 6);
    // Without an output that says, the drive’s least voltage of 20 V counts.
    expect(at(10, '')).toBeCloseTo(atRest + 30 * 2 * 9 * run, 6);
  });
  it('feeds a lamp only while the gate moves', () => {
    const lamp = (role: string) =>
      gate('capacity 7 Ah over 20 h\ncycles 30 /day', 'accessory "lamp" draws 1 A from W1').replace(
        '  terminal G1',
        `  terminal W1 ${role}\n  terminal G1`,
      );
    const run = judge(lamp('lamp-output')).figures.find((figure) => figure.id === 'leaf.w.run-time')?.value ?? Number.NaN;
    expect(value(lamp('lamp-output'), 'standby-current')).toBeCloseTo(0.14, 12);
    expect(value(lamp('lamp-output'), 'daily-charge')).toBeCloseTo(0.14 * 86400 + 30 * 2 * (4.5 + 1) * run, 6);
    expect(value(lamp('supply-out'), 'standby-current')).toBeCloseTo(1.14, 12);
  });
  it('says nothing where it is not known what is drawn', () => {
    const unknown = gate('capacity 7 Ah over 20 h\nlasts 24 h').replace('finch-relay', 'finch-rely');
    expect(value(unknown, 'daily-charge')).toBeUndefined();
    expect(said(unknown)).toEqual([]);
  });
  it('is too small below what it needs', () => {
    // 0.14 A over 24 h is 3.36 Ah; half of the battery may be used.
    expect(said(gate('capacity 6.73 Ah over 20 h\nlasts 24 h'))).toEqual([]);
    expect(said(gate('capacity 6.71 Ah over 20 h\nlasts 24 h'))).toEqual(['warning battery-too-small']);
    expect(said(gate('capacity 6.73 Ah over 20 h\nlasts 24 h\ncoldest -5 °C'))).toEqual(['warning battery-too-small']);
    expect(said(gate('capacity 6.71 Ah over 20 h\nlasts 24 h\ndischarge 60 %'))).toEqual([]);
  });
  it('and the sun', () => {
    // 3.36 Ah of 24 V are 80.64 Wh: 107.5 W for an hour at 75 %.
    expect(said(gate('capacity 20 Ah over 20 h', 'solar {\n  peak 108 W\n  sun 1 h\n}'))).toEqual([]);
    expect(said(gate('capacity 20 Ah over 20 h', 'solar {\n  peak 107 W\n  sun 1 h\n}'))).toEqual(['warning solar-too-small']);
  });
  it('stands once, and says what it is', () => {
    const twice = gate('capacity 7 Ah over 20 h', 'battery {\n  voltage 24 V\n  capacity 1 Ah over 20 h\n}');
    expect(judge(twice).findings.some((finding) => finding.rule === 'fact-repeated')).toBe(true);
    expect(judge(gate('')).findings.some((finding) => finding.rule === 'fact-missing' && finding.what.includes('capacity'))).toBe(true);
  });
});
