// Nothing that is generated is stale, and what is generated works.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { parse } from '../grammar/index.ts';
import { allFigures } from '../server/figures/index.ts';
import { allRules, type Rule } from '../server/rules/index.ts';
import { type BlockSpec, blocks, readFile, units } from '../server/vocabulary/index.ts';
import { generated } from './workshop/generated.ts';
import { rulePageOf } from './workshop/generated-pages.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const { lists } = (await import('./workshop/lists.mjs' as string)) as { lists: () => Record<string, string> };

/** Paths whose text on the disk is not the one it should be. */
function stale(files: Readonly<Record<string, string>>): string[] {
  return Object.entries(files).flatMap(([path, text]) =>
    existsSync(join(root, path)) && readFileSync(join(root, path), 'utf8').replaceAll('\r\n', '\n') === text ? [] : [path],
  );
}

test('the lists of rules and figures are those of the folders (else run `npm run generate`)', () => {
  expect(stale(lists())).toEqual([]);
});
test('what is made from the vocabulary, the rules and the figures is up to date, pages of rules too (else run `npm run generate`)', () => {
  expect(stale(generated())).toEqual([]);
});
test('a stale or missing file is seen', () => {
  const [path, text] = Object.entries(generated())[0] as [string, string];
  expect(stale({ [path]: text + ' ' })).toEqual([path]);
  expect(stale({ 'no/such/file': '' })).toEqual(['no/such/file']);
});
test('what a rule says opens its sections; what else stands there stays', () => {
  const page = '# x\n\n## Why\n\nOld,\nand older.\n\nMore.\n\n## What to do\n\n## Source\n';
  const rule = {
    ...(allRules[0] as Rule),
    why: 'New.',
    remedy: 'Mend it.',
    source: { text: 'the language itself', standing: 'derived' },
  } as const;
  const written = '# x\n\n## Why\n\nNew.\n\nMore.\n\n## What to do\n\nMend it.\n\n## Source\n\nThe language itself.\n';
  expect(rulePageOf(rule, page)).toBe(written);
  expect(rulePageOf(rule, written)).toBe(written);
});
test('generation is the same every time', () => {
  expect(generated()).toEqual(generated());
});

test('the editor’s own list of snippets holds every template, without a prefix: in the text the server offers them', () => {
  const snippets = JSON.parse(generated()['client/snippets.json'] ?? '') as Record<
    string,
    { readonly prefix?: string; readonly description: string; readonly body: readonly string[] }
  >;
  expect(Object.keys(snippets).length).toBe(readdirSync(join(root, 'client', 'snippets')).length);
  for (const [title, { prefix, description, body }] of Object.entries(snippets)) {
    expect(title).toMatch(/^[A-Z][a-z ]+$/);
    expect(prefix).toBeUndefined();
    expect(description).toMatch(/\.$/);
    expect(body.at(-1)).toMatch(/\$0$/);
    // Indented as the language is laid out; the editor makes that its own.
    for (const line of body) expect(line).toMatch(/^(?: {2})*(?! )/);
    expect(body.join('\n')).not.toContain('\t');
  }
});

describe('the configuration of the language', () => {
  const configuration = JSON.parse(generated()['grammar/language-configuration.json'] ?? '') as {
    readonly wordPattern: string;
    readonly indentationRules: { readonly increaseIndentPattern: string; readonly decreaseIndentPattern: string };
    readonly onEnterRules: readonly {
      readonly beforeText: string;
      readonly afterText?: string;
      readonly action: { readonly indent: string };
    }[];
  };
  test('a word is a whole name, number or unit', () => {
    const pattern = new RegExp(configuration.wordPattern, 'g');
    expect('wire west-ram:birch to B1,B2 # 2.10 m/s2 N·m 8.2kohm 2 s..3 s "a b"'.match(pattern)).toEqual([
      'wire',
      'west-ram',
      'birch',
      'to',
      'B1',
      'B2',
      '2.10',
      'm/s2',
      'N·m',
      '8.2kohm',
      '2',
      's',
      '3',
      's',
      'a',
      'b',
    ]);
    expect(''.match(new RegExp(configuration.wordPattern))).toBeNull();
    for (const unit of units) expect(unit.name.match(pattern)).toEqual([unit.name]);
  });
  test('a line that opens a block is followed by a deeper one', () => {
    const increase = new RegExp(configuration.indentationRules.increaseIndentPattern);
    for (const line of ['leaf a {', 'leaf a { # x', '  selector s "a # {" {', 'leaf a {  ', '{', 'x "a \\" {" {'])
      expect(increase.test(line), line).toBe(true);
    for (const line of ['leaf a', '# leaf a {', 'width 2 m # {', 'use "a {"', 'use "a {', 'motion { seat 1 s }', '}', 'x "a \\" {'])
      expect(increase.test(line), line).toBe(false);
    const decrease = new RegExp(configuration.indentationRules.decreaseIndentPattern);
    for (const line of ['}', '  }', '} # x']) expect(decrease.test(line)).toBe(true);
    for (const line of ['width 2 m }', '# }', '{']) expect(decrease.test(line)).toBe(false);
  });
  test('every pattern is one that stops soon on any line', () => {
    const hostile = ['"'.repeat(5000), '\\"'.repeat(5000), '{'.repeat(5000), 'a'.repeat(5000), '"a\\'.repeat(5000), '{ #'.repeat(3000)];
    const patterns = [
      configuration.wordPattern,
      configuration.indentationRules.increaseIndentPattern,
      configuration.indentationRules.decreaseIndentPattern,
      ...configuration.onEnterRules.map((rule) => rule.beforeText),
    ];
    // One that does not would never get to the end.
    for (const pattern of patterns) for (const line of hostile) expect(typeof new RegExp(pattern).test(line)).toBe('boolean');
  });
});

