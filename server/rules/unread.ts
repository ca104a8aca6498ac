// What a file seems to say, but not so that it could be read: a rule that misses it must not speak as if it were not there.
import type { WordValue } from '../../grammar/index.ts';
import { type Installation, type Panel, perSubject } from '../model/index.ts';
import { blocks } from '../vocabulary/index.ts';

/** True when a wire or link of the panel could not be read or names a terminal that is not there: it may be the very one that is missed. */
export const wiringUnsure = perSubject((panel: Panel): boolean => {
  if (lost(panel.unread, 'panel', 'wire') || lost(panel.unread, 'panel', 'link')) return true;
  for (const wire of panel.wires) for (const end of wire.ends) if (end.terminal === undefined) return true;
  for (const link of panel.links) for (const end of link.ends) if (end.terminal === undefined) return true;
  return false;
});

/** True when a line that says `word` may stand among those of a block that could not be read. */
export function lost(unread: readonly string[], block: keyof typeof blocks, word: string): boolean {
  for (const one of unread) if (one === word || !Object.hasOwn(blocks[block].lines, one)) return true;
  return false;
}

/** What reading found of whole blocks. */
interface Blocks {
  /** Words of blocks that could not be read as such. */
  readonly lost: ReadonlySet<unknown>;
  /** Where the names stand that an earlier block has too. */
  readonly repeated: ReadonlySet<number>;
}

const blocksFound = perSubject(({ problems }: Installation): Blocks => {
  const lost = new Set<unknown>();
  const repeated = new Set<number>();
  for (const { kind, start, detail } of problems) {
    if (kind === 'block-without-body') lost.add(detail['word']);
    else if (kind === 'word-unknown') lost.add(detail['meant']);
    else if (kind === 'name-repeated') repeated.add(start);
  }
  return { lost, repeated };
});

/** True when a block of that word stands in the file but could not be read as one. */
export const blockLost = (installation: Installation, word: keyof typeof blocks): boolean =>
  installation.problems.length > 0 && blocksFound(installation).lost.has(word);

/** True when the name is that of an earlier block too, which is reported already. */
export const isRepeatedName = (installation: Installation, nameAt: WordValue | undefined): boolean =>
  nameAt === undefined || (installation.problems.length > 0 && blocksFound(installation).repeated.has(nameAt.start));
