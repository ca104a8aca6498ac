// Every example site has its findings and its figures written down beside this test. `npx vitest run tests/examples -u`
// writes them anew; read the change before you keep it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { positionAt } from '../../grammar/index.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const workspace = new Workspace({
  root: examples,
  read: (path) => {
    try {
      return { text: readFileSync(path, 'utf8') };
    } catch {
      return 'missing';
    }
  },
});
const asOf = '2026-11-25';

function judge(folder: string, file: string): Analysis {
  const path = join(examples, folder, file);
  return workspace.judge(path, readFileSync(path, 'utf8'), asOf);
}

const line = (analysis: Analysis, offset: number): number => positionAt(analysis.lineStarts, offset).line + 1;

function written(analysis: Analysis): string {
  const findings = analysis.findings.map(
    (finding) => `${line(analysis, finding.start)}: ${finding.severity} ${finding.rule}: ${finding.what}`,
  );
  const figures = [...analysis.figures]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(
      (figure) =>
        `${figure.id} = ${Number(figure.value.toPrecision(6))} ${figure.kind.unit}${figure.words === undefined ? '' : ` (${figure.words()})`}, line ${line(analysis, figure.at.start)}`,
    );
  return ['Findings', ...(findings.length === 0 ? ['none'] : findings), '', 'Figures', ...figures, ''].join('\n');
}

const filesIn = (folder: string): string[] => readdirSync(join(examples, folder)).filter((file) => file.endsWith('.gate'));
const snapshot = (folder: string, file: string): string =>
  join(fileURLToPath(new URL('expected', import.meta.url)), folder, file.replace(/\.gate$/, '.txt'));

describe('sound sites', () => {
  it('are at least four', () => expect(filesIn('sound').length).toBeGreaterThanOrEqual(4));
  it.each(filesIn('sound'))('%s', async (file) => {
    const analysis = judge('sound', file);
    expect(analysis.findings).toEqual([]);
    expect(analysis.figures.length).toBeGreaterThan(5);
    await expect(written(analysis)).toMatchFileSnapshot(snapshot('sound', file));
  });
});

describe('unsafe sites', () => {
  it('are at least four', () => expect(filesIn('unsafe').length).toBeGreaterThanOrEqual(4));
  it.each(filesIn('unsafe'))('%s', async (file) => {
    const analysis = judge('unsafe', file);
    expect(analysis.findings.some((finding) => finding.severity === 'error')).toBe(true);
    await expect(written(analysis)).toMatchFileSnapshot(snapshot('unsafe', file));
  });
});

describe('library files', () => {
  it.each(filesIn('library'))('%s', (file) => expect(judge('library', file).findings).toEqual([]));
});
