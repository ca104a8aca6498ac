// The flood of small texts (flood.ts), as much of it as an ordinary run has time for.
import { expect, test } from 'vitest';
import { seed } from '../kit/chance.ts';
import { type Fault, flood } from './flood.ts';

const faults = (from: number, count: number): Fault[] => {
  const found: Fault[] = [];
  flood(seed(), from, count, (fault) => found.push(fault));
  return found;
};

test('small texts: nothing is thrown, and formatting and mending are steady', () => {
  expect(faults(0, 2000)).toEqual([]);
});
