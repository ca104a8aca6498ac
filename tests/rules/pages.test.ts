// Every rule's page is run: its examples are flagged, mended and sound exactly as it says, and what is said of them is what it
// shows. `SAY=1 npx vitest run tests/rules/pages.test.ts` writes what is said into the pages; read every sentence and number
// of it before you keep it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/engine/index.ts';
import { allRules, type Finding, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { faultsOf } from '../kit/messages.ts';
import {
  applyEdits,
  type Block,
  blocksOf,
  type Fence,
  foldersWith,
  judge,
  judgeBlock,
  lineOf,
  normalised,
  type Page,
  readPage,
  root,
  saidOf,
} from '../kit/pages.ts';
import { rulePageOf } from '../workshop/generated-pages.ts';

const folders = foldersWith('rules', 'rule.ts');
if (process.env['SAY'] === '1') folders.forEach(write);

test('every folder of a rule has a page, every page a rule, and the list holds them all', () => {
  expect(folders.length).toBeGreaterThan(1);
  expect(foldersWith('rules', 'page.md')).toEqual(folders);
  expect(allRules.map((rule) => rule.name).sort()).toEqual(folders);
});

describe.each(folders)('%s', (name) => {
  const page = readPage('rules', name);
  const blocks = blocksOf(page);
  const ownOf = (analysis: Analysis): Finding[] => [...analysis.findings, ...analysis.accepted].filter((finding) => finding.rule === name);

  test('the rule is well formed', () => {
    const rule = ruleNamed(name) as Rule;
    expect(rule, `no rule is called ${name}`).toBeDefined();
    expect(rule.name).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
    expect(rule.name.length).toBeLessThanOrEqual(40);
    expect([...faultsOf(rule.title, ''), ...faultsOf(rule.why, ''), ...faultsOf(rule.remedy, '')]).toEqual([]);
    expect(rule.source.text.trim()).not.toBe('');
    if (rule.source.standing === 'from memory') expect(rule.severity, 'a value from memory never decides an error').not.toBe('error');
  });

  test('the page has its heading and its sections', () => {
    const rule = ruleNamed(name) as Rule;
    expect(page.heading).toBe(name);
    const sections = [...page.sections.keys()];
    for (const section of ['Why', 'What to do', 'Source', 'Examples']) expect(sections).toContain(section);
    for (const section of ['Why', 'What to do', 'Source']) expect(page.sections.get(section)?.trim(), section).not.toBe('');
    expect(rulePageOf(rule, page.text), 'npm run generate writes what the rule says of itself').toBe(page.text);
    if (rule.acceptable !== true)
      expect(normalised(page.text), 'a rule that nobody may overrule says so').toMatch(/can(not|['’]t) be accepted/);
    else expect(normalised(page.text)).not.toMatch(/can(not|['’]t) be accepted/);
    expect(page.text).not.toMatch(/\bcompliant\b/i);
    expect(page.text, 'what begins with “…” is filled in').not.toMatch(/^… /m);
  });

  test('the page has an example that is flagged and one that is sound', () => {
    expect(blocks.some((block) => block.kind === 'flagged')).toBe(true);
    expect(blocks.some((block) => block.kind === 'sound')).toBe(true);
    for (const block of blocks) expect(['flagged', 'fixed', 'sound']).toContain(block.kind);
  });

  test('the page shows what is said of each example that is flagged', () => {
    for (const block of blocks.filter((one) => one.kind === 'flagged'))
      expect(sayingAfter(page, block), `what is said of the example on line ${block.line}; see the top of this file`).toBeDefined();
  });

  blocks.forEach((block, i) => {
    const says = block.kind === 'flagged' ? sayingAfter(page, block) : undefined;
    if (says !== undefined)
      test(`line ${says.line} of the page: what is said`, () =>
        expect(saidOf(judgeBlock(block), ruleNamed(name) as Rule, block.isDerived)).toBe(says.text));
    if (block.kind === 'flagged')
      test(`line ${block.line} of the page: flagged where it says`, () => {
        expect(block.expected.length, 'no line is marked').toBeGreaterThan(0);
        const analysis = judgeBlock(block);
        expect(ownOf(analysis).map((finding) => lineOf(analysis, finding.start))).toEqual(block.expected);
        for (const finding of ownOf(analysis)) {
          expect([finding.what, finding.why, finding.remedy].flatMap((sentence) => faultsOf(sentence, block.text))).toEqual([]);
          for (const related of finding.related) expect(related.message.trim()).not.toBe('');
          expect(normalised(page.sections.get('Source') ?? '')).toContain(normalised(finding.source));
          expect(finding.end).toBeLessThanOrEqual(block.text.length);
          for (const fix of finding.fixes) checkFix(name, block, analysis, fix.title, () => applyEdits(block.text, fix.edits));
        }
      });
    else if (block.kind === 'sound')
      test(`line ${block.line} of the page: sound`, () => {
        const analysis = judgeBlock(block);
        expect(ownOf(analysis).map((finding) => finding.what)).toEqual([]);
      });
    else
      test(`line ${block.line} of the page: what the quick fixes make`, () => {
        const before = blocks[i - 1] as Block;
        expect(before?.kind, 'a fixed block follows a flagged one').toBe('flagged');
        const analysis = judgeBlock(before);
        const fixes = ownOf(analysis).flatMap((finding) => finding.fixes.slice(0, 1));
        expect(fixes.length, 'no finding has a fix').toBeGreaterThan(0);
        const after = applyEdits(
          before.text,
          fixes.flatMap((fix) => fix.edits),
        );
        expect(after).toBe(block.text);
        checkFix(name, before, analysis, 'all', () => after);
      });
  });
});

/** The `says` block of a flagged one: it stands before the next example. */
function sayingAfter(page: Page, block: Block): Fence | undefined {
  const next =
    page.fences.find((fence) => fence.line > block.line && fence.info[0] === 'gate' && fence.info[1] !== 'fixed')?.line ?? Infinity;
  return page.fences.find((fence) => fence.line > block.line && fence.line < next && fence.info[0] === 'says');
}

/** Writes into a page what is said of each of its flagged examples, in place of what stood there. */
function write(name: string): void {
  const page = readPage('rules', name);
  const lines = page.text.split('\n');
  for (const block of blocksOf(page)
    .filter((one) => one.kind === 'flagged')
    .reverse()) {
    const old = sayingAfter(page, block);
    const endOf = (opens: number): number => lines.indexOf('```', opens);
    const said = saidOf(judgeBlock(block), ruleNamed(name) as Rule, block.isDerived)
      .replace(/\n$/, '')
      .split('\n');
    if (old !== undefined) lines.splice(old.line, endOf(old.line) - old.line, ...said);
    else lines.splice(endOf(block.line) + 1, 0, '', '```says', ...said, '```');
  }
  const path = join(root, page.path);
  if (lines.join('\n') !== readFileSync(path, 'utf8')) writeFileSync(path, lines.join('\n'));
}

/** A fix never makes more errors than it found, and never loses a comment. */
function checkFix(name: string, block: Block, before: Analysis, title: string, apply: () => string): void {
  const after = judge(apply(), block.files, block.asOf);
  // Once a line can be read, more can be found in what it says; so a mended text is held against what reading it finds.
  const counted = ruleNamed(name)?.kind === 'problem' ? readingErrorsIn : errorsIn;
  expect(counted(after), `errors after “${title}”`).toBeLessThanOrEqual(counted(before));
  expect(commentsIn(after), `comments after “${title}”`).toEqual(commentsIn(before));
}

const errorsIn = (analysis: Analysis): number => analysis.findings.filter((finding) => finding.severity === 'error').length;
const readingErrorsIn = (analysis: Analysis): number =>
  analysis.findings.filter((finding) => finding.severity === 'error' && ruleNamed(finding.rule)?.kind === 'problem').length;
const commentsIn = (analysis: Analysis): string[] =>
  analysis.installation.reading.tree.comments.map((comment) => comment.text.trimEnd()).sort();
