import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import { formatting, rangeFormatting, typedFormatting } from '../../server/editor/index.ts';
import { type Edit, withEdits } from '../../server/engine/index.ts';
import { lineEdits } from '../../server/engine/inside.ts';
import { within } from '../kit/marker.ts';
import { bench, library, site } from './bench.ts';

const edits = (text: string): readonly Edit[] => {
  const found = formatting(text);
  if (!('edits' in found)) throw new Error(found.refused);
  return found.edits;
};

test.each([
  ['canonical already', site(), 0],
  ['one line', site().replace('  width 2.10 m', 'width   2.10 m'), 2],
  ['a blank line too many', site().replace('\n\nleaf west', '\n\n\n\nleaf west'), 1],
  ['no line end at the end', site().trimEnd(), 1],
  ['an empty text', '', 0],
])('%s', (_what, text, count) => {
  const found = edits(text);
  expect(found).toHaveLength(count);
  expect(withEdits(text, found)).toBe(print(parse(text)));
});

test('a change of one line touches that line only', () => {
  const text = site().replace('  mass 165 kg', '    mass  165   kg');
  const line = within(text, '|    mass  165   kg|');
  for (const edit of edits(text)) {
    expect(edit.start).toBeGreaterThanOrEqual(line.start);
    expect(edit.end).toBeLessThanOrEqual(line.end);
    expect(edit.text.trim()).toBe('');
  }
});

test('a broken shape is refused, with the line', () => {
  const found = formatting('language 1\nleaf a {\n');
  expect(found).toMatchObject({ refused: expect.stringContaining('line 2'), at: { start: 11 } });
});

