// The tree-sitter grammar agrees with our parser and with the TextMate grammar: it is compiled and run on the runtime that
// editors have, and every line, word, value, block and remark must stand where ours stands, in the same colour. It needs a C
// compiler and tree-sitter's library (Debian: gcc libtree-sitter-dev), and is passed over where they are missing, unless
// PINTLE_REQUIRE_ALL=1 says that nothing may be.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Body, type NumberValue, parse, print, type Statement, type Tree, unseenRanges, type Value } from '../../grammar/index.ts';
import { seed } from '../kit/chance.ts';
import { blocksOf, foldersWith, readPage } from '../kit/pages.ts';
import { highlighting } from '../workshop/generated-highlighting.ts';
import { treeSitterHighlights } from '../workshop/generated-tree-sitter.ts';
import { fileOf, randomOf, render, styleOf } from './arbitrary.ts';
import { canonicalCases } from './canonical.ts';
import { coloursBy, loaded } from './colours.ts';
import { examples } from './examples.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(root, 'grammar', 'tree-sitter');
const bin = mkdtempSync(join(tmpdir(), 'pintle-tree-sitter-'));
afterAll(() => rmSync(bin, { recursive: true, force: true }));

// --- What stands there can be made without the tree-sitter command.

test('what was generated from the grammar is not stale (else run `tree-sitter generate --abi 14` in grammar/tree-sitter)', () => {
  expect(JSON.parse(readFileSync(join(folder, 'src', 'grammar.json'), 'utf8'))).toMatchObject(
    evaluated(readFileSync(join(folder, 'grammar.js'), 'utf8')),
  );
});
test('a grammar that was changed and not generated anew is seen', () => {
  const source = readFileSync(join(folder, 'grammar.js'), 'utf8').replace("'..', '...'", "'..', '..', '...'");
  expect(JSON.parse(readFileSync(join(folder, 'src', 'grammar.json'), 'utf8'))).not.toMatchObject(evaluated(source));
});

/** The rules of a grammar, by the few words of tree-sitter's language that it is written in. */
function evaluated(source: string): Record<string, unknown> {
  const rule = (given: unknown): unknown =>
    typeof given === 'string'
      ? { type: 'STRING', value: given }
      : Object.prototype.toString.call(given) === '[object RegExp]'
        ? { type: 'PATTERN', value: (given as RegExp).source }
        : given;
  const of = (type: string) => (content: unknown) => ({ type, content: rule(content) });
  const many =
    (type: string) =>
    (...members: unknown[]) => ({ type, members: members.map(rule) });
  const symbols = new Proxy({}, { get: (_, name) => ({ type: 'SYMBOL', name }) });
  const precedence =
    (type: string) =>
    (...given: unknown[]) => ({ type, value: given.length > 1 ? given[0] : 0, content: rule(given.at(-1)) });
  const choice = many('CHOICE');
  const module = { exports: {} as Record<string, unknown> };
  runInNewContext(source, {
    module,
    seq: many('SEQ'),
    choice,
    repeat: of('REPEAT'),
    repeat1: of('REPEAT1'),
    optional: (content: unknown) => choice(content, { type: 'BLANK' }),
    field: (name: string, content: unknown) => ({ type: 'FIELD', name, content: rule(content) }),
    token: Object.assign(of('TOKEN'), { immediate: of('IMMEDIATE_TOKEN') }),
    prec: Object.assign(precedence('PREC'), { right: precedence('PREC_RIGHT') }),
    grammar: (given: { name: string; extras: (rules: unknown) => unknown[]; rules: Record<string, (rules: unknown) => unknown> }) => ({
      name: given.name,
      extras: given.extras(symbols).map(rule),
      rules: Object.fromEntries(Object.entries(given.rules).map(([name, make]) => [name, rule(make(symbols))])),
    }),
  });
  return JSON.parse(JSON.stringify(module.exports)) as Record<string, unknown>;
}

// --- What must be run.

