// The one binary search of the house, against looking at every item.
import { expect, test } from 'vitest';
import { firstIndex } from '../../grammar/index.ts';

test.each<[row: readonly number[], value: number, index: number]>([
  [[], 3, 0],
  [[3], 2, 0],
  [[3], 3, 0],
  [[3], 4, 1],
  [[1, 3, 3, 3, 9], 0, 0],
  [[1, 3, 3, 3, 9], 3, 1],
  [[1, 3, 3, 3, 9], 4, 4],
  [[1, 3, 3, 3, 9], 10, 5],
])('in %j the first that is at least %d stands at %d', (row, value, index) => {
  expect(firstIndex(row, (item) => item >= value)).toBe(index);
});

test('the same index as looking at every item, for rows of any length and every value in and around them', () => {
  for (let length = 0; length <= 40; length++) {
    const row = Array.from({ length }, (_, i) => Math.floor((i * 7) / 4));
    for (let value = -1; value <= 72; value += 0.5)
      for (const reached of [(item: number) => item >= value, (item: number) => item > value]) {
        const at = row.findIndex(reached);
        expect(firstIndex(row, reached)).toBe(at < 0 ? length : at);
      }
  }
});

test('a row of a thousand items is asked some ten times', () => {
  const row = Array.from({ length: 1000 }, (_, i) => i);
  for (const value of [-1, 0, 1, 499, 500, 998, 999, 1000]) {
    let asked = 0;
    firstIndex(row, (item) => {
      asked++;
      return item >= value;
    });
    expect(asked).toBeLessThanOrEqual(10);
  }
});
