// Carets under the right characters, for any line whatever.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { excerptOf, visible, wrapped } from '../../server/cli/display.ts';

const hostile = fc.string({
  unit: fc.constantFrom(
    'a',
    ' ',
    '\t',
    '{',
    '"',
    '漢',
    'é',
    'e\u0301',
    '🚪',
    '\u001b',
    '\0',
    '\u202e',
    '\u200b',
    '\ud800',
    '\udc00',
    '\u0085',
    '…',
  ),
  maxLength: 400,
});

test('an excerpt fits its room, has a caret, and nothing in it drives a terminal', () => {
  fc.assert(
    fc.property(hostile, fc.nat(420), fc.nat(420), fc.integer({ min: 40, max: 160 }), (line, from, length, room) => {
      const { line: shown, carets } = excerptOf(line, from, from + length, room);
      expect(carets).toContain('^');
      expect(carets.length).toBeLessThanOrEqual(room + 1);
      expect(shown).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u200b\u202a-\u202e]|\p{Cs}/u);
    }),
  );
});

test('the carets stand under the very characters, where each has one column', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('a', 'b', ' ', 'ü', '{'), maxLength: 600 }),
      fc.nat(600),
      fc.integer({ min: 1, max: 30 }),
      (rest, before, length) => {
        const line = rest.slice(0, before) + '!'.repeat(length) + rest.slice(before);
        const from = line.indexOf('!');
        const { line: shown, carets } = excerptOf(line, from, from + length, 100);
        expect(carets.indexOf('^')).toBe(shown.indexOf('!'));
        expect(carets.lastIndexOf('^')).toBe(shown.lastIndexOf('!'));
      },
    ),
  );
});

test('carets behind tabs and wide characters', () => {
  expect(excerptOf('\tx 漢字 y', 6, 7, 80)).toEqual({ line: '    x 漢字 y', carets: '           ^' });
  expect(excerptOf('abc', 3, 3, 80)).toEqual({ line: 'abc', carets: '   ^' });
  expect(excerptOf('', 0, 0, 80)).toEqual({ line: '', carets: '^' });
});

test('a line that just fits is shown whole, with its caret at the very end', () => {
  const line = 'a'.repeat(39);
  expect(excerptOf(line, 39, 39, 40)).toEqual({ line, carets: `${' '.repeat(39)}^` });
  expect(excerptOf(line + 'b', 39, 40, 40)).toEqual({ line: line + 'b', carets: `${' '.repeat(39)}^` });
  expect(excerptOf(line + 'bc', 40, 41, 40).carets).toContain('^');
});

test('a text keeps its words when it is broken into lines', () => {
  fc.assert(
    fc.property(
      fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { minLength: 1, maxLength: 60 }),
      fc.integer({ min: 40, max: 120 }),
      (words, width) => {
        const lines = wrapped(words.join(' '), width, '  ').split('\n');
        expect(lines.map((line) => line.trim()).join(' ')).toBe(words.join(' '));
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
      },
    ),
  );
});

test('what cannot be seen is made visible', () => {
  expect(visible('a\u001b[31m\r\nb\tc\u007f\u0085\u202e\ud800')).toBe('a␛[31m b c␡<0085><202E><D800>');
  expect(visible('🚪 “é”')).toBe('🚪 “é”');
});
