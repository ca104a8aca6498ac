// Where a brace is missing or one too many: what is offered puts the brace where reading takes it to be, so that a mended file
// is read as the broken one was.
import { describe, expect, test } from 'vitest';
import { applyEdits, judge } from '../kit/pages.ts';

const found = (text: string) => judge(text).findings.filter(({ rule }) => rule.startsWith('brace-'));
const others = (text: string): string[] =>
  judge(text)
    .findings.filter(({ rule }) => !rule.startsWith('brace-'))
    .map(({ rule, what }) => `${rule}: ${what}`)
    .sort();
const mended = (text: string): string =>
  applyEdits(
    text,
    found(text).flatMap(({ fixes }) => fixes.flatMap(({ edits }) => edits)),
  );

describe('a closing brace is offered below the last line of its block', () => {
  /** In each `<>` is the place where the brace is to be written; the lines are the rest of the file. */
  const cases: Record<string, string> = {
    'at the end of the file': 'language 1\nleaf west {\n  width 2 m<\n}>\n',
    'at the end of a file whose last line does not end': 'language 1\nleaf west {\n  width 2 m<\n}>',
    'of a block with nothing in it': 'language 1\nleaf west {<\n}>\n',
    'of a block that has a fact on its first line': 'language 1\nleaf west { width 2 m<\n}>\nmotion {\n  seat 1 s\n}\n',
    'above a line at the left edge that opens no block':
      'language 1\nleaf west {\n  width 2 m<\n}>\nuse "../library/drives.gate"\n\nmotion {\n  seat 1 s\n}\n',
    'not below comments that are followed by nothing of it':
      'language 1\nleaf west {\n  width 2 m # as drawn<\n}>\n# Below: the motion.\n  # It is slow.\n\nmotion {\n  seat 1 s\n}\n',
    'below what follows an empty line and a comment at the left edge':
      'language 1\nleaf west {\n  width 2 m\n\n# weighed\n  mass 100 kg<\n}>\nmotion {\n  seat 1 s\n}\n',
    'below the blocks in it':
      'language 1\npanel-model heron "Two" {\n  selector a "A" {\n    option b "B"\n  }<\n}>\nmotion {\n  seat 1 s\n}\n',
    'of an inner block, as deep as its first line':
      'language 1\npanel-model heron "Two" {\n\tselector a "A" {\n\t\toption b "B"<\n\t}>\n\tselector c "C" {\n\t\toption d "D"\n\t}\n}\n',
    'of an inner block that the outer one ends': 'language 1\npanel-model heron "Two" {\n  selector a "A" {\n    option b "B"<\n  }>\n}\n',
    'where lines are not indented, above the next block': 'language 1\nleaf west {\nwidth 2 m\nmass 100 kg<\n}>\nmotion {\nseat 1 s\n}\n',
    'where lines are not indented, not above a brace in a text':
      'language 1\nleaf west {\nnote "a {"\nmass 100 kg<\n}>\nmotion {\nseat 1 s\n}\n',
    'where lines are not indented, not above a brace in a comment':
      'language 1\nleaf west {\nwidth 2 m # {\nmass 100 kg<\n}>\nmotion {\nseat 1 s\n}\n',
    'of a block whose opening brace has a line of its own': 'language 1\nleaf west\n{\n  width 2 m<\n}>\nmotion {\n  seat 1 s\n}\n',
    'of such a block with nothing in it': 'language 1\nleaf west\n\n{<\n}>\nmotion {\n  seat 1 s\n}\n',
    'of such a block with a brace in its text and in its comments':
      'language 1\nsite "\\"a {" # {\n# { and {\n{\n  users limited<\n}>\nmotion {\n  seat 1 s\n}\n',
    'with the line ends of Windows': 'language 1\r\nleaf west {\r\n  width 2 m<\r\n}>\r\n\r\nmotion {\r\n  seat 1 s\r\n}\r\n',
    'with the line ends of old': 'language 1\rleaf west {\r  width 2 m<\r}>\r\rmotion {\r  seat 1 s\r}\r',
    'behind a mark of byte order': '\ufeffleaf west {\n  width 2 m<\n}>\nmotion {\n  seat 1 s\n}\n',
  };
  test.each(Object.entries(cases))('%s', (_, marked) => {
    const text = marked.replace(/<[^>]*>/u, '');
    const whole = marked.replace(/[<>]/gu, '');
    expect(mended(text)).toBe(whole);
    expect(found(text)).toHaveLength(1);
    expect(found(whole)).toEqual([]);
    // Reading took the block to end there.
    expect(others(text)).toEqual(others(whole));
  });

  test('never where the lines do not tell', () => {
    const behindAnother = 'language 1\nmotion { seat 1 s } leaf west {\n  width 2 m\n';
    const flatWithLoneBrace = 'language 1\nleaf west {\nwidth 2 m\nmotion\n{\nseat 1 s\n}\n';
    for (const text of [behindAnother, flatWithLoneBrace])
      expect(found(text).map(({ what, fixes }) => [what, fixes])).toEqual([['The block that starts with “leaf west” is not closed.', []]]);
    const flatWithin =
      'language 1\npanel-model heron "Two" {\n  selector a "A" {\n  option b "B"\n  selector c "C"\n  {\n    option d "D"\n  }\n}\n';
    expect(found(flatWithin).map(({ what, fixes }) => [what, fixes])).toEqual([
      ['The block that starts with “selector a "A"” is not closed.', []],
    ]);
  });

  test('two blocks that are not closed are closed each by itself', () => {
    expect(mended('language 1\nleaf west {\n  width 2 m\nleaf east {\n  width 3 m\n')).toBe(
      'language 1\nleaf west {\n  width 2 m\n}\nleaf east {\n  width 3 m\n}\n',
    );
  });
});

