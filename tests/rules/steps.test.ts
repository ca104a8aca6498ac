// The verdict in small steps, for the editor, is the verdict.
import { describe, expect, test } from 'vitest';
import { allRules, evaluate, judging, type Verdict } from '../../server/rules/index.ts';
import { blocksOf, foldersWith, judgeBlock, readPage } from '../kit/pages.ts';

const slow = new Set(allRules.flatMap((rule) => (rule.kind === 'installation' && rule.cost === 'idle' ? [rule.name] : [])));

function steps(verdict: Generator<Verdict | undefined, Verdict>): { readonly early: readonly Verdict[]; readonly last: Verdict } {
  const early: Verdict[] = [];
  for (;;) {
    const step = verdict.next();
    if (step.done === true) return { early, last: step.value };
    if (step.value !== undefined) early.push(step.value);
  }
}
const said = ({ findings, accepted }: Verdict): unknown =>
  [findings, accepted].map((list) => list.map(({ rule, what, start, end, severity }) => ({ rule, what, start, end, severity })));

describe('every example of every page', () => {
  const pages = foldersWith('rules', 'rule.ts').map((name) => readPage('rules', name));
  test('step by step it ends in the same verdict', () => {
    let withSlow = 0;
    for (const page of pages)
      for (const block of blocksOf(page)) {
        const { installation } = judgeBlock(block);
        const whole = evaluate(installation, block.asOf);
        const { early, last } = steps(judging(installation, block.asOf));
        expect(said(last), `${page.path}:${block.line}`).toEqual(said(whole));
        for (const verdict of early) {
          // What is said early is not taken back, and nothing is said of rules that have not run.
          const lasting = JSON.stringify(said(last));
          for (const finding of [...verdict.findings, ...verdict.accepted]) {
            expect(slow.has(finding.rule)).toBe(false);
            expect(lasting, `${page.path}:${block.line}: ${finding.rule} is taken back`).toContain(
              JSON.stringify({ rule: finding.rule, what: finding.what, start: finding.start, end: finding.end }).slice(1, -1),
            );
          }
        }
        if (whole.findings.some(({ rule }) => slow.has(rule))) withSlow++;
      }
    expect(withSlow).toBeGreaterThan(slow.size);
  });
  test('there are slow rules, and few of them', () => {
    expect(slow.size).toBeGreaterThan(3);
    expect(slow.size).toBeLessThan(allRules.length / 10);
  });
});
