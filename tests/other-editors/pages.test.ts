// The pages for other editors show the very files that are tested; run.mjs runs them in the editors themselves.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { settings } from '../../server/lsp/settings.ts';

const folder = fileURLToPath(new URL('../../client/other-editors', import.meta.url));
const read = (name: string): string => readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n');
const blocks = (page: string, language: string): string[] =>
  [...read(page).matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].filter((match) => match[1] === language).map((match) => match[2] ?? '');

test('the page of neovim shows the configuration that is tested', () => {
  expect(blocks('neovim.md', 'lua')).toEqual([read('neovim.lua')]);
});

describe.each(['neovim.md', 'emacs.md'])('%s', (page) => {
  test('copies files that are there', () => {
    const root = join(folder, '../..');
    const copied = blocks(page, 'sh').flatMap((block) =>
      [...block.matchAll(/(?<![\w~/.])(?:client|grammar)\/[\w./-]+/g)].map((match) => match[0]),
    );
    expect(copied.length).toBeGreaterThan(0);
    for (const path of copied) expect(existsSync(join(root, path)), path).toBe(true);
  });
  test('its links lead somewhere', () => {
    const links = [...read(page).matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1] ?? '');
    expect(links.length).toBeGreaterThan(0);
    for (const link of links) expect(existsSync(join(dirname(join(folder, page)), link)), link).toBe(true);
  });
  test('names no setting that there is not', () => {
    expect(Object.keys(settings)).toContain('values.show');
    expect(read(page)).toMatch(/values = \{ show = false \}|:values \(:show :json-false\)/);
  });
  test('names examples that are there', () => {
    for (const [path] of read(page).matchAll(/examples\/[\w/-]+\.gate/g)) expect(existsSync(join(folder, '../..', path)), path).toBe(true);
  });
});
