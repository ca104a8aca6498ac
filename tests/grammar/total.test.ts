// The parser takes every text there is: it never throws, its spans lie in bounds and inside each other, and nothing that
// stands in the text is passed over in silence.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  lineStarts,
  longestText,
  parse,
  positionAt,
  print,
  type Span,
  type Statement,
  scan,
  type Tree,
  unseenRanges,
  type Value,
  validateGrammar,
  withoutUnseen,
} from '../../grammar/index.ts';
import { readFile } from '../../server/vocabulary/index.ts';
import { fileOf, render, styleOf } from './arbitrary.ts';
import { examples } from './examples.ts';

/** What is wrong with the spans of a tree; nothing, if all is well. */
function faultsOfSpans(tree: Tree): string[] {
  const faults: string[] = [];
  const inside = (what: string, span: Span, outer: Span): void => {
    if (!(span.start >= outer.start && span.end <= outer.end && span.start <= span.end))
      faults.push(`${what} ${span.start}–${span.end} is not in ${outer.start}–${outer.end}`);
  };
  const value = (it: Value, outer: Span): void => {
    inside(it.kind, it, outer);
    if (it.kind === 'number') for (const part of [it.unit, it.plusMinus, it.upTo]) if (part !== undefined) value(part, it);
    if (it.kind === 'model') value(it.name, it);
    if (it.kind === 'word' && withoutUnseen(tree.text.slice(it.start, it.end)) !== it.text)
      faults.push(`the word “${it.text}” does not stand at ${it.start}`);
  };
  const inOrder = (what: string, spans: readonly Span[]): void => {
    for (let i = 1; i < spans.length; i++)
      if ((spans[i] as Span).start < (spans[i - 1] as Span).end) faults.push(`${what} ${i} begins before the one before it ends`);
  };
  const items = (list: readonly Statement[], outer: Span): void => {
    inOrder('statement', list);
    for (const item of list) {
      inside('statement', item, outer);
      if (item.word !== undefined) value(item.word, item);
      for (const it of item.values) value(it, item);
      inOrder('value', [...(item.word === undefined ? [] : [item.word]), ...item.values, ...(item.body === undefined ? [] : [item.body])]);
      if (item.body === undefined) continue;
      inside('body', item.body, item);
      items(item.body.items, item.body);
    }
  };
  const whole = { start: 0, end: tree.text.length };
  items(tree.items, whole);
  inOrder('comment', tree.comments);
  for (const comment of tree.comments) inside('comment', comment, whole);
  for (const problem of tree.problems) inside(problem.kind, problem, whole);
  return faults;
}

/** What of a text is neither blank, nor a token, nor a comment, nor reported as not allowed. */
function passedOver(text: string): string {
  const { tokens, comments, problems } = scan(text);
  const spans = [
    ...tokens.map((token) => ({ start: token.startOffset, end: token.endOffset as number })),
    ...comments,
    ...problems.filter((problem) => problem.kind === 'character-not-allowed'),
  ].sort((a, b) => a.start - b.start);
  let out = '';
  let at = 0;
  for (const span of spans) {
    if (span.start > at) out += text.slice(at, span.start);
    at = Math.max(at, span.end);
  }
  return (out + text.slice(at)).replace(/\s/g, '');
}

/** How many values, words and braces the tree holds of those that were scanned; each must be in it or be reported. */
function check(text: string): void {
  const tree = parse(text);
  expect(faultsOfSpans(tree)).toEqual([]);
  expect(passedOver(text)).toBe('');
  const reading = readFile(tree);
  for (const problem of reading.problems) {
    expect(problem.start).toBeGreaterThanOrEqual(0);
    expect(problem.end).toBeLessThanOrEqual(text.length);
    expect(problem.start).toBeLessThanOrEqual(problem.end);
  }
  const starts = lineStarts(text);
  for (const problem of tree.problems) expect(positionAt(starts, problem.start).line).toBeLessThan(starts.length);
  expect(parse(print(tree)).problems.filter((problem) => problem.kind === 'text-not-closed' || problem.kind.startsWith('brace'))).toEqual(
    [],
  );
}

const runs = { numRuns: 500 };
const pieces = [
  '{',
  '}',
  '\n',
  '\r\n',
  '\r',
  ' ',
  '\t',
  '"',
  '#',
  ':',
  ',',
  '..',
  '...',
  '±',
  '+-',
  '+',
  '-',
  '\u2212',
  '\\',
  '5',
  '1.5',
  '.5',
  '2100',
  '2026-05-14',
  '2026-5-1',
  'mm',
  'leaf',
  'panel',
  'width',
  'use',
  'accept',
  'language',
  '1',
  'by',
  'to',
  'because',
  '°C',
  'Ω',
  '門',
  '😀',
  '\ud800',
  '\udc00',
  '\0',
  '\u2028',
  '\ufeff',
  '\u200b',
  '\u00ad',
  '\u{e0061}',
  '\u00a0',
  'a..b',
  '-1',
  '--',
  'x-1',
  '8k2',
  '1/min',
];

