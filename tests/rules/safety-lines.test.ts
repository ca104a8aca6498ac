// What the vocabulary calls safety-critical: no fix that is applied without a look touches it, and each such line can make
// the difference between a verdict that somebody can be hurt and none.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Span, Statement } from '../../grammar/index.ts';
import { lineSpecOf, statementsOf } from '../../server/editor/places.ts';
import { type Analysis, withEdits } from '../../server/engine/index.ts';
import { ruleNamed } from '../../server/rules/index.ts';
import { type BlockSpec, blocks, type LineSpec, units } from '../../server/vocabulary/index.ts';
import { type Block, blocksOf, foldersWith, judge, judgeBlock, readPage, root } from '../kit/pages.ts';

interface SafetyLine {
  /** `leaf width`, `panel-model adjuster range`. */
  readonly name: string;
  readonly statement: Statement;
  readonly spec: LineSpec;
}

function safetyLinesOf(analysis: Analysis): SafetyLine[] {
  const found: SafetyLine[] = [];
  for (const { statement, around } of statementsOf(analysis.installation.reading.tree)) {
    const within = around.at(-1);
    const word = statement.word?.text ?? '';
    if (statement.body !== undefined || within === undefined) continue;
    const spec = lineSpecOf(within.spec, false, word);
    if (spec?.safety === true) found.push({ name: [...around.map((each) => each.word), word].join(' '), statement, spec });
  }
  return found;
}

const pages: readonly Block[] = foldersWith('rules', 'rule.ts').flatMap((rule) =>
  blocksOf(readPage('rules', rule)).filter((block) => block.kind === 'flagged' || block.kind === 'sound'),
);

/**
 * What the safety-critical lines say, whatever their place: their numbers and words, and behind which numbers a unit stands.
 * A unit that cannot be read may be spelled otherwise, and a sign that means nothing may go; a number may not get a unit.
 */
function stated(analysis: Analysis): string[] {
  const isNumber = (word: string | undefined): boolean => word !== undefined && /^[-+\u2212]?\d/.test(word);
  const known = new Set(units.flatMap((unit) => [unit.name, ...unit.also]));
  return safetyLinesOf(analysis)
    .map(({ name, statement }) => {
      const words = analysis.text.slice(statement.start, statement.end).replaceAll(':', ' ').split(/\s+/).slice(1);
      return [
        name,
        ...words.map((word, i) => (isNumber(words[i - 1]) && !isNumber(word) && (known.has(word) || !lineHas(name, word)) ? 'UNIT' : word)),
      ].join(' ');
    })
    .sort();
}

/** Whether a word is a keyword of some line of that word: `by`, `overlap`. */
const lineHas = (name: string, word: string): boolean =>
  allLines.some(([line, spec]) => line === name.split(' ').at(-1) && Object.values(spec.slots).some((slot) => slot.after === word));
const allLines: [string, LineSpec][] = [];
const gather = (spec: BlockSpec): void => {
  allLines.push(...Object.entries(spec.lines));
  for (const block of Object.values(spec.blocks)) gather(block);
};
for (const spec of Object.values<BlockSpec>(blocks)) gather(spec);

test('no fix of any example that is called safe changes what a safety-critical line says', () => {
  let safe = 0;
  for (const block of pages) {
    const analysis = judgeBlock(block);
    for (const finding of [...analysis.findings, ...analysis.accepted])
      for (const fix of finding.fixes.filter((each) => each.safe)) {
        safe++;
        const after = judge(withEdits(block.text, fix.edits), block.files, block.asOf);
        const [was, is] = [stated(analysis), stated(after)];
        // One that stands twice with the same values may go.
        expect(
          is.filter((line) => !was.includes(line)),
          `${finding.rule}, “${fix.title}”: ${block.text}`,
        ).toEqual([]);
        expect(
          was.filter((line) => !is.includes(line)),
          `${finding.rule}, “${fix.title}”: ${block.text}`,
        ).toEqual([]);
      }
  }
  expect(safe).toBeGreaterThan(10);
});

