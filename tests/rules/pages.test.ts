// Every rule's page is run: its examples are flagged, mended and sound exactly as it says.
import { describe, expect, test } from 'vitest';
import { allRules, ruleNamed, type Finding, type Rule } from '../../server/rules/index.ts';
import type { Analysis } from '../../server/editor/workspace.ts';
import { faultsOf } from '../kit/messages.ts';
import { applyEdits, blocksOf, foldersWith, judge, judgeBlock, lineOf, normalised, readPage, type Block } from '../kit/pages.ts';

const folders = foldersWith('rules', 'rule.ts');

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
    expect(normalised(page.sections.get('Source') ?? '')).toContain(normalised(rule.source.text));
    if (!rule.acceptable) expect(normalised(page.text), 'a rule that nobody may overrule says so').toMatch(/can(not|['’]t) be accepted/);
    else expect(normalised(page.text)).not.toMatch(/can(not|['’]t) be accepted/);
    expect(page.text).not.toMatch(/\bcompliant\b/i);
  });

  test('the page has an example that is flagged and one that is sound', () => {
    expect(blocks.some((block) => block.kind === 'flagged')).toBe(true);
    expect(blocks.some((block) => block.kind === 'sound')).toBe(true);
    for (const block of blocks) expect(['flagged', 'fixed', 'sound']).toContain(block.kind);
  });

  blocks.forEach((block, i) => {
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
        const after = applyEdits(before.text, fixes.flatMap((fix) => fix.edits));
        expect(after).toBe(block.text);
        checkFix(name, before, analysis, 'all', () => after);
      });
  });
});

/** A fix never makes more errors than it found, and never loses a comment. */
function checkFix(name: string, block: Block, before: Analysis, title: string, apply: () => string): void {
  const after = judge(apply(), block.files, block.asOf);
  // Once a line can be read, more can be found in what it says; so a mended text is held against what reading it finds.
  const counted = ruleNamed(name)?.kind === 'problem' ? readingErrorsIn : errorsIn;
  expect(counted(after), `errors after “${title}”`).toBeLessThanOrEqual(counted(before));
  expect(commentsIn(after), `comments after “${title}”`).toEqual(commentsIn(before));
}

const errorsIn = (analysis: Analysis): number => analysis.findings.filter((finding) => finding.severity === 'error').length;
const readingErrorsIn = (analysis: Analysis): number => analysis.findings.filter((finding) => finding.severity === 'error' && ruleNamed(finding.rule)?.kind === 'problem').length;
const commentsIn = (analysis: Analysis): string[] => analysis.installation.reading.tree.comments.map((comment) => comment.text.trimEnd()).sort();
