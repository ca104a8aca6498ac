// The colours agree with the scanner and the parser: the TextMate grammar is run on vscode-textmate with oniguruma, as
// editors do, and every token that we find must have the colour of its kind.
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { parse, type Statement, scan, type Value } from '../../grammar/index.ts';
import { anywhereLines, type BlockSpec, blocks, type Slot, topLines, unitNamed } from '../../server/vocabulary/index.ts';
import { seed } from '../kit/chance.ts';
import { highlighting } from '../workshop/generated-highlighting.ts';
import { fileOf, randomOf, render, styleOf } from './arbitrary.ts';
import { type Colours, coloursBy, loaded } from './colours.ts';
import { examples } from './examples.ts';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loaded(JSON.stringify(highlighting(), undefined, 2));
});
const colour = (text: string): Colours => coloursBy(grammar, text);

const blockWords = new Set<string>();
const lineWords = new Set<string>([...Object.keys(topLines), ...Object.keys(anywhereLines)]);
const slotsOf = new Map<string, Slot[]>();
const collect = (spec: BlockSpec): void => {
  for (const [word, line] of Object.entries(spec.lines)) {
    lineWords.add(word);
    slotsOf.set(word, [...(slotsOf.get(word) ?? []), ...Object.values<Slot>(line.slots)]);
  }
  for (const [word, block] of Object.entries(spec.blocks)) {
    blockWords.add(word);
    collect(block);
  }
};
for (const [word, spec] of Object.entries(blocks)) {
  blockWords.add(word);
  collect(spec);
}
for (const [word, line] of [...Object.entries(topLines), ...Object.entries(anywhereLines)])
  slotsOf.set(word, Object.values<Slot>(line.slots));

