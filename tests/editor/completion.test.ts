import { expect, test } from 'vitest';
import { type Completion, completion, diagnostics, usePath } from '../../server/editor/index.ts';
import { bench, library, site, uses } from './bench.ts';

/** What is offered at the caret, best first, and what it would replace. */
function offered(marked: string): { labels: string[]; items: Completion[]; replaced: string } {
  const { analysis, offset, text } = bench(marked);
  const { items, replace } = completion(analysis, offset, { libraries: [...library.keys()] });
  const sorted = [...items].sort((a, b) => a.rank - b.rank);
  return { labels: sorted.map((item) => item.label), items: sorted, replaced: text.slice(replace.start, replace.end) };
}
const inPanel = (line: string): string => site().replace('select reply steps', line);
const inMotion = (line: string): string => site().replace('dwell 25 s', line);

test.each<[what: string, marked: string, first: string, replaced?: string]>([
  ['an empty file wants its version', '|', 'language use site leaf'],
  ['words of a block that are not used yet', 'language 1\nleaf a {\n  width 2 m\n  |\n}', 'mass height opens'],
  ['a half-typed word is replaced whole', 'language 1\nleaf a {\n  wi|dt\n}', 'width mass height', 'widt'],
  ['a whole word is not in its own way', 'language 1\nleaf a {\n  wid|th 2 m\n}', 'width mass', 'width'],
  ['units of the dimension, the one that makes sense first', 'language 1\nleaf a {\n  width 2100 |', 'mm'],
  ['a half-typed unit', 'language 1\nleaf a {\n  width 2.1 i|\n}', 'm', 'i'],
  ['a unit right behind its number', 'language 1\nleaf a {\n  width 2.1i|', 'm', 'i'],
  ['units of a range', 'language 1\npanel-model x {\n  adjuster a {\n    range 2 s .. 120 |', 's ms min h'],
  ['a tolerance is a percentage', 'language 1\nsensor a {\n  terminator 8.2 kohm ± 5 |', '%'],
  ['choices', 'language 1\nleaf a {\n  opens |\n}', 'inward outward'],
  ['a choice under the caret', 'language 1\nleaf a {\n  opens inw|ard 90 deg\n}', 'inward outward', 'inward'],
  ['choices that are not named yet', 'language 1\nsensor a {\n  watches closing |\n}', 'opening pedestrian'],
  ['keywords', 'language 1\nleaf a {\n}\nleaf b {\n  closes onto a |\n}', 'overlap gap'],
  ['a keyword is followed by what belongs to it', 'language 1\nleaf a {\n}\nleaf b {\n  closes onto |\n}', 'a'],
  ['not the leaf itself', 'language 1\nleaf a {\n}\nleaf b {\n  closes onto |', 'a'],
  ['edges only where an edge is meant', site('sensor x {\n  chains-into |\n}\n'), 'west-edge'],
  ['models of the right kind', `${uses}drive x : |\n`, 'birch-ram birch-arm birch-floor birch-rack'],
  ['models with their colon', `${uses}sensor x |`, ': finch-beam : finch-relay'],
  [
    'what a cable feeds: a device or a panel',
    site().replace('leaf west', `cable x {\n  feeds |\n}\nleaf west`),
    'lower-beam west-edge west-ram fobs main',
  ],
  ['a half-typed model', `${uses}cable x : he|`, 'heron-signal heron-supply', 'he'],
  ['devices that are not wired', inPanel('wire |'), 'west-ram fobs'],
  [
    'terminals that suit an edge, the free one first',
    site('sensor east-edge : finch-edge {\n  watches closing\n  on east closing-edge\n}\n').replace(
      'select reply steps',
      'wire east-edge to |',
    ),
    'E2',
  ],
  ['terminals that suit a control', inPanel('wire fobs to |'), 'K1 K2 K0'],
  ['the common of a terminal that is named', inPanel('wire fobs to K1 |'), 'K0'],
  ['motor terminals for a drive', inPanel('wire west-ram to |'), 'LA1 LA2 LB1 LB2'],
  ['the supply for a supply', inPanel('wire fobs supply to |'), 'V1'],
  ['terminals for a link', inPanel('link H1 |'), 'H0'],
  ['selectors', inPanel('select |'), 'reply'],
  ['options of that selector', inPanel('select reply |'), 'steps closes-alone held'],
  ['library files', 'language 1\nuse "../|"', '../library/cables.gate ../library/drives.gate', '../'],
  ['library files without the quotes', 'language 1\nuse |', '../library/cables.gate'],
  ['a block on one line', 'language 1\nsite { rules |', 'europe north-america'],
  ['in a block that is not closed, before the next', 'language 1\nleaf a {\n  |\nleaf b {\n}\n', 'width mass'],
  ['commons inside a panel model', 'language 1\npanel-model x {\n  terminal A0 common\n  terminal A1 edge-input common |\n}', 'A0'],
  ['movements that no other line tells', inMotion('lag |'), 'closing'],
])('%s', (_what, marked, first, replaced = '') => {
  const found = offered(marked);
  const wanted = first.split(' ').filter((word) => word !== '');
  const text = found.labels.join(' ');
  expect(text.startsWith(wanted.join(' ')), text).toBe(true);
  expect(found.replaced).toBe(replaced);
});

