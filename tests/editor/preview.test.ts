import { expect, test } from 'vitest';
import { preview } from '../../server/editor/index.ts';
import { drawingFile } from '../../server/engine/index.ts';
import { bench, site } from './bench.ts';

test('four drawings, what was found, and where each thing stands', () => {
  const { analysis, text } = bench(site());
  const shown = preview(analysis);
  expect(shown.title).toBe('Heron Court');
  expect(shown.drawings.map(({ id }) => id)).toEqual(['plan', 'timing', 'force', 'wiring']);
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of analysis.findings) counts[severity]++;
  expect(shown.counts).toEqual(counts);
  expect(counts.error).toBeGreaterThan(0);
  const west = shown.things.find(({ id }) => id === 'leaf.west');
  expect(text.slice(west?.start, west?.end)).toMatch(/^leaf west \{[^}]*\}$/);
  const terminal = shown.things.find(({ id }) => id === 'terminal.main.E1');
  expect(text.slice(terminal?.start, terminal?.end)).toBe('E1');
  expect(shown.style).toContain('.pintle-drawing');
});

test('drawn once for each reading', () => {
  const { analysis, workspace, text } = bench(site());
  expect(preview(analysis).drawings[0]?.table).toBe(preview(analysis).drawings[0]?.table);
  const again = workspace.open('/site/gates/north.gate', text.replace('width 2.10 m', 'width 2.30 m'), '2026-11-20');
  expect(preview(again).drawings[0]?.svg).not.toBe(preview(analysis).drawings[0]?.svg);
});

test('nothing is drawn before somebody asks', () => {
  const { analysis } = bench(site());
  const { installation } = analysis;
  const before = installation.memo.length;
  preview(analysis);
  expect(installation.memo.length).toBeGreaterThan(before);
});

test('a file without a title is called by its name; a library, and an empty text, say why there is nothing', () => {
  const library = bench('language 1\ndrive-model x "y" {\n  kind direct\n}\n', '/site/library/new.gate').analysis;
  for (const analysis of [library, bench('').analysis, bench('leaf west {').analysis]) {
    const shown = preview(analysis);
    for (const { svg, lacks } of shown.drawings) {
      expect(svg).toBe('');
      expect(lacks).toMatch(/\.$/);
    }
    expect(shown.things).toEqual([]);
    expect(shown.cycle).toBeUndefined();
  }
  expect(preview(library).title).toBe('new.gate');
});

test('one drawing as a file, in three themes; none of an unknown name', () => {
  const { analysis } = bench(site());
  const [light, dark, print] = (['light', 'dark', 'print'] as const).map((theme) => drawingFile(analysis, 'plan', theme).svg) as [
    string,
    string,
    string,
  ];
  expect(new Set([light, dark, print]).size).toBe(3);
  expect(light).toMatch(/^<\?xml[^>]*>\n<svg /);
  expect(drawingFile(analysis, '../plan', 'light')).toEqual({ svg: '', width: 0, height: 0 });
});
