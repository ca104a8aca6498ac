/**
 * The first index of a row at which `reached` holds, by binary search; the row's length where it holds at none. Once it holds for
 * an item it must hold for all behind: so the row is in order, as what is read from a text is by its places.
 */
export function firstIndex<T>(row: readonly T[], reached: (item: T) => boolean): number {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (reached(row[middle] as T)) high = middle;
    else low = middle + 1;
  }
  return low;
}
