// What one site changes of another, by lines and by the blocks in which they stand.

/** A stretch of lines, counted from 1, both ends with it. */
export interface Lines {
  readonly from: number;
  readonly to: number;
}

export interface Edit {
  /** How many lines were added or taken away. */
  readonly size: number;
  /** Lines of the new text that were added, and the blocks that they stand in or that something was taken from. */
  readonly places: readonly Lines[];
  /** First words of the lines that were taken away and not written anew. */
  readonly removed: ReadonlySet<string>;
}

/** The longest row of lines that both texts have, as pairs of their numbers from 0. */
function common(old: readonly string[], now: readonly string[]): readonly (readonly [number, number])[] {
  const lengths = Array.from({ length: old.length + 1 }, () => new Uint16Array(now.length + 1));
  const at = (i: number, j: number): number => lengths[i]?.[j] ?? 0;
  for (let i = old.length - 1; i >= 0; i--)
    for (let j = now.length - 1; j >= 0; j--)
      (lengths[i] as Uint16Array)[j] = old[i] === now[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const pairs: [number, number][] = [];
  for (let i = 0, j = 0; i < old.length && j < now.length; )
    if (old[i] === now[j]) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  return pairs;
}

/** The outermost blocks of a text, by the lines of their braces. Each stands in lines of its own. */
function blocksOf(lines: readonly string[]): readonly Lines[] {
  const blocks: Lines[] = [];
  let from: number | undefined;
  for (const [index, line] of lines.entries()) {
    if (from === undefined && /^\S.*\{\s*$/.test(line)) from = index + 1;
    if (from !== undefined && line === '}') {
      blocks.push({ from, to: index + 1 });
      from = undefined;
    }
  }
  return blocks;
}

export function editOf(oldText: string, newText: string): Edit {
  const old = oldText.split('\n');
  const now = newText.split('\n');
  const kept = common(old, now);
  const keptOld = new Set(kept.map(([i]) => i));
  const keptNew = new Set(kept.map(([, j]) => j));
  const blocks = blocksOf(now);
  const places: Lines[] = [];
  const around = (line: number): void => {
    const block = blocks.find(({ from, to }) => from <= line && line <= to);
    places.push(block ?? { from: line, to: line });
  };
  const added = now.flatMap((line, j) => (keptNew.has(j) || line.trim() === '' ? [] : [j]));
  for (const j of added) around(j + 1);
  const gone = old.flatMap((line, i) => (keptOld.has(i) || line.trim() === '' ? [] : [i]));
  for (const i of gone) {
    // Taken away behind the last line above it that is still there.
    const above = kept.findLast(([kept]) => kept < i);
    if (above !== undefined) around(above[1] + 1);
  }
  const wordOf = (line: string): string => /[\w-]+/.exec(line)?.[0] ?? '';
  const written = new Set(added.map((j) => wordOf(now[j] ?? '')));
  const removed = new Set(gone.map((i) => wordOf(old[i] ?? '')).filter((word) => word !== '' && !written.has(word)));
  return { size: added.length + gone.length, places, removed };
}
