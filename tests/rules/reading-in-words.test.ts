// What is said of characters, choices and acceptances that do not do.
import { describe, expect, test } from 'vitest';
import { applyEdits, judge } from '../kit/pages.ts';

const said = (rule: string, text: string) =>
  judge(text)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ what, fixes }) => ({ what, fixes: fixes.map(({ title, safe, edits }) => [title, safe, applyEdits(text, edits)]) }));

describe('characters that may not stand in a file', () => {
  const told = (characters: string) => said('character-not-allowed', `language 1\nmotion {\n  seat${characters} 1.5 s\n}\n`);
  const mended = 'language 1\nmotion {\n  seat 1.5 s\n}\n';
  test.each([
    ['\u200b', 'The character U+200B (space without width) is not allowed here.', 'Remove this character', true],
    ['\u0007', 'The character U+0007 is not allowed here.', 'Remove this character', false],
    ['\u200b\u200b', 'The character U+200B (space without width) is not allowed here.', 'Remove this character', true],
    [
      '\u202e\u0007',
      'Characters that are not allowed stand here: U+202E (right-to-left override), U+0007.',
      'Remove these characters',
      false,
    ],
    [
      '\u200b\u0001\u0002\u0003\u0004',
      'Characters that are not allowed stand here: U+200B (space without width), U+0001, U+0002, U+0003.',
      'Remove these characters',
      false,
    ],
    [
      '\u{e0061}\ufe0f',
      'Characters that are not allowed stand here: U+E0061 (tag), U+FE0F (variation selector).',
      'Remove these characters',
      true,
    ],
  ])('%j', (characters, what, title, isSafe) => {
    expect(told(characters)).toEqual([{ what, fixes: [[title, isSafe, mended]] }]);
  });
  test.each<[string, isSafe: boolean, text: string]>([
    ['in a word', true, 'leaf ea\u00adst {\n}\n'],
    ['where two numbers would become one', false, 'motion {\n  seat 1\u200b5 s\n}\n'],
    ['where two points would become a sign', false, 'leaf a.\u200b.b {\n}\n'],
    ['in a text', true, 'site "Rose\u2060Lane" {\n}\n'],
    ['where the end of a text would become a part of it', false, 'use "a\\\u200b"\n'],
    ['in a comment', true, 'motion { # mea\u200dsured\n}\n'],
    ['that turns the direction, in a comment', false, 'motion { # mea\u202esured\n}\n'],
  ])('one %s is taken out in bulk: %s', (_, isSafe, text) => {
    expect(said('character-not-allowed', `language 1\n${text}`)).toMatchObject([
      { fixes: [[expect.anything(), isSafe, expect.anything()]] },
    ]);
  });
});

describe('a choice that is none', () => {
  const told = (word: string) => said('choice-unknown', `language 1\nsite "Kestrel Yard" {\n  users ${word}\n}\n`);
  const mended = 'language 1\nsite "Kestrel Yard" {\n  users public\n}\n';
  test('in other letters is mended without a look, and one that is only near is not', () => {
    expect(told('Public')).toEqual([
      { what: '“Public” in “users” is none of the words that may stand there.', fixes: [['Write “public”', true, mended]] },
    ]);
    expect(told('pubLic')).toMatchObject([{ fixes: [['Write “public”', true, mended]] }]);
    expect(told('publik')).toMatchObject([{ fixes: [['Write “public”', false, mended]] }]);
    expect(told('everybody')).toMatchObject([{ fixes: [] }]);
  });
});

test('an acceptance that is over says how much it covered', () => {
  const gate = (until: string, ...leaves: readonly string[]): string =>
    `language 1\naccept leaf-without-drive because "moved by hand" by "KL" until ${until}\n${leaves.map((name) => `leaf ${name} {\n  width 1 m\n  mass 60 kg\n  opens inward 90 deg\n}\n`).join('')}leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\ndrive floor {\n  moves west\n}\n`;
  const told = (...leaves: readonly string[]) => said('acceptance-expired', gate('2026-11-24', ...leaves)).map(({ what }) => what);
  const over = (rest: string) => [`This acceptance of “leaf-without-drive” ended on 2026-11-24; ${rest}.`];
  expect(told()).toEqual(over('there is nothing left for it to cover'));
  expect(told('one')).toEqual(over('the finding that it covered is still there'));
  expect(told('one', 'two')).toEqual(over('2 findings that it covered are still there'));
  expect(said('acceptance-expired', gate('2026-11-25', 'one'))).toEqual([]);
});