test.each([
  ['in a comment', 'language 1\n# dri|'],
  ['behind a whole unit, so that the next key is the user’s', 'language 1\nleaf a {\n  width 2.1 m|\n}'],
  ['while a number is typed', 'language 1\nleaf a {\n  width 2|\n}'],
  ['in a text', 'language 1\npanel-model x "a |"\n'],
  ['where a name is to be made up', 'language 1\nleaf |'],
  ['in a block that nobody knows', 'language 1\nnonsense {\n  |\n}'],
  ['behind a line that is whole', 'language 1\nleaf a {\n  mass 165 kg |\n}'],
])('nothing %s', (_what, marked) => {
  expect(offered(marked).labels).toEqual([]);
});

test('a word that stands once only is not offered again, one that may stand often is', () => {
  const { labels } = offered(inMotion('dwell 25 s\n  |'));
  expect(labels).not.toContain('dwell');
  expect(labels).toContain('lag');
  expect(offered(`${site()}|`).labels).not.toContain('motion');
  expect(offered(`${site()}|`).labels).toContain('leaf');
});

test('rules that find something in the block come first, and none that cannot be accepted', () => {
  const { items, labels } = offered(inMotion('seat 4 s\n  accept |').replace('seat 1.5 s\n', ''));
  expect(items.find((item) => item.label === 'seat-outside-practice')?.rank).toBe(0);
  expect(items.find((item) => item.label === 'use-unused')?.rank).toBe(1);
  expect(labels).not.toContain('unit-missing');
});

test('a terminal in use that takes more comes after the free ones and says so; the line itself is not in its own way', () => {
  const { labels, items } = offered(
    inPanel('wire fobs to K1 K0')
      .replace('acts impulse\n}', 'acts impulse\n}\ncontrol bell {\n  by push-button\n  acts impulse\n}')
      .replace('K1 K0', 'K1 K0\n  wire bell to |'),
  );
  expect(labels).toEqual(['K2', 'K0', 'K1']);
  expect(items.at(-1)?.detail).toContain('in use');
  expect(offered(site().replace('wire west-edge to E0 E1', 'wire west-edge to E0 |E1')).labels[0]).toBe('E1');
});

test('everything that is offered has documentation, and no value that nobody chose', () => {
  for (const marked of [
    '|',
    `${site()}|`,
    inMotion('|'),
    inPanel('wire |'),
    inPanel('wire fobs to |'),
    inPanel('select reply |'),
    'language 1\nleaf a {\n  width 2 |',
    'language 1\nleaf a {\n opens |',
    `${uses}drive x : |`,
    site('accept |'),
  ])
    for (const item of offered(marked).items) {
      expect(item.documentation(), `${marked} ${item.label}`).not.toBe('');
      if (item.kind === 'line' || item.kind === 'block' || item.kind === 'template')
        expect(item.insert).not.toMatch(/\d (?:m|mm|kg|s|deg|%)\b/);
    }
});

test('a block that is offered can be read, but for the facts still to be written', () => {
  for (const item of offered('language 1\n|').items.filter((one) => one.kind === 'block')) {
    const text = item.plain.replace(' : model', '');
    const rules = diagnostics(bench(`language 1\n${text}\n`).analysis).map((one) => one.rule);
    expect(rules, text).not.toContain('brace-missing');
    expect(rules, text).not.toContain('word-unknown');
    expect(rules, text).not.toContain('value-unexpected');
    expect(rules, text).not.toContain('choice-unknown');
  }
});

test('paths from one file to another', () => {
  expect(usePath('/a/b/c.gate', '/a/lib/x.gate')).toBe('../lib/x.gate');
  expect(usePath('/a/b/c.gate', '/a/b/x.gate')).toBe('x.gate');
  expect(usePath('/a/c.gate', '/a/b/d/x.gate')).toBe('b/d/x.gate');
  expect(usePath('memfs://h/a/b/c.gate', 'memfs://h/l/x.gate')).toBe('../../l/x.gate');
});

test('the caret anywhere in any text: no fault, and what is replaced holds the caret', () => {
  const text = site('wire { : "x\n# ±\n}} accept \n');
  for (let offset = 0; offset <= text.length; offset += 3) {
    const { analysis } = bench(text);
    const { replace } = completion(analysis, offset, { libraries: [] });
    expect(replace.start <= offset && replace.end >= offset).toBe(true);
  }
});
