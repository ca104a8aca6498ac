// What is said of a file in which something is missing or out of place, and what is left to another rule that says it already.
import { describe, expect, test } from 'vitest';
import { type Rule, ruleNamed } from '../../server/rules/index.ts';
import { rule as signMisplaced } from '../../server/rules/sign-misplaced/rule.ts';
import { applyEdits, judge, saidOf } from '../kit/pages.ts';

const block = (opening: string, ...lines: string[]): string => `${opening} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const said = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const whatOf = (rule: string, text: string): string[] =>
  judge(text).findings.flatMap((finding) => (finding.rule === rule ? [finding.what] : []));

describe('a file without a site', () => {
  const leaf = block('leaf west', 'width 2 m');
  const missing = (head: string): string[] => [`The file describes “${head}” and has no “site” block.`];
  test.each<[string, string[], string]>([
    ['is told by its first block', missing('leaf west'), `language 1\n${leaf}${block('motion', 'seat 1 s')}`],
    ['is told by a block without a name', missing('motion'), `language 1\n${block('motion', 'seat 1 s')}${leaf}`],
    ['is told by a drive', missing('drive ram'), `language 1\n${block('drive ram', 'moves west')}${leaf}`],
    ['is told by a sensor', missing('sensor beam'), `language 1\n${block('sensor beam', 'watches closing')}${leaf}`],
    ['is told by a control', missing('control fobs'), `language 1\n${block('control fobs', 'by transmitter')}${leaf}`],
    ['is told by a cable', missing('cable mains'), `language 1\n${block('cable mains', 'length 2 m')}${leaf}`],
    ['is told where another block lacks its braces', missing('leaf west'), `language 1\nleaf east\n${leaf}`],
    ['is told where another word is misspelt', missing('leaf west'), `language 1\n${block('senser beam', 'watches closing')}${leaf}`],
    ['is not told again where the site lacks its braces', [], `language 1\nsite "Example"\n${leaf}`],
    ['is not told again where the site is misspelt', [], `language 1\n${block('sits "Example"', 'users limited')}${leaf}`],
    ['is sound where it describes no gate', [], `language 1\n${block('function stop', 'required-level d')}`],
  ])('%s', (_, expected, text) => expect(whatOf('site-missing', text)).toEqual(expected));
});

describe('a sign out of place', () => {
  const colon = 'A colon stands here and no name of a model follows it.';
  /** A file with that line in a leaf, and what the colon taken out makes of the line; undefined where that is not offered. */
  function without(line: string): string | undefined {
    const text = `language 1\nleaf west {\n${line}\n}\n`;
    const analysis = judge(text);
    const own = analysis.findings.filter((finding) => finding.rule === 'sign-misplaced');
    expect(own.map(({ what }) => what)).toEqual([colon]);
    const fix = own[0]?.fixes[0];
    return fix === undefined ? undefined : applyEdits(text, fix.edits).split('\n')[2];
  }
  test.each([
    ['  width: 2 m', '  width 2 m'],
    ['  width:2 m', '  width 2 m'],
    ['  width:\t2 m', '  width\t2 m'],
    ['  width:  2 m', '  width  2 m'],
    ['width: 2 m', 'width 2 m'],
    ['\twidth: 2 m', '\twidth 2 m'],
    ['  hinge-to-stop: 40 mm', '  hinge-to-stop 40 mm'],
    ['  text: "at the gate"', '  text "at the gate"'],
    // Here something else may be meant.
    ['  width 2 m:', undefined],
    ['  width: # 2 m', undefined],
    ['  width: { 2 m }', undefined],
    ['  width :2 m', undefined],
    ['  opens inward: 90 deg', undefined],
    ['  width 2: 3 m', undefined],
    ['  "width": 2 m', undefined],
  ])('a colon in %j', (line, expected) => expect(without(line)).toBe(expected));

  test('a colon behind the opening brace stays', () => {
    expect(
      judge('language 1\nleaf west { width: 2 m }\n').findings.flatMap((finding) =>
        finding.rule === 'sign-misplaced' ? finding.fixes : [],
      ),
    ).toEqual([]);
  });

  test.each([
    ['8.2 kohm +-', '“+-” stands here and is not between a quantity and its tolerance.'],
    ['± 8.2 kohm', '“±” stands here and is not between a quantity and its tolerance.'],
    ['8.2 kohm ..', '“..” stands here and is not between the two ends of a range.'],
    ['8.2 kohm ...', '“...” stands here and is not between the two ends of a range.'],
  ])('%s', (value, expected) =>
    expect(whatOf('sign-misplaced', `language 1\n${block('sensor-model linnet', `terminator ${value}`)}`)).toEqual([expected]),
  );

  test('any other is told in words too', () => {
    const { explain } = signMisplaced;
    expect(explain({ kind: 'sign-misplaced', start: 3, end: 4, detail: { found: '}' } }, 'abc}').what).toBe(
      '“}” stands here and means nothing.',
    );
    expect(explain({ kind: 'sign-misplaced', start: 4, end: 4, detail: { found: '' } }, 'abc}').what).toBe(
      'Something stands here that does not fit.',
    );
  });
});

describe('a safety function that is not worked out', () => {
  const rule = 'safety-function-undeclared';
  const panel = (name: string, model: string): string => block(`panel ${name} : ${model}`);
  const silent = `language 1\n${block('panel-model silent-box', 'leaves 1')}`;
  const none = 'has a model that declares none of “pfhd”, “performance-level”, “mttfd” and “b10d”';

  test('names the one thing that is missing, or the first and how many more', () => {
    const panels = ['a', 'b', 'c', 'd'].map((name) => panel(name, 'silent-box')).join('');
    expect(whatOf(rule, silent + panels + block('function stop', 'parts a'))).toEqual([
      `The function “stop” is not worked out: “a” ${none}.`,
    ]);
    expect(whatOf(rule, silent + panels + block('function stop', 'parts b, a'))).toEqual([
      `The function “stop” is not worked out: “b” ${none}, and one thing more is missing.`,
    ]);
    expect(whatOf(rule, silent + panels + block('function stop', 'parts a, b, c, d'))).toEqual([
      `The function “stop” is not worked out: “a” ${none}, and 3 things more are missing.`,
    ]);
  });

  test('may have no parts', () => {
    expect(said(rule, `language 1\n${block('function stop', 'required-level d')}`)).toBe(
      'note on line 2, “function stop”: The function “stop” is not worked out: it names no parts.\n  See line 2, “function stop”: it names no parts\n',
    );
  });

  test.each([
    ['all is declared', `language 1\nuse "../library/panels.gate"\n${panel('main', 'rowan-pair')}${block('function stop', 'parts main')}`],
    ['a part is not there', `${silent}${panel('main', 'silent-box')}${block('function stop', 'parts main, mian')}`],
    ['the only part is not there', `${silent}${block('function stop', 'parts mian')}`],
    [
      'the model of a part is not known',
      `${silent}${panel('main', 'silent-box')}${panel('back', 'nobody-knows')}${block('function stop', 'parts main, back')}`,
    ],
    ['a line of it cannot be read', `${silent}${panel('main', 'silent-box')}${block('function stop', 'parts main', 'required-level z')}`],
  ])('is nothing of its own where %s', (_, text) => expect(whatOf(rule, text)).toEqual([]));
});
