// Sums of currents.

/** The sum in A of those that are known, and whether all are. Source: Kirchhoff’s laws. */
export function total(draws: readonly { readonly current: number | undefined }[]): { readonly sum: number; readonly isWhole: boolean } {
  let sum = 0;
  let isWhole = true;
  for (const { current } of draws)
    if (current === undefined) isWhole = false;
    else sum += current;
  return { sum, isWhole };
}