describe('each safety-critical line decides something', () => {
  const all: string[] = [];
  const walk = (path: string, spec: BlockSpec): void => {
    for (const [word, line] of Object.entries(spec.lines)) if (line.safety === true) all.push(`${path} ${word}`);
    for (const [word, block] of Object.entries(spec.blocks)) walk(`${path} ${word}`, block);
  };
  for (const [word, spec] of Object.entries<BlockSpec>(blocks)) walk(word, spec);

  /** What somebody can be hurt by, of a verdict: errors and warnings about the installation, not about what is written or lacks. */
  const dangers = (analysis: Analysis): string =>
    [...analysis.findings, ...analysis.accepted]
      .filter(({ rule, severity }) => severity !== 'note' && ruleNamed(rule)?.kind === 'installation' && rule !== 'fact-missing')
      .map(({ rule }) => rule)
      .sort()
      .join(' ');

  /** The text without the line, then with its numbers a tenth and ten times as large. */
  const variants = (text: string, { start, end }: Span): string[] => {
    const line = text.slice(start, end);
    const times = (factor: number): string =>
      line.replace(/(?<=\s)\d+(?:\.\d+)?(?=\s|$)/g, (number) => String(Number((Number(number) * factor).toPrecision(6))));
    return [' '.repeat(line.length), times(0.1), times(10)].map((put) => text.slice(0, start) + put + text.slice(end));
  };
  const deciding = new Set<string>();
  const gate = (folder: string): string[] =>
    readdirSync(`${root}/examples/${folder}`)
      .filter((name) => name.endsWith('.gate'))
      .map((name) => `${root}/examples/${folder}/${name}`);
  const read = (path: string): string => readFileSync(path, 'utf8');

  for (const block of pages) {
    const analysis = judgeBlock(block);
    const before = dangers(analysis);
    for (const line of safetyLinesOf(analysis))
      if (
        !deciding.has(line.name) &&
        variants(block.text, line.statement).some((text) => dangers(judge(text, block.files, block.asOf)) !== before)
      )
        deciding.add(line.name);
  }
  // Lines of models: left out of the library that the examples and the pages use.
  const sites = [
    ...['sound', 'unsafe'].flatMap(gate).map((path) => ({ text: read(path), files: new Map<string, string>(), asOf: '2026-11-25' })),
    ...pages.filter((block) => block.text.includes('use ')),
  ];
  const verdicts = sites.map(({ text, files, asOf }) => dangers(judge(text, files, asOf)));
  for (const path of gate('library')) {
    const text = read(path);
    for (const line of safetyLinesOf(judge(text)))
      if (
        !deciding.has(line.name) &&
        variants(text, line.statement).some((changed) =>
          sites.some((site, i) => dangers(judge(site.text, new Map([...site.files, [path, changed]]), site.asOf)) !== verdicts[i]),
        )
      )
        deciding.add(line.name);
  }
  // What a product declares for functional safety, and against shock, is one set of lines, whatever it stands in.
  const sameLine = (name: string): string =>
    name.replace(
      /^(?:panel-model|drive-model|sensor-model|function subsystem) (?=pfhd|performance-level|category|mttfd|b10d|coverage|common-cause|double-insulated)/,
      '',
    );
  const decidingLines = new Set([...deciding].map(sameLine));
  /** On these no page and no example turns: they decide only together with others, or where others leave little room. */
  const turnsNothing: ReadonlySet<string> = new Set([
    'function subsystem tests',
    'function subsystem tested-on-demand',
    'mttfd',
    'coverage',
    'drive-model limits-force',
    'drive-model slow-speed',
  ]);
  test.each(all)('%s', (name) => {
    expect(decidingLines.has(sameLine(name))).toBe(!turnsNothing.has(sameLine(name)));
  });
});
