// What `npm run new` makes can be carried on with: it imports what is there, and its tests say what is left to do.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, root } from '../kit/sources.ts';

interface Made {
  readonly files: Readonly<Record<string, string>>;
  readonly next: readonly string[];
}
const { scaffold, withWord } = (await import('./new.mjs' as string)) as {
  readonly scaffold: (kind: string | undefined, name: string | undefined, read?: (path: string) => string | undefined) => Made;
  readonly withWord: (source: string, word: string) => string;
};

const words = `import { text } from '../spec.ts';

export const block = {
  doc: 'A block.',
  lines: {
    note: {
      doc: 'A note.',
      slots: {
        value: text({ doc: 'The note.' }),
      },
    },
  },
  blocks: {},
};
`;

describe.each(['rule', 'figure'])('a new %s', (kind) => {
  const { files, next } = scaffold(kind, 'lintel-too-low');
  test('imports what is there', () => {
    for (const [path, text] of Object.entries(files).filter(([name]) => name.endsWith('.ts')))
      for (const from of importsOf(text).filter((one) => one.startsWith('.'))) {
        const meant = posix.join(posix.dirname(path), from);
        expect(meant in files || existsSync(join(root, meant)), `${path} imports ${from}`).toBe(true);
      }
  });
  test('has places to fill in, and says what comes next', () => {
    expect(Object.values(files).join('')).toContain('…');
    expect(next.join('\n')).toContain(`pages.test.ts -t lintel-too-low`);
    expect(next.join('\n')).toContain('npm run generate');
  });
  test('has the sections that every page has', () => {
    const folder = join(root, 'server', `${kind}s`);
    const [other] = readdirSync(folder).filter((name) => existsSync(join(folder, name, 'page.md')));
    const sections = (text: string): string[] => [...text.matchAll(/^## .*$/gm)].map(([line]) => line);
    const [page = ''] = Object.entries(files)
      .filter(([path]) => path.endsWith('page.md'))
      .map(([, text]) => text);
    expect(sections(page)).toEqual(sections(readFileSync(join(folder, other ?? '', 'page.md'), 'utf8')));
  });
});

describe('a new word', () => {
  test('stands behind the others, with the import that it needs', () => {
    const made = withWord(words, 'paint-colour');
    expect(made).toContain("import { quantity, text } from '../spec.ts';");
    expect(made).toMatch(/\n {4}\},\n {4}'paint-colour': \{\n[^]*\n {4}\},\n {2}\},\n {2}blocks/);
    expect(withWord(made, 'colour')).toContain('\n    colour: {\n');
    const none = words.replace(/lines: \{[^]*\n {2}\},\n {2}blocks/, 'lines: {},\n  blocks');
    expect(withWord(none, 'colour')).toContain('  lines: {\n    colour: {\n');
  });
  test('goes into the file of its block', () => {
    const { files } = scaffold('word', 'leaf.colour', (path) => (path.endsWith('/leaf.ts') ? words : undefined));
    expect(Object.values(files).join('')).toContain('    colour: {');
  });
});

test.each([
  [undefined, undefined, 'npm run new rule|figure|word NAME'],
  ['toString', 'x', 'npm run new rule|figure|word NAME'],
  ['rule', 'beam-too-high', 'is there already'],
  ['figure', 'leaf-inertia', 'is there already'],
  ['rule', 'Beam', 'is no name'],
  ['rule', 'beam_high', 'is no name'],
  ['rule', '../beam', 'is no name'],
  ['figure', 'a'.repeat(41), 'longer than 40'],
  ['word', 'colour', 'npm run new word leaf.colour'],
  ['word', 'nothing.colour', 'There is no block “nothing”'],
  ['word', 'leaf.note', 'has a line “note” already'],
  ['word', 'leaf.No', 'is no name'],
])('%s %s is refused', (kind, name, why) => {
  const read = (path: string): string | undefined => (path.endsWith('/leaf.ts') ? words : existsSync(join(root, path)) ? '' : undefined);
  expect(() => scaffold(kind, name, read)).toThrow(why);
});
