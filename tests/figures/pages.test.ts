// Every figure's page is run: the values that it prints are those that come out, and what goes into them is what it shows.
// `SAY=1 npx vitest run tests/figures/pages.test.ts` writes what goes into them; work every number before you keep it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { allFigures, type FigureKind } from '../../server/figures/index.ts';
import { faultsOf } from '../kit/messages.ts';
import {
  type Block,
  blocksOf,
  type Fence,
  foldersWith,
  judgeBlock,
  normalised,
  type Page,
  readPage,
  root,
  workingOf,
} from '../kit/pages.ts';

const folders = foldersWith('figures', 'figure.ts');
if (process.env['SAY'] === '1') folders.forEach(write);
const kindsOf = Object.fromEntries(
  await Promise.all(
    folders.map(
      async (name) =>
        [
          name,
          ((await import(pathToFileURL(join(root, 'server/figures', name, 'figure.ts')).href)) as { figures: readonly FigureKind[] })
            .figures,
        ] as const,
    ),
  ),
);

test('every folder of figures has a page, every page figures, and the list holds them all', () => {
  expect(folders.length).toBeGreaterThan(0);
  expect(foldersWith('figures', 'page.md')).toEqual(folders);
  expect(allFigures.map((kind) => kind.id).sort()).toEqual(folders.flatMap((name) => (kindsOf[name] ?? []).map((kind) => kind.id)).sort());
});

test('no id stands for two kinds of figure', () => {
  const ids = allFigures.map((kind) => kind.id);
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
});

describe.each(folders)('%s', (name) => {
  const page = readPage('figures', name);
  const kinds = kindsOf[name] ?? [];
  const blocks = blocksOf(page);
  const figures = page.fences.filter((fence) => fence.info[0] === 'figures');

  test('the figures are well formed', () => {
    expect(name).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
    expect(kinds.length).toBeGreaterThan(0);
    for (const kind of kinds) {
      expect(kind.id).toMatch(/^[a-z]+(\.(NAME|PANEL|[a-z]+(-[a-z0-9]+)*))+$/);
      for (const words of [kind.title, kind.unit, kind.formula, kind.changedBy, kind.source.text])
        expect(words.trim(), kind.id).toMatch(/^[^…]/);
    }
  });

  test('the page has its heading and its sections', () => {
    expect(page.heading).toBe(name);
    for (const section of ['What it is', 'Formula', 'Source', 'Example']) expect([...page.sections.keys()]).toContain(section);
    for (const section of ['What it is', 'Formula', 'Source']) expect(page.sections.get(section)?.trim(), section).not.toBe('');
    for (const kind of kinds) expect(normalised(page.sections.get('Source') ?? ''), kind.id).toContain(normalised(kind.source.text));
    expect(page.text).not.toMatch(/\bcompliant\b/i);
    expect(page.text, 'what begins with “…” is filled in').not.toMatch(/^… /m);
  });

  test('every kind of figure has a value on the page', () => {
    const printed = figures.flatMap((fence) => valuesIn(fence.text).map((value) => value.id));
    for (const kind of kinds) {
      const pattern = new RegExp(
        `^${kind.id
          .split(/NAME|PANEL/)
          .map((part) => part.replaceAll('.', '\\.'))
          .join('[^ ]+')}$`,
      );
      expect(
        printed.some((id) => pattern.test(id)),
        `${kind.id} has no value on the page`,
      ).toBe(true);
    }
  });

  for (const fence of figures)
    test(`line ${fence.line} of the page: the values printed are those that come out`, () => {
      const block = blockBefore(blocks, fence);
      const values = valuesIn(fence.text);
      expect(values.length).toBeGreaterThan(0);
      const analysis = judgeBlock(block);
      for (const { id, printed, unit } of values) {
        const figure = analysis.figures.find((one) => one.id === id);
        if (figure === undefined) throw new Error(`no figure ${id}; there are ${analysis.figures.map((one) => one.id).join(', ')}`);
        expect(unit, id).toBe(figure.kind.unit);
        expect(Math.abs(figure.value - Number(printed)), `${id} is ${figure.value}, the page says ${printed}`).toBeLessThanOrEqual(
          halfAUnit(printed),
        );
        for (const input of figure.inputs()) {
          expect(Number.isFinite(input.value), `${id}: ${input.name}`).toBe(true);
          expect(input.name.trim()).not.toBe('');
        }
        if (figure.words !== undefined) expect(faultsOf(`“${figure.words()}”.`, block.text)).toEqual([]);
      }
    });
  for (const fence of figures) {
    const working = workingBehind(page, fence);
    test(`line ${fence.line} of the page: what goes into the values`, () => {
      expect(working, 'a fence `working` stands behind the values').toBeDefined();
      expect(
        workingOf(
          judgeBlock(blockBefore(blocks, fence)),
          valuesIn(fence.text).map(({ id }) => id),
        ),
      ).toBe(working?.text);
    });
  }
});

/** The example that values belong to: the last one that opens before them. */
function blockBefore(blocks: readonly Block[], fence: Fence): Block {
  const block = blocks.findLast((one) => one.line < fence.line);
  if (block === undefined) throw new Error(`no example stands before the values of line ${fence.line}`);
  return block;
}

/** What the page shows of the working behind a fence of values; undefined where it shows nothing. */
function workingBehind({ fences }: Page, fence: Fence): Fence | undefined {
  const next = fences[fences.indexOf(fence) + 1];
  return next?.info[0] === 'working' ? next : undefined;
}

/** Writes what goes into the values of a page behind them. */
function write(name: string): void {
  const page = readPage('figures', name);
  const blocks = blocksOf(page);
  const lines = page.text.split('\n');
  const endOf = (opens: number): number => lines.indexOf('```', opens);
  for (const fence of page.fences.filter(({ info }) => info[0] === 'figures').reverse()) {
    const working = workingOf(
      judgeBlock(blockBefore(blocks, fence)),
      valuesIn(fence.text).map(({ id }) => id),
    )
      .replace(/\n$/, '')
      .split('\n');
    const shown = workingBehind(page, fence);
    if (shown === undefined) lines.splice(endOf(fence.line) + 1, 0, '', '```working', ...working, '```');
    else lines.splice(shown.line, endOf(shown.line) - shown.line, ...working);
  }
  const path = join(root, page.path);
  if (lines.join('\n') !== readFileSync(path, 'utf8')) writeFileSync(path, lines.join('\n'));
}

interface Printed {
  readonly id: string;
  readonly printed: string;
  readonly unit: string;
}

/** Lines of the form `ID VALUE UNIT`; a figure without a unit has 1 or nothing there. */
function valuesIn(text: string): Printed[] {
  return text.split('\n').flatMap((line) => {
    if (line.trim() === '') return [];
    const parts = /^(\S+)\s+([-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)(?:\s+(\S+))?$/.exec(line.trim());
    if (parts === null) throw new Error(`“${line}” is not ID VALUE UNIT`);
    return [{ id: parts[1] as string, printed: parts[2] as string, unit: parts[3] ?? '1' }];
  });
}

/** Half a unit in the last place of a printed number, with a hair for binary fractions. */
function halfAUnit(printed: string): number {
  const [mantissa, exponent] = printed.split('e') as [string, string | undefined];
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent ?? 0) - decimals) * (1 + 1e-9);
}
