import { expect, test } from 'vitest';
import { definition, highlight, mentionsOf, referencesTo, referent, type Symbol, symbols } from '../../server/editor/index.ts';
import { bench, site } from './bench.ts';

const at = (needle: string): string => {
  const plain = needle.replace('|', '');
  return site().replace(plain, needle);
};

/** Where the name at the caret is declared: the file, and the text of the name and of the whole. */
function declared(marked: string, path?: string): string {
  const { analysis, offset, textOf } = bench(marked, path);
  const found = definition(analysis, offset);
  if (found === undefined) return '';
  return found.targets
    .map(
      (target) =>
        `${target.path} ${textOf(target.path)?.slice(target.name.start, target.name.end)} | ${textOf(target.path)?.slice(target.whole.start, target.whole.end).split('\n')[0]}`,
    )
    .join(' & ');
}

test.each([
  ['a leaf', at('moves we|st'), '/site/gates/north.gate west | leaf west {'],
  ['a leaf behind onto', at('closes onto |east'), '/site/gates/north.gate east | leaf east {'],
  ['a device', at('wire lower|-beam'), '/site/gates/north.gate lower-beam | sensor lower-beam : finch-beam {'],
  ['a model', at(': birch|-ram'), '/site/library/drives.gate birch-ram | drive-model birch-ram "Linear ram, 24 V" {'],
  ['a library', at('"../library/|drives.gate"'), '/site/library/drives.gate  | '],
  ['a terminal', at('to E0 |E1'), '/site/library/panels.gate E1 | terminal E1 edge-input common E0 terminator 8.2 kohm'],
  ['a selector', at('select re|ply'), '/site/library/panels.gate reply | selector reply "What a command does" {'],
  ['an option', at('reply st|eps'), '/site/library/panels.gate steps | option steps "open, stop, close, stop" acts impulse'],
  ['the declaration itself', at('leaf we|st'), '/site/gates/north.gate west | leaf west {'],
  ['nothing on a number', at('width 2|.10'), ''],
  ['nothing on a name that leads nowhere', at('moves west').replace('moves west', 'moves nobo|dy'), ''],
  ['nothing on a choice', at('inwa|rd'), ''],
])('%s', (_what, marked, wanted) => {
  expect(declared(marked)).toBe(wanted);
});

test('inside a panel model, a terminal’s common', () => {
  const marked = 'language 1\npanel-model x {\n  terminal A0 common\n  terminal A1 edge-input common A|0\n}\n';
  expect(declared(marked)).toBe('/site/gates/north.gate A0 | terminal A0 common');
});

test('all places of a name in its file, the declaration marked', () => {
  const { analysis, offset, text } = bench(at('moves we|st'));
  const places = highlight(analysis, offset);
  expect(places.map((place) => text.slice(place.start - 6, place.end).trim())).toEqual(['leaf west', 'moves west', 'on west']);
  expect(places.map((place) => place.declares)).toEqual([true, false, false]);
});

test('a terminal and a leaf of one name are not the same', () => {
  const { analysis, offset } = bench(at('wire west-edge to E0 |E1').replace('leaf east', 'leaf E1'));
  expect(highlight(analysis, offset)).toHaveLength(1);
});

test('places in other files', () => {
  const one = bench(at(': birch|-ram'));
  const found = referent(one.analysis, one.offset);
  expect(found).toMatchObject({ name: 'birch-ram', shared: true });
  const drives = one.workspace.open('/site/library/drives.gate', one.textOf('/site/library/drives.gate') as string, '2026-11-20');
  expect(referencesTo(drives, found?.meaning as never)).toMatchObject([{ path: '/site/library/drives.gate', declares: true }]);
  // The same name in a library of another folder is another model.
  const other = one.workspace.open('/site/other.gate', one.textOf('/site/library/drives.gate') as string, '2026-11-20');
  expect(referencesTo(other, found?.meaning as never)).toEqual([]);
});

test('every name stands where it says', () => {
  const { analysis, text } = bench(site());
  for (const mention of mentionsOf(analysis))
    if ('name' in mention.meaning) expect(text.slice(mention.start, mention.end)).toBe(mention.meaning.name);
  expect(mentionsOf(analysis).length).toBeGreaterThan(20);
});

const outline = (list: readonly Symbol[], indent = ''): string[] =>
  list.flatMap((symbol) => [`${indent}${symbol.name} (${symbol.detail})`, ...outline(symbol.children, indent + '  ')]);

test('outline', () => {
  expect(outline(symbols(bench(site()).analysis))).toEqual([
    'site (Heron Court)',
    'west (leaf)',
    'east (leaf)',
    'west-ram (drive : birch-ram)',
    'lower-beam (sensor : finch-beam)',
    'west-edge (sensor : finch-edge)',
    'fobs (control)',
    'main (panel : rowan-pair)',
    'motion ()',
  ]);
  const model = bench('language 1\npanel-model x "X" {\n  terminal A0 common\n  selector s "S" {\n    option a "A"\n  }\n}\nleaf {\n}\n');
  expect(outline(symbols(model.analysis))).toEqual([
    'x (panel-model X)',
    '  A0 (terminal common)',
    '  s (selector S)',
    '    a (option A)',
    'leaf ()',
  ]);
});

test('the name of a symbol stands inside it', () => {
  const check = (list: readonly Symbol[]): void => {
    for (const symbol of list) {
      expect(symbol.head.start).toBeGreaterThanOrEqual(symbol.whole.start);
      expect(symbol.head.end).toBeLessThanOrEqual(symbol.whole.end);
      check(symbol.children);
    }
  };
  for (const text of [site(), 'leaf', 'leaf {', '{ } {', 'site "x" { rules', 'panel-model x { selector'])
    check(symbols(bench(text).analysis));
});
