// Files are spoilt in many small ways; whatever is then said of them is a sentence for people, and what is offered to
// mend them does not spoil them further.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withoutUnseen } from '../../grammar/index.ts';
import type { Analysis } from '../../server/engine/index.ts';
import { ruleNamed } from '../../server/rules/index.ts';
import { seed } from '../kit/chance.ts';
import { faultsOf } from '../kit/messages.ts';
import { applyEdits, blocksOf, foldersWith, judge, lineOf, readPage, root } from '../kit/pages.ts';

const rounds = 15;

/** Whole numbers from 0 to below `limit`, the same ones for the same seed. */
function drawFrom(start: number): (limit: number) => number {
  let state = start >>> 0;
  return (limit) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * limit);
  };
}

const scraps = [
  '{',
  '}',
  '"',
  '#',
  ':',
  ',',
  '±',
  '..',
  '=',
  ' 12 ',
  ' 2,5 m',
  ' 99999 kg',
  ' west',
  '\n',
  '\n}\n',
  '\n{\n',
  '\u200b',
  '\u0000',
  ' 2026-13-40',
  ' "text"',
  'x'.repeat(300),
  ' 😀',
  '\r\n',
  '\\',
  ' accept unit-missing because "x" until 2020-01-01\n',
  ' -0.123456789 mm',
  '  ',
  '# comment\n',
];

function spoilt(text: string, draw: (limit: number) => number): string {
  let out = text;
  for (let i = 1 + draw(3); i > 0; i--) {
    const at = draw(out.length + 1);
    const lines = out.split('\n');
    const line = draw(lines.length);
    switch (draw(6)) {
      case 0:
        out = out.slice(0, at) + out.slice(at + 1 + draw(4));
        break;
      case 1:
        out = out.slice(0, at) + scraps[draw(scraps.length)] + out.slice(at);
        break;
      case 2:
        out = [...lines.slice(0, line), ...lines.slice(line + 1)].join('\n');
        break;
      case 3:
        out = [...lines.slice(0, line + 1), ...lines.slice(line)].join('\n');
        break;
      case 4:
        out = [...lines.slice(0, line), (lines[line] ?? '').replace(/[a-z]([a-z])/, '$1'), ...lines.slice(line + 1)].join('\n');
        break;
      default:
        out = [...lines.slice(0, line), (lines[line] ?? '').replace(/ [^ ]+$/, ''), ...lines.slice(line + 1)].join('\n');
    }
  }
  return out;
}

const library = join(root, 'examples/library');
const originals: (readonly [string, string])[] = [
  ...readdirSync(library)
    .filter((name) => name.endsWith('.gate'))
    .map((name) => [`library/${name}`, readFileSync(join(library, name), 'utf8')] as const),
  ...foldersWith('rules', 'rule.ts').flatMap((name) =>
    blocksOf(readPage('rules', name)).flatMap((block) =>
      block.text.length < 20_000 && block.files.size === 0 ? [[`${name}, line ${block.line}`, block.text] as const] : [],
    ),
  ),
];

test('there are files to spoil', () => {
  expect(originals.length).toBeGreaterThan(50);
});

describe.each(originals)('%s', (name, text) => {
  test('messages and fixes', () => {
    const draw = drawFrom(seed() + name.length * 7919 + text.length);
    for (let round = 0; round < rounds; round++) check(spoilt(text, draw));
  });
});

test.each([
  ['what cannot stand there before the first line', '\u200bmotion {\n  seat 1.5 s\n}\n'],
  ['a brace too many before the first line', '{motion {\n}\n'],
  ['an unknown unit right behind its number', 'language 1\nleaf west {\n  width 2.10metres\n}\n'],
  ['a very long name in an order', `language 1\nmotion {\n  order opening west east\n  order closing west ${'x'.repeat(300)}\n}\n`],
])('%s', (_, text) => check(text));

function check(file: string): void {
  const before = judge(file);
  for (const finding of before.findings) {
    const faults = [finding.what, finding.why, finding.remedy].flatMap((sentence) => faultsOf(sentence, file));
    expect(faults, `${finding.rule} on line ${lineOf(before, finding.start)} of\n${file}`).toEqual([]);
    expect(finding.start).toBeGreaterThanOrEqual(0);
    expect(finding.end).toBeGreaterThanOrEqual(finding.start);
    expect(finding.end).toBeLessThanOrEqual(file.length);
    if (ruleNamed(finding.rule)?.kind !== 'problem') continue;
    for (const fix of finding.fixes) {
      const fixed = applyEdits(file, fix.edits);
      expect(fixed).not.toBe(file);
      const after = judge(fixed);
      const said = `“${fix.title}” (${finding.rule}, line ${lineOf(before, finding.start)}) made of\n${file}\n----\n${fixed}`;
      // A word that was not known may hide more mistakes behind it; what is applied in bulk must not even do that.
      if (fix.safe) {
        expect(readingErrors(after), said).toBeLessThanOrEqual(readingErrors(before));
        expect(newNumbers(file, fixed), said).toEqual([]);
      }
      expect(lostComments(before, after), said).toEqual([]);
    }
  }
}

const readingErrors = (analysis: Analysis): number =>
  analysis.findings.filter((finding) => finding.severity === 'error' && ruleNamed(finding.rule)?.kind === 'problem').length;

/** Numbers that a change brought in, whatever their units: what is applied in bulk never states one, but for the version of the language. */
function newNumbers(before: string, after: string): string[] {
  const numbers = (text: string): string[] =>
    (
      withoutUnseen(text)
        .replace(/(?<![\w-])language 1\b/g, '')
        .match(/[\d.,]*\d\S*/g) ?? []
    ).map((number) => number.replace(/(?<=\d)\p{L}+$/u, ''));
  const had = new Set(numbers(before));
  return numbers(after).filter((number) => !had.has(number));
}

/** Comments that were there and are no more; one may have grown out of a text that swallowed it. */
function lostComments(before: Analysis, after: Analysis): string[] {
  const left = after.installation.reading.tree.comments.map(textOf);
  return before.installation.reading.tree.comments.flatMap((comment) => {
    const at = left.indexOf(textOf(comment));
    if (at < 0) return [comment.text];
    left.splice(at, 1);
    return [];
  });
}

/** A comment without the characters that no file may have: a fix takes these out. */
function textOf(comment: { readonly text: string }): string {
  return comment.text
    .replace(
      /[\u0000-\u0008\u000e-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g,
      '',
    )
    .trimEnd();
}
