// What is offered for what is found, over every flagged example of every rule's page: to mend it or to say how comes first, to
// accept it last and never alone; a form that adds what is missing takes the finding away, or leaves a place to fill.
import { describe, expect, test } from 'vitest';
import { findingActions, formatting, type Insertion } from '../../server/editor/index.ts';
import { type Analysis, withEdits } from '../../server/engine/index.ts';
import { type Finding, ruleNamed } from '../../server/rules/index.ts';
import { type Block, blocksOf, foldersWith, judge, judgeBlock, readPage } from '../kit/pages.ts';
import { asOf } from './bench.ts';

const examples = foldersWith('rules', 'rule.ts').flatMap((name) =>
  blocksOf(readPage('rules', name))
    .filter(({ kind }) => kind === 'flagged')
    .map((block) => ({ name, block, analysis: judgeBlock(block) })),
);
const what = ({ rule, what: said }: Finding): string => `${rule}: ${said}`;

/** Rules whose findings say that a place is still to be filled. */
const toFill = new Set([
  'value-missing',
  'sign-misplaced',
  'choice-unknown',
  'value-unfit',
  'name-unfit',
  'fact-missing',
  'model-missing',
  'model-unknown',
  // Of a file that promises something, more is found while a place is empty.
  'expectation-not-met',
]);

/** A text in its canonical form; undefined where its shape is broken. */
const canonical = (text: string): string | undefined => {
  const made = formatting(text);
  return 'edits' in made ? withEdits(text, made.edits) : undefined;
};
const judged = (block: Block, text: string): Analysis => judge(text, block.files, block.asOf);

test('of an error the first thing offered is never to accept it, and what cannot be accepted is not', () => {
  let [errors, accepted, acceptable] = [0, 0, 0];
  for (const { name, analysis } of examples)
    for (const [index, finding] of analysis.findings.entries()) {
      for (const explains of [true, false]) {
        const actions = findingActions(analysis, finding, asOf, explains);
        const own = actions.filter((action) => action.finding === index);
        const place = `${name}: ${what(finding)} (${actions.map(({ title }) => title).join('; ')})`;
        if (finding.severity === 'error') {
          errors++;
          expect(actions[0]?.about, place).not.toBe('acceptance');
          if (explains)
            expect(
              actions.some(({ about }) => about !== 'acceptance'),
              place,
            ).toBe(true);
        }
        for (const action of own.filter(({ about }) => about === 'acceptance')) {
          accepted++;
          const may = ruleNamed(finding.rule)?.acceptable;
          expect(may === true || (may === 'warnings' && finding.severity !== 'error'), place).toBe(true);
          expect(action.class, place).not.toBe('safe');
        }
        if (explains && ruleNamed(finding.rule)?.acceptable === true && actions.some(({ about }) => about === 'acceptance')) acceptable++;
        // Errors first; of each severity what mends it, what adds what is missing, the page; to accept comes last of all.
        const order = ['fix', 'addition', 'explanation'];
        const severities = ['error', 'warning', 'note'];
        const ranks = actions.map(({ about, finding: of }) =>
          about === 'acceptance' ? 100 : severities.indexOf(analysis.findings[of]?.severity ?? 'note') * 10 + order.indexOf(about),
        );
        expect(ranks, place).toEqual([...ranks].sort((a, b) => a - b));
        if (explains && finding.severity === 'error') expect(analysis.findings[actions[0]?.finding ?? -1]?.severity, place).toBe('error');
      }
    }
  expect(errors).toBeGreaterThan(400);
  expect(accepted).toBeGreaterThan(100);
  expect(acceptable).toBeGreaterThan(50);
});

describe('a form that adds what is missing', () => {
  const forms: { name: string; block: Block; analysis: Analysis; finding: Finding; form: Insertion }[] = [];
  for (const { name, block, analysis } of examples)
    for (const [index, finding] of analysis.findings.entries())
      for (const action of findingActions(analysis, finding, asOf, true))
        if (action.about === 'addition' && action.finding === index && 'form' in action.work)
          forms.push({ name, block, analysis, finding, form: action.work.form });

  test('there are many, for many rules', () => {
    expect(forms.length).toBeGreaterThan(40);
    const rules = new Set(forms.map(({ finding }) => finding.rule));
    for (const rule of [
      'fact-missing',
      'sensor-not-wired',
      'panel-missing',
      'site-missing',
      'model-missing',
      'name-missing',
      'block-without-body',
    ])
      expect([...rules]).toContain(rule);
  });

  test('takes the finding away, or leaves a place to fill', () => {
    for (const { name, block, analysis, finding, form } of forms) {
      const before = new Set(analysis.findings.map(what));
      const now = judged(block, withEdits(analysis.text, [form.edit]));
      const added = now.findings.filter((one) => !before.has(what(one)));
      expect(
        added.some(({ rule }) => toFill.has(rule)) || !now.findings.some((one) => what(one) === what(finding)),
        `${name}: ${form.title}\n${now.text}`,
      ).toBe(true);
      // An error is not said twice, as what is missing and as a place that is empty. (Blocks of one name lack the same.)
      const many = ({ findings }: Analysis): number => findings.filter((one) => what(one) === what(finding)).length;
      if (finding.severity === 'error') expect(many(now), `${name}: ${form.title}\n${now.text}`).toBeLessThan(many(analysis));
      const broken = added.filter(({ rule }) => ruleNamed(rule)?.kind === 'problem' && !toFill.has(rule));
      expect(broken.map(what), `${name}: ${form.title}`).toEqual([]);
    }
  });

  test('begins where a line begins, and stands as the formatter writes it', () => {
    for (const { name, analysis, form } of forms) {
      const { text } = analysis;
      expect(form.form.start === 0 || /[\r\n]/.test(text.charAt(form.form.start - 1)), `${name}: ${form.title}`).toBe(true);
      if (canonical(text) !== text) continue;
      const plain = withEdits(text, [form.edit]);
      // Where the place is one of a brace’s own line, the shape is broken until it is filled.
      expect(canonical(plain) ?? plain, `${name}: ${form.title}`).toBe(plain);
      // With its places empty it is the same text, but for what follows a place on its line.
      const filled = withEdits(text, [
        {
          ...form.form,
          text: form.form.text
            .replace(/\r?\n *\$0(?=\r?\n)/g, '')
            .replace(/\$\{\d+\|([^,}|]*)[^}]*\|\}/g, '$1')
            .replace(/\$\{\d+:([^}]*)\}/g, '$1')
            .replace(/(?<!\\)\$\d+/g, '')
            .replace(/\\([\\$}])/g, '$1'),
        },
      ]);
      expect(filled.split('\n').length, `${name}: ${form.title}`).toBe(plain.split('\n').length);
      const indents = (of: string): string[] => of.split('\n').map((line) => /^ */.exec(line.trim() === '' ? '' : line)?.[0] ?? '');
      expect(indents(filled), `${name}: ${form.title}`).toEqual(indents(plain));
    }
  });
});
