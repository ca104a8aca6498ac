// What is shown of a figure has its number, however much its words say besides.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Analysis, figuresShown } from '../../server/engine/index.ts';
import { figuresOf } from '../../server/figures/index.ts';
import { judge, root } from '../kit/pages.ts';

test('of every figure of the examples but those whose number is a code', () => {
  let words = 0;
  for (const folder of ['sound', 'unsafe'])
    for (const name of readdirSync(join(root, 'examples', folder))) {
      if (!name.endsWith('.gate')) continue;
      const { installation } = judge(readFileSync(join(root, 'examples', folder, name), 'utf8'));
      const coded = new Set(figuresOf(installation).flatMap(({ id, kind }) => (kind.coded === true ? [id] : [])));
      for (const { id, shown, value } of figuresShown({ installation } as Analysis)) {
        if (coded.has(id)) expect(shown, id).toMatch(/^PL /);
        else if (shown.includes('; ')) {
          words++;
          expect(shown, id).toMatch(/^-?[\d.]/);
          expect(Number.isFinite(value), id).toBe(true);
        }
      }
    }
  expect(words).toBeGreaterThan(20);
});
test('with an overtravel in front of what the edge gives', () => {
  const { installation } = judge(readFileSync(join(root, 'examples/sound/tanners-row.gate'), 'utf8'));
  for (const { shown } of figuresShown({ installation } as Analysis).filter(({ id }) => id.endsWith('.overtravel')))
    expect(shown).toMatch(/^[\d.]+ mm; (The edge gives|No edge on that side)/);
});