const run = (command: string, ...args: string[]): { readonly ok: boolean; readonly said: string } => {
  const { status, stderr, error } = spawnSync(command, args, { encoding: 'utf8' });
  return { ok: status === 0, said: error?.message ?? stderr };
};
const compiler = process.env['CC'] ?? 'cc';
writeFileSync(join(bin, 'probe.c'), '#include <tree_sitter/api.h>\nint main(void) { return ts_parser_new() == 0; }\n');
const probe = run(compiler, '-o', join(bin, 'probe'), join(bin, 'probe.c'), '-ltree-sitter');
const mustRun = process.env['PINTLE_REQUIRE_ALL'] === '1';
if (!probe.ok && !mustRun)
  console.log(
    'Not tested: the tree-sitter grammar. A C compiler and tree-sitter’s library are missing (Debian: apt-get install gcc libc6-dev libtree-sitter-dev).',
  );

type Place = readonly [start: number, end: number];
/** type, start, end, depth, field, named, missing */
type RawNode = readonly [string, number, number, number, string, number, number];
interface Parsed {
  readonly error: boolean;
  readonly nodes: readonly RawNode[];
  /** name, start, end */
  readonly captures: readonly (readonly [string, number, number])[];
  /** More patterns were begun at once than editors follow. */
  readonly forgot: boolean;
}

function drive(texts: readonly string[], query = treeSitterHighlights()): Parsed[] {
  writeFileSync(join(bin, 'query.scm'), query);
  const input = Buffer.concat(texts.flatMap((text) => [Buffer.from(`${Buffer.byteLength(text)}\n`), Buffer.from(text)]));
  const { status, stdout, stderr } = spawnSync(join(bin, 'driver'), [join(bin, 'query.scm')], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 29,
  });
  expect([status, stderr]).toEqual([0, '']);
  const parsed = stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Parsed);
  expect(parsed.length).toBe(texts.length);
  return parsed;
}

/** From bytes to UTF-16 units. */
function unitsIn(text: string): (byte: number) => number {
  const at: number[] = [];
  let unit = 0;
  for (const character of text) {
    const bytes = Buffer.byteLength(character);
    for (let i = 0; i < bytes; i++) at.push(unit);
    unit += character.length;
  }
  at.push(unit);
  return (byte) => at[byte] ?? -1;
}

/** Everything in a tree that has a place, in order. */
function ours(tree: Tree): string[] {
  const found: { readonly place: Place; readonly what: string; readonly depth: number }[] = [];
  const put = (what: string, { start, end }: { readonly start: number; readonly end: number }, depth: number): void =>
    void found.push({ what, place: [start, end], depth });
  const number = (value: NumberValue, depth: number): void => {
    put('figure', { start: value.start, end: value.start + value.text.length }, depth);
    if (value.unit !== undefined) put('unit', value.unit, depth);
    const second = value.plusMinus ?? value.upTo;
    if (second === undefined) return;
    const before = value.unit?.end ?? value.start + value.text.length;
    const sign = /±|\+-|\.\.\.?/.exec(tree.text.slice(before, second.start));
    const start = before + (sign?.index ?? 0);
    put(value.plusMinus === undefined ? 'range' : 'tolerance', { start, end: start + (sign?.[0].length ?? 0) }, depth);
    number(second, depth);
  };
  const valued = (value: Value, depth: number): void => {
    if (value.kind === 'comma') put(',', value, depth);
    else put(value.kind, value, depth);
    if (value.kind === 'number') number(value, depth + 1);
    if (value.kind === 'model') put('name', value.name, depth + 1);
  };
  const statement = (one: Statement, depth: number): void => {
    const end = one.values.at(-1)?.end ?? one.word?.end ?? one.start;
    if (one.body !== undefined) put('block', one, depth);
    const inner = one.body === undefined ? depth : depth + 1;
    put('line', { start: one.start, end }, inner);
    if (one.word !== undefined) put('its word', one.word, inner + 1);
    for (const value of one.values) valued(value, inner + 1);
    if (one.body !== undefined) body(one.body, inner);
  };
  const body = (one: Body, depth: number): void => {
    put('body', one, depth);
    for (const item of one.items) statement(item, depth + 1);
  };
  for (const item of tree.items) statement(item, 1);
  for (const comment of tree.comments) put('comment', comment, 0);
  return found
    .map(({ what, place, depth }) => `${place[0]}–${place[1]} ${what}${what === 'comment' ? '' : ` at depth ${depth}`}`)
    .sort(byPlace);
}

