// A number with a comma in it: what it may mean is offered, and nothing that it cannot mean.
import { expect, test } from 'vitest';
import { applyEdits, judge } from '../kit/pages.ts';

test.each([
  ['2,10', ['2.10']],
  ['12,5', ['12.5']],
  ['-2,5', ['-2.5']],
  ['\u22122,5', ['\u22122.5']],
  ['+2,5', ['+2.5']],
  ['2,100', ['2.100', '2100']],
  ['-12,100', ['-12.100', '-12100']],
  ['\u2212123,100', ['\u2212123.100', '\u2212123100']],
  ['2,1000', ['2.1000']],
  // No thousands begin with a nought, and there are never more than three digits before the first comma.
  ['0,500', ['0.500']],
  ['1234,567', ['1234.567']],
  ['1,250,000', ['1250000']],
  ['+1,250,000', ['+1250000']],
  ['1,250.5', ['1250.5']],
  ['1,250,000.25', ['1250000.25']],
  ['1.250,5', ['1250.5']],
  ['\u22121.250,55', ['\u22121250.55']],
  ['12.250,5', ['12250.5']],
  ['123.250,5', ['123250.5']],
  // Nobody writes these.
  ['1.5,3', []],
  ['1234.250,5', []],
  ['0.250,5', []],
  ['1,5.3', []],
  ['1,250.5,3', []],
  ['12,50,000', []],
  ['1,2,3', []],
  ['1234,567,890', []],
  ['0,567,890', []],
])('%s', (written, meant) => {
  const text = `language 1\nleaf west {\n  width ${written} m\n  mass 165 kg\n}\n`;
  const found = judge(text).findings.filter(({ rule }) => rule === 'decimal-comma');
  expect(found.map(({ what, severity }) => [what, severity])).toEqual([[`“${written}” has a comma in it.`, 'error']]);
  const [finding] = found;
  expect(finding?.remedy).toBe(
    meant.length === 0
      ? 'Write a point before the decimals, and nothing between thousands.'
      : meant.length === 1
        ? `Write “${meant[0]}”.`
        : `Write “${meant[0]}” or “${meant[1]}”, whichever is meant.`,
  );
  expect(finding?.fixes.map(({ title }) => title)).toEqual(meant.map((number) => `Write “${number}”`));
  expect(finding?.fixes.map(({ edits }) => applyEdits(text, edits))).toEqual(meant.map((number) => text.replace(written, number)));
  expect(finding?.fixes.some(({ safe }) => safe)).toBe(false);
});

test('a number that runs on is quoted at its beginning, and mended as a whole', () => {
  const digits = '1234567890'.repeat(5);
  const text = `language 1\nleaf west {\n  width 2,${digits} m\n  mass 165 kg\n}\n`;
  const [finding] = judge(text).findings.filter(({ rule }) => rule === 'decimal-comma');
  expect(finding?.what).toBe('“2,1234567890123456789012345678901234567…” has a comma in it.');
  expect(applyEdits(text, finding?.fixes[0]?.edits ?? [])).toBe(text.replace('2,', '2.'));
});
