// Units against two libraries that others wrote and use: js-quantities and mathjs, and wire gauges against a printed table.
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/index.ts';
import { type Dimension, siUnit, type Unit, unitNamed, units, unitsOf } from '../../server/vocabulary/index.ts';

interface Quantity {
  toBase: () => { readonly scalar: number };
}
const quantity = createRequire(import.meta.url)('js-quantities') as (text: string) => Quantity;
const math = create(all ?? {});

/** How each library writes our units; where it has no such unit, why it is left out. */
const elsewhere: Readonly<
  Record<string, { readonly quantities: string | { readonly without: string }; readonly mathjs: string | { readonly without: string } }>
> = {
  mm: { quantities: 'mm', mathjs: 'mm' },
  cm: { quantities: 'cm', mathjs: 'cm' },
  m: { quantities: 'm', mathjs: 'm' },
  in: { quantities: 'in', mathjs: 'in' },
  ft: { quantities: 'ft', mathjs: 'ft' },
  mm2: { quantities: 'mm2', mathjs: 'mm^2' },
  m2: { quantities: 'm2', mathjs: 'm^2' },
  AWG: { quantities: { without: 'no wire gauges; see the printed table below' }, mathjs: { without: 'no wire gauges' } },
  kg: { quantities: 'kg', mathjs: 'kg' },
  g: { quantities: 'g', mathjs: 'g' },
  t: { quantities: 'tonne', mathjs: 'tonne' },
  lb: { quantities: 'lb', mathjs: 'lbm' },
  ms: { quantities: 'ms', mathjs: 'ms' },
  s: { quantities: 's', mathjs: 's' },
  min: { quantities: 'min', mathjs: 'minute' },
  h: { quantities: 'h', mathjs: 'hour' },
  years: {
    quantities: { without: 'its year is the tropical one; ours is 8760 h, checked below' },
    mathjs: { without: 'its year has 365.25 days' },
  },
  deg: { quantities: 'deg', mathjs: 'deg' },
  rad: { quantities: 'rad', mathjs: 'rad' },
  turns: { quantities: { without: 'no whole turn; rpm is held against it' }, mathjs: 'cycle' },
  'm/s': { quantities: 'm/s', mathjs: 'm/s' },
  'mm/s': { quantities: 'mm/s', mathjs: 'mm/s' },
  'm/min': { quantities: 'm/min', mathjs: 'm/minute' },
  'km/h': { quantities: 'km/h', mathjs: 'km/hour' },
  'ft/s': { quantities: 'ft/s', mathjs: 'ft/s' },
  'ft/min': { quantities: 'ft/min', mathjs: 'ft/minute' },
  mph: { quantities: 'mph', mathjs: 'mile/hour' },
  'deg/s': { quantities: 'deg/s', mathjs: 'deg/s' },
  'rad/s': { quantities: 'rad/s', mathjs: 'rad/s' },
  rpm: { quantities: 'rpm', mathjs: 'cycle/minute' },
  'm/s2': { quantities: 'm/s2', mathjs: 'm/s^2' },
  N: { quantities: 'N', mathjs: 'N' },
  kN: { quantities: 'kN', mathjs: 'kN' },
  lbf: { quantities: 'lbf', mathjs: 'lbf' },
  N·m: { quantities: 'N*m', mathjs: 'N*m' },
  lbf·ft: { quantities: 'lbf*ft', mathjs: 'lbf*ft' },
  Pa: { quantities: 'Pa', mathjs: 'Pa' },
  kPa: { quantities: 'kPa', mathjs: 'kPa' },
  psf: { quantities: 'lbf/ft2', mathjs: 'lbf/ft^2' },
  J: { quantities: 'J', mathjs: 'J' },
  Wh: { quantities: 'Wh', mathjs: 'W*hour' },
  W: { quantities: 'W', mathjs: 'W' },
  kW: { quantities: 'kW', mathjs: 'kW' },
  mV: { quantities: 'mV', mathjs: 'mV' },
  V: { quantities: 'V', mathjs: 'V' },
  mA: { quantities: 'mA', mathjs: 'mA' },
  A: { quantities: 'A', mathjs: 'A' },
  ohm: { quantities: 'ohm', mathjs: 'ohm' },
  kohm: { quantities: 'kohm', mathjs: 'kohm' },
  Mohm: { quantities: 'Mohm', mathjs: 'Mohm' },
  Ah: { quantities: 'Ah', mathjs: 'A*hour' },
  Hz: { quantities: 'Hz', mathjs: 'Hz' },
  '/h': { quantities: '1/h', mathjs: 'hour^-1' },
  '/day': { quantities: '1/day', mathjs: 'day^-1' },
  FIT: { quantities: { without: 'no failures in time; checked below against an hour' }, mathjs: { without: 'no failures in time' } },
  '°C': { quantities: 'tempC', mathjs: 'degC' },
  '°F': { quantities: 'tempF', mathjs: 'degF' },
  K: { quantities: 'degK', mathjs: 'K' },
  '%': { quantities: '%', mathjs: { without: 'no unit of per cent' } },
};

