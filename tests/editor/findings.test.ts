import { expect, test } from 'vitest';
import { diagnostics, messageOf, visible } from '../../server/editor/index.ts';
import { fixes, rulesShown, safeFixes, withEdits } from '../../server/engine/index.ts';
import { within } from '../kit/marker.ts';
import { bench, site } from './bench.ts';

const wrong = site().replace('width 2.10 m', 'width 2.10');

test('a diagnostic says what, why and what to do, at the place', () => {
  const { analysis, text } = bench(wrong);
  const found = diagnostics(analysis).find((one) => one.rule === 'unit-missing');
  expect(text.slice(found?.start, found?.end)).toBe('2.10');
  expect(found?.severity).toBe('error');
  expect(found?.message).toMatch(/^“2\.10” in “width” has no unit;.*\nWhy: .*\nWhat to do: .*$/);
  expect(diagnostics(bench(site()).analysis).find((one) => one.rule === 'use-unused')?.unnecessary).toBe(true);
});

test('a message has no empty lines', () => {
  expect(messageOf({ what: 'a', why: '', remedy: 'b' })).toBe('a\nWhat to do: b');
});

test.each([
  ['abc', 1, 2, 1, 2],
  ['abc', 1, 1, 1, 2],
  ['abc', 3, 3, 2, 3],
  ['a\r\nb', 1, 1, 0, 1],
  ['\n\n', 1, 1, 1, 1],
  ['', 0, 0, 0, 0],
  ['', 5, 9, 0, 0],
  ['ab𝄞', 4, 4, 2, 4],
  ['𝄞', 0, 0, 0, 2],
])('a place that can be seen: %j %d..%d', (text, start, end, from, to) => {
  expect(visible(text, { start, end })).toEqual({ start: from, end: to });
});

test('fixes of what is under the caret, each with its class', () => {
  const { analysis, text } = bench(wrong);
  const [fix] = fixes(analysis, within(text, 'width |2.10'));
  expect(fix).toMatchObject({ class: 'safety', finding: { rule: 'unit-missing' } });
  expect(withEdits(text, fix?.edits ?? [])).toBe(site());
  expect(fixes(analysis, { start: 0, end: 3 })).toEqual([]);
});

test('in bulk only the safe ones, and they mend what they say', () => {
  const { analysis, text } = bench(wrong);
  const all = safeFixes(analysis);
  const mended = withEdits(text, all?.edits ?? []);
  expect(mended).toContain('width 2.10\n');
  const before = diagnostics(analysis).length;
  expect(diagnostics(bench(mended).analysis).length).toBe(before - (all?.mended.length ?? 0));
  expect(all?.mended.length).toBeGreaterThan(0);
  expect(safeFixes(bench(mended).analysis)).toBeUndefined();
});

test('the rules as a list', () => {
  const rules = rulesShown();
  expect(rules.length).toBeGreaterThan(1);
  expect(new Set(rules.map((rule) => rule.name)).size).toBe(rules.length);
});
