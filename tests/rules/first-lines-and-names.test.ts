// What is said of files that do not begin as they should, and of blocks that lack a name or a model.
import { describe, expect, test } from 'vitest';
import { type Finding, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { applyEdits, judge, saidOf } from '../kit/pages.ts';

const says = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const found = (rule: string, text: string): Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);

describe('the version of the language', () => {
  test('is not offered before a bare brace, which would take the line into its block', () => {
    expect(says('language-missing', '{\n  rules europe\n}\n')).toBe(
      'error on line 1, “{”: No line says which version of the language this file is written in.\n',
    );
    expect(says('language-not-first', '{\n  rules europe\n}\nlanguage 1\n')).toBe(
      'error on line 4, “language 1”: “language 1” stands below other lines.\n',
    );
  });

  test('is offered at the start of a line, and not behind a stray brace', () => {
    const offers = (text: string): string[] =>
      found('language-missing', text).flatMap(({ fixes }) => fixes.map(({ edits }) => applyEdits(text, edits)));
    for (const text of ['{ motion {\n  seat 1 s\n}\n', '  {{ leaf a {\n}\n', '} leaf a {\n}\n', '# Yard\n{ leaf a {\n}\n'])
      expect([found('language-missing', text).length, offers(text)]).toEqual([1, []]);
    expect(offers('  leaf a {\n  }\n')).toEqual(['language 1\n  leaf a {\n  }\n']);
    expect(offers('# Yard\n\nleaf a {\n}\n')).toEqual(['# Yard\n\nlanguage 1\nleaf a {\n}\n']);
  });

  test('is not moved with braces that follow it on further lines', () => {
    expect(says('language-not-first', 'motion {\n  seat 1 s\n}\nlanguage 1 {\n}\n')).toBe(
      'error on line 4, “language 1 { ⏎ }”: “language 1 { }” stands below other lines.\n',
    );
  });

  test('is moved behind comments and blank lines, to the first fact', () => {
    const [fix] = found('language-not-first', '# Yard\r\n\r\n  # East\r\nmotion {\r\n}\r\nlanguage 1\r\n').flatMap(
      (finding) => finding.fixes,
    );
    expect(fix?.edits).toEqual([
      { start: 20, end: 20, text: 'language 1\r\n' },
      { start: 33, end: 45, text: '' },
    ]);
  });
});

describe('a block that needs a model', () => {
  const lacking = (text: string): number[] =>
    found('model-missing', text).map((finding) => text.slice(0, finding.start).split('\n').length);

  test('is told of where it has no name, is called as another, or where a colon is misplaced inside it or further on', () => {
    expect(lacking('language 1\ndrive west-ram {\n  moves: west\n}\n')).toEqual([2]);
    expect(lacking('language 1\ncable feed {\n  length: 40 m\n}\n')).toEqual([2]);
    expect(lacking('language 1\ndrive west-ram {\n}\ndrive west-ram {\n}\n')).toEqual([2, 4]);
    expect(lacking('language 1\ndrive west-ram {\n}\ndrive east-ram : {\n}\n')).toEqual([2]);
    expect(says('model-missing', 'language 1\ndrive {\n}\n')).toBe(
      'error on line 2, “drive”: This drive does not say of which drive-model it is.\n  What to do: Write a colon and the name of its drive-model behind its name, as in “drive NAME : MODEL”.\n',
    );
  });
});

test('a name that leads nowhere is answered with the names that are there, or with none', () => {
  const drive = 'drive west-ram : birch-ram {\n  moves west\n}\n';
  const remedies = (text: string): string[] => found('name-unknown', text).map((finding) => finding.remedy);
  expect(remedies(`language 1\n${drive}`)).toContain('Write the block of that leaf, or remove the line.');
  expect(remedies(`language 1\nleaf wets {\n}\nleaf north {\n}\n${drive}`)).toContain(
    'Write one of the names that are there: wets, north. Perhaps “wets” is meant.',
  );
});