/** SI in the spelling of mathjs. */
const si: Readonly<Record<Dimension, string>> = {
  length: 'm',
  area: 'm^2',
  mass: 'kg',
  time: 's',
  angle: 'rad',
  speed: 'm/s',
  'angular speed': 'rad/s',
  acceleration: 'm/s^2',
  force: 'N',
  torque: 'N*m',
  pressure: 'Pa',
  energy: 'J',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  charge: 'A*s',
  frequency: 'Hz',
  rate: 's^-1',
  temperature: 'K',
  'temperature difference': 'K',
  ratio: '',
};

const near = (a: number, b: number, share: number): boolean => Math.abs(a - b) <= share * Math.max(Math.abs(a), Math.abs(b), 1e-300);
const amounts = [1, 0.37, 14, 2100, 8.2];

test('every unit is held against both libraries, or it says why not', () => {
  expect(Object.keys(elsewhere).sort()).toEqual(units.map((unit) => unit.name).sort());
});

describe.each(units.map((unit) => [unit.name, unit] as const))('%s', (name, unit) => {
  const { quantities, mathjs } = elsewhere[name] ?? { quantities: { without: '' }, mathjs: { without: '' } };

  if (typeof quantities === 'string')
    test('as js-quantities 1.8 converts it', () => {
      // Its pound-force is rounded to seven digits (4.448222 N).
      const share = quantities.includes('lbf') ? 1e-6 : 1e-12;
      for (const amount of amounts) {
        const theirs = quantity(`${amount} ${quantities}`).toBase().scalar;
        expect(near(unit.toSi(amount), theirs, share), `${amount} ${name} is ${unit.toSi(amount)} here and ${theirs} there`).toBe(true);
      }
    });

  if (typeof mathjs === 'string')
    test('as mathjs 15 converts it', () => {
      for (const amount of amounts) {
        const theirs = math.unit(amount, mathjs).toNumber(si[unit.dimension]);
        expect(near(unit.toSi(amount), theirs, 1e-12), `${amount} ${name} is ${unit.toSi(amount)} here and ${theirs} there`).toBe(true);
      }
    });

  test('there and back again', () => {
    fc.assert(
      fc.property(fc.double({ min: unit.name === 'AWG' ? -3 : -1e6, max: unit.name === 'AWG' ? 40 : 1e6, noNaN: true }), (amount) => {
        expect(Math.abs(unit.fromSi(unit.toSi(amount)) - amount)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(amount)));
      }),
    );
  });

  test('every spelling of it is read as it', () => {
    for (const spelling of [unit.name, ...unit.also]) expect(unitNamed(spelling), spelling).toBe(unit);
    expect(unit.also).not.toContain(unit.name);
    // And it can be written: behind a number it is one word, with a space before it.
    for (const spelling of [unit.name, ...unit.also])
      expect(parse(`width 5 ${spelling}`).items[0]?.values).toMatchObject([{ kind: 'number', unit: { text: spelling } }]);
    expect(unit.says).toMatch(/^[A-Za-z -]+$/);
  });
});

