// What a file seems to say, but not so that it could be read: a rule that misses it must not speak as if it were not there.
import type { WordValue } from '../../grammar/index.ts';
import type { Installation, Panel } from '../model/index.ts';
import { blocks } from '../vocabulary/index.ts';

/** True when a wire or link of the panel could not be read or names a terminal that is not there: it may be the very one that is missed. */
export function wiringUnsure(panel: Panel): boolean {
  if (lost(panel.unread, 'panel', 'wire') || lost(panel.unread, 'panel', 'link')) return true;
  for (const wire of panel.wires) for (const end of wire.ends) if (end.terminal === undefined) return true;
  for (const link of panel.links) for (const end of link.ends) if (end.terminal === undefined) return true;
  return false;
}

/** True when a line that says `word` may stand among those of a block that could not be read. */
export function lost(unread: readonly string[], block: keyof typeof blocks, word: string): boolean {
  for (const one of unread) if (one === word || !Object.hasOwn(blocks[block].lines, one)) return true;
  return false;
}

/** True when a block of that word stands in the file but could not be read as one. */
export function blockLost(installation: Installation, word: keyof typeof blocks): boolean {
  return installation.problems.some(
    ({ kind, detail }) =>
      (kind === 'block-without-body' && detail['word'] === word) || (kind === 'word-unknown' && detail['meant'] === word),
  );
}

/** True when the name is that of an earlier block too, which is reported already. */
export function isRepeatedName({ problems }: Installation, nameAt: WordValue | undefined): boolean {
  return nameAt === undefined || problems.some(({ kind, start }) => kind === 'name-repeated' && start === nameAt.start);
}
