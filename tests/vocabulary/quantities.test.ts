// How quantities are shown, and what they are in SI: against mathjs, which others wrote and use.
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { expect, test } from 'vitest';
import { type FigureUnit, figureUnits, inOtherUnits, inSi, showShare, showSi, threeDigits } from '../../server/vocabulary/index.ts';

test.each<[value: number, unit: FigureUnit, metric: string, american: string]>([
  [2.1, 'm', '2.1 m', '6.89 ft'],
  [0.78, 'm', '780 mm', '30.7 in'],
  [0.9999, 'm', '1 m', '3.28 ft'],
  [17.94, 's', '17.9 s', '17.9 s'],
  [0.05, 's', '50 ms', '50 ms'],
  [900, 's', '15 min', '15 min'],
  [7200, 's', '2 h', '2 h'],
  [95, 'deg', '95°', '95°'],
  [8200, 'ohm', '8.2 kohm', '8.2 kohm'],
  [0.3, 'A', '300 mA', '300 mA'],
  [165, 'kg', '165 kg', '364 lb'],
  [242.55, 'kg·m²', '243 kg·m²', '5760 lb·ft²'],
  [0.216, 'm/s', '0.216 m/s', '0.709 ft/s'],
  [0.016, 'm/s', '16 mm/s', '0.0525 ft/s'],
  [1400, 'N', '1400 N', '315 lbf'],
  [12345, 'N', '12.3 kN', '2780 lbf'],
  [100, 'N·m', '100 N·m', '73.8 lbf·ft'],
  [478.8, 'Pa', '479 Pa', '10 psf'],
  [10, 'J', '10 J', '7.38 ft·lbf'],
  [0.75e-6, 'm²', '0.75 mm²', '0.75 mm²'],
  [0, 'm', '0 m', '0 ft'],
  [20, '°C', '20 °C', '68 °F'],
  [1.234e-7, '1/h', '1.23e-7 1/h', '1.23e-7 1/h'],
  [3, '1', '3', '3'],
  [-0.5, 'm', '-500 mm', '-19.7 in'],
])('%d %s', (value, unit, metric, american) => {
  expect(showSi(value, unit)).toBe(metric);
  expect(showSi(value, unit, 'american')).toBe(american);
});

test('a share, and a quantity in other units', () => {
  expect(showShare(0.1)).toBe('10 %');
  expect(inOtherUnits(2.1, 'm')).toEqual(['2100 mm', '6.89 ft', '82.7 in']);
  expect(inOtherUnits(95, '°')).toEqual(['1.66 rad', '0.264 turns']);
  expect(inOtherUnits(20, '°C')).toEqual(['68 °F']);
  expect(inOtherUnits(2.08, 'mm2')).toEqual(['about AWG 14']);
  expect(inOtherUnits(1, 'furlong')).toEqual([]);
});

test('three digits: never off by more than half of the third, never longer than it need be', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), (value) => {
      const text = threeDigits(value);
      const back = Number(text);
      expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 0.005001);
      expect(text.replace(/e.*$/, '').replace(/[-.]/g, '').replace(/^0+/, '').replace(/0+$/, '').length).toBeLessThanOrEqual(3);
    }),
  );
});

test('every unit of figures is in SI what mathjs makes of it', () => {
  const { evaluate, unit: quantity } = create(all ?? {});
  const spelt = (name: string): string =>
    name
      .replace('√s', 's^0.5')
      .replaceAll('²', '^2')
      .replaceAll('³', '^3')
      .replaceAll('·', ' * ')
      // Years of 8760 h (EN ISO 13849-1, Annex C); mathjs has others.
      .replace(/^1\/year$|^years$/, (years) => years.replace(/years?/, '(8760 hour)'))
      .replace('1/h', '1/hour');
  for (const name of figureUnits)
    for (const value of [0.37, 1, 45.5]) {
      const { value: is, unit: si } = inSi(value, name);
      const theirs = name === '°C' ? quantity(value, 'degC').toNumber(si) : evaluate(`${value} * (${spelt(name)}) / (${spelt(si)})`);
      expect(is / theirs, `${value} ${name} as ${is} ${si}`).toBeCloseTo(1, 12);
    }
});

test('what figures are in SI is made of units of the brochure and of degrees alone', () => {
  // Bureau International des Poids et Mesures, The International System of Units, 9th edition, tables 2 and 4. `ohm` stands for Ω.
  const symbols = ['1', 'm', 'kg', 's', 'A', 'K', 'N', 'Pa', 'J', 'W', 'V', 'C', 'Hz', 'ohm', 'deg'];
  for (const name of figureUnits)
    for (const part of inSi(1, name).unit.split(/[/·()]/)) if (part !== '') expect(symbols, name).toContain(part.replace(/^√|[²³]$/g, ''));
});
