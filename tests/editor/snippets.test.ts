// The templates are real files: each is judged as it is, and what is offered of it claims nothing that nobody chose.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import {
  asPlain,
  asSnippet,
  blockPieces,
  linePieces,
  type Piece,
  templateOf,
  templatePieces,
  templates,
  unchosen,
} from '../../server/editor/snippets.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import { anywhereLines, type BlockSpec, blocks } from '../../server/vocabulary/index.ts';
import { asOf } from './bench.ts';

const folder = new URL('../../client/snippets/', import.meta.url);
const files = readdirSync(folder);
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const libraryFolder = new URL('../../examples/library/', import.meta.url);
const judge = (text: string): Analysis =>
  new Workspace({
    root: '/w',
    read: (path) =>
      path.startsWith('/w/examples/library/')
        ? { text: readFileSync(new URL(path.slice('/w/examples/library/'.length), libraryFolder), 'utf8') }
        : 'missing',
  }).judge('/w/client/snippets/x.gate', text, asOf);

test('every file of the folder is a template, and every template has a file', () => {
  expect(files.map((file) => file.replace(/\.gate$/, '')).sort()).toEqual(
    templates()
      .map((template) => template.name)
      .sort(),
  );
  expect(files.length).toBeGreaterThan(5);
});

describe.each(files)('%s', (file) => {
  const text = textOf(file);
  const template = templateOf(file.replace('.gate', ''), text);

  test('as it stands: nothing is found but what it promises', () => {
    expect(text).toMatch(/^expects-no note$/m);
    const promised = new Set([...text.matchAll(/^expects (\S+)$/gm)].map((match) => match[1]));
    const { findings } = judge(text);
    expect(findings.filter((finding) => !promised.has(finding.rule)).map((finding) => finding.what)).toEqual([]);
    // Forces are measured on site, once it stands; nothing else may be left open.
    expect([...promised].filter((rule) => rule !== 'force-not-measured')).toEqual([]);
    expect(print(parse(text))).toBe(text);
  });

  test('what is offered of it says nothing that nobody chose, and what is left unfilled is found', () => {
    expect(template.doc).toMatch(/^[A-Z].*\.$/);
    expect(template.parts.length).toBeGreaterThan(0);
    const pieces = templatePieces(template, new Set());
    const literal = pieces.filter((piece): piece is string => typeof piece === 'string').join('\u0001');
    expect(literal.replace(/after-750-ms|after-5-s|b10d/g, '')).not.toMatch(/\d/);
    const plain = asPlain(pieces);
    const { installation, findings } = judge(`language 1\n${plain}\n`);
    expect(installation.reading.tree.problems).toEqual([]);
    // Every line that is left open is found on its own line.
    const lines = plain.split('\n');
    const open = lines.flatMap((line, i) => (isUnfilled(line) ? [i + 2] : []));
    const found = new Set(
      findings
        .filter((finding) => ['value-missing', 'value-unfit', 'choice-unknown', 'model-unknown'].includes(finding.rule))
        .map((finding) => `language 1\n${plain}\n`.slice(0, finding.start).split('\n').length),
    );
    expect(open.filter((line) => !found.has(line))).toEqual([]);
    expect(open.length).toBeGreaterThan(2);
  });

  test('places are numbered from 1 without a gap; names are one place wherever they stand', () => {
    const snippet = asSnippet(templatePieces(template, new Set()));
    const numbers = [...snippet.matchAll(/(?<!\\)\$\{?(\d+)/g)].map((match) => Number(match[1]));
    const last = numbers.pop();
    expect(last).toBe(0);
    expect([...new Set(numbers)]).toEqual(Array.from({ length: Math.max(...numbers) }, (_, i) => i + 1));
    expect(new Set([...snippet.matchAll(/\$\{(\d+):/g)].map((match) => match[1])).size).toBe([...snippet.matchAll(/\$\{(\d+):/g)].length);
    for (const match of snippet.matchAll(/\|([^|]*)\|/g)) expect(match[1]?.split(',')[0]).toBe(unchosen);
  });

  test('what a file can hold once and holds is left out', () => {
    for (const part of template.parts.filter((one) => one.single)) {
      const whole = asPlain(templatePieces(template, new Set()));
      const rest = asPlain(templatePieces(template, new Set([part.word])));
      expect(whole.startsWith(`${part.word} {`) || whole.includes(`\n${part.word} {`)).toBe(true);
      expect(rest.includes(`\n${part.word} {`)).toBe(false);
    }
  });
});

/** A line of a template that lacks a value: a word, maybe with its keyword, and nothing behind it. */
const isUnfilled = (line: string): boolean =>
  /^\s+[a-z-]+(?: (?:last|onto))?$/.test(line) && !/private-supply|testable|senses|limits|tested|lighting/.test(line);

test('the same name is the same place', () => {
  const pair = templates().find((template) => template.name === 'swing-pair');
  const snippet = asSnippet(templatePieces(pair as NonNullable<typeof pair>, new Set()));
  const [, number] = /leaf \$\{(\d+):west\}/.exec(snippet) ?? [];
  expect(snippet).toContain(`closes onto $${number} `);
  expect(snippet).toContain(`moves $${number}\n`);
});

test('lines and blocks of the vocabulary: a place for each value that must be there, and none that claims something', () => {
  expect(asSnippet(linePieces('closes', blocks.leaf.lines.closes))).toBe('closes onto $1');
  expect(asSnippet(linePieces('opens', blocks.leaf.lines.opens))).toBe('opens ${1|…,inward,outward|} $2');
  expect(asPlain(linePieces('opens', blocks.leaf.lines.opens))).toBe('opens');
  expect(asSnippet(linePieces('accept', anywhereLines.accept))).toBe('accept $1 because "$2" until $3');
  expect(asPlain(blockPieces('battery', blocks.panel.blocks.battery as BlockSpec))).toBe('battery {\n  voltage\n  capacity\n}');
});

test('signs that a snippet would act on are kept as they are', () => {
  const pieces: Piece[] = ['a $ \\ } ', { key: 'x', shown: 'b } $ \\' }, ' ', { key: 'y', choices: ['p,q', 'r|s'] }];
  expect(asSnippet(pieces)).toBe('a \\$ \\\\ } ${1:b \\} \\$ \\\\} ${2|p\\,q,r\\|s|}');
  expect(
    asPlain([
      'a ',
      { key: 'x' },
      ' b\r\nc ',
      { key: 'y', shown: 'd' },
      '\r\n',
      { key: 'z', quoted: 'form' },
      ' e ',
      { key: 'w', quoted: 'text' },
      ' f',
    ]),
  ).toBe('a\r\nc d\r\n"" e');
});
