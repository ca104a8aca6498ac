// Of every hazard, tree, plan and rules say the same: where the tree says “covered”, so does the plan, and no rule speaks of it;
// where it says that it is not, so does the plan, and a rule speaks of it or facts are missing. Over all examples, all pages of
// rules, and sites made by chance.
import { describe, expect, test } from 'vitest';
import { type OverviewNode, overview, preview } from '../../server/editor/index.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import type { Finding } from '../../server/rules/index.ts';
import { seed } from '../kit/chance.ts';
import { blocksOf, foldersWith, judgeBlock, readPage } from '../kit/pages.ts';
import { example, sites } from '../papers/kit.ts';
import { make, textOf } from '../soundness/generate.ts';

/** The words of the plan for each kind in the tree. */
const inPlan: Readonly<Record<string, string>> = {
  'closing edge': 'closing edge',
  hinge: 'hinge side',
  underside: 'underside',
  'opening side': 'behind the open leaf',
  'reach through': 'reaching through',
  'running past': 'running past',
};
/** Rules that say of a leaf's place of that kind that somebody can be hurt there. */
const rulesOf: Readonly<Record<string, readonly string[]>> = {
  'closing edge': [
    'closing-edge-unguarded',
    'safeguarding-below-minimum',
    'protection-untested',
    'entrapment-protection-below-minimum',
    'edge-overtravel-too-long',
    'hold-to-run-misuse',
    'force-over-limit',
  ],
  'opening side': ['open-leaf-crushes'],
};
/** How `hazard-uncovered` calls the places that it judges. */
const uncovered: Readonly<Record<string, RegExp>> = {
  hinge: /hinge/,
  underside: /ground|under/,
  'reach through': /reach|through/,
  'running past': /past/,
};

const speaksOf = (finding: Finding, leaf: string, kind: string): boolean =>
  finding.what.includes(`“${leaf}”`) &&
  (rulesOf[kind]?.includes(finding.rule) === true || (finding.rule === 'hazard-uncovered' && uncovered[kind]?.test(finding.what) === true));

const tally = { covered: 0, not: 0, spoken: 0, planned: 0 };

function check(where: string, analysis: Analysis): void {
  const found = [...analysis.findings, ...analysis.accepted];
  const plan = preview(analysis).drawings.find(({ id }) => id === 'plan');
  const nodes: OverviewNode[] = overview(analysis);
  for (const leaf of nodes.filter(({ kind }) => kind === 'leaf')) {
    const shown = leaf.children.filter(({ kind }) => kind === 'hazard');
    for (const kind of Object.keys(inPlan)) {
      const rows = shown.filter(({ label }) => label === kind);
      const covered = rows.map(({ detail }) => detail.startsWith('covered'));
      for (const row of rows) expect(row.severity === undefined, `${where}: ${leaf.label}, ${kind}`).toBe(row.detail.startsWith('covered'));
      const planned = (plan?.table.rows ?? []).filter(
        ([what, state]) => what?.replace(/^\d+: /, '') === `${leaf.label}, ${inPlan[kind]}` && state?.startsWith('hazard,'),
      );
      // A leaf that the plan cannot place has no rows there, nor have two of one name rows of their own.
      if (planned.length === rows.length) {
        expect(
          planned.map(([, state]) => state === 'hazard, covered'),
          `${where}: ${leaf.label}, ${kind}`,
        ).toEqual(covered);
        tally.planned += planned.length;
      }
      const speaking = found.filter((finding) => speaksOf(finding, leaf.label, kind));
      if (rows.length > 0 && covered.every((is) => is))
        expect(
          speaking.map(({ rule, what }) => `${rule}: ${what}`),
          `${where}: ${leaf.label}, ${kind} is said to be covered`,
        ).toEqual([]);
      if (covered.some((is) => !is)) {
        // A rule about a control, or about all leaves, names none.
        const said =
          speaking.length > 0 || found.some(({ rule, severity }) => severity === 'error' || rulesOf[kind]?.includes(rule) === true);
        expect(said, `${where}: ${leaf.label}, ${kind} is said not to be covered, and nothing else says that something is wrong`).toBe(
          true,
        );
        if (speaking.length > 0) tally.spoken++;
      }
      tally.covered += covered.filter((is) => is).length;
      tally.not += covered.filter((is) => !is).length;
    }
  }
}

describe('tree, plan and rules agree of every hazard', () => {
  test.each(sites)('%s', (path) => check(path, example(path)));

  test('the examples of all pages', () => {
    for (const name of foldersWith('rules', 'rule.ts'))
      for (const block of blocksOf(readPage('rules', name))) check(`${name}, line ${block.line}`, judgeBlock(block));
  });

  test('sites made by chance', () => {
    const from = seed();
    for (let i = 0; i < 400; i++) {
      const { site, library } = textOf(make(from + i));
      const workspace = new Workspace({
        root: '/w',
        read: (path) => (path === '/w/models.gate' && library !== undefined ? { text: library } : 'missing'),
      });
      check(`seed ${from + i}`, workspace.judge('/w/site.gate', site, '2026-11-25'));
    }
  });

  test('there was something to agree about', () => {
    expect(Math.min(tally.covered, tally.not, tally.spoken, tally.planned), JSON.stringify(tally)).toBeGreaterThan(150);
  });
});
