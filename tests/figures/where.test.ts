// Kinds of figures that are not asked where they have nothing to give: that they would have given nothing.
import { expect, test } from 'vitest';
import { allFigures, figuresOf } from '../../server/figures/index.ts';
import { blocksOf, foldersWith, judge, judgeBlock, readPage } from '../kit/pages.ts';

const guarded = allFigures.filter(({ where }) => where !== undefined);

/** Every example of every page, and each with one of its lines left out. */
function* texts(): Generator<ReturnType<typeof judge>> {
  for (const [room, file] of [
    ['rules', 'rule.ts'],
    ['figures', 'figure.ts'],
  ] as const)
    for (const name of foldersWith(room, file))
      for (const block of blocksOf(readPage(room, name))) {
        yield judgeBlock(block);
        if (room === 'rules') continue;
        const lines = block.text.split('\n');
        for (let i = 0; i < lines.length; i++) yield judge(lines.toSpliced(i, 1).join('\n'), block.files, block.asOf);
      }
}

test('what is not asked has nothing to give', () => {
  const asked = new Set<string>();
  const unasked = new Set<string>();
  for (const { installation } of texts()) {
    const given: string[] = [];
    for (const kind of allFigures) kind.work(installation, (_, value) => Number.isFinite(value) && given.push(kind.id));
    expect(figuresOf(installation).map(({ kind }) => kind.id)).toEqual(given);
    for (const { id, where } of guarded) (where?.(installation) === true ? asked : unasked).add(id);
  }
  // Each of them was asked somewhere and somewhere not, so that there was something to see.
  for (const { id } of guarded) expect([asked.has(id), unasked.has(id)], id).toEqual([true, true]);
  expect(guarded.length).toBeGreaterThan(20);
});
