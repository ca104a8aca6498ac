// A margin and the rule that it belongs to never disagree: below nothing exactly where the rule speaks.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/engine/index.ts';
import { allFigures } from '../../server/figures/index.ts';
import { bound, hair, keeps } from '../../server/rules/bounds.ts';
import { allRules, marginsOf } from '../../server/rules/index.ts';
import { blocksOf, foldersWith, judge, judgeBlock, readPage, root } from '../kit/pages.ts';

const holding = allRules.filter((rule) => rule.kind === 'installation' && rule.holds !== undefined);

/** Rules that also speak where there is no number to hold: then a finding may stand without a margin, never the other way. */
const alsoWithoutNumber: ReadonlySet<string> = new Set([
  'protective-conductor-too-small', // there is no such conductor
  'output-voltage-unfit', // another supply than that of a motor on the mains
  'residual-current-device-unfit', // there is no such device
  'edge-loop-ambiguous', // a pressed or cut loop that looks like rest
]);

const cases: { readonly name: string; readonly analysis: () => Analysis }[] = [
  ...foldersWith('rules', 'rule.ts').flatMap((rule) =>
    blocksOf(readPage('rules', rule)).map((block) => ({ name: `${rule}, line ${block.line}`, analysis: () => judgeBlock(block) })),
  ),
  ...['sound', 'unsafe'].flatMap((folder) =>
    readdirSync(join(root, 'examples', folder))
      .filter((name) => name.endsWith('.gate'))
      .map((name) => ({ name: `${folder}/${name}`, analysis: () => judge(readFileSync(join(root, 'examples', folder, name), 'utf8')) })),
  ),
];

/** What margin and rule disagree about, in words. */
function disagreements(analysis: Analysis): string[] {
  const found: string[] = [];
  const all = [...analysis.findings, ...analysis.accepted];
  for (const rule of holding) {
    const margins = marginsOf(analysis.installation).filter((margin) => margin.rule === rule);
    const spoken = new Set(all.filter((finding) => finding.rule === rule.name).map((finding) => finding.start));
    const broken = new Set(margins.filter((margin) => !margin.kept).map((margin) => margin.at.start));
    for (const start of broken) if (!spoken.has(start)) found.push(`${rule.name}: below its limit at ${start}, and nothing is said`);
    for (const start of spoken)
      if (!broken.has(start) && !alsoWithoutNumber.has(rule.name))
        found.push(`${rule.name}: speaks at ${start}, and no margin is below nothing there`);
    for (const { used, left, kept, held } of margins)
      if (kept ? left < 0 || (used ?? 0) > 1 : left > 0 || (used ?? 1) < 1)
        found.push(`${rule.name}: ${held.name} uses ${used} of its limit and has ${left} left`);
  }
  return found;
}

test.each(cases)('$name', ({ analysis }) => {
  expect(disagreements(analysis())).toEqual([]);
});

test('every rule that holds a number is seen kept and broken', () => {
  const seen = new Map(holding.map((rule) => [rule.name, { kept: 0, broken: 0 }]));
  for (const { analysis } of cases)
    for (const margin of marginsOf(analysis().installation)) {
      const count = seen.get(margin.rule.name);
      if (count !== undefined) count[margin.kept ? 'kept' : 'broken']++;
    }
  expect(holding.length).toBeGreaterThanOrEqual(25);
  expect([...seen].filter(([, { kept, broken }]) => kept === 0 || broken === 0)).toEqual([]);
});

test('each is about a figure that there is, and says a name and a unit', () => {
  const kinds = new Set(allFigures.map((kind) => kind.id));
  let without = 0;
  let all = 0;
  for (const { analysis } of cases) {
    const { installation, figures } = analysis();
    const ids = new Set(figures.map((figure) => figure.id));
    for (const margin of marginsOf(installation)) {
      expect(margin.held.name).toMatch(/^[a-z]/);
      expect(margin.held.unit).not.toBe('');
      if (margin.held.figure === undefined) continue;
      expect(kinds, margin.rule.name).toContain(margin.held.figure);
      all++;
      if (!ids.has(margin.figure ?? '')) without++;
    }
  }
  expect(all).toBeGreaterThan(500);
  // A few figures are not shown where the rule can still tell: a window without an end, for instance.
  expect(without / all).toBeLessThan(0.1);
});

describe('numbers changed at random', () => {
  const texts = [
    ...['withy-lane', 'mill-race', 'salt-quay', 'cedar-spur'].map((name) => `sound/${name}`),
    'unsafe/thin-cables',
    'unsafe/leaves-collide',
  ].map((name) => readFileSync(join(root, 'examples', `${name}.gate`), 'utf8'));
  /** Each number times a factor, some of them. */
  const changed = fc
    .tuple(
      fc.constantFrom(...texts),
      fc.array(fc.tuple(fc.nat(), fc.constantFrom(0.2, 0.5, 0.9, 1.1, 2, 5)), { minLength: 1, maxLength: 6 }),
    )
    .map(([text, changes]) => {
      const numbers = [...text.matchAll(/(?<=\s)\d+(?:\.\d+)?(?= [a-zA-Z%°])/g)];
      let out = text;
      for (const [at, factor] of [...changes].map(([n, f]) => [n % numbers.length, f] as const).sort((a, b) => b[0] - a[0])) {
        const match = numbers[at] as RegExpExecArray;
        out =
          out.slice(0, match.index) + String(Number((Number(match[0]) * factor).toPrecision(4))) + out.slice(match.index + match[0].length);
      }
      return out;
    });
  test('margin and rule still agree', () => {
    fc.assert(
      fc.property(changed, (text) => {
        expect(disagreements(judge(text))).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});

test('a bound is kept up to its slack and no further, and by no number that is none', () => {
  const most = { name: 'x', unit: 'm', way: 'most' } as const;
  const least = { name: 'x', unit: 'm', way: 'least' } as const;
  expect(keeps(bound(most, '', 1, 1))).toBe(true);
  expect(keeps(bound(most, '', 1.02, 1, 0.01))).toBe(false);
  expect(keeps(bound(most, '', 1.005, 1, 0.01))).toBe(true);
  expect(keeps(bound(least, '', 0.98, 1, 0.01))).toBe(false);
  expect(keeps(bound(least, '', 0.995, 1, 0.01))).toBe(true);
  expect(keeps(bound(most, '', Number.NaN, 1))).toBe(false);
  expect(keeps(bound(least, '', Number.NaN, 1))).toBe(false);
  expect(hair(-2)).toBeGreaterThan(0);
});
