// Derived twice by hand: a vehicle and a zone of 2 m at 5 mph (2.235 m/s) and 10 mph.
import { expect, it } from 'vitest';
import { clearanceTime } from '../../server/figures/clearance-time/maths.ts';

const mph = 0.44704;

it.each([
  [4.8, 5, 3.04],
  [12, 5, 6.26],
  [16.5, 5, 8.28],
  [16.5, 10, 4.14],
])('%f m at %i mph: %f s', (length, speed, seconds) => expect(clearanceTime(length, 2, speed * mph)).toBeCloseTo(seconds, 2));

it('is not known for a vehicle that stands', () => expect(clearanceTime(5, 2, 0)).toBeUndefined());
