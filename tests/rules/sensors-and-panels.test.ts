// Whether a panel hears a sensor and has learnt it, whether the sensor reaches far enough, and whether what is set on a panel can
// be set there: each by itself, and where it cannot be told.
import { describe, expect, test } from 'vitest';
import { type Rule, ruleNamed } from '../../server/rules/index.ts';
import { applyEdits, judge, saidOf } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\nuse "../library/drives.gate"\n';
const block = (opening: string, ...lines: string[]): string => `${opening} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const sensor = (name: string, model = 'finch-beam', ...lines: string[]): string =>
  block(`sensor ${name} : ${model}`, 'watches closing', ...lines);
const panel = (name: string, ...lines: string[]): string => block(`panel ${name} : rowan-pair`, ...lines);
const said = (rule: string, ...parts: string[]): string => saidOf(judge(head + parts.join('')), ruleNamed(rule) as Rule);
/** The sentences by themselves. */
const whatOf = (rule: string, ...parts: string[]): string[] =>
  judge(head + parts.join('')).findings.flatMap((finding) => (finding.rule === rule ? [finding.what] : []));

describe('a sensor that the panel has not learnt', () => {
  const rule = 'sensor-not-registered';
  const missed = (name: string, by = 'main'): string => `“${name}” is wired to “${by}”, but the panel has not learnt it.`;

  test.each<[string, string[], string[]]>([
    [
      'is one that only another panel has learnt',
      [missed('low')],
      [sensor('low'), panel('main', 'wire low to T1 T0'), panel('back', 'registered low')],
    ],
    [
      'is missed by each panel that hears it',
      [missed('low'), missed('low', 'back')],
      [sensor('low'), panel('main', 'wire low to T1 T0'), panel('back', 'wire low to T1 T0')],
    ],
    [
      'is missed by the second panel, where the first one learns none',
      [missed('low', 'back')],
      [sensor('low'), block('panel main : marram-one', 'wire low to Y1 Y0'), panel('back', 'wire low to T1 T0')],
    ],
    [
      'is missed where its supply ends on the input before its signal does',
      [missed('low')],
      [sensor('low'), panel('main', 'wire low supply to T1', 'wire low to T1 T0')],
    ],
    [
      'is missed beside a name in another line that leads nowhere',
      [missed('low')],
      [sensor('low'), sensor('mid'), panel('main', 'wire nobody to G1 G0', 'wire low to T1 T0', 'registered mid', 'wire no-one to G2 G0')],
    ],
    ['is nothing where it ends on another input, which is told elsewhere', [], [sensor('low'), panel('main', 'wire low to G1 G0')]],
    ['is nothing where it ends on a terminal that is not there', [], [sensor('low'), panel('main', 'wire low to T9 T0')]],
    ['is nothing where only its supply is wired', [], [sensor('low'), panel('main', 'wire low supply to T1 T0')]],
    ['is nothing where it has a relay contact', [], [sensor('low', 'finch-relay'), panel('main', 'wire low to T1 T0')]],
    [
      'is nothing where its model does not say how it reports',
      [],
      [block('sensor-model dunnock', 'kind beam'), sensor('low', 'dunnock'), panel('main', 'wire low to T1 T0')],
    ],
    ['is nothing where its model is not known', [], [sensor('low', 'nobody-knows'), panel('main', 'wire low to T1 T0')]],
    ['is nothing where it has no model', [], [block('sensor low', 'watches closing'), panel('main', 'wire low to T1 T0')]],
    ['is nothing where a drive is wired there', [], [block('drive ram : birch-ram'), panel('main', 'wire ram to T1 T0')]],
    [
      'is nothing where the line of what it has learnt cannot be read',
      [],
      [sensor('low'), panel('main', 'wire low to T1 T0', 'registered')],
    ],
    ['is nothing where a word may be that line', [], [sensor('low'), panel('main', 'wire low to T1 T0', 'registred low')]],
    [
      'is nothing where the second line holds a name that leads nowhere',
      [],
      [sensor('low'), sensor('mid'), panel('main', 'wire low to T1 T0', 'registered mid', 'registered lwo')],
    ],
    [
      'is nothing where a name that leads nowhere stands beside one that does not',
      [],
      [sensor('low'), sensor('mid'), panel('main', 'wire low to T1 T0', 'registered mid lwo')],
    ],
    [
      'is nothing where a line names what is no sensor',
      [],
      [sensor('low'), block('drive ram : birch-ram'), panel('main', 'wire low to T1 T0', 'registered ram')],
    ],
    ['is nothing where the panel has no model', [], [sensor('low'), block('panel main', 'wire low to T1 T0')]],
  ])('%s', (_, expected, parts) => expect(whatOf(rule, ...parts)).toEqual(expected));

  /** The text with the one thing that is offered done. */
  function mended(...parts: string[]): string {
    const analysis = judge(head + parts.join(''));
    const fixes = analysis.findings.flatMap((finding) => (finding.rule === rule ? finding.fixes : []));
    expect(fixes.map((fix) => fix.safe)).toEqual([false]);
    return applyEdits(
      analysis.text,
      fixes.flatMap((fix) => fix.edits),
    );
  }

  test('is written behind the last one of the last line, as the others are parted', () => {
    const sensors = [sensor('low', 'finch-beam', 'height 200 mm, 400 mm'), sensor('mid'), sensor('top')];
    const wire = 'wire low to T1 T0';
    expect(mended(...sensors, panel('main', wire, 'registered mid top'))).toContain('\n  registered mid top low\n');
    expect(mended(...sensors, panel('main', wire, 'registered mid, top'))).toContain('\n  registered mid, top, low\n');
    expect(mended(...sensors, panel('main', wire, 'registered mid', 'registered top'))).toContain(
      '\n  registered mid\n  registered top low\n',
    );
    expect(mended(...sensors, panel('main', wire, 'registered mid, mid', 'registered top'))).toContain(
      '\n  registered mid, mid\n  registered top low\n',
    );
    expect(mended(...sensors, panel('main', wire))).toContain('\n  wire low to T1 T0\n  registered low\n}\n');
  });

  test('is told with the first line of what the panel has learnt', () => {
    expect(
      said(rule, sensor('low'), sensor('mid'), sensor('top'), panel('main', 'wire low to T1 T0', 'registered mid', 'registered top')),
    ).toBe(
      `error on line 15, “low”: ${missed('low')}\n` +
        '  See line 5, “sensor low”: the sensor\n' +
        '  See panels.gate: “rowan-pair” heeds only sensors that it has learnt\n' +
        '  See line 16, “registered mid”: what it has learnt\n' +
        '  Offered: Add “low” to the registered sensors, once the panel has learnt it: line 17, nothing becomes “ low”\n',
    );
  });
});

describe('a sensor that no panel hears', () => {
  const rule = 'sensor-not-wired';
  test.each<[string, string[], string[]]>([
    ['is told of the one panel', ['“low” is not wired to “main”.'], [sensor('low'), panel('main')]],
    ['is told of two', ['“low” is not wired to any panel.'], [sensor('low'), panel('main'), panel('back')]],
    [
      'is told where only its supply is wired to the second',
      ['“low” is not wired to any panel: its supply is, but not its signal.'],
      [sensor('low'), panel('main'), panel('back', 'wire low supply to V1 V0')],
    ],
    [
      'is told where only its test input is wired',
      ['“low” is not wired to “main”: its test is, but not its signal.'],
      [sensor('low'), panel('main', 'wire low test to X1 V0')],
    ],
    ['is nothing where the second panel hears it', [], [sensor('low'), panel('main'), panel('back', 'wire low to T1 T0')]],
    ['is nothing where there is no panel', [], [sensor('low')]],
    ['is nothing where it has no model', [], [block('sensor low', 'watches closing'), panel('main')]],
    ['is nothing where its model is not known', [], [sensor('low', 'nobody-knows'), panel('main')]],
    [
      'is nothing where its model does not say what it is',
      [],
      [block('sensor-model dunnock', 'output relay'), sensor('low', 'dunnock'), panel('main')],
    ],
    ['is nothing for a loop in the ground', [], [sensor('low', 'finch-loop'), panel('main')]],
  ])('%s', (_, expected, parts) => expect(whatOf(rule, ...parts)).toEqual(expected));

  test('is shown with no more than four panels', () => {
    const analysis = judge(head + sensor('low') + ['a', 'b', 'c', 'd', 'e'].map((name) => panel(name)).join(''));
    const finding = analysis.findings.find((one) => one.rule === rule);
    expect(finding?.related.map(({ message }) => message)).toEqual(['a', 'b', 'c', 'd'].map((name) => `nothing in “${name}” wires it`));
  });
});

describe('a beam across the opening', () => {
  const rule = 'sensor-out-of-reach';
  const sliding = (metres: string, ...lines: string[]): string => block('leaf slide', 'width 20 m', `slides left ${metres}`, ...lines);
  const swing = (name: string, width: string): string => block(`leaf ${name}`, `width ${width}`, 'opens inward 90 deg');
  const tooShort = ['“low” (finch-relay) reaches 12 m; the opening is 12.01 m wide.'];

  test.each<[string, string[], string[]]>([
    ['reaches as far as it is rated for', [], [sliding('12 m'), sensor('low', 'finch-relay')]],
    ['and not a centimetre further', tooShort, [sliding('12.01 m'), sensor('low', 'finch-relay')]],
    [
      'has to span a swing leaf and a sliding one together',
      tooShort,
      [swing('west', '4.01 m'), block('leaf slide', 'width 20 m', 'slides left 8 m'), sensor('low', 'finch-relay')],
    ],
    [
      'is measured though it stands behind one that is none',
      tooShort,
      [sliding('12.01 m'), sensor('edge', 'finch-edge'), sensor('low', 'finch-relay')],
    ],
    ['need not span it where it watches the opening gate', [], [sliding('12.01 m'), block('sensor low : finch-relay', 'watches opening')]],
    ['has to where it watches both', tooShort, [sliding('12.01 m'), block('sensor low : finch-relay', 'watches opening closing')]],
    ['need not where it is not said what it watches', [], [sliding('12.01 m'), block('sensor low : finch-relay', 'height 200 mm')]],
    ['need not where it sits on the leaf', [], [sliding('12.01 m'), sensor('low', 'finch-relay', 'on slide closing-edge')]],
    ['need not where it sits on a leaf that is not there', [], [sliding('12.01 m'), sensor('low', 'finch-relay', 'on sldie closing-edge')]],
    ['need not where the line that says where it sits cannot be read', [], [sliding('12.01 m'), sensor('low', 'finch-relay', 'on slide')]],
    ['need not where a word may be that line', [], [sliding('12.01 m'), sensor('low', 'finch-relay', 'onn slide closing-edge')]],
    ['has to where another line cannot be read', tooShort, [sliding('12.01 m'), sensor('low', 'finch-relay', 'height')]],
    [
      'is not held against anything where its model does not say how far it reaches',
      [],
      [sliding('12.01 m'), block('sensor-model dunnock', 'kind beam', 'output relay'), sensor('low', 'dunnock')],
    ],
    [
      'nor where its model does not say that it is one',
      [],
      [sliding('12.01 m'), block('sensor-model dunnock', 'reach 2 m', 'output relay'), sensor('low', 'dunnock')],
    ],
    [
      'nor where it is an edge, whatever its reach',
      [],
      [sliding('12.01 m'), block('sensor-model dunnock', 'kind edge', 'reach 2 m', 'output resistive'), sensor('low', 'dunnock')],
    ],
    ['nor where its model is not known', [], [sliding('12.01 m'), sensor('low', 'nobody-knows')]],
    ['nor where it has none', [], [sliding('12.01 m'), block('sensor low', 'watches closing')]],
    ['nor where there is no leaf', [], [sensor('low', 'finch-relay')]],
    ['nor where the width of one is not known', [], [block('leaf west', 'mass 300 kg'), sliding('12.01 m'), sensor('low', 'finch-relay')]],
    [
      'nor where a line of a leaf cannot be read, which may say that it slides',
      [],
      [block('leaf slide', 'width 20 m', 'slids left 4 m'), sensor('low', 'finch-relay')],
    ],
  ])('%s', (_, expected, parts) => expect(whatOf(rule, ...parts)).toEqual(expected));

  test('is told with the parts of the opening, no more than twelve, and where its reach stands', () => {
    const leaves = Array.from({ length: 13 }, (_, i) => swing(`leaf-${i + 1}`, `${i + 1} m`));
    const analysis = judge(head + leaves.join('') + sensor('low', 'finch-relay'));
    const finding = analysis.findings.find((one) => one.rule === rule);
    // 1 + 2 + … + 13
    expect(finding?.what).toBe('“low” (finch-relay) reaches 12 m; the opening is 91 m wide.');
    expect(finding?.related.map(({ message }) => message)).toEqual([
      ...Array.from({ length: 12 }, (_, i) => `${i + 1} m of the opening`),
      'its reach',
    ]);
  });
});

describe('what is set on a panel', () => {
  const rule = 'selector-unknown';
  const model = (...lines: string[]): string =>
    block('panel-model dunnock', 'leaves 1', ...lines.map((line) => line.replaceAll('\n', '\n  ')));
  const selector = (name: string, ...options: string[]): string =>
    block(`selector ${name} "What it does"`, ...options.map((option) => `option ${option} "It does"`)).trimEnd();
  const of = (...lines: string[]): string => block('panel main : dunnock', ...lines);

  test.each<[string, string[], string[]]>([
    [
      'two selectors, each once',
      [],
      [model(selector('reply', 'steps', 'held'), selector('lamp', 'on', 'off')), of('select reply steps', 'select lamp on')],
    ],
    [
      'one of two for the second time',
      ['Selector “lamp” is set twice: to “on” and to “off”.'],
      [
        model(selector('reply', 'steps', 'held'), selector('lamp', 'on', 'off')),
        of('select lamp on', 'select reply steps', 'select lamp off'),
      ],
    ],
    ['one twice to the same', ['Selector “reply” is set twice.'], [panel('main', 'select reply steps', 'select reply steps')]],
    ['the same on two panels', [], [panel('main', 'select reply steps'), panel('back', 'select reply held')]],
    ['a selector that may stand in what cannot be read of the model', [], [model('selctor lamp "What it does"'), of('select lamp on')]],
    [
      'a position that may stand in what cannot be read of the selector',
      [],
      [model('selector reply "What it does" {\n  option steps "It does"\n  optoin held "It does"\n}'), of('select reply held')],
    ],
    ['a panel of which the model is not known', [], [block('panel main : nobody-knows', 'select reply held')]],
    ['a panel without a model', [], [block('panel main', 'select reply held')]],
  ])('%s', (_, expected, parts) => expect(whatOf(rule, ...parts)).toEqual(expected));

  test('a position of a selector that has none', () => {
    expect(said(rule, model('selector reply "What it does" {\n}'), of('select reply held'))).toBe(
      'error on line 11, “held”: Selector “reply” has no position “held”.\n  What to do: Add its positions to the model.\n  See line 7, “selector reply”: the selector, with its positions\n',
    );
  });
});
