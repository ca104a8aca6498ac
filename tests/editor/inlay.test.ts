import { expect, test } from 'vitest';
import { derivation, inlayTooltip, inlayValues, withNumbers } from '../../server/editor/index.ts';
import { figuresShown } from '../../server/engine/index.ts';
import { type Figure, type Topic, topics } from '../../server/figures/index.ts';
import type { FigureUnit } from '../../server/vocabulary/index.ts';
import { within } from '../kit/marker.ts';
import { bench, site } from './bench.ts';

/** The lines of a text that have values behind them, each with its values. */
function shown(text: string): string[] {
  const { analysis } = bench(text);
  const values = inlayValues(analysis);
  const lines = new Map<string, string[]>();
  for (const { offset, label } of values) {
    const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
    const line = text.slice(start, offset).trim();
    lines.set(line, [...(lines.get(line) ?? []), label]);
  }
  return [...lines].map(([line, labels]) => `${line} ▸ ${labels.sort().join(' · ')}`);
}

test('values stand behind the lines that cause them', () => {
  const found = shown(site());
  // Uniform rod about its end, I = m·w²/3 = 165 kg · (2.10 m)² / 3 = 242.6 kg·m².
  expect(found.find((line) => line.startsWith('mass 165 kg ▸'))).toContain('inertia 243 kg·m²');
  expect(found.find((line) => line.startsWith('opens inward 95 deg ▸'))).toMatch(/run time \d+(\.\d)? s/);
});

test('the derivation of one value, by its id, is the one that stands behind it in the list', () => {
  const { analysis } = bench(site());
  const values = inlayValues(analysis);
  expect(values.length).toBeGreaterThan(10);
  for (const value of values) expect(inlayTooltip(analysis, value.id), value.id).toBe(value.tooltip());
  expect(inlayTooltip(analysis, 'leaf.nobody.inertia')).toBeUndefined();
});

test('with the name of what they are of, where they stand in another block', () => {
  const text =
    'leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n\ndrive d : shaft {\n  moves west\n}\n\ndrive-model shaft {\n  kind direct\n  rotation 110 deg\n  shaft-speed 9 deg/s\n}\n\nmotion {\n  seat 1.5 s\n}\n';
  const found = shown(text);
  expect(found.find((line) => line.startsWith('seat 1.5 s ▸'))).toContain('west drive time 11.5 s');
  expect(found.find((line) => line.startsWith('opens inward 90 deg ▸'))).toMatch(/(▸|·) run time 10 s/);
});

test('before a comment, and inside the line whatever its end', () => {
  const found = shown(site().replace('mass 165 kg', 'mass 166 kg   # weighed').replaceAll('\n', '\r\n'));
  expect(found.some((line) => line.startsWith('mass 166 kg ▸ '))).toBe(true);
});

test('in the units of North America where the site says so', () => {
  const found = shown(site().replace('rules europe', 'rules north-america'));
  expect(found.find((line) => line.startsWith('mass 165 kg ▸'))).toContain('inertia 5760 lb·ft²');
});

test('only those of the stretch that is asked for', () => {
  const { analysis, text } = bench(site());
  const line = within(text, '|mass 165 kg|');
  const values = inlayValues(analysis, line);
  expect(values.length).toBeGreaterThan(0);
  for (const value of values) expect(value.offset).toBe(line.end);
  expect(values[0]?.tooltip()).toContain('Source: ');
});

test('only those of the topics that are wanted', () => {
  const { analysis } = bench(site());
  const all = inlayValues(analysis);
  const timing = inlayValues(analysis, undefined, (topic) => topic === 'timing');
  expect(timing.map((value) => value.id)).toContain('leaf.west.run-time');
  expect(timing.map((value) => value.id)).not.toContain('leaf.west.inertia');
  const parts = (Object.keys(topics) as Topic[]).map((topic) => inlayValues(analysis, undefined, (other) => other === topic).length);
  expect(parts.reduce((sum, count) => sum + count, 0)).toBe(all.length);
  expect(inlayValues(analysis, undefined, () => false)).toEqual([]);
});

test('the tooltip gives the margin to the limit', () => {
  const value = inlayValues(bench(site()).analysis).find(({ id }) => id === 'drive.west-ram.stroke-used');
  expect(value?.tooltip()).toContain('133 mm to spare');
});

test('figures as data: value in SI, shown for people', () => {
  const found = figuresShown(bench(site()).analysis).find((figure) => figure.id === 'leaf.west.inertia');
  expect(found?.value).toBeCloseTo((165 * 2.1 ** 2) / 3, 9);
  expect(found?.shown).toBe('243 kg·m²');
  expect(found?.inputs.length).toBeGreaterThan(0);
  for (const input of found?.inputs ?? []) expect(input.shown).not.toBe('');
});

test.each<[formula: string, inputs: [name: string, value: number, unit: string][], filled: string | undefined]>([
  [
    'I = m·w²/3',
    [
      ['m, mass', 165, 'kg'],
      ['w, width', 2.1, 'm'],
    ],
    'I = (165 kg)·(2.1 m)²/3',
  ],
  [
    'run time + seat',
    [
      ['run time', 18, 's'],
      ['seat', 1.5, 's'],
    ],
    '18 s + 1.5 s',
  ],
  [
    'x = a − b',
    [
      ['a', -2, 'm'],
      ['b', 3, 'm'],
    ],
    'x = (-2 m) − 3 m',
  ],
  [
    'v = ω·w, with ω = u / r',
    [
      ['ω', 180, 'deg/s'],
      ['w', 2, 'm'],
    ],
    'v = (3.14 rad/s)·(2 m), with ω = u / r',
  ],
  ['the longest way', [['mass', 3, 'kg']], undefined],
  [
    'a(b) = c+',
    [
      ['c+', 3, 'kg'],
      ['[x', 1, 'm'],
      ['west-edge', 1, 'm'],
    ],
    'a(b) = 3 kg',
  ],
  [
    'n·k',
    [
      ['n', 2, '1'],
      ['k', 0.5, '1'],
    ],
    '2·(0.5)',
  ],
])('numbers put into %s', (formula, inputs, filled) => {
  expect(
    withNumbers(
      formula,
      inputs.map(([name, value, unit]) => ({ name, value, unit: unit as FigureUnit })),
      'metric',
    ),
  ).toBe(filled);
});

test('words of a figure are shown where they say more than the number', () => {
  const base: Figure = {
    kind: {
      id: 'panel.NAME',
      title: 'Position of an adjuster',
      unit: 'deg',
      topic: 'settings',
      formula: 'p = s·f',
      source: { text: 'geometry', standing: 'from memory' },
      changedBy: 'the dwell',
      work: () => undefined,
    },
    id: 'panel.main.adjuster.dwell-dial',
    value: 67.5,
    at: { start: 0, end: 1 },
    inputs: () => {
      throw new Error('a fault of a figure');
    },
    words: () => 'about a quarter turn',
  };
  const text = derivation(base, 'metric');
  expect(text).toContain('= 67.5° (about a quarter turn)');
  expect(text).toContain('Source: geometry (from memory)');
});
