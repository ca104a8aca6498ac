// Where an edit that rules offer takes hold: a line that is put into a block or taken out, and what lies around it. Texts are
// written as they are and as they should become.
import { describe, expect, test } from 'vitest';
import { lineEndIn, parse, type Statement } from '../../grammar/index.ts';
import { repeatsAnEnd } from '../../server/circuits/index.ts';
import type { Installation } from '../../server/model/index.ts';
import { addLine, factEndOf, lineEndOf, lineStartOf, removal, replaceBy, without } from '../../server/rules/fixes.ts';
import { shown } from '../../server/rules/numbers.ts';
import { blockLost, isRepeatedName, lost } from '../../server/rules/unread.ts';
import { ohmsInWords, quotedList, written } from '../../server/rules/words.ts';
import { applyEdits, installationOf } from '../kit/pages.ts';

const blockIn = (text: string, of: string): Statement => {
  const all = (items: readonly Statement[]): readonly Statement[] => items.flatMap((item) => [item, ...all(item.body?.items ?? [])]);
  return all(parse(text).items).find((item) => item.word?.text === of) as Statement;
};

describe('a line put into a block', () => {
  const added = (text: string, like: readonly string[] = [], of = 'panel'): string =>
    applyEdits(text, [addLine(text, blockIn(text, of), 'isolator "x"', like)]);
  test.each<[string, string, string]>([
    [
      'behind the last one, as far in',
      'panel a {\n  supply 1 V\n    board 2\n}\n',
      'panel a {\n  supply 1 V\n    board 2\n    isolator "x"\n}\n',
    ],
    [
      'behind the comment of the last one',
      'panel a {\n  supply 1 V # old\n  # more\n}\n',
      'panel a {\n  supply 1 V # old\n  isolator "x"\n  # more\n}\n',
    ],
    ['with tabs as the others', 'panel a {\n\tsupply 1 V\n}\n', 'panel a {\n\tsupply 1 V\n\tisolator "x"\n}\n'],
    ['first, where there is none', 'panel a {\n}\n', 'panel a {\n  isolator "x"\n}\n'],
    ['first, behind a comment of the head', 'panel a { # north\n}\n', 'panel a { # north\n  isolator "x"\n}\n'],
    ['between braces on one line', 'panel a {}\n', 'panel a {\n  isolator "x"\n}\n'],
    ['behind what stands on the line of the head', 'panel a { supply 1 V\n}\n', 'panel a { supply 1 V\n  isolator "x"\n}\n'],
    ['before a brace on the line of the last one', 'panel a {\n    supply 1 V }\n', 'panel a {\n    supply 1 V\n    isolator "x"\n }\n'],
    ['between the line of the head and its brace', 'panel a { supply 1 V }\n', 'panel a { supply 1 V\n  isolator "x"\n }\n'],
    ['with the line ends of the file', 'panel a {\r\n  supply 1 V\r\n}\r\n', 'panel a {\r\n  supply 1 V\r\n  isolator "x"\r\n}\r\n'],
    ['with a body, where the block has none', 'panel a\n', 'panel a {\n  isolator "x"\n}\n'],
    ['at the end of a block that nobody closed', 'panel a {\n  supply 1 V', 'panel a {\n  supply 1 V\n  isolator "x"\n'],
  ])('stands %s', (_, before, after) => expect(added(before)).toBe(after));
  test('stands behind the last of its like', () => {
    const text = 'panel a {\n  wire b to C\n  link C D\n  supply 1 V\n}\n';
    expect(added(text, ['wire'])).toBe('panel a {\n  wire b to C\n  isolator "x"\n  link C D\n  supply 1 V\n}\n');
    expect(added(text, ['wire', 'link'])).toBe('panel a {\n  wire b to C\n  link C D\n  isolator "x"\n  supply 1 V\n}\n');
    expect(added(text, ['board'])).toBe('panel a {\n  wire b to C\n  link C D\n  supply 1 V\n  isolator "x"\n}\n');
  });
  test('stands right behind the one of its like, where more stands on that line', () => {
    expect(added('panel a {\n  box b { board 2 } supply 1 V\n}\n', ['box'])).toBe(
      'panel a {\n  box b { board 2 }\n  isolator "x"\n supply 1 V\n}\n',
    );
    expect(added('panel a {\n  box b { board 2 }supply 1 V\n}\n', ['box'])).toBe(
      'panel a {\n  box b { board 2 }\n  isolator "x"\nsupply 1 V\n}\n',
    );
    expect(added('panel a {\n  box b { board 2 }\n  supply 1 V\n}\n', ['box'])).toBe(
      'panel a {\n  box b { board 2 }\n  isolator "x"\n  supply 1 V\n}\n',
    );
    expect(added('panel a {\n  box b { board 2 }\nsupply 1 V\n}\n', ['box'])).toBe(
      'panel a {\n  box b { board 2 }\n  isolator "x"\nsupply 1 V\n}\n',
    );
  });
  test('a line without a word is none of its like', () =>
    expect(added('panel a {\n  wire b to C\n  "x"\n}\n', ['wire'])).toBe('panel a {\n  wire b to C\n  isolator "x"\n  "x"\n}\n'));
  test('stands in the second block and not in the first', () => {
    const text = 'leaf west {\n  width 2 m\n}\n  panel a {\n    supply 1 V\n  }\n';
    expect(added(text)).toBe('leaf west {\n  width 2 m\n}\n  panel a {\n    supply 1 V\n    isolator "x"\n  }\n');
  });
});

