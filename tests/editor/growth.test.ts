// How work grows with a file, counted and not timed: how often the rows of an installation are read for a text, and for one four times
// as long. The texts are those of the benchmark, which measures the same by the clock.
import { describe, expect, test } from 'vitest';
import { acceptance, diagnostics, lenses, overview, symbols, tokens } from '../../server/editor/index.ts';
import { type Analysis, fixes, safeFixes, Workspace } from '../../server/engine/index.ts';
import { figuresOf } from '../../server/figures/index.ts';
import { inOneGo } from '../../server/model/index.ts';
import { cycleMotion, drawingsOf } from '../../server/papers/index.ts';
import { evaluate } from '../../server/rules/index.ts';
import { mostTold } from '../../server/vocabulary/index.ts';
import { kinds } from '../bench/growing.mjs';
import { type Counter, counted, countReads, countTree } from '../kit/counted.ts';
import { asOf, library } from './bench.ts';

const small = 150;
const times = 4;
/** Twice as steep as in step with the file would be 16 for 4; a little is lost to sorting, and to what is small. */
const most = 6;
/** Fewer reads than this say nothing. */
const least = 1500;

const read = (path: string): { text: string } | 'missing' => {
  const text = library.get(path);
  return text === undefined ? 'missing' : { text };
};

/** How often rows are read by each piece of work. */
function readsOf(text: string): Map<string, number> {
  const analysis = new Workspace({ root: '/site', read }).named('/site/gates/x.gate', text);
  const { installation } = analysis;
  const counter: Counter = { reads: 0 };
  countReads(installation, counter);
  countTree(installation.reading.tree, counter);
  const reads = new Map<string, number>();
  const work = <R>(what: string, run: () => R): R => {
    counter.reads = 0;
    const result = run();
    reads.set(what, counter.reads);
    return result;
  };
  const { findings, accepted } = work('check', () => evaluate(installation, asOf));
  const judged = Object.assign(analysis as { -readonly [K in keyof Analysis]: Analysis[K] }, {
    findings: counted(findings, counter),
    accepted: counted(accepted, counter),
  });
  work('figures', () => {
    for (const figure of figuresOf(installation)) {
      figure.words?.();
      figure.inputs();
    }
  });
  work('drawings', () => inOneGo(drawingsOf(installation, [...findings, ...accepted])));
  work('cycle', () => inOneGo(cycleMotion(installation)));
  work('overview', () => overview(judged));
  work('diagnostics', () => diagnostics(judged));
  work('symbols', () => symbols(judged));
  work('tokens', () => tokens(judged));
  work('lenses', () => lenses(judged));
  work('fixes', () => fixes(judged, { start: 0, end: text.length }));
  work('safe fixes', () => safeFixes(judged));
  work('acceptances', () => {
    for (const finding of findings) acceptance(judged, finding, asOf);
  });
  return reads;
}

describe('work is in step with the file', () => {
  test.each(Object.keys(kinds))('%s', (kind) => {
    const textOf = kinds[kind] as (lines: number) => string;
    const few = readsOf(textOf(small));
    const many = readsOf(textOf(small * times));
    const steep = [...many].filter(([what, reads]) => reads > least && reads > most * Math.max(1, few.get(what) ?? 0));
    expect(steep.map(([what, reads]) => `${what}: ${few.get(what)} reads, and ${reads} of ${times} times the text`)).toEqual([]);
  });
});

test('what may be meant is guessed for the names that are told one by one, and for no more', () => {
  const text = (kinds['names misspelt'] as (lines: number) => string)(1500);
  const { installation } = new Workspace({ root: '/site', read }).named('/site/gates/x.gate', text);
  const unknown = installation.problems.filter(({ kind }) => kind === 'name-unknown');
  expect(unknown).toHaveLength(150);
  expect(unknown.map(({ detail }) => 'meant' in detail && detail.meant !== undefined).lastIndexOf(true)).toBe(mostTold - 1);
  expect(unknown[0]?.detail).toMatchObject({ name: 'laef-0', meant: 'leaf-0' });
});

test('the same for the rules that acceptances and promises name', () => {
  const text = `language 1\n${'accept seat-outside-practise because "worn" by "KL" until 2027-03-31\n'.repeat(150)}${'expects seat-outside-practise\n'.repeat(150)}`;
  const { findings } = new Workspace({ root: '/site', read }).judge('/site/gates/x.gate', text, asOf);
  for (const rule of ['acceptance-of-unknown-rule', 'expectation-not-met']) {
    const found = findings.filter((finding) => finding.rule === rule);
    expect(found).toHaveLength(150);
    expect(found.map(({ fixes }) => fixes.length > 0).lastIndexOf(true)).toBe(mostTold - 1);
  }
});

test('what grows faster is seen', () => {
  const counter: Counter = { reads: 0 };
  const pairs = (size: number): number => {
    const row = counted(
      Array.from({ length: size }, (_, i) => i),
      counter,
    );
    counter.reads = 0;
    for (const one of row) row.includes(one);
    return counter.reads;
  };
  expect(pairs(400) / pairs(100)).toBeGreaterThan(most);
});
