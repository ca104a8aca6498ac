// The canonical form says what the text said, keeps every comment, and is itself in canonical form.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, print, printValue, withoutUnseen } from '../../grammar/index.ts';
import { readFile } from '../../server/vocabulary/index.ts';
import { fileOf, render, styleOf } from './arbitrary.ts';
import { canonicalCases } from './canonical.ts';
import { examples } from './examples.ts';
import { factsOf, shapeOf } from './meaning.ts';

function holdsFor(text: string): void {
  const tree = parse(text);
  expect(tree.problems).toEqual([]);
  const printed = print(tree);
  const again = parse(printed);
  expect(again.problems).toEqual([]);
  expect(shapeOf(again)).toEqual(shapeOf(tree));
  expect(factsOf(readFile(again))).toEqual(factsOf(readFile(tree)));
  expect(readFile(again).problems.map((problem) => problem.kind)).toEqual(readFile(tree).problems.map((problem) => problem.kind));
  expect(again.comments.map((comment) => comment.text)).toEqual(tree.comments.map((comment) => comment.text.trimEnd()));
  expect(print(again)).toBe(printed);
  expect(printed).not.toMatch(/[ \t]\n|\n\n\n|\r|^ *\t/m);
  if (printed !== '') expect(printed).toMatch(/[^\n]\n$/);
}

test('random files in any style', () => {
  fc.assert(
    fc.property(fileOf, styleOf, (nodes, style) => holdsFor(render(nodes, style))),
    { numRuns: 500 },
  );
});

test('the example files, which are in canonical form', () => {
  for (const { path, text } of examples()) {
    holdsFor(text);
    expect(print(parse(text)), path).toBe(text);
  }
});

test('a comment keeps its neighbour', () => {
  fc.assert(
    fc.property(fileOf, styleOf, (nodes, style) => {
      // The token before each comment is the same before and after, but for braces: a comment before a brace goes above its header.
      const text = render(nodes, style);
      const neighbours = (source: string): (string | undefined)[] => {
        const tree = parse(source);
        return tree.comments.map((comment) => {
          const line =
            source
              .slice(0, comment.start)
              .split(/[\r\n]/)
              .pop()
              ?.trim() ?? '';
          return line === '' ? undefined : line.replace(/\s+/g, ' ');
        });
      };
      const before = neighbours(text);
      const after = neighbours(print(parse(text)));
      before.forEach((line, i) => {
        if (line === undefined) expect(after[i] === undefined || /[{}]/.test(after[i] ?? '')).toBe(true);
      });
    }),
    { numRuns: 200 },
  );
});

describe('the canonical form, case by case', () => {
  test.each(canonicalCases)('%s', (_, text, canonical) => {
    expect(print(parse(text))).toBe(canonical);
    expect(print(parse(canonical))).toBe(canonical);
  });
});

test('a value printed by itself is read as the same value', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (raw) => {
      const text = withoutUnseen(raw.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Cn}\p{Co}]/gu, ''));
      const [value] = parse('use ' + printValue({ kind: 'text', text, start: 0, end: 0 })).items[0]?.values ?? [];
      expect(value).toMatchObject({ kind: 'text', text });
    }),
  );
});

test('a change of one fact is a change of one line', () => {
  for (const { text } of examples('sound')) {
    const changed = text.replace(/mass \d+ kg/, 'mass 77 kg');
    const [before, after] = [print(parse(text)).split('\n'), print(parse(changed)).split('\n')];
    expect(after.length).toBe(before.length);
    expect(after.filter((line, i) => line !== before[i]).length).toBeLessThan(2);
  }
});