describe('a statement taken out', () => {
  const gone = (text: string, piece: string): string => {
    const start = text.indexOf(piece);
    return applyEdits(text, [without(text, start, start + piece.length)]);
  };
  test.each<[string, string, string]>([
    ['takes its line with it', 'a\n  XX\nb\n', 'a\nb\n'],
    ['and blanks behind it', 'a\n\tXX \t\nb\n', 'a\nb\n'],
    ['and a line end of two characters', 'a\r\n  XX\r\nb\r\n', 'a\r\nb\r\n'],
    ['or of one', 'a\r  XX\rb\r', 'a\rb\r'],
    ['or of one, before an empty line', 'a\r  XX\r\r\nb', 'a\r\r\nb'],
    ['on the first line', '  XX\nb\n', 'b\n'],
    ['at the very beginning', 'XX\nb\n', 'b\n'],
    ['on the last line', 'a\n  XX', 'a\n'],
    ['leaves a comment behind it', 'a\n  XX  # c\nb\n', 'a\n  # c\nb\n'],
    ['leaves a comment behind it on the first line', 'XX # c\nb\n', '# c\nb\n'],
    ['leaves what stands before it', 'a { XX\nb\n', 'a {\nb\n'],
    ['leaves what stands before and behind it', 'a XX b\n', 'a b\n'],
    ['leaves the blank line in front of a file’s end', 'a\n\nXX', 'a\n\n'],
    ['before a line end that another follows', 'XX\n\nb', '\nb'],
  ])('%s', (_, before, after) => expect(gone(before, 'XX')).toBe(after));
  test('is offered where it is of one line, and by the name given', () => {
    expect(removal('Take it', 'a\nXX\nb', 2, 4, true)).toEqual([{ title: 'Take it', edits: [{ start: 2, end: 5, text: '' }], safe: true }]);
    expect(removal('Take it', 'a\nXX\nb', 2, 5, true)).toEqual([]);
    expect(removal('Take it', 'a\rb', 0, 3, false)).toEqual([]);
  });
});