/** Where the colours differ from what the scanner and the parser say; nothing, if they agree. */
function faults(text: string): string[] {
  const { scopes, everyLineEnds } = colour(text);
  const found: string[] = everyLineEnds ? [] : ['a line changes the colours of the next'];
  const is = (what: string, start: number, end: number, wanted: string, only = false): void => {
    for (let at = start; at < end; at++) {
      const own = scopes[at] ?? [];
      const inner = own[own.length - 1] ?? '';
      if (only ? !own.some((name) => name.startsWith(wanted)) : !inner.startsWith(wanted)) {
        found.push(`${what} ${JSON.stringify(text.slice(start, end))} at ${start} is ${own.join(' ') || 'nothing'}, not ${wanted}`);
        return;
      }
    }
  };
  const { tokens, comments } = scan(text);
  for (const comment of comments) {
    is('remark', comment.start, comment.end, 'comment.line', true);
    for (let at = comment.start; at < comment.end; at++)
      if ((scopes[at] ?? []).length > (at === comment.start ? 3 : 2))
        found.push(`something else inside the remark at ${at}: ${scopes[at]?.join(' ')}`);
  }
  for (const token of tokens) {
    const start = token.startOffset;
    const end = token.endOffset as number;
    switch (token.tokenType.name) {
      case 'Open':
        is('brace', start, end, 'punctuation.section.block.begin');
        break;
      case 'Close':
        is('brace', start, end, 'punctuation.section.block.end');
        break;
      case 'Text':
        is('text', start, end, 'string.quoted.double', true);
        for (let at = start; at < end; at++) {
          const inner = scopes[at]?.at(-1) ?? '';
          if (!/^(string|constant\.character\.escape|punctuation\.definition\.string)/.test(inner))
            found.push(`${inner} inside the text at ${at}`);
        }
        break;
      case 'Number':
        is('number', start, end, 'constant.numeric');
        break;
      case 'Date':
        is('date', start, end, 'constant.other.date');
        break;
      case 'Comma':
        is('comma', start, end, 'punctuation.separator.list');
        break;
      case 'Colon':
        is('colon', start, end, 'punctuation.separator.model');
        break;
      case 'PlusMinus':
        is('±', start, end, 'keyword.operator.tolerance');
        break;
      case 'Dots':
        is('..', start, end, 'keyword.operator.range');
        break;
      case 'Word':
        for (let at = start; at < end; at++) {
          const own = scopes[at] ?? [];
          if (own.length !== 2 || /^(comment|string|constant\.numeric|constant\.other|punctuation|invalid)/.test(own[1] ?? '')) {
            found.push(`the word ${JSON.stringify(text.slice(start, end))} at ${start} is ${own.join(' ')}`);
            break;
          }
        }
    }
  }
  const value = (it: Value, word: string): void => {
    if (it.kind === 'number') {
      if (it.unit !== undefined && unitNamed(it.unit.text) !== undefined) is('unit', it.unit.start, it.unit.end, 'keyword.other.unit');
      for (const part of [it.plusMinus, it.upTo]) if (part !== undefined) value(part, word);
    }
    if (it.kind === 'model') is('model', it.name.start, it.name.end, 'entity.other.inherited-class');
    if (it.kind !== 'word') return;
    const slots = slotsOf.get(word) ?? [];
    if (slots.some((slot) => slot.after === it.text)) is('keyword', it.start, it.end, 'keyword.operator.word');
    else if (slots.some((slot) => slot.kind === 'choice' && Object.hasOwn(slot.options, it.text)))
      is('choice', it.start, it.end, 'constant.language');
    else if (slots.length > 0) is('name', it.start, it.end, 'variable.other');
  };
  const items = (list: readonly Statement[]): void => {
    for (const item of list) {
      const word = item.word;
      if (word !== undefined) {
        if (blockWords.has(word.text)) is('block word', word.start, word.end, 'storage.type');
        else if (['use', 'language', 'accept'].includes(word.text)) is('line word', word.start, word.end, 'keyword.control');
        else if (lineWords.has(word.text)) is('line word', word.start, word.end, 'support.type.property-name');
        else is('unknown word', word.start, word.end, 'variable.other');
        const [name] = item.values;
        if (blockWords.has(word.text) && name?.kind === 'word' && word.text !== 'site' && word.text !== 'motion')
          is('name', name.start, name.end, 'entity.name.type');
        if (!blockWords.has(word.text)) for (const it of item.values) value(it, word.text);
        else for (const it of item.values) if (it.kind === 'model') value(it, word.text);
      }
      if (item.body !== undefined) items(item.body.items);
    }
  };
  const tree = parse(text);
  if (tree.problems.length === 0) items(tree.items);
  return found;
}

test.each(examples().map(({ path, text }) => [path, text] as const))('%s', (_, text) => {
  expect(faults(text)).toEqual([]);
});

test('random well-formed files in any style', () => {
  fc.assert(
    fc.property(fileOf, styleOf, (nodes, style) => void expect(faults(render(nodes, style))).toEqual([])),
    { numRuns: 100 },
  );
});

test('random pieces of the language, right or wrong', () => {
  const pieces = [
    '{',
    '}',
    '\n',
    '\r\n',
    ' ',
    '\t',
    '"',
    '#',
    ':',
    ',',
    '..',
    '±',
    '+-',
    '+',
    '-',
    '\u2212',
    '\\',
    '5',
    '1.5',
    '.5',
    '2026-05-14',
    '2026-05-141',
    'mm',
    'N·m',
    'm/s2',
    'leaf',
    'width',
    'accept',
    'by',
    'closing',
    'x-1',
    'a..b',
    '8k2',
    '°C',
    '门',
    '😀',
    '\u00a0',
    '\u200b',
    '\u00ad',
    '\u{e0061}',
    '\ufeff',
    '\0',
    '%',
    'leaf-a',
    'width2',
    '-1',
    'mm2',
  ];
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((list) => list.join('')),
      (text) => void expect(faults(text)).toEqual([]),
    ),
    { numRuns: 1500 },
  );
});

test('characters between words are the same for both: every code unit', () => {
  const wrong: string[] = [];
  for (let code = 0; code < 0xd800; code++) {
    const text = `width a${String.fromCharCode(code)}b 5 mm`;
    if (!/[\r\n]/.test(text) && faults(text).length > 0) wrong.push(code.toString(16));
  }
  for (let code = 0xe000; code <= 0xffff; code++)
    if (faults(`width a${String.fromCharCode(code)}b 5 mm`).length > 0) wrong.push(code.toString(16));
  expect(wrong).toEqual([]);
});