describe('the head of the block is said as it stands, without brace and comment', () => {
  const cases: Record<string, string> = {
    'leaf west {\n  width 2 m\n': 'leaf west',
    'leaf west   {\n  width 2 m\n': 'leaf west',
    'leaf west{ width 2 m\n': 'leaf west',
    'leaf west # { the left one\n{\n  width 2 m\n': 'leaf west',
    'site "a { b" {\n  users limited\n': 'site "a { b"',
    'site "a \\" {" {\n  users limited\n': 'site "a \\" {"',
    'site "a\n{\n  users limited\n': 'site "a',
  };
  test.each(Object.entries(cases))('%j', (text, head) => {
    expect(found(`language 1\n${text}`).map(({ what }) => what)).toEqual([`The block that starts with “${head}” is not closed.`]);
  });
});

describe('an opening brace is offered at the end of the first line', () => {
  test.each([
    ['language 1\nmotion\n  seat 1 s\n}\n', 'language 1\nmotion {\n  seat 1 s\n}\n', 'motion'],
    ['language 1\nmotion \t # slow {\n  seat 1 s\n}\n', 'language 1\nmotion { \t # slow {\n  seat 1 s\n}\n', 'motion'],
    ['language 1\nsite "a # b {"\n  users limited\n}\n', 'language 1\nsite "a # b {" {\n  users limited\n}\n', 'site "a # b {"'],
  ])('%j', (text, whole, head) => {
    expect(found(text).map(({ what }) => what)).toEqual([`The block that starts with “${head}” has a closing brace but no opening one.`]);
    expect(mended(text)).toBe(whole);
    expect(found(whole)).toEqual([]);
    expect(others(text)).toEqual(others(whole));
  });
});

test('closing braces with nothing between them are one thing to say and to remove', () => {
  const stray = (text: string) => found(text).map(({ what, fixes }) => [what, fixes.map(({ title }) => title), mended(text)]);
  const motion = 'language 1\nmotion {\n  seat 1.5 s\n}\n';
  expect(stray(`${motion}}\n`)).toEqual([['This closing brace closes nothing.', ['Remove this brace'], motion]]);
  expect(stray(`${motion}}}\n`)).toEqual([['These closing braces close nothing.', ['Remove these braces'], motion]]);
  expect(stray(`${motion}}\n}\n`)).toEqual([['These closing braces close nothing.', ['Remove these braces'], motion]]);
});
