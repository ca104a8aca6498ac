// Reaching through openings, boundary by boundary. Persons of 14 years and above: EN ISO 13857 as reprinted in DGUV
// Information 208-022, Table 2. Persons of 3 years and above: from memory, so only held as it was recalled.
import { describe, expect, it } from 'vitest';
import { reachFrom3, reachFrom14, type Shape } from '../../server/figures/reach-through/maths.ts';

/** Opening e in mm, then slot, square, round in mm: each row at its upper end and just above it. */
const dguv: readonly (readonly [number, number, number, number])[] = [
  [0.1, 2, 2, 2],
  [4, 2, 2, 2],
  [4.1, 10, 5, 5],
  [6, 10, 5, 5],
  [6.1, 20, 15, 5],
  [8, 20, 15, 5],
  [8.1, 80, 25, 20],
  [10, 80, 25, 20],
  [10.1, 100, 80, 80],
  [12, 100, 80, 80],
  [12.1, 120, 120, 120],
  [20, 120, 120, 120],
  [20.1, 850, 120, 120],
  [30, 850, 120, 120],
  [30.1, 850, 200, 120],
  [40, 850, 200, 120],
  [40.1, 850, 850, 850],
  [120, 850, 850, 850],
];

const shapes: readonly Shape[] = ['slot', 'square', 'round'];
const opening = (shape: Shape, millimetres: number, length?: number) => ({
  shape,
  size: millimetres / 1000,
  length: length === undefined ? undefined : length / 1000,
});
const inMillimetres = (metres: number | undefined): number | undefined => (metres === undefined ? undefined : Math.round(metres * 1000));

describe('reach of persons of 14 years and above', () => {
  it.each(dguv)('through %d mm: slot %d, square %d, round %d', (size, ...distances) => {
    shapes.forEach((shape, i) => expect(inMillimetres(reachFrom14(opening(shape, size))), shape).toBe(distances[i]));
  });
  it('is 200 mm through a slot of 20 to 30 mm that is no longer than 65 mm', () => {
    expect(inMillimetres(reachFrom14(opening('slot', 25, 65)))).toBe(200);
    expect(inMillimetres(reachFrom14(opening('slot', 25, 66)))).toBe(850);
    expect(inMillimetres(reachFrom14(opening('slot', 35, 65)))).toBe(850);
    // Of a length that is not known the long one counts, and only a slot has one.
    expect(inMillimetres(reachFrom14(opening('slot', 25)))).toBe(850);
    for (const shape of ['square', 'round'] as const) expect(inMillimetres(reachFrom14(opening(shape, 25, 25)))).toBe(120);
  });
  it('is not known above 120 mm, nor for what is no opening', () => {
    for (const size of [120.1, 500, 0, -1, Number.NaN]) expect(reachFrom14(opening('slot', size))).toBeUndefined();
    for (const length of [0, -1, Number.NaN]) expect(reachFrom14(opening('slot', 25, length))).toBeUndefined();
  });
});

describe('reach of persons of 3 years and above (from memory)', () => {
  it('is 120 mm through a slot of 12 to 20 mm that is no longer than 40 mm', () => {
    expect(inMillimetres(reachFrom3(opening('slot', 16, 40)))).toBe(120);
    expect(inMillimetres(reachFrom3(opening('slot', 16, 41)))).toBe(900);
    expect(inMillimetres(reachFrom3(opening('slot', 16)))).toBe(900);
    expect(inMillimetres(reachFrom3(opening('slot', 25, 40)))).toBe(900);
  });
  it.each([
    [0.1, 2, 2, 2],
    [4, 2, 2, 2],
    [4.1, 20, 10, 10],
    [6, 20, 10, 10],
    [6.1, 40, 30, 20],
    [8, 40, 30, 20],
    [8.1, 80, 60, 60],
    [10, 80, 60, 60],
    [10.1, 100, 80, 80],
    [12, 100, 80, 80],
    [12.1, 900, 120, 120],
    [20.1, 900, 550, 120],
    [30.1, 900, 900, 900],
    [100, 900, 900, 900],
  ])('through %d mm: slot %d, square %d, round %d', (size, ...distances) => {
    shapes.forEach((shape, i) => expect(inMillimetres(reachFrom3(opening(shape, size))), shape).toBe(distances[i]));
  });
  // From 30 to 40 mm round openings and from 20 mm slots, a child with its thin arm reaches further than anybody else.
  it('is nowhere less than that of grown persons, short slots apart', () => {
    for (const shape of shapes)
      for (let size = 0.5; size <= 100; size += 0.5)
        expect(reachFrom3(opening(shape, size)) ?? 0).toBeGreaterThanOrEqual(reachFrom14(opening(shape, size)) ?? Number.NaN);
  });
});
