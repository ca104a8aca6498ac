import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { tokenModifiers, tokens, tokenTypes } from '../../server/editor/index.ts';
import { blocks } from '../../server/vocabulary/index.ts';
import { within } from '../kit/marker.ts';
import { bench, site, uses } from './bench.ts';

/** The tokens of the line that holds a text: `mass:fact 165:number! kg:unit!`; `!` is safety-critical, `+` declares. */
function lineOf(text: string, needle: string): string {
  const { analysis } = bench(text);
  const at = within(text, needle).offset;
  const start = text.lastIndexOf('\n', at) + 1;
  const end = text.indexOf('\n', at);
  return tokens(analysis)
    .filter((token) => token.start >= start && token.end <= end)
    .map((token) => `${text.slice(token.start, token.end)}:${token.kind}${token.declares ? '+' : ''}${token.safety ? '!' : ''}`)
    .join(' ');
}

test.each<[what: string, text: string, needle: string, wanted: string]>([
  ['a block and its name', site(), 'leaf west', 'leaf:block west:variable+'],
  ['a model', site(), 'drive west-ram', 'drive:block west-ram:variable+ birch-ram:class'],
  ['a title', site(), 'site "Heron', 'site:block "Heron Court":string'],
  ['a quantity that decides about people', site(), 'mass 165', 'mass:fact 165:number! kg:unit!'],
  ['a quantity that does not', site(), 'seat 1.5', 'seat:fact 1.5:number s:unit'],
  ['two quantities and a keyword', site(), 'post-bracket', 'post-bracket:fact 140:number! mm:unit! by:keyword 120:number! mm:unit!'],
  ['a choice', site(), 'opens inward', 'opens:fact inward:enumMember! 95:number! deg:unit!'],
  ['a name that is pointed at', site(), 'closes onto', 'closes:fact onto:keyword east:variable!'],
  ['terminals', site(), 'wire west-edge', 'wire:fact west-edge:variable! to:keyword E0:terminal! E1:terminal!'],
  ['a selector and its option', site(), 'select reply', 'select:fact reply:terminal! steps:enumMember!'],
  ['a tolerance', site().replace('8.2 kohm', '8.2 kohm ± 5 %'), 'terminator', 'terminator:fact 8.2:number! kohm:unit! 5:number! %:unit!'],
  [
    'a range',
    'language 1\npanel-model x {\n  adjuster a {\n    range 2 s .. 120 s\n  }\n}\n',
    'range',
    'range:fact 2:number s:unit 120:number s:unit',
  ],
  [
    'a number before a keyword',
    site().replace('140 mm by', '140 by'),
    'post-bracket',
    'post-bracket:fact 140:number! by:keyword 120:number! mm:unit!',
  ],
  [
    'a rule and a date',
    site('accept seat-outside-practice because "x" by "K" until 2027-01-01\n'),
    'accept',
    'accept:fact seat-outside-practice:rule because:keyword "x":string by:keyword "K":string until:keyword 2027-01-01:date',
  ],
  ['a library', site(), 'use "../library/drives', 'use:fact "../library/drives.gate":string'],
  ['a word that nobody knows', site().replace('seat 1.5 s', 'saet 1.5 s'), 'saet', ''],
  ['a unit that nobody knows', site().replace('mass 165 kg', 'mass 165 stones'), 'mass 165', 'mass:fact 165:number!'],
  ['a unit of something else', site().replace('mass 165 kg', 'mass 165 mm'), 'mass 165', 'mass:fact 165:number!'],
  ['a choice that nobody knows', site().replace('opens inward', 'opens inwards'), 'opens inwards', 'opens:fact 95:number! deg:unit!'],
  ['a name that leads nowhere', site().replace('moves west', 'moves nobody'), 'moves', 'moves:fact'],
  ['a library that is of no use', site(), 'use "../library/cables', ''],
])('%s', (_what, text, needle, wanted) => {
  expect(lineOf(text, needle)).toBe(wanted);
});

