// An earth electrode and what cuts a fault off, and the voltage that is left at the end of a cable: at the limits themselves, and
// where something is not stated.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const said = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const marginsIn = (
  rule: string,
  text: string,
): readonly (readonly [subject: string, value: number, limit: number, kept: boolean, at: string])[] =>
  marginsOf(judge(text).installation).flatMap((margin) =>
    margin.rule.name === rule
      ? [
          [
            margin.subject,
            Number(margin.value.toPrecision(6)),
            Number(margin.limit.toPrecision(6)),
            margin.kept,
            text.slice(margin.at.start, margin.at.end),
          ] as const,
        ]
      : [],
  );
const block = (head: string, ...lines: string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;

describe('an earth electrode', () => {
  const rule = 'residual-current-device-unfit';
  const head = 'language 1\nuse "../library/cables.gate"\nuse "../library/panels.gate"\nuse "../library/drives.gate"\n';
  const site = (...lines: string[]): string => head + block('site', 'users limited', 'supply 230 V 50 Hz', ...lines);
  const european = (...lines: string[]): string => site('rules europe', ...lines);
  const cable = (...lines: string[]): string => block('cable mains : heron-supply', 'length 12 m', ...lines);
  const at230 = (...lines: string[]): string => cable('carries 4 A at 230 V', ...lines);

  test('of 50 V over the rated residual current is good enough, and one of a tenth of an ohm more is not', () => {
    // 50 V / 0.5 A = 100 ohm
    expect(said(rule, european('earthing TT', 'earth-electrode 100 ohm') + at230('residual-current 500 mA'))).toBe('');
    expect(said(rule, european('earthing TT', 'earth-electrode 100.1 ohm') + at230('residual-current 500 mA'))).toBe(
      'error on line 15, “residual-current 500 mA”: The earth electrode has 100.1 ohm; a residual-current device of 500 mA needs at most 100 ohm, or 50 V may stay on metal that people touch where 50 V may.\n' +
        '  See line 9, “earthing TT”: how the supply is earthed\n' +
        '  See line 10, “earth-electrode 100.1 ohm”: the earth electrode\n',
    );
  });

  test('is shown beside its limit, whether it is good enough or not', () => {
    expect(marginsIn(rule, european('earthing TT', 'earth-electrode 100 ohm') + at230('residual-current 500 mA'))).toEqual([
      ['mains', 100, 100, true, 'residual-current 500 mA'],
    ]);
    expect(marginsIn(rule, european('earthing TT', 'earth-electrode 200 ohm') + at230('residual-current 500 mA'))).toEqual([
      ['mains', 200, 100, false, 'residual-current 500 mA'],
    ]);
  });

  test('of 200 ohm is taken for stable, and one of more is not; where it is too poor anyhow nothing is said of that', () => {
    expect(said(rule, european('earthing TT', 'earth-electrode 200 ohm') + at230('residual-current 30 mA'))).toBe('');
    expect(said(rule, european('earthing TT', 'earth-electrode 200.1 ohm') + at230('residual-current 30 mA'))).toMatch(
      /^warning on line 10, “earth-electrode 200.1 ohm”: [^\n]*stable/,
    );
    expect(said(rule, european('earthing TT', 'earth-electrode 2000 ohm') + at230('residual-current 30 mA'))).not.toContain('stable');
  });

  test.each([
    ['the supply is earthed otherwise', european('earthing TN', 'earth-electrode 190 ohm') + at230('residual-current 300 mA')],
    ['it is not said how the supply is earthed', european('earth-electrode 190 ohm') + at230('residual-current 300 mA')],
    [
      'the rules are those of North America',
      site('rules north-america', 'earthing TT', 'earth-electrode 190 ohm') + at230('residual-current 300 mA'),
    ],
    [
      'the cable carries extra-low voltage',
      european('earthing TT', 'earth-electrode 190 ohm') + cable('carries 4 A at 24 V', 'residual-current 300 mA'),
    ],
    ['it is not said what the cable carries', european('earthing TT', 'earth-electrode 190 ohm') + cable('residual-current 300 mA')],
    ['the electrode was not measured', european('earthing TT') + at230('residual-current 300 mA')],
  ])('is not held against a device where %s', (_, text) => {
    expect(said(rule, text)).toBe('');
    expect(marginsIn(rule, text)).toEqual([]);
  });

  test('without a device is good enough where a breaker trips at once, and that is an ohm for ten amperes', () => {
    // B trips at 5 times its rating: 50 V / (5 · 10 A) = 1 ohm; C at 10 times: 0.5 ohm.
    expect(said(rule, european('earthing TT', 'earth-electrode 1 ohm') + at230('breaker B 10 A'))).toBe('');
    expect(said(rule, european('earthing TT', 'earth-electrode 1.01 ohm') + at230('breaker B 10 A'))).toMatch(
      /^error on line 15, “breaker B 10 A”: [^\n]* at most 1 ohm; this one has 1.01 ohm\.\n/,
    );
    expect(said(rule, european('earthing TT', 'earth-electrode 1 ohm') + at230('breaker C 10 A'))).toMatch(
      /^error on line 15, “breaker C 10 A”: [^\n]* at most 0.5 ohm; this one has 1 ohm\.\n/,
    );
  });

  const unknown = '“mains” is on an earth electrode, and no residual-current device is stated for it.';
  test('that was not measured cannot stand in for a device', () => {
    expect(said(rule, european('earthing TT') + at230('breaker B 10 A'))).toBe(
      `error on line 14, “breaker B 10 A”: ${unknown}\n` +
        '  What to do: Fit a residual-current device and state it with “residual-current 30 mA” or what it is rated for.\n' +
        '  See line 9, “earthing TT”: how the supply is earthed\n',
    );
  });

  test('asks for a device at the feed of a panel, and for none where a cable begins behind something that is not stated', () => {
    const panel = block('panel main : marram-one', 'isolator "beside it"');
    expect(said(rule, european('earthing TT', 'earth-electrode 20 ohm') + panel + at230('feeds main'))).toMatch(
      new RegExp(`^error on line 15, “cable mains”: ${unknown}`),
    );
    const drive = block('leaf west', 'width 2 m') + block('drive ram : birch-ram', 'moves west');
    expect(said(rule, european('earthing TT', 'earth-electrode 20 ohm') + drive + at230('feeds ram'))).toBe('');
    expect(said(rule, european('earthing TT', 'earth-electrode 20 ohm') + at230())).toBe('');
  });

  describe('with a panel between', () => {
    const behind = (feed: readonly string[], own: readonly string[]): string =>
      said(
        rule,
        european('earthing TT', 'earth-electrode 20 ohm') +
          block('leaf west', 'width 2 m') +
          block('drive ram : birch-ram', 'moves west') +
          block('panel main : marram-one', 'isolator "beside it"', 'wire ram to D1 D2') +
          block('cable feed : heron-supply', 'feeds main', 'carries 4 A at 230 V', ...feed) +
          block('cable end : heron-supply', 'feeds ram', 'carries 2 A at 230 V', ...own),
      );
    test('a device before it serves both, and one behind it only its own', () => {
      expect(behind(['residual-current 30 mA'], ['fuse 4 A'])).toBe('');
      expect(behind(['fuse 10 A'], ['residual-current 30 mA'])).toMatch(/^error on line 25, “fuse 10 A”: “feed”[^\n]*\n( {2}[^\n]*\n)*$/);
      // 50 V over 1.9 · 10 A and 2.1 · 4 A: 2.6 and 6.0 ohm.
      expect(behind(['fuse 10 A'], ['fuse 4 A'])).toMatch(/“feed” has no .* 2.632 ohm;(.|\n)*“end” has no .* 5.952 ohm;/);
    });
    test('a line that cannot be read, or a misspelt word, may be the device', () => {
      expect(behind(['residual-current 30'], ['fuse 4 A'])).toBe('');
      expect(behind(['residual-curent 30 mA'], ['fuse 4 A'])).toBe('');
      expect(behind(['residual-current 30 mA'], ['fuse 4 A', 'residual-current 30'])).toBe('');
      expect(behind(['lenght 12 m', 'residual-current 30 mA'], ['fuse 4 A'])).toBe('');
      expect(behind(['fuse 10', 'length 12'], ['fuse 4 A'])).toContain('“end” has no residual-current device, and its fuse');
    });
  });
});

describe('the voltage at the end of a cable', () => {
  const rule = 'voltage-drop-too-great';
  const head = 'language 1\nuse "../library/cables.gate"\nuse "../library/sensors.gate"\nuse "../library/panels.gate"\n';
  const model = (least: string): string => block('sensor-model far-beam', 'kind beam', 'output relay', 'contact normally-closed', least);
  const sensor = (of = 'far-beam'): string => block(`sensor far : ${of}`, 'watches closing');
  const cable = (name: string, ...lines: string[]): string => block(`cable ${name} : heron-signal`, ...lines);
  const long = cable('run', 'feeds far', 'length 60 m', 'carries 0.6 A at 24 V');

  test('is enough where it is exactly what the load needs', () => {
    // 24 − 2 · 0.039 · 60 · 0.6 · (1 + 0.00393 · 50) = 20.640228
    const exact = head + model('least-voltage 20.640228 V') + sensor() + long;
    expect(said(rule, exact)).toBe('');
    expect(marginsIn(rule, exact)).toEqual([['run', 20.6402, 20.6402, true, 'carries 0.6 A at 24 V']]);
    const more = head + model('least-voltage 20.64024 V') + sensor() + long;
    expect(said(rule, more)).toContain('“far” needs 20.64024 V.');
    expect(marginsIn(rule, more)).toEqual([['run', 20.6402, 20.6402, false, 'carries 0.6 A at 24 V']]);
  });

  test('is no margin where nobody says what the load needs, as long as something is left', () => {
    const without = head + model('reach 12 m') + sensor() + long;
    expect(said(rule, without)).toBe('');
    expect(marginsIn(rule, without)).toEqual([]);
  });

  test('may be none at all, whatever the load needs', () => {
    // 2 · 0.039 · 200 · 2 · 1.1965 = 37.3; in cold conductors 31.2.
    const none = head + sensor('finch-relay') + cable('run', 'feeds far', 'length 200 m', 'carries 2 A at 24 V');
    expect(said(rule, none)).toBe(
      'error on line 11, “carries 2 A at 24 V”: “run” loses 37.3 V of 24 V: nothing is left at its end.\n' +
        '  See line 10, “length 200 m”: the length of the run\n' +
        '  See sensors.gate: the least voltage at which it works\n',
    );
    expect(marginsIn(rule, none)).toEqual([['run', -13.3308, 12, false, 'carries 2 A at 24 V']]);
    const unfed = head + cable('run', 'length 200 m', 'carries 2 A at 24 V');
    expect(said(rule, unfed)).toContain('“run” loses 37.3 V of 24 V: nothing is left at its end.');
    expect(marginsIn(rule, unfed)).toEqual([['run', -13.3308, 0, false, 'carries 2 A at 24 V']]);
  });

  describe('behind a panel that is itself fed at extra-low voltage', () => {
    const both = (metres: number, least: string): string =>
      head +
      model(least) +
      sensor() +
      block('panel main : marram-one', 'wire far to S1 S0') +
      cable('feed', 'feeds main', `length ${metres} m`, 'carries 0.6 A at 24 V') +
      cable('run', 'feeds far', `length ${metres} m`, 'carries 0.6 A at 24 V');
    test('lacks what both cables lose', () => {
      // 30 m lose 1.679886 V each, in cold conductors 1.404 V.
      expect(marginsIn(rule, both(30, 'least-voltage 12 V'))).toEqual([['run', 20.6402, 12, true, 'carries 0.6 A at 24 V']]);
    });
    test('is surely too low where both lose too much while they are cold', () => {
      expect(said(rule, both(30, 'least-voltage 21 V'))).toMatch(/^warning on line 25, /);
      expect(said(rule, both(30, 'least-voltage 21.3 V'))).toMatch(/^error on line 25, /);
    });
    test('may be none because of what comes before', () => {
      // 200 m lose 11.2 V each: the first leaves 12.8 V, both leave 1.6 V; 220 m lose 12.3 V each, and 10.3 V while they are cold.
      expect(said(rule, both(220, 'reach 12 m'))).toMatch(
        /^warning on line 25, “carries 0.6 A at 24 V”: “run” loses 24.6 V of 24 V: nothing is left at its end\./,
      );
      expect(said(rule, both(200, 'reach 12 m'))).toBe('');
    });
  });

  describe('on the mains', () => {
    const mains = (metres: number, ...lines: string[]): string =>
      head +
      block('site', 'users limited', 'supply 230 V 50 Hz', ...lines) +
      block('cable mains : heron-supply', `length ${metres} m`, 'carries 6 A at 230 V');
    test('may fall by half a per cent more on a long way in Europe, and not in North America', () => {
      // By the table 0.032 V/(A·m): 120 m lose 23.04 V, that is more than 5.1 % of 230 V (11.73 V) and more than 5 % (11.5 V).
      expect(said(rule, mains(120, 'rules europe'))).toContain('23 V of 230 V are lost, 10 %; 5.1 % may be.');
      expect(said(rule, mains(120, 'rules north-america'))).toContain('23 V of 230 V are lost, 10 %; 5 % may be (from memory).');
      expect(said(rule, mains(120, 'rules europe', 'private-supply'))).toContain(
        '23 V of 230 V are lost, 10 %; 8.1 % may be (from memory).',
      );
      expect(said(rule, mains(120, 'rules north-america', 'private-supply'))).toContain(
        '23 V of 230 V are lost, 10 %; 5 % may be (from memory).',
      );
    });
  });
});
