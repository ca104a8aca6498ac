import { expect, test } from 'vitest';
import { at, within } from './marker.ts';

test('one marker is a place, two are a stretch', () => {
  expect(at('leaf |west {')).toEqual({ text: 'leaf west {', offsets: [5], offset: 5, start: 5, end: 5 });
  expect(at('leaf |west| {')).toMatchObject({ text: 'leaf west {', offsets: [5, 9], offset: 5, start: 5, end: 9 });
  expect(at('|a|b|').offsets).toEqual([0, 1, 2]);
});
test('a text without a marker is marked at its beginning', () => {
  expect(at('leaf west')).toMatchObject({ text: 'leaf west', offsets: [], offset: 0, start: 0, end: 0 });
});
test('places of a stretch of a longer text', () => {
  const text = 'leaf west {\n  width 2.10 m\n}\n';
  expect(within(text, 'width |2.10| m')).toMatchObject({ text, start: 20, end: 24 });
  expect(within(text, 'width 2.10 m').offset).toBe(14);
  expect(() => within(text, 'width |3 m')).toThrow('no "width 3 m" in the text');
});
