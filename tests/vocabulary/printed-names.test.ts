// Names of terminals as they are printed: in quotation marks where they do not begin with a letter.
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import { mentionsOf } from '../../server/editor/names.ts';
import { asWritten } from '../../server/vocabulary/index.ts';
import { judge } from '../kit/pages.ts';

const text = `language 1

panel-model sedge "Numbers" {
  terminal "14" command-input normally-open common "15"
  terminal "15" common
  terminal "2A" supply-out
  output "2A" gives 0.5 A at 24 V
}

control fobs {
  by transmitter
  acts impulse
}

panel main : sedge {
  wire fobs to "14" "15"
  accessory "radio receiver" draws 30 mA from "2A"
}
`;

describe('a name in quotation marks', () => {
  const analysis = judge(text);
  test('is read as the name of a terminal, where it is declared and where it is used', () => {
    expect(analysis.findings.filter(({ rule }) => /value|name|terminal|unit/.test(rule))).toEqual([]);
    const [panel] = analysis.installation.panels;
    expect([...(panel?.model?.terminals.keys() ?? [])]).toEqual(['14', '15', '2A']);
    expect(panel?.wires[0]?.ends.map(({ terminal }) => terminal?.role)).toEqual(['command-input', 'common']);
    expect(panel?.facts.accessory.map(({ what, from }) => [what, from.text])).toEqual([['radio receiver', '2A']]);
  });
  test('is the same name as the word, where that is one', () => {
    const plain = judge(text.replaceAll('"14"', 'K1').replace('wire fobs to K1', 'wire fobs to "K1"'));
    expect(plain.findings.filter(({ rule }) => /value|name|terminal|unit/.test(rule))).toEqual([]);
  });
  test('stays as it is when the file is formatted', () => expect(print(parse(text))).toBe(text));
  test('is found by the editor with its quotation marks, each time that it stands there', () => {
    const found = mentionsOf(analysis).filter(({ meaning }) => meaning.kind === 'terminal' && meaning.name === '15');
    expect(found.map(({ start, end }) => text.slice(start, end))).toEqual(['"15"', '"15"', '"15"']);
  });
  test('has to be there where a figure comes first, and is said once', () => {
    const bare = judge(text.replaceAll('"14"', '14'));
    const said = bare.findings.filter(({ rule }) => /value|unit/.test(rule)).map(({ what, remedy }) => `${what} ${remedy}`);
    expect(said).toEqual([
      '“14 command-input” in “terminal” is not a name, in quotation marks where it does not begin with a letter. Write the name as “"14"”.',
      '“14” in “wire” is not the name of a terminal, in quotation marks where it does not begin with a letter. Write the name as “"14"”.',
    ]);
  });
  test.each([
    ['K1', 'K1'],
    ['14', '"14"'],
    ['2A', '"2A"'],
    ['+24', '"+24"'],
    ['0V', '"0V"'],
  ])('%s is written as %s', (name, written) => expect(asWritten(name)).toBe(written));
  test('is no name where it is empty, or holds blanks', () => {
    for (const name of ['', 'a b', 'x'.repeat(33)])
      expect(
        judge(text.replaceAll('"2A"', `"${name}"`)).findings.some(({ rule }) => rule === 'value-unfit'),
        name,
      ).toBe(true);
  });
});