describe('places on a line', () => {
  test('its ends', () => {
    const text = 'ab\ncd\r\nef';
    expect([0, 1, 2].map((at) => [lineStartOf(text, at), lineEndOf(text, at)])).toEqual([
      [0, 2],
      [0, 2],
      [0, 2],
    ]);
    expect([3, 5, 7, 9].map((at) => [lineStartOf(text, at), lineEndOf(text, at)])).toEqual([
      [3, 5],
      [3, 5],
      [7, 9],
      [7, 9],
    ]);
  });
  test('the last thing that is no blank and no comment', () => {
    const end = (text: string): string => text.slice(0, factEndOf(text, 0));
    expect(end('ab  # c')).toBe('ab');
    expect(end('ab c\t')).toBe('ab c');
    expect(end('ab c\nd')).toBe('ab c');
    expect(end('  ')).toBe('');
    expect(end('ab "c # d" e # f')).toBe('ab "c # d" e');
    // A quote or a backslash behind a backslash closes no text; outside a text a backslash is nothing.
    expect(end('ab "c \\" # d" # e')).toBe('ab "c \\" # d"');
    expect(end('ab "c \\\\" # d')).toBe('ab "c \\\\"');
    expect(end('ab \\# d')).toBe('ab \\');
    expect(end('ab "c \\')).toBe('ab "c \\');
    expect(end('ab "c \\\n# d')).toBe('ab "c \\');
  });
  test('the line end that a file uses is that of most of its lines, and of as many the first', () => {
    expect(['', 'a', 'a\nb\r\n', '\nb\r\n', 'a\r\nb\n', '\r\nb\n', 'a\rb\n', '\rb', 'a\r\nb\nc\n', '\ra\nb\n\r\r'].map(lineEndIn)).toEqual([
      '\n',
      '\n',
      '\n',
      '\n',
      '\r\n',
      '\r\n',
      '\r',
      '\r',
      '\n',
      '\r',
    ]);
  });
  test('the word that was probably meant is offered where one is', () => {
    expect(replaceBy({ start: 3, end: 5 }, 'seat', true)).toEqual([
      { title: 'Write “seat”', edits: [{ start: 3, end: 5, text: 'seat' }], safe: true },
    ]);
    expect(replaceBy({ start: 3, end: 5 }, undefined, true)).toEqual([]);
  });
});

describe('what a file says, in words', () => {
  const first = (line: string, after?: string): string => written(parse(`${line}\n`).items[0] as Statement, after);
  test('a quantity as it was written', () => {
    expect(first('terminator 8.2 kohm ± 5 %')).toBe('8.2 kohm');
    expect(first('supply 230 V')).toBe('230 V');
    expect(first('circuits 3')).toBe('3');
    expect(first('output V1 gives 0.4 A at 24 V')).toBe('0.4 A');
    expect(first('terminator')).toBe('');
    expect(first('terminator high')).toBe('');
  });
  test('or that behind a keyword', () => {
    expect(first('output V1 gives 0.4 A at 24 V', 'at')).toBe('24 V');
    expect(first('output V1 gives 0.4 A at 24 V', 'gives')).toBe('0.4 A');
    expect(first('carries 3 A "at" at 24 V', 'at')).toBe('24 V');
    expect(first('a 5 m "at" 3 A at 24 V', 'at')).toBe('24 V');
  });
  test('ohms', () =>
    expect([0.5, 999.94, 1000, 8200, 12345].map(ohmsInWords)).toEqual(['0.5 ohm', '999.9 ohm', '1 kohm', '8.2 kohm', '12.35 kohm']));
  test('numbers of three digits, of four from a thousand on', () =>
    expect([999.4, 1000, 1000.4, 1234.4, -1234.4, 0.2].map(shown)).toEqual(['999', '1000', '1000', '1234', '-1234', '0.2']));
  test('a list of names, as many as asked for', () => {
    expect(quotedList(['A'])).toBe('“A”');
    expect(quotedList(['A', 'B'])).toBe('“A” and “B”');
    expect(quotedList(['A', 'B', 'C'])).toBe('“A”, “B” and “C”');
    expect(quotedList(['A', 'B', 'C', 'D'], 2)).toBe('“A”, “B” and 2 more');
    expect(quotedList(['A', 'B', 'C', 'D', 'E', 'F'])).toBe('“A”, “B”, “C”, “D”, “E” and “F”');
    expect(quotedList(['A', 'B', 'C', 'D', 'E', 'F', 'G'])).toBe('“A”, “B”, “C”, “D”, “E”, “F” and 1 more');
  });
});

