// Names that read alike are told of where they are declared and where they are used; names in one alphabet are free.
import { describe, expect, test } from 'vitest';
import { Workspace } from '../../server/engine/index.ts';

const day = '2026-11-25';
const workspace = (others: Readonly<Record<string, string>> = {}): Workspace => {
  const all = new Map(Object.entries(others));
  return new Workspace({
    root: '/w',
    read: (path) => {
      const text = all.get(path);
      return text === undefined ? 'missing' : { text };
    },
  });
};
/** Every finding about signs and names, as “line: rule”. */
function told(text: string, others: Readonly<Record<string, string>> = {}): string[] {
  const { findings } = workspace(others).judge('/w/site.gate', text, day);
  return findings
    .filter(({ rule }) => /^(name-(looks|mixes|unknown|repeated)|character|model-unknown)/.test(rule))
    .map(({ rule, start }) => `${text.slice(0, start).split('\n').length}: ${rule}`);
}
const said = (text: string, rule: string, others: Readonly<Record<string, string>> = {}): string[] =>
  workspace(others)
    .judge('/w/site.gate', text, day)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ what, remedy }) => `${what} ${remedy}`);

const cyrillicE = '\u0435';

test('three leaves that all read “east” are told apart', () => {
  const leaf = (name: string): string => `leaf ${name} {\n  width 2 m\n}\n`;
  expect(told(`language 1\n${leaf('east')}${leaf('ea\u200bst')}${leaf(cyrillicE + 'ast')}`)).toEqual([
    '5: name-repeated',
    '5: character-not-allowed',
    '8: name-looks-like-another',
  ]);
});

describe('a name that is used and leads nowhere says what it looks like', () => {
  test.each<[what: string, rule: string, text: string, hint: string]>([
    ['a leaf', 'name-unknown', `leaf east {\n}\nleaf west {\n  closes onto ${cyrillicE}ast by 40 mm\n}\n`, 'U+0435 (Cyrillic)'],
    [
      'all letters',
      'name-unknown',
      'leaf scope {\n}\nleaf west {\n  closes onto \u0455\u0441\u043e\u0440\u0435 by 40 mm\n}\n',
      'U+0455 (Cyrillic)',
    ],
    ['a form', 'name-unknown', 'leaf caf\u00e9 {\n}\nleaf west {\n  closes onto cafe\u0301 by 40 mm\n}\n', 'U+00E9 (Latin)'],
    ['a unit', 'unit-unknown', 'leaf west {\n  width 84 \u0456n\n}\n', 'U+0456 (Cyrillic)'],
    ['a unit that looks like none', 'unit-unknown', 'leaf west {\n  width 2100 \u043cm\n}\n', 'U+043C (Cyrillic)'],
    ['a word', 'word-unknown', 'leaf west {\n  wid\u0442h 2 m\n}\n', 'Perhaps “width” is meant'],
    ['a choice', 'choice-unknown', 'site "x" {\n  rules \u0435urope\n}\n', 'U+0435 (Cyrillic)'],
    ['a rule', 'acceptance-of-unknown-rule', 'accept l\u0430g-too-small because "x" until 2027-01-31 by "N. N."\n', 'U+0430 (Cyrillic)'],
  ])('%s', (_, rule, text, hint) => {
    expect(
      said('language 1\n' + text, rule).some((sentence) => sentence.includes(hint)),
      said('language 1\n' + text, rule).join('\n'),
    ).toBe(true);
  });
});

test.each([
  ['a sensor and a control share a space', `sensor beam1 {\n}\ncontrol b${cyrillicE}am1 {\n}\n`, ['4: name-looks-like-another']],
  ['a leaf and a panel do not', `leaf \u0441\u043e\u0440\u0435 {\n}\npanel cope {\n}\n`, []],
  [
    'terminals of a panel model',
    'panel-model p "x" {\n  terminal E0 common\n  terminal E1 edge-input common E0\n  terminal \u04151 edge-input common E0\n}\n',
    ['5: name-looks-like-another'],
  ],
  [
    'positions of a selector',
    'panel-model p "x" {\n  selector reply {\n    option A\n    option \u0410\n  }\n}\n',
    ['5: name-looks-like-another'],
  ],
  ['paths of libraries', 'use "a.gate"\nuse "\u0430.gate"\n', ['3: name-looks-like-another']],
  ['a path that mixes', 'use "lib/e\u0430st.gate"\n', ['2: name-mixes-alphabets']],
  ['a path of one alphabet', 'use "\u0432\u043e\u0440\u043e\u0442\u0430.gate"\n', []],
  ['a mixed name alone', `leaf ${cyrillicE}ast {\n}\n`, ['2: name-mixes-alphabets']],
])('%s', (_, text, wanted) => {
  expect(told('language 1\n' + text)).toEqual(wanted);
});

