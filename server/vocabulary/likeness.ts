// Which known word was probably meant.
import { hasUnusual, looksTheSame } from './confusables.ts';

/** Number of single-letter edits, swaps of neighbours included, between two words; more than `limit` counts as `limit + 1`. */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let best = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1) ? 0 : 1;
      let cost = Math.min((previous[j] as number) + 1, (row[j - 1] as number) + 1, (previous[j - 1] as number) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, (before[j - 2] as number) + 1);
      row.push(cost);
      best = Math.min(best, cost);
    }
    if (best > limit) return limit + 1;
    before = previous;
    previous = row;
  }
  return previous[b.length] as number;
}

/** The candidate nearest to `word`, if it is near enough to be meant: one that looks the same, or up to a third of its letters differ. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const lower = word.toLowerCase().slice(0, 64);
  let best: string | undefined;
  let least = Math.max(1, Math.floor(lower.length / 3)) + 1;
  const isUnusual = hasUnusual(word);
  for (const candidate of candidates) {
    if ((isUnusual || hasUnusual(candidate)) && looksTheSame(word, candidate)) return candidate;
    const distance = candidate.toLowerCase() === lower ? 0 : editDistance(lower, candidate.toLowerCase(), least - 1);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}
