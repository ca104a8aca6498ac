// Examples that show only what differs from another text, and the base sites that they are from.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import { derived, expander, fromOf } from './derived.ts';
import { baseSite, blocksOf, foldersWith, judge, readPage, root } from './pages.ts';

const base = `language 1
use "../library/drives.gate"
use "../library/panels.gate"

# The gate.
leaf west {
  width 2 m # flagged
  mass 150 kg
}

leaf east {
  width 1 m
}

panel main : rowan-pair {
  wire a to T1 T0
  wire b to G1 G0
  # flagged below
  link H1 H0
}
`;
const from = (...lines: readonly string[]): string => derived(['# from x', ...lines, ''].join('\n'), base);
const bare = base.replace(' # flagged', '').replace('  # flagged below\n', '');

describe('an example made whole', () => {
  test('nothing given: all of it, without the marks', () => expect(from()).toBe(bare));
  test('a block stands in for the one of the same word and name', () => {
    expect(from('leaf east {', '  mass 9 kg # flagged', '}')).toBe(bare.replace('  width 1 m', '  mass 9 kg # flagged'));
  });
  test('another block stands behind those of its word, or at the end', () => {
    expect(from('leaf north {', '  width 3 m', '}')).toBe(bare.replace('\n\npanel', '\n\nleaf north {\n  width 3 m\n}\n\npanel'));
    expect(from('motion {', '  seat 1 s', '}')).toBe(`${bare}\nmotion {\n  seat 1 s\n}\n`);
  });
  test('a library stands behind the others', () => {
    expect(from('use "../library/cables.gate"')).toBe(bare.replace('panels.gate"\n', 'panels.gate"\nuse "../library/cables.gate"\n'));
  });
  test('a remark stands above what it is of', () => {
    const text = from('# A wide one.', 'leaf west {', '  …', '  width 9 m', '}');
    expect(text).toBe(bare.replace('# The gate.', '# A wide one.').replace('2 m', '9 m'));
  });
  test('… leaves the other lines; a line stands in for the one of its word, or is added', () => {
    const changed = from('leaf west {', '  …', '  height 1 m', '  width 9 m', '}');
    expect(changed).toBe(bare.replace('width 2 m\n  mass 150 kg', 'width 9 m\n  mass 150 kg\n  height 1 m'));
    expect(from('leaf west {', '  height 1 m', '  …', '}')).toBe(bare.replace('  width 2 m', '  height 1 m\n  width 2 m'));
    expect(from('leaf west { # flagged', '  …', '}')).toBe(bare.replace('leaf west {', 'leaf west { # flagged'));
  });
  test('lines that may stand more than once are told apart by their first value', () => {
    expect(from('panel main : marram-one {', '  …', '  wire b to S1 S0', '  wire c to K1 K0', '}')).toBe(
      bare.replace('rowan-pair', 'marram-one').replace('b to G1 G0', 'b to S1 S0').replace('link H1 H0', 'link H1 H0\n  wire c to K1 K0'),
    );
  });
  test('without takes away, by word, by word and name, or by library', () => {
    expect(from('without leaf, drives.gate')).toBe(bare.replace(/use.*drives.*\n/, '').replace(/\n# The gate[^]*?(?=\npanel)/, ''));
    expect(from('without leaf east', 'panel main : rowan-pair {', '  …', '  without wire b, link', '}')).toBe(
      bare.replace(/\nleaf east[^]*?\}\n/, '').replace('  wire b to G1 G0\n  link H1 H0\n', ''),
    );
  });
  test('only leaves no more than is named', () => {
    const text = derived('# from x, only panels.gate, leaf east\n', base);
    expect(text).toBe('language 1\nuse "../library/panels.gate"\n\nleaf east {\n  width 1 m\n}\n');
  });
  test('the day stands first', () => {
    expect(derived('# from x, only leaf east\n# as of 2026-01-02\n', base)).toMatch(/^# as of 2026-01-02\nlanguage 1\n/);
    expect(derived('# from x\n# as of 2026-01-02\n', `# as of 2025-01-01\n${base}`)).toBe(`# as of 2026-01-02\n${bare}`);
  });
  test.each([
    ['without drive', '“without drive”'],
    ['without leaf north', '“without leaf north”'],
    ['leaf north {\n  …\n  width 1 m\n}', '“leaf north”'],
    ['leaf north {\n  width 1 m\n  …\n}', '“leaf north”'],
    ['leaf west {\n  …\n  without height\n}', '“without height”'],
  ])('%j refers to nothing', (line, what) => expect(() => from(line)).toThrow(what));
  test('nor does what only names', () => expect(() => derived('# from x, only motion\n', base)).toThrow('“only motion”'));
});

test('above is the nearest example that is not itself from above, and not a mended one', () => {
  const expand = expander(() => base);
  expect(() => expand('sound', '# from above\n')).toThrow('there is none');
  expect(expand('flagged', 'leaf a {\n  width 1 m\n}\n')).toBe('leaf a {\n  width 1 m\n}\n');
  expand('fixed', 'leaf b {\n  width 1 m\n}\n');
  const heavy = '# from above\nleaf a {\n  …\n  mass 2 kg\n}\n';
  for (let i = 0; i < 2; i++) expect(expand('sound', heavy)).toBe('leaf a {\n  width 1 m\n  mass 2 kg\n}\n');
  expect(expand('sound', '# from x\n')).toBe(bare);
  expect(expand('sound', '# from above\nwithout leaf\n')).not.toContain('leaf');
});

test('what begins otherwise is whole', () => {
  for (const text of ['language 1\n', '# from the road\n', '#from x\n', '# a remark\n# from x\n']) expect(fromOf(text)).toBeUndefined();
});

const bases = readdirSync(join(root, 'examples/bases')).map((file) => file.replace(/\.gate$/, ''));
describe.each(bases)('the base site %s', (name) => {
  const text = baseSite(name);
  test('is judged without errors', () => {
    expect(
      judge(text)
        .findings.filter((finding) => finding.severity === 'error')
        .map((finding) => finding.what),
    ).toEqual([]);
  });
  test('stands in canonical form', () => expect(print(parse(text))).toBe(text));
  test('is what examples are from', () => {
    const pages = (['rules', 'figures'] as const).flatMap((room) => foldersWith(room, 'page.md').map((page) => readPage(room, page)));
    const users = pages.filter(({ fences }) => fences.some((fence) => fromOf(fence.text)?.name === name));
    expect(users.length).toBeGreaterThan(1);
  });
});

test('an example that is made whole stands in canonical form, where it can be read', () => {
  for (const room of ['rules', 'figures'] as const)
    for (const page of foldersWith(room, 'page.md'))
      for (const block of blocksOf(readPage(room, page)).filter((one) => one.isDerived)) {
        const tree = parse(block.text);
        if (tree.problems.length === 0) expect(print(tree), `${page}, line ${block.line}`).toBe(block.text);
      }
});
