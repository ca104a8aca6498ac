import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import { formatting, lineEdits, withEdits, type Edit } from '../../server/editor/index.ts';
import { library, site } from './bench.ts';

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
  const start = text.indexOf('    mass  165');
  for (const edit of edits(text)) {
    expect(edit.start).toBeGreaterThanOrEqual(start);
    expect(edit.end).toBeLessThanOrEqual(start + '    mass  165   kg'.length);
    expect(edit.text.trim()).toBe('');
  }
});

test('a broken shape is refused, with the line', () => {
  const found = formatting('language 1\nleaf a {\n');
  expect(found).toMatchObject({ refused: expect.stringContaining('line 2'), at: { start: 11 } });
});

/** A canonical text made untidy: blanks, blank lines, line ends. */
const untidy = fc
  .tuple(fc.constantFrom(site(), ...library.values()), fc.constantFrom('\n', '\r\n', '\r'), fc.array(fc.tuple(fc.nat(400), fc.constantFrom(' ', '\t', '   ', 'L', 'LL')), { maxLength: 30 }), fc.boolean())
  .map(([text, lineEnd, places, isCut]) => {
    const lines = text.split('\n');
    for (const [at, put] of places) {
      const index = at % lines.length;
      const line = lines[index] as string;
      lines[index] = put.startsWith('L') ? put.replaceAll('L', '\n') + line : /["#]/.test(line) ? put + line : line.replace(/ +/g, put + ' ');
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
