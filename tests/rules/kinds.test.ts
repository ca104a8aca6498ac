// Every kind of problem that reading a file can find has a rule that explains it, and every such rule explains one.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { allRules, ruleNamed } from '../../server/rules/index.ts';
import { anywhereLines, blocks, topLines, units, type BlockSpec, type LineSpec } from '../../server/vocabulary/index.ts';
import { root } from '../kit/pages.ts';

/** The sources that find problems. */
const sources = ['grammar/tree.ts', 'grammar/tokens.ts', 'grammar/balance.ts', 'grammar/parser.ts', 'server/vocabulary/read.ts', 'server/model/resolve.ts', 'server/model/shelf.ts', 'server/rules/evaluate.ts'];

/** Words with a hyphen that stand in those sources and are words of the language, not kinds. */
function vocabularyWords(): Set<string> {
  const words = new Set<string>(units.flatMap((unit) => [unit.name, ...unit.also]));
  const line = (word: string, spec: LineSpec): void => {
    words.add(word);
    for (const [key, slot] of Object.entries(spec.slots)) {
      words.add(key);
      if (slot.kind === 'choice') for (const option of Object.keys(slot.options)) words.add(option);
      if (slot.after !== undefined) words.add(slot.after);
    }
  };
  const block = (word: string, spec: BlockSpec): void => {
    words.add(word);
    for (const [key, inner] of Object.entries(spec.lines)) line(key, inner);
    for (const [key, inner] of Object.entries(spec.blocks)) block(key, inner);
  };
  for (const [word, spec] of Object.entries(blocks as Readonly<Record<string, BlockSpec>>)) block(word, spec);
  for (const [word, spec] of Object.entries({ ...topLines, ...anywhereLines })) line(word, spec);
  return words;
}

/** Kinds by the source that names them: every string of two or more hyphenated words that is no word of the language. */
function kindsFound(): Map<string, string> {
  const known = vocabularyWords();
  const found = new Map<string, string>();
  for (const source of sources)
    for (const [, literal] of readFileSync(join(root, source), 'utf8').replace(/^\s*\/\/.*$/gm, '').matchAll(/'([a-z]+(?:-[a-z]+)+)'/g)) if (!known.has(literal as string)) found.set(literal as string, source);
  return found;
}

test('every kind of problem has a rule that explains it', () => {
  const found = kindsFound();
  expect(found.size).toBeGreaterThan(40);
  for (const [kind, source] of found) expect(ruleNamed(kind)?.kind, `${source} finds “${kind}”`).toBe('problem');
});

test('every rule that explains a problem has one to explain', () => {
  const found = kindsFound();
  for (const rule of allRules) if (rule.kind === 'problem') expect(found.has(rule.name), `nothing finds “${rule.name}”`).toBe(true);
});
