// A figure's workings are done once for each reading of a file, however many rules, figures, drawings and hovers ask for them.

import { readFileSync } from 'node:fs';
import { beforeEach, expect, test, vi } from 'vitest';
import { inlayValues, lenses, overview, preview } from '../../server/editor/index.ts';
import { type Analysis, figuresShown, Workspace } from '../../server/engine/index.ts';

const { worked, subjects, counted } = vi.hoisted(() => {
  /** How often each costly function was called with the same numbers. */
  const worked = new Map<string, number>();
  /** How often each kept working was done for the same subject. */
  const subjects = new Map<unknown, Map<unknown, number>>();
  const count = (name: string, given: readonly unknown[]): void => {
    const key = `${name} ${JSON.stringify(given)}`;
    worked.set(key, (worked.get(key) ?? 0) + 1);
  };
  /** A module whose functions of these names are counted. */
  const counted = async (original: () => Promise<Record<string, unknown>>, ...names: string[]): Promise<Record<string, unknown>> => {
    const real = await original();
    const counting = names.map((name) => [
      name,
      (...given: unknown[]) => (count(name, given), (real[name] as (...given: unknown[]) => unknown)(...given)),
    ]);
    return { ...real, ...Object.fromEntries(counting) };
  };
  return { worked, subjects, counted };
});

vi.mock('../../server/figures/linkage/maths.ts', (original) => counted(original as never, 'ramLinkage', 'armLinkage', 'rackLinkage'));
vi.mock('../../server/figures/motion-profile/maths.ts', (original) => counted(original as never, 'profileOf'));
vi.mock('../../server/figures/least-lag/maths.ts', (original) => counted(original as never, 'leastLag'));
vi.mock('../../server/figures/overtravel/maths.ts', (original) => counted(original as never, 'greatestOvertravel'));
vi.mock('../../server/figures/edge-speed/maths.ts', (original) => counted(original as never, 'greatestSpeeds'));
vi.mock('../../server/figures/edge-loop/maths.ts', (original) => counted(original as never, 'statesOf'));
vi.mock('../../server/model/memo.ts', async (original) => {
  const real = await original<{ perSubject: (work: (subject: never) => unknown) => unknown }>();
  const perSubject = (work: (subject: never) => unknown): unknown =>
    real.perSubject((subject: never) => {
      const times = subjects.get(work) ?? new Map<unknown, number>();
      subjects.set(work, times.set(subject, (times.get(subject) ?? 0) + 1));
      return work(subject);
    });
  return { ...real, perSubject };
});

/**
 * Examples with a pair of leaves, each made so that no two of its leaves, drives and edges are alike: the same numbers then mean the same
 * working.
 */
const unlike = {
  'withy-lane': [['post-bracket 140 mm', 'post-bracket 141 mm']],
  'garden-court': [
    ['width 1.80 m', 'width 1.79 m'],
    ['leaf-bracket 520 mm', 'leaf-bracket 521 mm'],
    ['terminator 8.2 kohm', 'terminator 8.2 kohm ± 2 %'],
  ],
} as const;

function textOf(name: keyof typeof unlike): string {
  let text = example(name);
  for (const [from, to] of unlike[name]) {
    const at = text.lastIndexOf(from);
    expect(text.indexOf(from)).toBeLessThan(at);
    text = text.slice(0, at) + to + text.slice(at + from.length);
  }
  return text;
}

const example = (name: string): string => readFileSync(new URL(`../../examples/sound/${name}.gate`, import.meta.url), 'utf8');
const read = (path: string): { text: string } | 'missing' => {
  try {
    return { text: readFileSync(new URL(`../../examples/${path.slice('/w/'.length)}`, import.meta.url), 'utf8') };
  } catch {
    return 'missing';
  }
};

/** All that an editor asks of a file. */
function askAll(analysis: Analysis): void {
  for (let again = 0; again < 2; again++) {
    for (const figure of analysis.figures) {
      figure.inputs();
      figure.words?.();
    }
    figuresShown(analysis);
    inlayValues(analysis);
    lenses(analysis);
    overview(analysis);
    preview(analysis);
  }
}

const twice = (): string[] => [...worked].filter(([, times]) => times > 1).map(([key]) => key);

beforeEach(() => {
  worked.clear();
  subjects.clear();
});

test.each(['withy-lane', 'garden-court'] as const)('nothing is worked twice for %s', (name) => {
  const workspace = new Workspace({ root: '/w', read });
  const path = '/w/sound/x.gate';
  const text = textOf(name);
  for (const changed of ['', '# a remark\n']) {
    askAll(workspace.open(path, text + changed, '2026-11-25'));
    expect(worked.size).toBeGreaterThan(3);
    expect(twice()).toEqual([]);
    expect(subjects.size).toBeGreaterThan(20);
    expect([...subjects.values()].flatMap((times) => [...times.values()]).filter((times) => times > 1)).toEqual([]);
    // After a change all of it is worked anew, once.
    worked.clear();
  }
});
