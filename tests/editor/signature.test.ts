import { expect, test } from 'vitest';
import { signature } from '../../server/editor/index.ts';
import { anywhereLines, type BlockSpec, blocks, type LineSpec, lineShape, topLines } from '../../server/vocabulary/index.ts';
import { bench, site, uses } from './bench.ts';

/** The label with the active parameter in angle brackets. */
function shown(marked: string): string | undefined {
  const { analysis, offset } = bench(marked);
  const found = signature(analysis, offset);
  if (found === undefined) return undefined;
  const active = found.parameters[found.active];
  if (active === undefined) throw new Error('no such parameter');
  return `${found.label.slice(0, active.start)}<${found.label.slice(active.start, active.end)}>${found.label.slice(active.end)}`;
}
const inLeaf = (line: string): string => `language 1\nleaf a {\n  ${line}\n}\n`;
const inDrive = (line: string): string => `language 1\ndrive a {\n  ${line}\n}\n`;

test.each<[what: string, marked: string, label: string | undefined]>([
  ['the first value', inLeaf('opens |'), 'opens <inward|outward> ANGLE'],
  ['a word being typed', inLeaf('opens inw|'), 'opens <inward|outward> ANGLE'],
  ['the next one', inLeaf('opens inward |'), 'opens inward|outward <ANGLE>'],
  ['a number being typed', inLeaf('opens inward 9|'), 'opens inward|outward <ANGLE>'],
  ['its unit still to come', inLeaf('opens inward 95 |'), 'opens inward|outward <ANGLE>'],
  ['nothing more can follow', inLeaf('opens inward 95 deg |'), undefined],
  ['in the middle of a line', inLeaf('opens |inward 95 deg'), 'opens <inward|outward> ANGLE'],
  ['a value with a keyword', inLeaf('closes onto |'), 'closes <onto LEAF> [overlap LENGTH] [gap LENGTH]'],
  ['before its keyword', inLeaf('closes |'), 'closes <onto LEAF> [overlap LENGTH] [gap LENGTH]'],
  ['what may follow', inLeaf('closes onto b |'), 'closes onto LEAF <[overlap LENGTH]> [gap LENGTH]'],
  ['in another order', inLeaf('closes onto b gap 20 mm |'), 'closes onto LEAF <[overlap LENGTH]> [gap LENGTH]'],
  ['the one whose keyword stands there', inLeaf('closes onto b gap |'), 'closes onto LEAF [overlap LENGTH] <[gap LENGTH]>'],
  ['behind its keyword', inDrive('post-bracket 140 mm by |'), 'post-bracket LENGTH <by LENGTH>'],
  ['a number that took the keyword for its unit', inDrive('post-bracket 140 by 1|'), 'post-bracket LENGTH <by LENGTH>'],
  ['a tolerance', 'language 1\nsensor a {\n  terminator 8.2 kohm ± |', 'terminator RESISTANCE <[± TOLERANCE]>'],
  ['a tolerance being typed', 'language 1\nsensor a {\n  terminator 8.2 kohm ± 5|', 'terminator RESISTANCE <[± TOLERANCE]>'],
  [
    'a list',
    site().replace('select reply steps', 'wire fobs to K0 |'),
    'wire DEVICE [signal|supply|test] <to TERMINAL …> [in-series-with DEVICE]',
  ],
  ['a text being typed', 'language 1\naccept use-unused because "wor|', 'accept RULE <because "…"> [by "…"] until YYYY-MM-DD'],
  ['behind a text', 'language 1\naccept use-unused because "x" |', 'accept RULE because "…" <[by "…"]> until YYYY-MM-DD'],
  ['a header', `${uses}drive |`, 'drive <NAME> : MODEL { … }'],
  ['a header’s model', `${uses}drive a |`, 'drive NAME <: MODEL> { … }'],
  ['a header behind the colon', `${uses}drive a : |`, 'drive NAME <: MODEL> { … }'],
  ['a header’s title', 'language 1\npanel-model a |', 'panel-model NAME <["…"]> { … }'],
  ['a header that is whole', `${uses}drive a : birch-ram |`, undefined],
  ['the word of a line', inLeaf('op|'), undefined],
  ['a remark', inLeaf('opens # |'), undefined],
  ['an unknown word', inLeaf('nonsense |'), undefined],
  ['a line without values', 'language 1\nsite {\n  private-supply |\n}', undefined],
  ['between lines', inLeaf('|'), undefined],
])('%s', (_what, marked, label) => {
  expect(shown(marked)).toBe(label);
});

test('every line’s signature is its shape, and each value has its documentation', () => {
  const look = (word: string, spec: LineSpec, lead: string): void => {
    const { analysis, offset } = bench(`language 1\n${lead}${word} |\n${'}\n'.repeat(lead.split('{').length - 1)}`);
    const found = signature(analysis, offset);
    if (Object.keys(spec.slots).length === 0) return expect(found).toBeUndefined();
    expect(found?.label, word).toBe(lineShape(word, spec));
    expect(found?.parameters.length).toBe(Object.keys(spec.slots).length);
    for (const { start, end, doc } of found?.parameters ?? []) {
      expect(doc).toMatch(/\.$/);
      expect(found?.label.slice(start, end)).toMatch(/^\S.*\S$/);
    }
  };
  const within = (spec: BlockSpec, lead: string): void => {
    for (const [word, line] of Object.entries(spec.lines)) look(word, line, lead);
    for (const [word, block] of Object.entries(spec.blocks)) within(block, `${lead}${word}${block.named ? ' x' : ''} {\n`);
  };
  for (const [word, block] of Object.entries<BlockSpec>(blocks)) within(block, `${word}${block.named ? ' x' : ''} {\n`);
  for (const [word, line] of Object.entries<LineSpec>({ ...topLines, ...anywhereLines })) look(word, line, '');
});
