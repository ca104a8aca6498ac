import { expect, it } from 'vitest';
import { beaufortInWords } from '../../server/figures/wind/beaufort.ts';

it.each([
  [0, 'Beaufort 0, calm'],
  [0.3, 'Beaufort 1, light air'],
  [1.6, 'Beaufort 2, a light breeze'],
  [3.4, 'Beaufort 3, a gentle breeze'],
  [5.5, 'Beaufort 4, a moderate breeze'],
  [8, 'Beaufort 5, a fresh breeze'],
  [10.8, 'Beaufort 6, a strong breeze'],
  [13.9, 'Beaufort 7, a near gale'],
  [17.2, 'Beaufort 8, a gale'],
  [20.8, 'Beaufort 9, a strong gale'],
  [24.5, 'Beaufort 10, a storm'],
  [28.5, 'Beaufort 11, a violent storm'],
  [32.7, 'Beaufort 12, a hurricane'],
  [90, 'Beaufort 12, a hurricane'],
  [-1, undefined],
  [NaN, undefined],
])('a wind of %d m/s is called: %s', (speed, words) => expect(beaufortInWords(speed)).toBe(words));
