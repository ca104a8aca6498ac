// How far away a dangerous place must be from an opening that a limb can reach through.
//
// EN ISO 13857. For persons of 14 years and above as reprinted in DGUV Information 208-022, Table 2; for those of 3 years
// and above from memory. Metres.

export type Shape = 'slot' | 'square' | 'round';

export interface Opening {
  readonly shape: Shape;
  /** Smaller side of a slot, side of a square, diameter of a round one: m, above 0. */
  readonly size: number;
  /** Length of a slot, m; undefined where it is not known, and then taken as long. */
  readonly length: number | undefined;
}

interface Row {
  /** Up to this size. */
  readonly upTo: number;
  readonly slot: number;
  readonly square: number;
  readonly round: number;
  /** In a slot no longer than the first, the second is enough: the thumb or the palm stops. */
  readonly short?: readonly [number, number];
}

/** Millimetres, as printed. */
const from14: readonly Row[] = [
  { upTo: 4, slot: 2, square: 2, round: 2 },
  { upTo: 6, slot: 10, square: 5, round: 5 },
  { upTo: 8, slot: 20, square: 15, round: 5 },
  { upTo: 10, slot: 80, square: 25, round: 20 },
  { upTo: 12, slot: 100, square: 80, round: 80 },
  { upTo: 20, slot: 120, square: 120, round: 120 },
  { upTo: 30, slot: 850, square: 120, round: 120, short: [65, 200] },
  { upTo: 40, slot: 850, square: 200, round: 120 },
  { upTo: 120, slot: 850, square: 850, round: 850 },
];

/** Millimetres, from memory. */
const from3: readonly Row[] = [
  { upTo: 4, slot: 2, square: 2, round: 2 },
  { upTo: 6, slot: 20, square: 10, round: 10 },
  { upTo: 8, slot: 40, square: 30, round: 20 },
  { upTo: 10, slot: 80, square: 60, round: 60 },
  { upTo: 12, slot: 100, square: 80, round: 80 },
  { upTo: 20, slot: 900, square: 120, round: 120, short: [40, 120] },
  { upTo: 30, slot: 900, square: 550, round: 120 },
  { upTo: 100, slot: 900, square: 900, round: 900 },
];

/** Millimetres of rounding that decide nothing. */
const hair = 1e-6;

function lookUp(table: readonly Row[], { shape, size, length }: Opening): number | undefined {
  const millimetres = size * 1000;
  if (!(millimetres > 0) || (length !== undefined && !(length > 0))) return undefined;
  const row = table.find(({ upTo }) => millimetres <= upTo + hair);
  if (row === undefined) return undefined;
  if (shape === 'slot' && row.short !== undefined && (length ?? Infinity) * 1000 <= row.short[0] + hair) return row.short[1] / 1000;
  return row[shape] / 1000;
}

/**
 * Least distance in m between the opening and a dangerous place behind it, for persons of 14 years and above.
 * Undefined above 120 mm, where the table ends because more than an arm fits through, and for what is no opening.
 */
export const reachFrom14 = (opening: Opening): number | undefined => lookUp(from14, opening);

/** The same for persons of 3 years and above (from memory); undefined above 100 mm. */
export const reachFrom3 = (opening: Opening): number | undefined => lookUp(from3, opening);
