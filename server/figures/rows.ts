// Rows of numbers, for curves that are sampled. No figure of its own.

/**
 * A row of numbers. Plain arrays are made here and not Float64Arrays: one of these with more than eight numbers keeps them
 * outside the heap, and making it costs more than filling it.
 */
export type Row = readonly number[] | Float64Array;

/** Room for so many numbers; each has to be written before it is read. */
export const rowOf = (length: number): number[] => new Array<number>(length);
