// Taking a protective device away never makes the verdict better: whatever rules there are, whatever examples there are.
import { describe, expect, test } from 'vitest';
import { parse, type Statement } from '../../grammar/index.ts';
import { Workspace } from '../../server/engine/index.ts';
import type { Finding } from '../../server/rules/index.ts';
import { examples } from '../grammar/examples.ts';

const files = new Map(examples().map(({ path, text }) => ['/w/' + path, text]));
const workspace = new Workspace({ root: '/w', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
const day = '2026-11-25';

interface Cut {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What a site says without these sensors: their blocks, what is wired to them, their cables, every mention of them. */
function without(text: string, sensors: readonly string[]): { readonly text: string; readonly cuts: readonly Cut[] } {
  const cuts: Cut[] = [];
  const cut = (item: Statement, by = ''): void => void cuts.push({ start: item.start, end: item.end, text: by });
  const names = (item: Statement): string[] => item.values.flatMap((value) => (value.kind === 'word' ? [value.text] : []));
  const gone = (name: string | undefined): boolean => name !== undefined && sensors.includes(name);
  for (const item of parse(text).items) {
    const word = item.word?.text;
    const facts = item.body?.items ?? [];
    if (
      (word === 'sensor' && gone(names(item)[0])) ||
      (word === 'cable' && facts.some((fact) => fact.word?.text === 'feeds' && gone(names(fact)[0])))
    ) {
      cut(item);
      continue;
    }
    // A safety function that begins with a sensor is gone with it.
    if (word === 'function' && facts.some((fact) => fact.word?.text === 'parts' && names(fact).some(gone))) {
      cut(item);
      continue;
    }
    for (const fact of facts) {
      if ((word === 'panel' && fact.word?.text === 'wire') || (word === 'sensor' && fact.word?.text === 'chains-into')) {
        if (gone(names(fact)[0])) cut(fact);
      } else if (word === 'panel' && fact.word?.text === 'registered' && names(fact).some(gone)) {
        const left = names(fact).filter((name) => !gone(name));
        cut(fact, left.length === 0 ? '' : 'registered ' + left.join(', '));
      }
    }
  }
  return {
    text: [...cuts]
      .sort((a, b) => b.start - a.start)
      .reduce((out, { start, end, text: by }) => out.slice(0, start) + by + out.slice(end), text),
    cuts,
  };
}

interface Verdict {
  /** Errors of text, words and names. */
  readonly words: readonly string[];
  /** All other errors. */
  readonly unsafe: readonly Finding[];
}

function verdict(path: string, text: string): Verdict {
  const analysis = workspace.judge(path, text, day);
  const problems = new Set<string>(analysis.installation.problems.map((problem) => problem.kind));
  const all = analysis.findings.filter((finding) => finding.severity === 'error');
  return {
    unsafe: all.filter((finding) => !problems.has(finding.rule)),
    words: all.flatMap((finding) => (problems.has(finding.rule) ? [finding.rule] : [])),
  };
}

/** How a verdict got better by what was cut; nothing, if it did not. Mistakes in how the device itself was wired go with it. */
function betterments(before: Verdict, after: Verdict, cuts: readonly Cut[]): string[] {
  const touched = (at: { readonly start: number; readonly end: number; readonly path?: string }): boolean =>
    at.path === undefined && cuts.some((cut) => at.start < cut.end && at.end > cut.start);
  const others = before.unsafe.filter((finding) => !touched(finding) && !finding.related.some(touched));
  const rules = (findings: readonly Finding[]): string =>
    findings
      .map((finding) => finding.rule)
      .sort()
      .join(', ') || 'none';
  const found: string[] = [];
  // One rule may give way to a graver one (too little protection to none at all), so it is the errors that are counted.
  if (after.unsafe.length < others.length) found.push(`before: ${rules(others)}; after: ${rules(after.unsafe)}`);
  if (before.unsafe.length > 0 && after.unsafe.length === 0) found.push('there were errors and now there are none');
  return found;
}

const sites = [...examples('sound'), ...examples('unsafe')];

test('there are sound and unsafe sites to try it on, and they are what their folders say', () => {
  expect(examples('sound').length).toBeGreaterThanOrEqual(4);
  expect(examples('unsafe').length).toBeGreaterThanOrEqual(4);
  for (const { path, text } of examples('sound')) expect(verdict('/w/' + path, text), path).toEqual({ unsafe: [], words: [] });
  for (const { path, text } of examples('unsafe')) expect(verdict('/w/' + path, text).unsafe.length, path).toBeGreaterThan(0);
});

describe.each(sites.map(({ path, text }) => [path, text] as const))('%s', (path, text) => {
  const sensors = parse(text).items.flatMap((item) =>
    item.word?.text === 'sensor' && item.values[0]?.kind === 'word' ? [item.values[0].text] : [],
  );
  const before = verdict('/w/' + path, text);
  const sound = path.startsWith('sound/');
  const moves = /^ {2}(dwell|acts (impulse|automatic))\b/m.test(text);

  // Every single one, every pair, and all of them.
  const sets = [...sensors.map((sensor) => [sensor]), ...sensors.flatMap((a, i) => sensors.slice(i + 1).map((b) => [a, b])), sensors];
  test.each(sets.map((set) => [set.join(' and '), set] as const))('without %s the verdict is no better', (_, set) => {
    const less = without(text, set);
    const after = verdict('/w/' + path, less.text);
    expect(parse(less.text).problems).toEqual([]);
    expect(parse(less.text).items.filter((item) => item.word?.text === 'sensor').length).toBe(sensors.length - set.length);
    expect(after.words, 'the removal itself makes no mistake of words or names').toEqual(before.words);
    expect(betterments(before, after, less.cuts)).toEqual([]);
    if (sound) expect(after.unsafe.length).toBeGreaterThanOrEqual(before.unsafe.length);
  });
  if (sound && moves)
    test('without any sensor a gate that moves by itself is unsafe', () => {
      expect(verdict('/w/' + path, without(text, sensors).text).unsafe.length).toBeGreaterThan(0);
    });
});

test('a betterment is seen', () => {
  const finding = { rule: 'a', severity: 'error', start: 0, end: 5, related: [] } as unknown as Finding;
  const one = { words: [], unsafe: [finding] };
  expect(betterments(one, one, [])).toEqual([]);
  expect(betterments({ words: [], unsafe: [finding, finding] }, one, [])).toEqual(['before: a, a; after: a']);
  expect(betterments(one, { words: [], unsafe: [] }, [{ start: 0, end: 9, text: '' }])).toEqual([
    'there were errors and now there are none',
  ]);
});
