// Sites that must not pass, each one edit away from a sound one, and sites that must: an audit of what can be got past the rules. What
// is unsafe has to be found at its edit; what is found elsewhere may be found by chance. Why each is unsafe stands in README.md beside
// this. The sites are invented; what is asked of them is what the rules’ pages name as their sources.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { type Analysis, accountShown, positionAt, Workspace } from '../../server/engine/index.ts';
import { type Edit, editOf } from './edit.ts';

const folder = fileURLToPath(new URL('.', import.meta.url))
  .replaceAll('\\', '/')
  .replace(/\/$/, '');
const day = '2026-11-30';

const textOf = (path: string): string => readFileSync(join(folder, path), 'utf8');
const sitesIn = (kind: string): readonly string[] =>
  readdirSync(join(folder, kind))
    .filter((name) => name.endsWith('.gate'))
    .map((name) => `${kind}/${name}`);

const workspace = new Workspace({
  root: folder,
  read: (path) => {
    try {
      return { text: readFileSync(path, 'utf8') };
    } catch {
      return 'missing';
    }
  },
});
const judge = (path: string): Analysis => workspace.judge(`${folder}/${path}`, textOf(path), day);

const bases = sitesIn('base');

/** The base that a site differs least from, by what it differs. */
function nearestOf(path: string): Edit {
  const text = textOf(path);
  return bases.map((base) => editOf(textOf(base), text)).reduce((best, edit) => (edit.size < best.size ? edit : best));
}

/** Errors and entries that are not judged, with each line that takes part in them. */
function against(analysis: Analysis): readonly { readonly says: string; readonly line: number; readonly lacks: readonly string[] }[] {
  const lineOf = (offset: number): number => positionAt(analysis.lineStarts, offset).line + 1;
  return [
    ...analysis.findings
      .filter(({ severity }) => severity === 'error')
      .flatMap(({ rule, start, lacks, related }) =>
        [start, ...related.flatMap((place) => (place.path === undefined ? [place.start] : []))].map((at) => ({
          says: rule,
          line: lineOf(at),
          lacks,
        })),
      ),
    ...accountShown(analysis).open.map(({ what, start, lacks }) => ({ says: what, line: lineOf(start), lacks })),
  ];
}

describe('an unsafe site is found at its edit', () => {
  test.each(sitesIn('unsafe'))('%s', (path) => {
    const { places, removed } = nearestOf(path);
    const found = against(judge(path));
    const atEdit = found.filter(
      ({ line, lacks }) => places.some(({ from, to }) => from <= line && line <= to) || lacks.some((word) => removed.has(word)),
    );
    expect(atEdit, `found: ${found.map(({ says, line }) => `${says} on line ${line}`).join('; ') || 'nothing'}`).not.toEqual([]);
  });
});

describe('a sound site is judged whole, and passes', () => {
  test.each([...bases, ...sitesIn('sound')])('%s', (path) => {
    const analysis = judge(path);
    expect(analysis.findings.filter(({ severity }) => severity !== 'note').map(({ rule, what }) => `${rule}: ${what}`)).toEqual([]);
    const { judged, of, open } = accountShown(analysis);
    expect(open.map(({ what, lacks }) => `${what} lacks ${lacks.join(', ')}`)).toEqual([]);
    expect(judged).toBe(of);
    expect(of).toBeGreaterThan(5);
  });
});

describe('what an edit is', () => {
  const base = 'language 1\n\nleaf a {\n  width 2 m\n  mass 100 kg\n}\n\nleaf b {\n  width 1 m\n}\n';
  test('nothing where nothing differs', () => expect(editOf(base, base)).toEqual({ size: 0, places: [], removed: new Set() }));
  test('a line of a block, with the block', () => {
    const edit = editOf(base, base.replace('2 m', '3 m'));
    expect(edit.places.map(({ from, to }) => [from, to])).toEqual([
      [3, 6],
      [3, 6],
    ]);
    expect(edit.removed).toEqual(new Set());
  });
  test('a line that is gone, by its word', () => {
    const edit = editOf(base, base.replace('  mass 100 kg\n', ''));
    expect(edit).toEqual({ size: 1, places: [{ from: 3, to: 5 }], removed: new Set(['mass']) });
  });
});