const byPlace = (a: string, b: string): number => Number.parseInt(a, 10) - Number.parseInt(b, 10) || (a < b ? -1 : 1);

function theirs(text: string, { nodes }: Parsed): string[] {
  const units = unitsIn(text);
  return nodes
    .flatMap(([type, start, end, depth, field, named]) => {
      if (type === 'file' || type === 'escape' || (named === 0 && type !== ',')) return [];
      const what = type === 'word' && field !== '' ? (field === 'word' ? 'its word' : field) : type;
      return [`${units(start)}–${units(end)} ${what}${what === 'comment' ? '' : ` at depth ${depth}`}`];
    })
    .sort(byPlace);
}

/** For each UTF-16 unit its capture, the innermost one; a fault where two patterns name the same place differently. */
function capturesOf(text: string, { captures }: Parsed): { readonly at: readonly string[]; readonly faults: string[] } {
  const units = unitsIn(text);
  const faults: string[] = [];
  const named = new Map<string, string>();
  const places: { readonly start: number; readonly end: number; readonly name: string }[] = [];
  for (const [name, startByte, endByte] of captures) {
    const [start, end] = [units(startByte), units(endByte)];
    const key = `${start}–${end}`;
    const other = named.get(key);
    if (other === undefined) places.push({ start, end, name });
    else if (other !== name) faults.push(`${JSON.stringify(text.slice(start, end))} at ${start} is ${other} and ${name}`);
    named.set(key, name);
  }
  const at = new Array<string>(text.length).fill('');
  for (const { start, end, name } of places.sort((a, b) => b.end - b.start - (a.end - a.start))) at.fill(name, start, end);
  return { at, faults };
}

/** What the TextMate grammar calls what the query calls. */
const scopes: Readonly<Record<string, string>> = {
  comment: 'comment.line.number-sign|punctuation.definition.comment',
  string: 'string.quoted.double|punctuation.definition.string.begin|punctuation.definition.string.end',
  'string.escape': 'constant.character.escape',
  constant: 'constant.other.date',
  number: 'constant.numeric',
  'number.unit': 'keyword.other.unit',
  operator: 'keyword.operator.tolerance|keyword.operator.range',
  'punctuation.bracket': 'punctuation.section.block.begin|punctuation.section.block.end',
  'punctuation.delimiter': 'punctuation.separator.model|punctuation.separator.list',
  type: 'entity.name.type|entity.other.inherited-class',
  keyword: 'storage.type',
  'keyword.directive': 'keyword.control',
  property: 'support.type.property-name',
  'keyword.operator': 'keyword.operator.word',
  'constant.builtin': 'constant.language',
  '': 'variable.other',
};

let colour: (text: string) => readonly (readonly string[])[];

/** Where shape, verdict or colour differ; nothing, if they agree. */
function faults(texts: readonly string[], query?: string): string[] {
  const parsed = drive(texts, query);
  return texts.flatMap((text, i) => {
    const tree = parse(text);
    const one = parsed[i] as Parsed;
    const found: string[] = [];
    // How long and how deep a file may be is no matter of shape, nor is a character that is not allowed inside a remark or a text.
    const isTooMuch = tree.problems.some((problem) => problem.kind === 'file-too-large' || problem.kind === 'nested-too-deep');
    if (isTooMuch) return [];
    const problems = tree.problems.filter((problem) => problem.kind !== 'character-not-allowed' || !insideOf(tree, problem.start));
    if (problems.length > 0 !== one.error)
      found.push(`${one.error ? 'an error here' : 'no error here'}; ours: ${problems.map((problem) => problem.kind).join(', ') || 'none'}`);
    if (problems.length === 0 && !one.error) {
      const [mine, other] = [ours(tree), theirs(text, one)];
      const [inMine, inOther] = [new Set(mine), new Set(other)];
      for (const line of mine) if (!inOther.has(line)) found.push(`missing: ${line}`);
      for (const line of other) if (!inMine.has(line)) found.push(`too much: ${line}`);
      const coloured = capturesOf(text, one);
      found.push(...coloured.faults);
      if (one.forgot) found.push('too many patterns at once');
      const wanted = colour(text);
      for (let at = 0; at < text.length; at++) {
        const scope = wanted[at]?.at(-1) ?? '';
        if (/\s|\ufeff/.test(text[at] ?? '') && !/^(string|comment)/.test(scope)) continue;
        if (!(scopes[coloured.at[at] ?? ''] ?? '').split('|').includes(scope)) {
          found.push(`${JSON.stringify(text.slice(at, at + 12))} at ${at} is @${coloured.at[at]}, not ${scope}`);
          break;
        }
      }
    }
    return found.map((fault) => `${JSON.stringify(text.slice(0, 60))}: ${fault}`);
  });
}