test('models of libraries count where one is spoken of, and against those of the file', () => {
  const library = `language 1\ndrive-model fynbos "x" {\n}\ndrive-model f\u0443nbos "y" {\n}\n`;
  const site = 'language 1\nuse "l.gate"\nleaf west {\n}\ndrive a : fynbos {\n  moves west\n}\n';
  expect(told(site, { '/w/l.gate': library })).toEqual(['5: name-looks-like-another']);
  expect(said(site, 'name-looks-like-another', { '/w/l.gate': library })).toEqual([
    expect.stringContaining('of “w/l.gate”: “fynbos” has U+0079 (Latin) where “fуnbos” has U+0443 (Cyrillic)'),
  ]);
  const own = 'language 1\nuse "l.gate"\nleaf west {\n}\ndrive a : fynbos {\n  moves west\n}\ndrive-model fynb\u043es "x" {\n}\n';
  expect(told(own, { '/w/l.gate': 'language 1\ndrive-model fynbos "x" {\n}\n' })).toEqual(['8: name-looks-like-another']);
  const panel = 'language 1\nuse "l.gate"\nsensor s {\n}\npanel p : q {\n  wire s to E1 E0\n}\n';
  const twice =
    'language 1\npanel-model q "x" {\n  terminal E0 common\n  terminal E1 edge-input common E0\n  terminal \u04151 edge-input common E0\n}\n';
  expect(told(panel, { '/w/l.gate': twice })).toEqual(['6: name-looks-like-another']);
});

test('names in one alphabet are free: Cyrillic, Greek, Arabic, Chinese, Japanese, Korean, Hebrew, Thai, Hindi', () => {
  const alphabets = [
    ['\u0432\u043e\u0441\u0442\u043e\u043a', '\u0437\u0430\u043f\u0430\u0434'],
    ['\u03b1\u03bd\u03b1\u03c4\u03bf\u03bb\u03ae', '\u03b4\u03cd\u03c3\u03b7'],
    ['\u0634\u0631\u0642', '\u063a\u0631\u0628'],
    ['\u4e1c', '\u897f'],
    ['\u6771\u306e\u30b2\u30fc\u30c8', '\u897f\u306e\u30b2\u30fc\u30c8'],
    ['\ub3d9\ucabd', '\uc11c\ucabd'],
    ['\u05de\u05d6\u05e8\u05d7', '\u05de\u05e2\u05e8\u05d1'],
    ['\u0e15\u0e30\u0e27\u0e31\u0e19\u0e2d\u0e2d\u0e01', '\u0e15\u0e30\u0e27\u0e31\u0e19\u0e15\u0e01'],
    ['\u092a\u0942\u0930\u0935', '\u092a\u0936\u094d\u091a\u093f\u092e'],
  ];
  for (const [one, other] of alphabets)
    expect(
      told(`language 1\nsite "${one} ${other}" {\n}\nleaf ${one} {\n}\nleaf ${other} {\n  closes onto ${one} by 40 mm # ${other}\n}\n`),
    ).toEqual([]);
});

test('neither can be accepted where nobody can see it, a mixture that can be seen can', () => {
  const accepts = (rule: string): string => `language 1\naccept ${rule} because "known" until 2027-01-31 by "N. N."\n`;
  const { findings } = workspace().judge('/w/site.gate', `${accepts('name-mixes-alphabets')}leaf ${cyrillicE}ast {\n}\n`, day);
  expect(findings.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['name-mixes-alphabets', 'acceptance-not-allowed']));
  const seen = workspace().judge(
    '/w/site.gate',
    `${accepts('name-mixes-alphabets')}leaf motor-\u043f\u0440\u0438\u0432\u043e\u0434 {\n}\n`,
    day,
  );
  expect(seen.accepted.map(({ rule }) => rule)).toContain('name-mixes-alphabets');
});