describe('the manual', () => {
  const manual = generated()['server/vocabulary/manual.md'] ?? '';
  test('says every word, unit, rule and figure', () => {
    const words = (spec: BlockSpec): string[] => [
      ...Object.keys(spec.lines),
      ...Object.entries(spec.blocks).flatMap(([word, block]) => [word, ...words(block)]),
    ];
    for (const [word, spec] of Object.entries<BlockSpec>(blocks))
      for (const each of [word, ...words(spec)]) expect(manual).toMatch(new RegExp(`^#+ ${each}$`, 'm'));
    for (const unit of units) expect(manual).toContain(`| \`${unit.name}\` |`);
    for (const rule of allRules) expect(manual).toContain(`| \`${rule.name}\` | ${rule.severity} |`);
    for (const figure of allFigures) expect(manual).toContain(`| \`${figure.id}\` | ${figure.unit} |`);
  });
  test('says of every rule, once, what asks for it and how many examples hold it to that', () => {
    const [, section = ''] = /^## What asks for what$([\s\S]*?)^## /m.exec(manual) ?? [];
    const rows = [...section.matchAll(/^\| (.*) \| \[([\w-]+)\]\(\.\.\/rules\/([\w-]+)\/page\.md\) \| .* \| (\d+) \| (\d+) \| .+ \|$/gm)];
    expect(rows.map((row) => row[2]).sort()).toEqual(allRules.map((rule) => rule.name).sort());
    for (const [, asks, name, page, flagged, sound] of rows) {
      expect(page).toBe(name);
      expect(asks).toBe(allRules.find((rule) => rule.name === name)?.source.text.replaceAll('|', '\\|'));
      const text = readFileSync(join(root, 'server', 'rules', name ?? '', 'page.md'), 'utf8');
      expect([Number(flagged), Number(sound)], name).toEqual([
        text.match(/^```gate flagged\b/gm)?.length,
        text.match(/^```gate sound\b/gm)?.length,
      ]);
    }
  });
  test('every block of code in it reads without problems', () => {
    const fences = [...manual.matchAll(/```gate\n([\s\S]*?)```/g)].map((match) => match[1] ?? '');
    expect(fences.length).toBeGreaterThan(12);
    for (const fence of fences) {
      const problems = readFile(parse(fence.startsWith('language') ? fence : 'language 1\n' + fence)).problems;
      // Inner blocks stand alone here: only their own word is out of place.
      expect(problems.filter((problem) => problem.kind !== 'word-unknown')).toEqual([]);
      expect(problems.length).toBeLessThan(2);
    }
  });
  test('its tables are tables and its links lead somewhere', () => {
    const anchors = new Set([...manual.matchAll(/^#+ (.+)$/gm)].map((match) => (match[1] ?? '').toLowerCase().replaceAll(' ', '-')));
    for (const match of manual.matchAll(/\]\(#([^)]+)\)/g)) expect(anchors).toContain(match[1]);
    for (const block of manual
      .trimEnd()
      .split('\n\n')
      .filter((text) => text.startsWith('| '))) {
      const columns = block.split('\n').map((row) => row.replace(/\\\|/g, '').split('|').length);
      expect(new Set(columns).size).toBe(1);
    }
  });
});
