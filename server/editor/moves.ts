// Files and folders that are renamed or moved: the `use` lines that lead to them, and their own, follow.
import { parse } from '../../grammar/index.ts';
import { resolveUse } from '../model/index.ts';
import type { Edit } from '../rules/index.ts';
import { readFile } from '../vocabulary/index.ts';
import { usePath } from './completion.ts';
import { mayMention } from './rename.ts';

/** A file or folder, by its path before and after. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** Where a path is after the moves; the most exact one counts, as for a file inside a folder that moves too. */
export function movedTo(path: string, moves: readonly Move[]): string {
  let best: Move | undefined;
  for (const move of moves)
    if ((path === move.from || path.startsWith(move.from + '/')) && (best === undefined || move.from.length > best.from.length))
      best = move;
  return best === undefined ? path : best.to + path.slice(best.from.length);
}

/** True for a text that surely has no `use` line; found without reading it. */
export const hasNoUses = (text: string): boolean => !mayMention(text, 'use');

/**
 * The edits of one file's `use` lines, at its place before the moves. A line that leads to the right file anyway stays as it
 * is written; so does one that no path can follow, because it would leave the root: a finding then says so.
 */
export function usesAfter(path: string, text: string, moves: readonly Move[], root: string, rootAfter: (path: string) => string): Edit[] {
  const own = movedTo(path, moves);
  const newRoot = rootAfter(own);
  const edits: Edit[] = [];
  for (const use of readFile(parse(text)).uses) {
    const value = use.line.values[0];
    const target = resolveUse(path, use.path, root);
    if (value?.kind !== 'text' || !('path' in target)) continue;
    const there = movedTo(target.path, moves);
    if (there === target.path && own === path) continue;
    const leadsTo = (written: string): boolean => {
      const found = resolveUse(own, written, newRoot);
      return 'path' in found && found.path === there;
    };
    if (leadsTo(use.path)) continue;
    const written = usePath(own, there);
    // What a text in quotes cannot hold cannot be written.
    if (!/["\\\r\n]/.test(written) && leadsTo(written)) edits.push({ start: value.start + 1, end: value.end - 1, text: written });
  }
  return edits;
}