test('they stand in order, on one line each, and none over another', () => {
  for (const text of [site(), site().replaceAll('\n', '\r\n'), `${uses}leaf a { width 2 m\nmass "a\nb" }`]) {
    const { analysis } = bench(text);
    let end = 0;
    for (const token of tokens(analysis)) {
      expect(token.start).toBeGreaterThanOrEqual(end);
      expect(text.slice(token.start, token.end)).toMatch(/^[^\r\n]+$/);
      end = token.end;
    }
  }
});

test('those of a stretch are those of the whole that touch it', () => {
  const { analysis, text } = bench(site());
  const all = tokens(analysis);
  for (let start = 0; start < text.length; start += 97) {
    const range = { start, end: Math.min(text.length, start + 150) };
    expect(tokens(analysis, range)).toEqual(all.filter((token) => token.end > range.start && token.start < range.end));
  }
});

test('exactly the lines that the vocabulary calls safety-critical are marked', () => {
  const { analysis, text } = bench(site());
  const all = tokens(analysis);
  const wordBefore = (at: number): string => text.slice(0, at).split('\n').at(-1)?.trim().split(' ')[0] ?? '';
  const marked = new Set(all.filter((token) => token.safety).map((token) => wordBefore(token.start)));
  expect(all.filter((token) => token.safety && (token.kind === 'fact' || token.kind === 'keyword'))).toEqual([]);
  expect(marked).toEqual(
    new Set([
      'rules',
      'users',
      'width',
      'mass',
      'opens',
      'closes',
      'moves',
      'post-bracket',
      'leaf-bracket',
      'watches',
      'height',
      'on',
      'terminator',
      'by',
      'acts',
      'wire',
      'select',
      'slow-zone',
      'lag',
      'dwell',
    ]),
  );
  expect('safety' in blocks.motion.lines.lag).toBe(true);
  expect('safety' in blocks.motion.lines.seat).toBe(false);
});

test('every type says how themes that do not know it colour it', () => {
  for (const [name, type] of Object.entries<{ readonly doc?: string; readonly like?: string; readonly scopes: readonly string[] }>(
    tokenTypes,
  )) {
    expect(type.scopes.length, name).toBeGreaterThan(0);
    expect(type.doc === undefined, name).toBe(type.like === undefined);
  }
  expect(Object.keys(tokenModifiers)).toEqual(['declaration', 'safety']);
});

test('the extension tells its editor of every type and modifier of our own, and sets safety-critical words in bold', () => {
  interface Manifest {
    readonly contributes: {
      readonly semanticTokenTypes: readonly { readonly id: string; readonly superType: string }[];
      readonly semanticTokenModifiers: readonly { readonly id: string }[];
      readonly semanticTokenScopes: readonly { readonly language: string; readonly scopes: object }[];
      readonly configurationDefaults: Readonly<Record<string, { readonly rules?: object }>>;
    };
  }
  const { contributes } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as Manifest;
  const standard = [
    'namespace',
    'type',
    'class',
    'enum',
    'interface',
    'struct',
    'typeParameter',
    'parameter',
    'variable',
    'property',
    'enumMember',
    'event',
    'function',
    'method',
    'macro',
    'keyword',
    'modifier',
    'comment',
    'string',
    'number',
    'regexp',
    'operator',
    'decorator',
  ];
  const own = contributes.semanticTokenTypes.map((type) => type.id);
  expect(Object.keys(tokenTypes).filter((name) => !standard.includes(name))).toEqual(own);
  for (const { superType } of contributes.semanticTokenTypes) expect(standard).toContain(superType);
  expect(contributes.semanticTokenModifiers.map((modifier) => modifier.id)).toEqual(['safety']);
  expect(Object.keys(contributes.semanticTokenScopes[0]?.scopes ?? {})).toEqual(Object.keys(tokenTypes));
  expect(contributes.configurationDefaults['editor.semanticTokenColorCustomizations']?.rules).toEqual({
    '*.safety:pintle': { bold: true },
  });
});
