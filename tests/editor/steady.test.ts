// Formatting changes nothing that is found in a text, valid or broken, and nothing that is offered for it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { positionAt } from '../../grammar/index.ts';
import { fixAll, formatted } from '../../server/engine/index.ts';
import { fileOf, render, styleOf } from '../grammar/arbitrary.ts';
import { examples } from '../grammar/examples.ts';
import { blocksOf, foldersWith, judge, readPage } from '../kit/pages.ts';
import { unsteady } from '../kit/steady.ts';

const steady = (text: string): void => void expect(unsteady(text, judge), text).toEqual([]);

describe('case by case', () => {
  test('a number that could be called, in a text that is not closed', () => steady('\u0435ast\u00e9"a −"+2026-05-14007'));
  test('a date with a true minus in it', () =>
    steady('language 1\nmeasured {\n  on 2026−05-14\n  by "KL"\n}\nmeasured {\n  on 2026-05−14\n}\n'));
  test('a fact that is repeated with other blanks', () => steady('language 1\nleaf a {\n  mass  165 kg\n  mass 165kg\n}\n'));
  test('a second fact behind a brace: it can be removed where it stands', () =>
    steady('language 1\nmotion {\n  dwell 5 s\n  seat{ }dwell 6 s\n}\n'));
  const leaf = (line: string): string => `language 1\nleaf west {\n ${line}\n}\n`;
  test.each([
    ['a comma for a point', 'width 1,5 m', 'width 1,5 m'],
    ['commas between thousands', 'width 1,250,000 mm', 'width 1,250,000 mm'],
    ['a comma with a blank', 'width 1 ,5 m', 'width 1, 5 m'],
    ['a comma behind a tolerance', 'width 1 m±1,5 %', 'width 1 m ± 1,5 %'],
    [
      'a quote that is cut',
      'width 2 m"force gauge 3"calibrated 2026-02-01 by east-and-west',
      'width 2 m "force gauge 3" calibrated 2026-02-01 by east-and-west',
    ],
    ['figures and a date that touch', 'width 230,2026-05-14V', 'width 230,2026-05-14 V'],
    ['a date with a sign', 'on +2026-02-01', 'on +2026-02-01'],
    ['a list', 'opens inward,outward', 'opens inward, outward'],
  ])('%s', (_, written, canonical) => {
    steady(leaf(written));
    expect(formatted(leaf(written))).toEqual({ text: `language 1\nleaf west {\n  ${canonical}\n}\n` });
  });
});

/** Pages of rules, and the examples: valid and broken. */
const texts = [
  ...examples().map(({ text }) => text),
  ...foldersWith('rules', 'rule.ts').flatMap((name) =>
    blocksOf(readPage('rules', name)).flatMap((block) => (block.text.length < 6000 && block.files.size === 0 ? [block.text] : [])),
  ),
];

test('the examples and every text on a page of a rule', () => {
  expect(texts.length).toBeGreaterThan(300);
  for (const text of texts) steady(text);
});

const scraps = [
  ...[
    ' ',
    '  ',
    '\t',
    '\u00a0',
    '\f',
    '\v',
    '\u3000',
    '\r',
    '\n',
    '\r\n',
    '\n\n\n',
    ' # remark',
    ',',
    '1,5',
    ',5',
    ' , ',
    '..',
    '...',
    '±',
    '+-',
  ],
  ...[
    '\u22125',
    '-',
    '+',
    '.',
    '5',
    '007',
    '2026-02-30',
    ' mm',
    'm',
    '"a \\"b\\" \\c"',
    ':',
    ' : birch',
    'x-1',
    '8k2',
    'width',
    'leaf',
    'accept',
    '\u0435',
  ],
];
const change = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 0, 0, 1, 2, 5), fc.constantFrom(...scraps));
const spoilt = (text: string, changes: readonly (readonly [number, number, string])[]): string =>
  changes.reduce((now, [at, cut, put]) => {
    const start = Math.floor(at * now.length);
    return now.slice(0, start) + put + now.slice(start + cut);
  }, text);

test('random changes of them', () => {
  fc.assert(
    fc.property(fc.constantFrom(...texts.filter((text) => text.length < 2500)), fc.array(change, { maxLength: 5 }), (text, changes) =>
      steady(spoilt(text, changes)),
    ),
    { numRuns: 600 },
  );
});

test('random files in any style, spoilt', () => {
  fc.assert(
    fc.property(fileOf, styleOf, fc.array(change, { maxLength: 4 }), (nodes, style, changes) =>
      steady(spoilt(render(nodes, style), changes)),
    ),
    { numRuns: 100 },
  );
});

test('line ends stay: of one kind or of several', () => {
  const text = 'language 1\nleaf   west {\n\n\n\n width 2 m\n}\n';
  for (const end of ['\r', '\n', '\r\n']) {
    const found = formatted(text.replaceAll('\n', end));
    expect(found).toEqual({ text: 'language 1\nleaf west {\n  width 2 m\n}\n'.replaceAll('\n', end) });
  }
  expect(formatted('language 1\r\nleaf   west {\r width  2 m\n}')).toEqual({ text: 'language 1\r\nleaf west {\r  width 2 m\n}\r\n' });
  expect(formatted('a  b\r \nc\r')).toEqual({ text: 'a b\r\rc\r' });
});

test('mending keeps line ends too, and places count a lone CR as the end of a line', () => {
  const text = 'motion {\n  sea\u200bt 1.5 s # a\n}\n';
  for (const end of ['\r', '\n', '\r\n']) {
    const analysis = judge(text.replaceAll('\n', end));
    const found = analysis.findings.find(({ rule }) => rule === 'character-not-allowed');
    expect(positionAt(analysis.lineStarts, found?.start ?? 0)).toEqual({ line: 1, column: 5 });
    expect(fixAll(analysis.text, judge).text).toBe('language 1\nmotion {\n  seat 1.5 s # a\n}\n'.replaceAll('\n', end));
  }
});