test('no two units share a spelling', () => {
  const spellings = units.flatMap((unit) => [unit.name, ...unit.also]);
  expect(spellings.filter((spelling, i) => spellings.indexOf(spelling) !== i)).toEqual([]);
});

test('case tells units apart', () => {
  for (const wrong of ['MM', 'KG', 'hz', 'ma', 'Ms', 'v', 'n', 'KOHM', 'toString', 'constructor', ''])
    expect(unitNamed(wrong), wrong).toBeUndefined();
});

test('a temperature is a point and a difference is not: 20 °C is 293.15 K, 68 °F is 20 °C, 0 K of difference is none', () => {
  expect(unitNamed('°C')?.toSi(20)).toBeCloseTo(293.15, 10);
  expect(unitNamed('°C')?.fromSi((unitNamed('°F') as Unit).toSi(68))).toBeCloseTo(20, 10);
  // SI Brochure, 9th edition, 2.3.1: t/°C = T/K − 273.15. NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8.
  expect((unitNamed('°F') as Unit).toSi(32)).toBeCloseTo(273.15, 10);
  expect((unitNamed('°F') as Unit).toSi(-40)).toBeCloseTo((unitNamed('°C') as Unit).toSi(-40), 10);
  expect(unitNamed('°C')?.dimension).toBe('temperature');
  expect(unitNamed('K')?.dimension).toBe('temperature difference');
  expect(unitNamed('K')?.toSi(5)).toBe(5);
});

test('failures: a FIT is one in 1000 million hours, and a year of reliability has 8760 hours', () => {
  // IEC 61709 (one FIT is 1e-9 an hour); EN ISO 13849-1, Annex C and K, in which 8760 h are a year.
  expect((unitNamed('FIT') as Unit).toSi(1e9)).toBeCloseTo((unitNamed('/h') as Unit).toSi(1), 15);
  expect((unitNamed('years') as Unit).toSi(1)).toBe((unitNamed('h') as Unit).toSi(8760));
});

// HyperPhysics (Georgia State University, data from Floyd), table of American wire gauge: ohms per 1000 ft of copper at 20 °C.
// R = ρ·l/A with ρ = 1/58 Ω·mm²/m (IEC 60028) at 1000 ft = 304.8 m.
const ohmsPerThousandFeet: readonly (readonly [gauge: number, ohms: number])[] = [
  [10, 0.9989],
  [12, 1.588],
  [14, 2.525],
  [16, 4.016],
  [18, 6.385],
  [20, 10.15],
  [22, 16.14],
  [24, 25.67],
];
test.each(ohmsPerThousandFeet)('AWG %i has the resistance that HyperPhysics prints, %f Ω/1000 ft', (gauge, ohms) => {
  const area = (unitNamed('AWG') as Unit).toSi(gauge);
  expect(Math.abs(304.8 / 58e6 / area / ohms - 1)).toBeLessThan(0.001);
});
// ASTM B258: gauge 36 is 0.005 in and gauge 0000 is 0.46 in thick, by definition.
test.each([
  [36, 0.005],
  [-3, 0.46],
])('AWG %i is %f in thick, as ASTM B258 defines it', (gauge, inches) => {
  const diameter = 2 * Math.sqrt((unitNamed('AWG') as Unit).toSi(gauge) / Math.PI);
  expect(diameter / 0.0254).toBeCloseTo(inches, 12);
});

test('every dimension has its SI unit, and its units begin with the usual one', () => {
  for (const dimension of Object.keys(siUnit) as Dimension[]) {
    const list = unitsOf(dimension);
    expect(list.length, dimension).toBeGreaterThan(0);
    expect(new Set(list.map((unit) => unit.dimension))).toEqual(new Set([dimension]));
  }
  expect(unitsOf('length')[0]?.name).toBe('m');
  expect(unitsOf('resistance')[0]?.name).toBe('kohm');
  expect([...units].length).toBe((Object.keys(siUnit) as Dimension[]).flatMap((dimension) => unitsOf(dimension)).length);
  for (const unit of units) if (unit.name === siUnit[unit.dimension]) expect(unit.toSi(1)).toBe(1);
});