/** A canonical text made untidy: blanks, blank lines, line ends. */
const untidy = fc
  .tuple(
    fc.constantFrom(site(), ...library.values()),
    fc.constantFrom('\n', '\r\n', '\r'),
    fc.array(fc.tuple(fc.nat(400), fc.constantFrom(' ', '\t', '   ', 'L', 'LL')), { maxLength: 30 }),
    fc.boolean(),
  )
  .map(([text, lineEnd, places, isCut]) => {
    const lines = text.split('\n');
    for (const [at, put] of places) {
      const index = at % lines.length;
      const line = lines[index] as string;
      lines[index] = put.startsWith('L')
        ? put.replaceAll('L', '\n') + line
        : /["#]/.test(line)
          ? put + line
          : line.replace(/ +/g, put + ' ');
    }
    const made = lines.join('\n').replaceAll('\n', lineEnd);
    return isCut ? made.trimEnd() : made;
  });

test('any untidy text: the edits give the canonical form, keep the line ends, and a second run does nothing', () => {
  fc.assert(
    fc.property(untidy, (text) => {
      const found = edits(text);
      const formatted = withEdits(text, found);
      expect(formatted.replace(/\r\n?/g, '\n')).toBe(print(parse(text)));
      expect(edits(formatted)).toEqual([]);
      const ends = (of: string): string[] => [...new Set(of.match(/\r\n|\r|\n/g) ?? [])];
      expect(ends(formatted).filter((end) => !ends(text).includes(end))).toEqual([]);
      for (let i = 1; i < found.length; i++) expect(found[i]?.start).toBeGreaterThan(found[i - 1]?.end as number);
    }),
    { numRuns: 300 },
  );
});

test('the edits between any two texts turn the one into the other', () => {
  const line = fc.constantFrom('a', 'b', ' a', 'a b', 'ab', '', 'c  ', '}');
  fc.assert(
    fc.property(fc.array(line, { maxLength: 12 }), fc.array(line, { maxLength: 12 }), fc.boolean(), (one, other, ends) => {
      const before = one.join('\n') + (ends ? '\n' : '');
      const after = other.map((text) => text + '\n').join('');
      expect(withEdits(before, lineEdits(before, after))).toBe(after);
    }),
    { numRuns: 500 },
  );
});

// --- Some lines only, and while somebody types.

const rangeEdits = (text: string, start: number, end: number): readonly Edit[] => {
  const found = rangeFormatting(text, { start, end });
  if (!('edits' in found)) throw new Error(found.refused);
  return found.edits;
};
const linesOf = (text: string): string[] => text.split(/\r\n|\r|\n/);
/** Numbers of the lines, from 0, that a span touches. */
const lineOf = (text: string, offset: number): number => linesOf(text.slice(0, offset)).length - 1;

test('a range: its lines and no others; the whole file is the whole form', () => {
  const messy = site().replaceAll('\n  ', '\n     ').replaceAll(' kg', '  kg');
  const start = messy.indexOf('leaf west');
  const end = messy.indexOf('leaf east');
  const done = withEdits(messy, rangeEdits(messy, start, end));
  expect(done.slice(start, start + site().indexOf('leaf east') - site().indexOf('leaf west'))).toBe(
    site().slice(site().indexOf('leaf west'), site().indexOf('leaf east')),
  );
  expect(done.slice(0, start)).toBe(messy.slice(0, start));
  expect(done.endsWith(messy.slice(end))).toBe(true);
  expect(withEdits(messy, rangeEdits(messy, 0, messy.length))).toBe(site());
  expect(rangeFormatting('leaf a {', { start: 0, end: 1 })).toMatchObject({ refused: expect.stringContaining('line 1') });
});

test('any range of any untidy text: no line outside of it changes, and no fact', () => {
  fc.assert(
    fc.property(untidy, fc.nat(), fc.nat(), (text, one, other) => {
      const [start, end] = [one % (text.length + 1), other % (text.length + 1)].sort((a, b) => a - b) as [number, number];
      const done = withEdits(text, rangeEdits(text, start, end));
      expect(print(parse(done))).toBe(print(parse(text)));
      const [first, last] = [lineOf(text, start), lineOf(text, end)];
      const [before, after] = [linesOf(text), linesOf(done)];
      expect(after.slice(0, first)).toEqual(before.slice(0, first));
      expect(after.slice(after.length - (before.length - 1 - last))).toEqual(before.slice(last + 1));
    }),
    { numRuns: 300 },
  );
});

/** A text with `|` where the caret is after the key. */
function typing(marked: string, key: string): string {
  const { analysis, offset, text } = bench(marked);
  return withEdits(text, typedFormatting(analysis, offset, key));
}
test.each<[what: string, key: string, marked: string, after: string]>([
  [
    'a brace lays out the block that it closes',
    '}',
    'leaf a {\nwidth   2 m\n    mass 5 kg # x\n  }|\n  leaf b {\n}\n',
    'leaf a {\n  width 2 m\n  mass 5 kg # x\n}\n  leaf b {\n}\n',
  ],
  [
    'an inner block, and not the one around it',
    '}',
    'panel-model x {\n supply 24 V\n   selector a {\n option b\n }|\n}\n',
    'panel-model x {\n supply 24 V\n  selector a {\n    option b\n  }\n}\n',
  ],
  ['a block on one line stays on it', '}', 'site { rules   europe }|\n', 'site { rules   europe }\n'],
  ['blank lines stay', '}', 'leaf a {\n\n\nwidth 2 m\n}|\n', 'leaf a {\n\n\n  width 2 m\n}\n'],
  ['a block with something broken in it stays', '}', 'leaf a {\nwidth   2 .. m\n}|\n', 'leaf a {\nwidth   2 .. m\n}\n'],
  [
    'something broken elsewhere is not in the way',
    '}',
    'motion {\nseat 1 .. s\n}\nleaf a {\nwidth   2 m\n}|\n',
    'motion {\nseat 1 .. s\n}\nleaf a {\n  width 2 m\n}\n',
  ],
  ['where braces do not pair, nothing', '}', 'motion {\nleaf a {\nwidth   2 m\n}|\n', 'motion {\nleaf a {\nwidth   2 m\n}\n'],
  ['a brace that closes nothing', '}', 'leaf   a\n}|\n', 'leaf   a\n}\n'],
  [
    'a line end lays out the line before, and the blanks of the new one',
    '\n',
    'leaf a {\n width  2  m\n|\n mass  5 kg\n}\n',
    'leaf a {\n  width 2 m\n  \n mass  5 kg\n}\n',
  ],
  ['CRLF', '\n', 'leaf a {\r\n width  2  m\r\n|\r\n}\r\n', 'leaf a {\r\n  width 2 m\r\n  \r\n}\r\n'],
  ['CR alone', '\n', 'leaf a {\r width  2  m\r|\r}\r', 'leaf a {\r  width 2 m\r  \r}\r'],
  ['CR alone, a brace', '}', 'leaf a {\rwidth   2 m\r  }|\r', 'leaf a {\r  width 2 m\r}\r'],
  ['behind a header', '\n', 'leaf   a {\n|\n}\n', 'leaf a {\n  \n}\n'],
  ['behind a block', '\n', 'leaf a {\n}\n   |\n', 'leaf a {\n}\n\n'],
  ['a new line that is not empty stays', '\n', 'leaf a {\n  width 2 m\n    |mass 5 kg\n}\n', 'leaf a {\n  width 2 m\n    mass 5 kg\n}\n'],
  ['a text that is not closed stays', '\n', 'site   "x\n|\n', 'site   "x\n\n'],
  ['the first line', '\n', '|\n', '\n'],
  ['another key', 'x', 'leaf a {\nwidth   2 mx|\n}\n', 'leaf a {\nwidth   2 mx\n}\n'],
])('%s', (_what, key, marked, after) => {
  expect(typing(marked, key)).toBe(after);
});

test('whatever is typed wherever: only blanks in the lines of the block, or of the two lines, change', () => {
  const pieces = ['{', '}', '"', '\n', 'leaf a {', 'wire   x', ' .. ', '±', '# '];
  const texts = fc
    .tuple(untidy, fc.array(fc.tuple(fc.nat(), fc.nat(20), fc.constantFrom(...pieces, '')), { maxLength: 3 }))
    .map(([text, cuts]) =>
      cuts.reduce(
        (now, [at, length, put]) => now.slice(0, at % (now.length + 1)) + put + now.slice((at % (now.length + 1)) + length),
        text,
      ),
    );
  fc.assert(
    fc.property(texts, fc.constantFrom('}', '\n'), fc.nat(), (text, key, place) => {
      const places = [...text].flatMap((character, i) => (character === key ? [i + 1] : []));
      const offset = places[place % Math.max(1, places.length)] ?? place % (text.length + 1);
      const done = typing(text.slice(0, offset) + '|' + text.slice(offset), key).split(/\r\n|\r|\n/);
      const before = linesOf(text.includes('|') ? text.replace('|', '') : text);
      expect(done.length).toBe(before.length);
      done.forEach((line, i) => expect(line.replace(/\s+/g, '')).toBe((before[i] as string).replace(/\s+/g, '')));
      const changed = done.flatMap((line, i) => (line === before[i] ? [] : [i]));
      const here = lineOf(text, offset);
      expect(changed.every((line) => line <= here)).toBe(true);
      if (key === '\n') expect(changed.every((line) => line >= here - 1)).toBe(true);
    }),
    { numRuns: 400 },
  );
});
