import { expect, test } from 'vitest';
import { hover, plain } from '../../server/editor/index.ts';
import { bench, site } from './bench.ts';

function hovered(marked: string): string {
  const { analysis, offset, textOf, text } = bench(marked);
  const found = hover(analysis, offset, textOf);
  if (found === undefined) return '';
  expect(found.start).toBeLessThanOrEqual(offset);
  expect(found.end).toBeGreaterThanOrEqual(offset);
  return `${text.slice(found.start, found.end)} ⇒ ${found.markdown}`;
}
const at = (needle: string, replace = needle): string => site().replace(needle, replace.includes('|') ? replace : `|${replace}`);

test.each<[what: string, marked: string, ...parts: string[]]>([
  ['a word: shape, what it is, limits', at('width 2.10'), 'width ⇒', '`width LENGTH`', 'Width of the leaf', 'Between 0.3 m and 20 m'],
  ['a word with a source', at('acts impulse'), 'Source: EN 12453'],
  ['a block', at('leaf west'), '`leaf NAME { … }`', 'Needs `width`, `mass`'],
  ['a quantity in other units', at('2.10 m', '2.|10 m'), '2.10 m ⇒', '2100 mm', '6.89 ft', '82.7 in'],
  ['its unit', at('kg', '|kg'), '165 kg', '364 lb'],
  ['a choice', at('inward', 'in|ward'), 'inward ⇒', 'into the premises', '`outward`'],
  ['a keyword', at('onto'), 'The leaf that it covers'],
  ['a leaf that is pointed at', at('moves west', 'moves we|st'), 'west ⇒', 'leaf west {', 'mass 165 kg'],
  ['a model in a library', at('birch-ram', 'birch|-ram'), 'stroke 400 mm', 'In `library/drives.gate`'],
  ['a terminal', at('E0 E1', 'E0 |E1'), 'terminal E1 edge-input common E0 terminator 8.2 kohm', 'In `library/panels.gate`'],
  ['an option', at('reply steps', 'reply st|eps'), 'option steps "open, stop, close, stop"'],
  ['a selector', at('reply steps', 're|ply steps'), 'selector reply', 'option held'],
  ['a library', at('../library/drives'), '/site/library/drives.gate'],
  ['the values that come of a line, with the numbers put in', at('mass 165'), 'inertia', '243 kg·m²', '- ', 'Source: '],
  [
    'the margin of a figure to its limit, and the rule that bounds it',
    at('leaf-bracket 780'),
    'Margin: stroke 267 mm, at most 400 mm: 133 mm to spare (66.7 % used). Rule: `stroke-too-short`',
  ],
  [
    'a limit that is passed',
    site().replace('post-bracket 140 mm by 120 mm', 'post-bracket 240 mm by 220 mm').replace('leaf-bracket', '|leaf-bracket'),
    '**Limit passed**: stroke',
    'too much',
    '`stroke-too-short`',
  ],
  [
    'a stated value that is held against a limit',
    at('mass 165'),
    'Margin: mass for its drive 165 kg, at most 400 kg: 235 kg to spare (41.3 % used). Rule: `leaf-over-drive-rating`',
  ],
  [
    'the same of two drives, each by its name',
    site('drive east-ram : birch-ram {\n  moves east\n  post-bracket 140 mm by 120 mm\n  leaf-bracket 780 mm\n}\n').replace(
      'seat 1.5',
      '|seat 1.5',
    ),
    'Time for which the drive is on: the run and the seat** (west) =',
    'the seat** (east) =',
  ],
  ['a least value', at('seat 1.5'), 'Margin: seat 1.5 s, at least 1 s: 0.5 s to spare (66.7 % used)'],
  ['what a rule says of a place', at('seat 1.5 s', 'se|at 9 s'), '**seat-outside-practice** (warning)', 'It can be accepted'],
  [
    'a rule by its name',
    site('accept seat-outside-|practice because "x" by "K" until 2027-01-01\n'),
    '**seat-outside-practice**',
    'Source: the model, which says what the product can do.',
  ],
])('%s', (_what, marked, ...parts) => {
  const found = hovered(marked);
  for (const part of parts) expect(found).toContain(part);
});

test.each([
  ['a comment', 'language 1\n# wi|dth\n'],
  ['an empty line', 'language 1\nleaf a {\n|\n}\n'],
  ['a word that nobody knows, but for its finding', 'language 1\n|'],
])('nothing on %s', (_what, marked) => {
  expect(hovered(marked)).toBe('');
});

test('what a file’s author wrote is never markup', () => {
  const found = hovered(
    site()
      .replace('"Heron Court"', '"x"')
      .replace('leaf west {', 'leaf west "<img src=x> [a](command:b) `c` **d**" {')
      .replace('moves west', 'moves |west'),
  );
  expect(found).toContain('```pintle\nleaf west "<img');
  const fence = hovered('language 1\nleaf a```b {\n}\nleaf b {\n  closes onto |a```b\n}\n');
  expect(fence).toContain('````pintle\nleaf a```b {');
});

test('markdown as plain text keeps every word', () => {
  const { analysis, offset, textOf } = bench(at('mass 165'));
  const text = plain(hover(analysis, offset, textOf)?.markdown ?? '');
  expect(text).not.toMatch(/\*\*|```|\\[_*`]/);
  expect(text).toContain('mass MASS');
});