describe('a line being typed', () => {
  test('changes no colour below it', () => {
    for (const { text } of examples()) {
      const lines = text.split('\n');
      const below = randomOf(seed() + text.length);
      const before = colour(text);
      for (let round = 0; round < 40; round++) {
        const at = Math.floor(below() * lines.length);
        const line = lines[at] ?? '';
        const typed =
          line.slice(0, Math.floor(below() * (line.length + 1))) +
          (['', '"', ' "half', '{', ' :', ' ..', ' ±', '\\'][Math.floor(below() * 8)] ?? '');
        const changed = [...lines.slice(0, at), typed, ...lines.slice(at + 1)].join('\n');
        const after = colour(changed);
        const start = lines.slice(0, at + 1).join('\n').length;
        expect(after.scopes.slice(start + typed.length - line.length)).toEqual(before.scopes.slice(start));
        expect(after.everyLineEnds).toBe(true);
      }
    }
  });
});

test('each kind of token has its colour', () => {
  const text =
    'drive west-ram : birch # {\nmotion { slow-zone last 10 % at 40%\n} accept x because "a \\" b" until 2027-01-31\nwidth 2,1 m ± 5 % width\n- {5 leaf}';
  const { scopes } = colour(text);
  const at = (piece: string, from = 0): string => scopes[text.indexOf(piece, from)]?.at(-1) ?? '';
  expect([at('drive'), at('west-ram'), at(':'), at('birch'), at('#'), at(' {')]).toEqual([
    'storage.type',
    'entity.name.type',
    'punctuation.separator.model',
    'entity.other.inherited-class',
    'punctuation.definition.comment',
    'comment.line.number-sign',
  ]);
  expect([at('motion'), at('slow-zone'), at('last'), at('10'), at('%'), at('at 40'), at('40'), at('%\n')]).toEqual([
    'storage.type',
    'support.type.property-name',
    'keyword.operator.word',
    'constant.numeric',
    'keyword.other.unit',
    'keyword.operator.word',
    'constant.numeric',
    'keyword.other.unit',
  ]);
  expect([at('accept'), at('x because'), at('because'), at('\\"'), at('b" until'), at('2027')]).toEqual([
    'keyword.control',
    'variable.other',
    'keyword.operator.word',
    'constant.character.escape',
    'string.quoted.double',
    'constant.other.date',
  ]);
  expect([at('width'), at('width', text.indexOf('width') + 1), at('leaf}')]).toEqual([
    'support.type.property-name',
    'variable.other',
    'variable.other',
  ]);
});

describe('these checks see a fault', () => {
  const text = 'leaf west {\n  opens inward 95 deg # { 5 mm\n}\nuse "a 5 mm \\" b"\naccept x because "b" until 2027-01-31\n';
  /** A grammar with one thing broken. */
  const broken: readonly (readonly [what: string, from: string, to: string])[] = [
    ['remarks', '(#).*$', '(#)x'],
    ['units', 'keyword.other.unit', 'variable.other'],
    ['dates', 'constant.other.date', 'constant.numeric'],
    ['escapes', '"match": "\\\\\\\\."', '"match": "z"'],
    ['ends of lines', '(?=[{}#])|$', '(?=[{}#])'],
    ['names of blocks', 'entity.name.type', 'variable.other'],
    ['block words', 'storage.type', 'support.type.property-name'],
  ];
  test.each(broken)('in %s', async (_, from, to) => {
    expect(faults(text)).toEqual([]);
    const source = JSON.stringify(highlighting(), undefined, 2);
    expect(source).toContain(from);
    const sound = grammar;
    try {
      grammar = await loaded(source.replaceAll(from, to));
      expect(faults(text)).not.toEqual([]);
    } finally {
      grammar = sound;
    }
  });
});
