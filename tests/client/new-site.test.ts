// What the questions for a new site end in, the verdict in the status bar, and the problem matcher against the command's lines.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantityFault, relativePath, type SiteAnswers, siteText } from '../../client/new-site.ts';
import { verdictOf } from '../../client/views/verdict.ts';
import { parse, print, unseenRanges } from '../../grammar/index.ts';
import { output } from '../../server/cli/outputs/lines.ts';
import { judge } from '../kit/pages.ts';

const answers: SiteAnswers = {
  title: 'Elder Row',
  rules: 'europe',
  users: 'public',
  sight: 'none',
  moves: 'swings',
  leaves: [{ name: 'left', width: '2.10m', height: ' 1.80 m', mass: '165 kg' }, { name: 'right' }],
  opens: 'inward',
  libraries: ['../library/panels.gate'],
};
/** Rules that speak of how something is written, or of a name or a file that is not there. */
const ofWriting = /^(text|unit|value|word|name|block|brace|number|file|use|language|line|character|date|body|repeated)-/;

describe('a new site', () => {
  test('holds what was answered and nothing else', () => {
    const text = siteText(answers);
    const { installation, findings } = judge(text);
    expect(installation.site?.title).toBe('Elder Row');
    expect(installation.leaves.map((leaf) => [leaf.name, leaf.facts.width?.value, leaf.facts.mass?.value, leaf.facts.opens])).toEqual([
      ['left', 2.1, 165, undefined],
      ['right', undefined, undefined, undefined],
    ]);
    expect(findings.filter(({ rule }) => ofWriting.test(rule) && rule !== 'use-unused').map(({ rule, what }) => [rule, what])).toEqual([]);
    // What was left open is asked for.
    expect(findings.some(({ rule }) => rule === 'fact-missing')).toBe(true);
  });
  test('whatever the answers, it is well formed and in canonical form', () => {
    const word = fc.constantFrom('2.10 m', '800mm', undefined);
    fc.assert(
      fc.property(
        fc.record({
          title: fc.string({ minLength: 1, unit: 'binary' }),
          rules: fc.constantFrom('europe', 'north-america'),
          users: fc.constantFrom('trained', 'limited', 'public'),
          sight: fc.constantFrom('full', 'none'),
          moves: fc.constantFrom('swings', 'slides'),
          opens: fc.constantFrom('inward', 'outward'),
          libraries: fc.array(fc.constantFrom('a.gate', '../b c/"d".gate')),
          leaves: fc.array(fc.record({ name: fc.constantFrom('left', 'right'), width: word, height: word }), {
            minLength: 1,
            maxLength: 2,
          }),
        }),
        (given) => {
          const text = siteText(given as SiteAnswers);
          const tree = parse(text);
          expect(tree.problems).toEqual([]);
          expect(print(tree)).toBe(text);
        },
      ),
    );
  });
  test('a title with characters that no text may hold, pasted from elsewhere, is one without them', () => {
    for (const wrong of ['\u0080', '\u009f', '\u200b', '\u202e', '\u2066', '\ud800', '\udc00', '\uffff', '\n', '\0'])
      expect(siteText({ ...answers, title: `Elder${wrong}Row` }), JSON.stringify(wrong)).toContain('site "Elder Row" {');
    expect(siteText({ ...answers, title: '“Élder” 门 🚪\u00a0\\ "Row"' })).toContain('site "“Élder” 门 🚪\u00a0\\\\ \\"Row\\"" {');
    // By every character of one unit, and those of two that show nothing: what the language refuses is left out, and nothing else is.
    const ofTwo = unseenRanges.flatMap(([from, to]) => [from - 1, from, to, to + 1]).filter((code) => code > 0xffff);
    for (const code of [...Array.from({ length: 0xffff - 0x1f }, (_, i) => i + 0x20), ...ofTwo]) {
      const character = String.fromCodePoint(code);
      if (/[\s"\\]/.test(character)) continue;
      const isRefused = parse(`use "${character}"\n`).problems.length > 0;
      if (siteText({ ...answers, title: `a${character}` }).includes(`site "a${character}" {`) === isRefused) expect.fail(code.toString(16));
    }
  });
  test('a quantity that cannot be read is told of while it is typed', () => {
    const fault = (text: string): string | undefined => quantityFault(text, ['m', 'mm'], '2.10 m');
    for (const fine of ['', '  ', '2.10 m', '2.10m', '2100 mm', ' 3 m ']) expect(fault(fine), fine).toBeUndefined();
    expect(fault('2.10')).toBe('In which unit? 2.10 m, 2.10 mm?');
    expect(fault('2,10 m')).toContain('2.10 m');
    expect(fault('2 kg')).toContain('m, mm');
    expect(fault('0 m')).toContain('nothing');
  });
  test('ways from one file to another', () => {
    expect(relativePath('/w/sites/a.gate', '/w/library/p.gate')).toBe('../library/p.gate');
    expect(relativePath('/w/a.gate', '/w/library/p.gate')).toBe('library/p.gate');
    expect(relativePath('/w/a.gate', '/w/p.gate')).toBe('p.gate');
    expect(relativePath('/w/x/y/a.gate', '/w/x/z.gate')).toBe('../z.gate');
    expect(relativePath('/w/library/a.gate', '/w/library/p.gate')).toBe('p.gate');
  });
});

describe('the verdict in the status bar', () => {
  test('counts in words, the gravest decides, and it never says that a gate is safe', () => {
    expect(verdictOf({ error: 2, warning: 1, note: 0 })).toMatchObject({ text: '2 errors, 1 warning', icon: 'error', ground: 'error' });
    expect(verdictOf({ error: 0, warning: 1, note: 3 })).toMatchObject({ text: '1 warning, 3 notes', icon: 'warning', ground: undefined });
    expect(verdictOf({ error: 0, warning: 0, note: 1 })).toMatchObject({ text: '1 note', icon: 'info' });
    const clean = verdictOf({ error: 0, warning: 0, note: 0 });
    expect(clean.text + clean.tooltip).not.toMatch(/\b(safe|compliant|conform)/i);
    expect(clean.tooltip).toContain('measured');
    expect(verdictOf(undefined)).toMatchObject({ text: 'not running', ground: 'warning' });
  });
});

test('the problem matcher reads each line of the command', () => {
  const { contributes } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    contributes: {
      problemPatterns: {
        regexp: string;
        file: number;
        line: number;
        column: number;
        endLine: number;
        endColumn: number;
        severity: number;
        message: number;
        code: number;
      }[];
    };
  };
  const pattern = contributes.problemPatterns[0];
  if (pattern === undefined) throw new Error('there is no pattern');
  const finding = {
    rule: 'lag-too-small',
    severity: 'error' as const,
    what: 'The lag [4 s] is: too small\nfor it.',
    why: '',
    remedy: '',
    source: '',
    related: [],
    fixes: [],
    range: { start: { line: 3, column: 5 }, end: { line: 4, column: 1 } },
    sourceLine: '',
  };
  let out = '';
  const writer = output.begin({ send: (text: string) => (out += text) } as never);
  const account = { draft: false, judged: 0, of: 0, open: [], asks: [], all: () => [] };
  const counts = { error: 1, warning: 0, note: 0 };
  writer.file({ path: 'a: b.gate', shown: 'sites/a: b.gate', account, findings: () => [finding], counts });
  const found = new RegExp(pattern.regexp).exec(out.trimEnd());
  expect(
    [pattern.file, pattern.line, pattern.column, pattern.endLine, pattern.endColumn, pattern.severity, pattern.message, pattern.code].map(
      (group) => found?.[group],
    ),
  ).toEqual(['sites/a: b.gate', '3', '5', '4', '1', 'error', expect.stringContaining('The lag [4 s] is: too small'), 'lag-too-small']);
  expect(['error', 'warning', 'note'].every((severity) => new RegExp(pattern.regexp).test(`a.gate:1:1-1:2: ${severity}: x [y]`))).toBe(
    true,
  );
});