function insideOf(tree: Tree, at: number): boolean {
  if (tree.comments.some((comment) => at >= comment.start && at < comment.end)) return true;
  const inStatement = (one: Statement): boolean =>
    one.values.some((value) => value.kind === 'text' && at >= value.start && at < value.end) || (one.body?.items ?? []).some(inStatement);
  return tree.items.some(inStatement);
}

describe.skipIf(!probe.ok && !mustRun)('on the runtime of editors', () => {
  beforeAll(async () => {
    expect(probe, 'a C compiler and tree-sitter’s library').toMatchObject({ ok: true });
    expect(
      run(
        compiler,
        '-std=c11',
        '-O1',
        '-I',
        join(folder, 'src'),
        '-o',
        join(bin, 'driver'),
        join(root, 'tests', 'grammar', 'tree-sitter-driver.c'),
        join(folder, 'src', 'parser.c'),
        '-ltree-sitter',
      ),
    ).toEqual({ ok: true, said: '' });
    const grammar = await loaded(JSON.stringify(highlighting()));
    colour = (text) => coloursBy(grammar, text).scopes;
  });

  test('every example', () => {
    const texts = examples().map(({ text }) => text);
    expect(texts.length).toBeGreaterThan(10);
    expect(faults(texts)).toEqual([]);
  });

  test('every example of every page', () => {
    const texts = (['rules', 'figures'] as const).flatMap((room) =>
      foldersWith(room, 'page.md').flatMap((name) => blocksOf(readPage(room, name)).map((block) => block.text)),
    );
    expect(texts.length).toBeGreaterThan(300);
    expect(faults(texts.filter((text) => text.length < 1_000_000))).toEqual([]);
  });

  test('the cases of the canonical form', () => {
    expect(faults(canonicalCases.flatMap(([, text, canonical]) => [text, canonical]))).toEqual([]);
  });

  test('random well-formed files in any style, and as they are printed', () => {
    const texts = fc.sample(fc.tuple(fileOf, styleOf), { numRuns: 300 }).flatMap(([nodes, style]) => {
      const text = render(nodes, style);
      return [text, print(parse(text))];
    });
    expect(faults(texts)).toEqual([]);
  });

  test('characters between words, one by one', () => {
    const texts: string[] = [];
    for (let code = 1; code <= 0xffff; code++)
      if (code < 0xd800 || code > 0xdfff) if (code < 0x3100 || code > 0xf800) texts.push(`width a${String.fromCharCode(code)}b 5 mm\n`);
    texts.push('width a😀b 5 mm\n');
    expect(faults(texts)).toEqual([]);
  });

  test('points, pluses and hyphens in words and numbers', () => {
    const pieces = ['.', '..', '+', '-', '\u2212', '+-', '±', 'a', '5', '.5', '2.5', 'm/s', ' '];
    const random = randomOf(seed() + 11);
    const texts = Array.from(
      { length: 4000 },
      () => 'x ' + Array.from({ length: 1 + Math.floor(random() * 4) }, () => pieces[Math.floor(random() * pieces.length)]).join(''),
    );
    // Points or pluses right before a sign are read otherwise; they stand in no file.
    expect(faults(texts.filter((text) => !/[.+](\.\.|\+-)/.test(text)))).toEqual([]);
  });

  test('where the shape is wrong, both say so', () => {
    const texts = [
      'leaf a {\n',
      '}\n',
      'leaf a {\n}\n}\n',
      '5 mm\n',
      '"x"\n',
      'a "b\n',
      'a : {\n}\n',
      'a ±\n',
      'a 5 ..\n',
      'a ± 5\n',
      'a 5 ± 2 ± 1\n',
      ': b\n',
      '{\n}\n',
      'leaf a { }\n{\n}\n',
      'a \u200b\n',
      // What shows nothing is refused by both, and the list of it is the same.
      ...unseenRanges.flatMap(([from, to]) => [from, to].map((code) => `leaf ea${String.fromCodePoint(code)}st {\n}\n`)),
      'a "\\"\n',
      'a :\n  b\n',
      'a "b" {\n c\n',
    ];
    const parsed = drive(texts);
    for (const [i, text] of texts.entries()) {
      expect(parse(text).problems, text).not.toEqual([]);
      expect(parsed[i]?.error, text).toBe(true);
    }
  });

  test('a line being typed leaves the other lines their colours, but for the one below it', () => {
    const pieces = ['"half', '{', ' :', ' ..', ' ±', ' 5 ±', '\\', '5', ' "a" {'];
    const random = randomOf(seed() + 5);
    const wrong: string[] = [];
    for (const { path, text } of examples()) {
      const lines = text.split('\n');
      const [whole] = drive([text]);
      const before = capturesOf(text, whole as Parsed).at;
      const rounds = Array.from({ length: 20 }, () => {
        const at = Math.floor(random() * lines.length);
        const line = lines[at] ?? '';
        const typed = line.slice(0, Math.floor(random() * (line.length + 1))) + (pieces[Math.floor(random() * pieces.length)] ?? '');
        return { at, typed, changed: [...lines.slice(0, at), typed, ...lines.slice(at + 1)].join('\n') };
      });
      for (const [i, one] of drive(rounds.map(({ changed }) => changed)).entries()) {
        const { at, typed, changed } = rounds[i] as (typeof rounds)[number];
        const after = capturesOf(changed, one).at;
        const start = lines.slice(0, at).join('\n').length;
        const shift = changed.length - text.length;
        // What is not finished (`drive a :`) may take the line below with it, and no more.
        const below = /^\s*(#[^\n]*\n\s*)*[^\n]*/.exec(text.slice(start + (lines[at]?.length ?? 0) + 1))?.[0].length ?? 0;
        const end = start + (lines[at]?.length ?? 0) + 1 + below;
        for (let c = 0; c < text.length; c++)
          if ((c < start || c > end) && before[c] !== after[c < start ? c : c + shift]) {
            wrong.push(`${path}: ${JSON.stringify(typed)} changes ${JSON.stringify(text.slice(c, c + 20))}`);
            break;
          }
      }
    }
    expect(wrong).toEqual([]);
  });

  describe('these checks see a fault', () => {
    const text = 'leaf west : a {\n  opens inward 95 deg # { 5 mm\n}\nuse "a 5 mm \\" b"\naccept x because "b" until 2027-01-31\n';
    const query = treeSitterHighlights();
    test.each([
      ['@string.escape', '@string'],
      ['@number.unit', '@number'],
      ['@comment', '@string'],
      ['(date) @constant', ''],
      ['@property', '@keyword'],
      ['. (word) @type', '(word) @type'],
      ['name: (word) @type', 'name: (word) @property'],
    ])('in colour: %s', (from, to) => {
      expect(faults([text], query)).toEqual([]);
      expect(query).toContain(from);
      expect(faults([text + 'leaf a b {\n}\n'], query.replaceAll(from, to))).not.toEqual([]);
    });
    test('in the number of patterns', () => {
      const more = Array.from({ length: 150 }, (_, i) => `((line word: (word) @_line (word) @_other) (#any-of? @_line "x${i}"))`).join(
        '\n',
      );
      expect(faults([text], query + more).join('\n')).toContain('too many patterns at once');
    });
    test('in shape', () => {
      const [one] = drive([text.replace('95 deg', '95  deg')]);
      expect(theirs(text, one as Parsed)).not.toEqual(ours(parse(text)));
      const [two] = drive(['a\n{\n}\n']);
      expect(theirs('a\n{\n}\n', two as Parsed)).toEqual(ours(parse('a\n{\n}\n')));
      expect(theirs('a\n{\n}\n', two as Parsed)).not.toEqual(ours(parse('a {\n\n}\n')));
    });
  });
});
