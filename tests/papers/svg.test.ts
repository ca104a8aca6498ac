import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inOneGo } from '../../server/model/index.ts';
import { roundAbove, scaleOf, ticks } from '../../server/papers/drawing/scale.ts';
import { clean, element, hatch, type Node, number, rendering } from '../../server/papers/drawing/svg.ts';
import { fitted, short, widthOf, wrapped } from '../../server/papers/drawing/text.ts';
import { parsed } from './kit.ts';

const written = (node: Node): string => inOneGo(rendering(node));

const anything = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({
    unit: fc.constantFrom(...'<>&"\'\u0000\u0007\u000b\u001b\u0085\u200f\u202e\u2066\ufeff\ufffe\uffff\ud800\udfff]]>ab \t\n'.split('')),
    maxLength: 40,
  }),
);

test('any text is text, in an element and in an attribute, and comes back as it was cleaned', () => {
  fc.assert(
    fc.property(anything, (words) => {
      const svg = written(
        element('svg', { xmlns: 'http://www.w3.org/2000/svg' }, element('g', { 'data-thing': words }, element('text', {}, words))),
      );
      const document = parsed(svg);
      const group = document.getElementsByTagName('g').item(0);
      expect(document.getElementsByTagName('*').length).toBe(3);
      expect(document.getElementsByTagName('text').item(0)?.textContent).toBe(clean(words));
      expect(group?.getAttribute('data-thing')).toBe(clean(words));
    }),
    { numRuns: 400 },
  );
});

test('what would turn or break a text is seen as the sign for a foreign character', () => {
  expect(clean('a\u202eb\u0000c\ud800d\ufeff')).toBe('a\ufffdb\ufffdc\ufffdd\ufffd');
  expect(clean('one\r\ntwo\u2028three\tfour')).toBe('one two three four');
  expect(clean('漢字 😀 é')).toBe('漢字 😀 é');
});

test('numbers are short and never anything else', () => {
  expect([1 / 3, -0, 1e-9, NaN, Infinity, -12.346, 1e7].map(number)).toEqual(['0.33', '0', '0', '0', '0', '-12.35', '10000000']);
  fc.assert(
    fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => void expect(number(value)).toMatch(/^-?\d+(\.\d{1,2})?$/)),
  );
});

test('texts are cut to what there is room for', () => {
  expect([...short('x'.repeat(1e6))].length).toBe(60);
  expect(short('short')).toBe('short');
  fc.assert(
    fc.property(anything, fc.integer({ min: 40, max: 400 }), (words, width) => {
      expect(widthOf(fitted(words, width, 'small'), 'small')).toBeLessThanOrEqual(width + 1e-9);
      for (const row of wrapped(words, width, 'normal', 3)) expect(widthOf(row, 'normal')).toBeLessThanOrEqual(width + 1e-9);
      expect(wrapped(words, width, 'normal', 3).length).toBeLessThanOrEqual(3);
    }),
  );
  expect(wrapped('carries 840 N and more', widthOf('carries 840', 'small') + 2, 'small')).toEqual(['carries', '840\u00a0N and', 'more']);
});

test('marks are round, rising, and within their range', () => {
  expect(ticks(0, 84, 12)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80]);
  expect(ticks(0, 95, 10, [5, 10, 15, 30])).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
  expect(ticks(0, 0, 5)).toEqual([]);
  expect([0.3, 1, 1.1, 4, 7, 70].map(roundAbove)).toEqual([0.5, 1, 2, 5, 10, 100]);
  fc.assert(
    fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), fc.double({ min: 0.001, max: 5000, noNaN: true }), (low, span) => {
      const found = ticks(low, low + span, 8);
      for (const [i, mark] of found.entries()) {
        expect(mark).toBeGreaterThanOrEqual(low - span * 1e-6);
        expect(mark).toBeLessThanOrEqual(low + span * (1 + 1e-6));
        if (i > 0) expect(mark).toBeGreaterThan(found[i - 1] as number);
      }
      expect(found.length).toBeLessThanOrEqual(10);
    }),
  );
  expect(scaleOf(0, 10, 100, 200).at(5)).toBe(150);
  expect(scaleOf(3, 3, 100, 200).at(5)).toBe(100);
});

test('strokes stay within their rectangle', () => {
  for (const [width, height] of [
    [30, 12],
    [12, 30],
    [5, 5],
    [100, 3],
  ] as const)
    for (const [, x, y] of hatch(10, 20, width, height, 4).matchAll(/[ML]([\d.]+) ([\d.]+)/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(10);
      expect(Number(x)).toBeLessThanOrEqual(10 + width);
      expect(Number(y)).toBeGreaterThanOrEqual(20);
      expect(Number(y)).toBeLessThanOrEqual(20 + height);
    }
});
