// Small helps for all measurements.
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose-gc');
/** Collects garbage, so that a round does not pay for what was made before it. */
export const collect = runInNewContext('gc');

export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const low = Math.floor(at);
  const high = Math.ceil(at);
  return sorted[low] + (sorted[high] - sorted[low]) * (at - low);
}

export const median = (values) => quantile(values, 0.5);

/** Rows of cells as plain text: the first column to the left, the others to the right. */
export function tableText(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => String(row[column]).length)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => (column === 0 ? String(cell).padEnd(widths[column]) : String(cell).padStart(widths[column])))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