describe('what may have been lost', () => {
  test('a line: one of that word, or one whose word nobody knows', () => {
    expect(lost([], 'panel', 'wire')).toBe(false);
    expect(lost(['wire'], 'panel', 'wire')).toBe(true);
    expect(lost(['link'], 'panel', 'wire')).toBe(false);
    expect(lost(['wier'], 'panel', 'wire')).toBe(true);
    expect(lost(['link', 'wire'], 'panel', 'wire')).toBe(true);
    expect(lost(['link', 'wier'], 'panel', 'wire')).toBe(true);
    expect(lost(['link', 'link'], 'panel', 'wire')).toBe(false);
  });
  test('a block: one of that word without a body, or one whose word is near it', () => {
    const of = (text: string) => installationOf(`language 1\nsite "x" {\n}\n${text}\n`);
    expect(blockLost(of('control a'), 'control')).toBe(true);
    expect(blockLost(of('controll a {\n}'), 'control')).toBe(true);
    expect(blockLost(of('control a {\n}'), 'control')).toBe(false);
    expect(blockLost(of('drive a'), 'control')).toBe(false);
    expect(blockLost(of('drvie a {\n}'), 'control')).toBe(false);
    // Something else is wrong with a word that is called or meant so.
    const base = of('');
    const withProblem = (problem: Installation['problems'][number]) => ({ ...base, problems: [problem] });
    const at = { start: 0, end: 1 };
    const elsewhere = { blocks: [], outside: false };
    expect(blockLost(withProblem({ ...at, kind: 'name-missing', detail: { word: 'control', example: 'control a {' } }), 'control')).toBe(
      false,
    );
    const unknown = { name: 'x', what: 'sensor-model', meant: 'control', known: [] } as const;
    expect(blockLost(withProblem({ ...at, kind: 'model-unknown', detail: unknown }), 'control')).toBe(false);
    const word = { word: 'control', block: 'leaf', known: [], meant: undefined, elsewhere };
    expect(blockLost(withProblem({ ...at, kind: 'word-unknown', detail: word }), 'control')).toBe(false);
  });
  test('a name: the second of two, and none that is not written', () => {
    const installation = installationOf('language 1\nsensor a {\n}\nsensor a {\n  height 0\n}\nsensor b {\n}\nsensor {\n}\n');
    expect(installation.sensors.map(({ nameAt }) => isRepeatedName(installation, nameAt))).toEqual([false, true, false, true]);
    const { nameAt } = installation.sensors[2] as (typeof installation.sensors)[number];
    expect(
      isRepeatedName(
        { ...installation, problems: [{ kind: 'name-unfit', start: nameAt?.start ?? 0, end: 0, detail: { name: 'b' } }] },
        nameAt,
      ),
    ).toBe(false);
  });
  test('an end: where it stands twice on one line', () => {
    const ends = (line: string) =>
      installationOf(`language 1\nuse "../library/panels.gate"\npanel main : rowan-pair {\n  ${line}\n}\n`).panels[0]?.links[0]?.ends ?? [];
    expect(repeatsAnEnd(ends('link G1 G0'))).toBe(false);
    expect(repeatsAnEnd(ends('link G1 G1'))).toBe(true);
    expect(repeatsAnEnd(ends('link G1 G0 G1'))).toBe(true);
    expect(repeatsAnEnd(ends('link G0 G1 G2 G1'))).toBe(true);
    expect(repeatsAnEnd(ends('link G0 G1 G2 H1'))).toBe(false);
    expect(repeatsAnEnd([])).toBe(false);
  });
});
