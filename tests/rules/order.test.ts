// The order in which two leaves close against the one in which they open.
import { expect, test } from 'vitest';
import { judge } from '../kit/pages.ts';

const overlap = '  closes onto east overlap 40 mm gap 20 mm\n';
const gate = (lines: string, closes = overlap): string =>
  `language 1\nleaf west {\n  width 1.6 m\n  mass 120 kg\n  opens inward 90 deg\n${closes}}\nleaf east {\n  width 2.4 m\n  mass 180 kg\n  opens inward 90 deg\n}\nmotion {\n${lines}}\n`;
const said = (text: string) =>
  judge(text)
    .findings.filter(({ rule }) => rule === 'closing-order-not-reversed')
    .map(({ severity, what, start, end, related }) => ({
      severity,
      what,
      at: text.slice(start, end),
      related: related.map((place) => [place.message, text.slice(place.start, place.end)]),
    }));

const found = {
  severity: 'error',
  what: 'The gate opens in the order “west”, “east” and closes in the order “west”, “east”; it must close in the opposite one.',
  at: 'order closing west east',
  related: [['the opening order', 'order opening west east']],
};

test('an order for one movement alone is not held against anything', () => {
  expect(said(gate(''))).toEqual([]);
  expect(said(gate('  order closing west east\n'))).toEqual([]);
  expect(said(gate('  order opening west east\n'))).toEqual([]);
});

test('the two may stand in any order in the file', () => {
  expect(said(gate('  order opening west east\n  order closing west east\n'))).toEqual([found]);
  expect(said(gate('  order closing west east\n  order opening west east\n'))).toEqual([found]);
  expect(said(gate('  order closing east west\n  order opening west east\n'))).toEqual([]);
});

test('it is an error where one leaf covers the other, and else a warning', () => {
  expect(said(gate('  order opening west east\n  order closing west east\n', ''))).toEqual([{ ...found, severity: 'warning' }]);
});