test('the grammar passes chevrotain’s own checks', () => {
  expect(() => validateGrammar()).not.toThrow();
});

test('random unicode', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), check), runs);
  fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), check), runs);
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 200 }).map((codes) => String.fromCharCode(...codes)),
      check,
    ),
    runs,
  );
});

test('random pieces of the language', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...pieces), { maxLength: 80 }).map((list) => list.join('')),
      check,
    ),
    { numRuns: 1500 },
  );
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...pieces), { maxLength: 80 }).map((list) => list.join(' ')),
      check,
    ),
    { numRuns: 1500 },
  );
});

test('random changes of the example files', () => {
  const files = examples();
  expect(files.length).toBeGreaterThan(3);
  const change = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.integer({ min: 0, max: 40 }),
    put: fc.constantFrom('', ...pieces),
  });
  fc.assert(
    fc.property(fc.nat({ max: files.length - 1 }), fc.array(change, { minLength: 1, maxLength: 6 }), (file, changes) => {
      let text = files[file]?.text ?? '';
      for (const { at, cut, put } of changes) {
        const start = Math.floor(at * text.length);
        text = text.slice(0, start) + put + text.slice(start + cut);
      }
      check(text);
    }),
    { numRuns: 400 },
  );
});

test('random well-formed files have no problem of text', () => {
  fc.assert(
    fc.property(fileOf, styleOf, (nodes, style) => {
      const text = render(nodes, style);
      check(text);
      expect(parse(text).problems).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('these checks see a fault', () => {
  const tree = parse('leaf a {\n}\n');
  const first = tree.items[0] as Statement;
  expect(faultsOfSpans({ ...tree, items: [{ ...first, end: 99 }] })).not.toEqual([]);
  expect(faultsOfSpans({ ...tree, items: [first, first] })).not.toEqual([]);
});

describe('texts out of the ordinary', () => {
  const kinds = (text: string): string[] => [...new Set(parse(text).problems.map((problem) => problem.kind))];

  test('100,000 nested braces', () => {
    for (const text of ['a {'.repeat(100_000) + '}'.repeat(100_000), 'a {\n'.repeat(100_000) + '}\n'.repeat(100_000)])
      expect(kinds(text)).toEqual(['nested-too-deep']);
    expect(kinds('{'.repeat(100_000) + '}'.repeat(100_000))).toContain('nested-too-deep');
  });
  test('200,000 stray braces are one mistake', () => {
    expect(parse('}'.repeat(200_000)).problems).toEqual([{ kind: 'brace-stray', start: 0, end: 200_000, detail: {} }]);
  });
  test('50,000 blocks of which none is closed are all read', () => {
    const tree = parse('leaf a {\n  width 2 m\n'.repeat(50_000));
    expect(tree.items.length).toBe(50_000);
    expect(tree.problems.length).toBe(50_000);
  });
  test('200,000 words on one line', () => {
    const tree = parse('w '.repeat(200_000));
    expect(tree.problems).toEqual([]);
    expect(tree.items[0]?.values.length).toBe(199_999);
  });
  test('a text that is too long is not read, and says so', () => {
    for (const text of ['a'.repeat(5_000_000), 'language 1\n' + ' '.repeat(longestText)]) {
      const tree = parse(text);
      expect(tree.problems.map((problem) => problem.kind)).toEqual(['file-too-large']);
      expect(tree.items).toEqual([]);
      expect(readFile(tree).problems.map((problem) => problem.kind)).toEqual(['file-too-large']);
    }
  });
  test('one line as long as a text may be', () => {
    expect(kinds('a'.repeat(longestText))).toEqual([]);
    expect(kinds('leaf "' + 'a'.repeat(longestText - 6))).toEqual(['text-not-closed']);
  });
  test('half a surrogate pair, a null and a line separator are told where they stand', () => {
    for (const bad of ['\ud800', '\udc00', '\0', '\u2028', '\u2029', '\u200b', '\u202e', '\u2066', '\ufffe']) {
      const text = `language 1\nleaf a {\n  width 2${bad} m\n}\n`;
      expect(parse(text).problems).toEqual([{ kind: 'character-not-allowed', start: 29, end: 30, detail: { found: bad, within: 'line' } }]);
      expect(readFile(parse(text)).entities.leaf[0]?.facts.width?.value).toBe(2);
      expect(kinds(`leaf "a${bad}b" {\n}\n`)).toEqual(['character-not-allowed']);
      // A backslash hides nothing.
      expect(kinds(`leaf "a\\${bad}b" {\n}\n`)).toEqual(['character-not-allowed']);
    }
    expect(kinds('leaf 😀 "😀" {\n}\n')).toEqual([]);
    expect(kinds('leaf "\\😀 \\a \\\\ \\"" {\n}\n')).toEqual([]);
  });
  test('what shows nothing: every character that Unicode calls ignorable, and the four kinds that are said', () => {
    // https://www.unicode.org/Public/UCD/latest/ucd/DerivedCoreProperties.txt, Default_Ignorable_Code_Point, as the engine has it
    const listed = new Set(unseenRanges.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => from + i)));
    const more: number[] = [];
    for (let code = 0; code <= 0x10ffff; code++) {
      if (/^\p{Default_Ignorable_Code_Point}$/u.test(String.fromCodePoint(code))) expect(listed.has(code), code.toString(16)).toBe(true);
      else if (listed.has(code)) more.push(code);
    }
    expect(more).toEqual([0x2800, 0xfff9, 0xfffa, 0xfffb, ...Array.from({ length: 16 }, (_, i) => 0x13430 + i), 0x1d159]);
  });
  test('what shows nothing is told wherever it stands, and a word is read as it is seen', () => {
    for (const [from, to] of unseenRanges)
      for (const code of [from, to]) {
        const bad = String.fromCodePoint(code);
        const within = (text: string): unknown[] =>
          parse(text).problems.map(({ kind, start, detail }) => [
            kind,
            text.slice(start).startsWith(bad),
            'within' in detail && detail.within,
          ]);
        expect(within(`leaf ea${bad}st {\n}\n`), code.toString(16)).toEqual([['character-not-allowed', true, 'word']]);
        expect(within(`leaf east "a${bad}b" {\n}\n`)).toEqual([['character-not-allowed', true, 'text']]);
        expect(within(`leaf east { # a${bad}b\n}\n`)).toEqual([['character-not-allowed', true, 'comment']]);
        expect(within(`leaf east${bad} {\n}\n`)).toEqual([['character-not-allowed', true, 'line']]);
        const { leaf, site } = readFile(parse(`site "a${bad}b" {\n}\nleaf ea${bad}st {\n wid${bad}th 2 m${bad}\n}\n`)).entities;
        expect([leaf[0]?.name, site[0]?.title, leaf[0]?.facts.width?.value]).toEqual(['east', 'ab', 2]);
      }
    expect(readFile(parse('language 1\nuse "li\u200bb.gate"\n')).uses[0]?.path).toBe('lib.gate');
  });
  test('a run of them is one mistake', () => {
    expect(parse('leaf a\u200b\u{e0061}\u00adb {\n}\n').problems).toMatchObject([{ start: 6, end: 10 }]);
    expect(parse('# a\u200b\u202e\0b\n').problems).toMatchObject([{ start: 3, end: 6 }]);
  });
  test('a byte order mark at the start is nothing', () => {
    const tree = parse('\ufefflanguage 1\nleaf a {\n  width 2 m\n');
    expect(tree.problems.map((problem) => problem.kind)).toEqual(['brace-missing']);
    expect(readFile(parse('\ufefflanguage 1\n')).problems).toEqual([]);
    expect(kinds('\ufeff\ufefflanguage 1\n')).toEqual(['character-not-allowed']);
  });
  test('lines may end in CR alone, LF alone or both', () => {
    for (const end of ['\r', '\n', '\r\n']) {
      const text = ['language 1', '# a remark', 'leaf a {', '  width 2 m', '}', ''].join(end);
      const reading = readFile(parse(text));
      expect(reading.problems).toEqual([]);
      expect(reading.entities.leaf[0]?.facts.width?.value).toBe(2);
      expect(lineStarts(text).length).toBe(6);
    }
  });
  test('a file of nothing', () => {
    for (const text of ['', ' ', '\n\n', '\ufeff', '# only a remark']) expect(parse(text).problems).toEqual([]);
  });
});

test('the position of an offset is the one found by counting', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', '\n', '\r', '\r\n', '😀'), { maxLength: 40 }), fc.nat(), (parts, pick) => {
      const text = parts.join('');
      const offset = pick % (text.length + 1);
      const before = text
        .slice(0, offset)
        .replace(/\r\n/g, '\n')
        .replace(/\r$/, (end) => (text.charAt(offset) === '\n' ? '' : end));
      const lines = before.split(/[\r\n]/);
      const { line, column } = positionAt(lineStarts(text), offset);
      expect(line).toBe(lines.length - 1);
      if (!(text.charAt(offset - 1) === '\r' && text.charAt(offset) === '\n'))
        expect(column).toBe((lines[lines.length - 1] as string).length);
    }),
    runs,
  );
});
