// What looks alike, held against the table of Unicode Technical Standard 39 as the package `unhomoglyph` carries it (version 13.0.0) and
// against the standard's own examples: https://www.unicode.org/reports/tr39/
import { expect, test } from 'vitest';
import { areConfusable, firstDifference, looksTheSame, mixtureIn, resolvedScripts, skeleton } from '../../server/vocabulary/confusables.ts';
import { isShipped, publishedConfusables } from '../workshop/generated-confusables.ts';

const published = Object.entries(publishedConfusables());

test('every row of the published table that is shipped: the two look the same', () => {
  expect(published.length).toBe(6311);
  const shipped = published.filter(([source, target]) => isShipped(source, target));
  expect(shipped.length).toBe(2516);
  const wrong = shipped.filter(([source, target]) => skeleton(source) !== skeleton(target));
  expect(wrong).toEqual([]);
});

test('what the published table keeps apart is kept apart, but for forms of one character', () => {
  // Of each prototype one: no two of them look the same, unless they are compatibility forms of each other.
  const bySkeleton = new Map<string, string>();
  for (const target of new Set(published.map(([, each]) => each.normalize('NFD')))) {
    const look = skeleton(target);
    const other = bySkeleton.get(look);
    if (other !== undefined) expect(skeleton(other.normalize('NFKD')), `${other} ${target}`).toBe(skeleton(target.normalize('NFKD')));
    bySkeleton.set(look, target);
  }
  expect(bySkeleton.size).toBeGreaterThan(1500);
});

test('a skeleton has the skeleton of its own, and ASCII keeps what its letters look like', () => {
  for (const [source, target] of published)
    for (const text of [source, target, `a${source}b`]) expect(skeleton(skeleton(text))).toBe(skeleton(text));
  // confusables.txt: 6D → 72 6E, 31 and 49 → 6C, 30 → 4F
  expect([skeleton('m'), skeleton('1I'), skeleton('0'), skeleton('east')]).toEqual(['rn', 'll', 'O', 'east']);
});

test.each<[standard: string, one: string, other: string]>([
  // UTS 39, section 4: the example of the skeleton, and those of the three kinds of confusables.
  ['section 4, paypal', '\u{1d4c5}\u{1d4b6}\u1eff\u{1d4c5}\u{1d4b6}\u{1d4c1}', '\u{1d4c5}\u{1d4b6}\u1eff\u{1d4c5}\u{1d4b6}l'],
  ['mixed-script', 'p\u0430yp\u0430l', 'paypal'],
  ['whole-script', '\u0455\u0441\u043e\u0440\u0435', 'scope'],
  ['single-script', 'so\u0337s', 's\u00f8s'],
])('%s', (_, one, other) => {
  expect(looksTheSame(one, other)).toBe(true);
  expect(looksTheSame(other, one)).toBe(true);
});

// UTS 39, section 5.1, table 1: resolved script sets (from memory but for the names of the sets, which are ours).
test.each<[string, readonly string[] | 'all']>([
  ['Circle', ['Latin']],
  ['\u0421\u0456\u0433\u0441\u04c0\u0435', ['Cyrillic']],
  ['\u0421ir\u0441l\u0435', []],
  ['Circ1e', ['Latin']],
  ['C\u{1d5c2}\u{1d5cb}\u{1d5bc}\u{1d5c5}\u{1d5be}', ['Latin']],
  ['\u{1d5a2}\u{1d5c2}\u{1d5cb}\u{1d5bc}\u{1d5c5}\u{1d5be}', 'all'],
  ['\u3006\u5207', ['Han', 'japanese', 'chinese', 'korean']],
  ['\u306d\u30ac', ['japanese']],
])('%s is of %j', (text, wanted) => expect(resolvedScripts(text)).toEqual(wanted));

test.each([
  // Names that read alike: three kinds of “east”, one letter in two forms, full-width and mathematical letters, signs like letters.
  ['east', '\u0435ast'],
  ['east', 'e\u0430st'],
  ['\u0435\u0430\u0455t', 'east'],
  ['caf\u00e9', 'cafe\u0301'],
  ['east', '\uff45\uff41\uff53\uff54'],
  ['east', '\u{1d41e}\u{1d41a}\u{1d42c}\u{1d42d}'],
  ['gate', '\u0261ate'],
  ['east', '\u212east'],
  ['\u30ab\u9580', '\u529b\u9580'],
  ['A1', '\u03911'],
])('%s and %s are taken for each other', (one, other) => {
  expect(areConfusable(one, other)).toBe(true);
  expect(areConfusable(other, one)).toBe(true);
});

test.each([
  ['east', 'east'],
  ['east', 'west'],
  ['l1', 'll'],
  ['modern', 'rnodern'],
  ['O1', '01'],
  ['\u0432\u043e\u0440\u043e\u0442\u0430\u041e', '\u0432\u043e\u0440\u043e\u0442\u0430' + '0'],
  ['\u0441\u0435\u0432\u0435\u0440', '\u044e\u0433'],
  ['\u6771', '\u897f'],
])('%s and %s are not', (one, other) => expect(areConfusable(one, other)).toBe(false));

test('the first characters that differ are told', () => {
  expect(firstDifference('e\u0430st', 'east')).toEqual(['\u0430', 'a']);
  expect(firstDifference('caf\u00e9', 'cafe\u0301')).toEqual(['\u00e9', 'e']);
  expect(firstDifference('\u{1d41e}1', 'e1')).toEqual(['\u{1d41e}', 'e']);
});

test.each<[string, 'hidden' | 'seen' | undefined]>([
  ['\u0435ast', 'hidden'],
  ['\u0434\u0430\u0442\u0447\u0438\u043a-E1', 'hidden'],
  ['motor-\u043f\u0440\u0438\u0432\u043e\u0434', 'seen'],
  ['east', undefined],
  ['\u03a9-west', undefined],
  ['\u0432\u043e\u0440\u043e\u0442\u0430-1', undefined],
  ['\u9580-A', undefined],
  ['\u30b2\u30fc\u30c8\u9580\u306e1', undefined],
  ['\ub300\ubb38-A', undefined],
  ['\u95e8\u3107-A', undefined],
  ['\u0628\u0627\u0628-1', undefined],
  ['\u03c0\u03cd\u03bb\u03b7', undefined],
])('%s: alphabets mixed, %s', (name, wanted) => {
  const mixture = mixtureIn(name);
  expect(mixture && (mixture.isHidden ? 'hidden' : 'seen')).toBe(wanted);
});
