// What is said of breakers, fuses and the protective conductors of cables: at their limits, and where something is not stated.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const says = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const margins = (name: string, text: string) => marginsOf(judge(text).installation).filter(({ rule }) => rule.name === name);

const site = (rules: string): string =>
  `site "Yard" {\n  rules ${rules}\n  users limited\n  supply 230 V 50 Hz\n  earthing TN\n  external-impedance 0.2 ohm\n}\n`;

describe('a cable without a protective conductor', () => {
  const fed = (
    model: string,
    { rules = 'europe', volts = '230 V', terminals = '  terminal P1 supply-in\n  terminal PE earth\n', feeds = '  feeds box\n' } = {},
  ): string =>
    `language 1\n${site(rules)}cable-model plover {\n  area 1.5 mm2\n${model}}\npanel-model sedge {\n${terminals}}\npanel box : sedge {\n}\ncable mains : plover {\n${feeds}  carries 4 A at ${volts}\n}\n`;
  const rule = 'protective-conductor-too-small';

  test('is told of whatever it feeds, unless that is said to need none', () => {
    expect(
      says(rule, fed('  cores 2\n')),
    ).toBe(`error on line 19, “plover”: “mains” has 2 cores and no protective conductor; that “box” needs none (“double-insulated”) is not stated.
  What to do: Choose a cable with a protective conductor, or state the size of the one beside it with “protective-conductor” in the model.
  See line 11, “cores 2”: the cores of the cable\n`);
    expect(says(rule, fed('  cores 1\n'))).toContain('“mains” has one core and no protective conductor');
    for (const other of [{ terminals: '' }, { terminals: '  terminal P1 supply-in\n' }, { feeds: '' }, { volts: '400 V' }])
      expect(says(rule, fed('  cores 2\n', other)), JSON.stringify(other)).toMatch(/^error on line 1\d, “plover”: “mains” has 2 cores/);
    expect(says(rule, fed('  cores 2\n').replace('panel box : sedge', 'panel box'))).toMatch(/^error/);
    expect(says(rule, fed('  cores 2\n').replace('panel box : sedge {\n}', 'control box {\n}'))).toMatch(/^error/);
  });

  test('is sound where it has one, needs none, or cannot be told', () => {
    // A flat cable has one, of a size that is not stated.
    for (const model of [
      '  cores 2\n  kind flat\n',
      '  cores 3\n  kind flat\n',
      '  cores 4\n  kind flat\n',
      '  cores 3\n',
      '  cores 2\n  protective-conductor 1.5 mm2\n',
      '',
    ])
      expect(says(rule, fed(model)), model).toBe('');
    for (const other of [{ volts: '24 V' }, { volts: '50 V' }, { rules: 'north-america' }, { terminals: '  double-insulated\n' }])
      expect(says(rule, fed('  cores 2\n', other)), JSON.stringify(other)).toBe('');
  });
});

describe('a protective conductor', () => {
  const cable = (size: string, rules = 'europe', breaker = '  breaker B 10 A\n'): string =>
    `language 1\n${site(rules)}cable-model plover {\n  area 4 mm2\n  class 2\n  cores 3\n  protective-conductor ${size} mm2\n}\ncable mains : plover {\n  length 2 m\n  carries 4 A at 230 V\n${breaker}}\n`;
  const rule = 'protective-conductor-too-small';

  // 4 mm² has 4.61 ohm/km and 2.5 mm² 7.41 ohm/km at 20 °C, 1.1965 times as much at 70 °C: 0.2 + 0.01103 + 0.01773 = 0.2288 ohm,
  // 1005 A, and √(1005² · 0.1)/115 = 2.76 mm².
  test('is held against what the fault asks of it', () => {
    expect(says(rule, cable('2.5'))).toBe(
      'warning on line 18, “breaker B 10 A”: The protective conductor of “mains” has 2.5 mm²; the 1005 A of a fault need 2.76 mm² until the breaker has tripped (0.1 s, from memory).\n' +
        '  Why: In a fault it burns through before the breaker has cut off, and the metal it should hold at earth is live.\n' +
        '  Source: BS 7671, 543.1.3 and Table 54.3; the 0.1 s of the breaker from memory\n',
    );
    expect(says(rule, cable('4'))).toBe('');
    const [kept, ...more] = margins(rule, cable('4'));
    expect(more).toEqual([]);
    expect(kept?.kept).toBe(true);
    expect(kept?.value).toBeCloseTo(4e-6, 12);
    expect(kept?.limit).toBeCloseTo(2.848e-6, 9);
  });

  test('is not held against anything in North America, or without a breaker', () => {
    expect(margins(rule, cable('2.5', 'north-america'))).toEqual([]);
    expect(margins(rule, cable('2.5', 'europe', ''))).toEqual([]);
  });
});

describe('breakers and fuses', () => {
  const cable = (lines: string): string =>
    `language 1\n${site('europe')}cable-model plover {\n  area 1.5 mm2\n  class 2\n  cores 3\n}\ncable mains : plover {\n  length 20 m\n  carries 4 A at 230 V\n${lines}}\n`;

  test('the earth fault loop is held against a breaker, a fuse and a residual-current device', () => {
    expect(margins('loop-impedance-too-high', cable('  breaker B 10 A\n'))).toHaveLength(1);
    expect(margins('loop-impedance-too-high', cable('  fuse 10 A\n'))).toHaveLength(1);
    expect(margins('loop-impedance-too-high', cable('  residual-current 30 mA\n'))).toHaveLength(1);
    expect(margins('loop-impedance-too-high', cable(''))).toEqual([]);
  });

  test('a mains circuit has one of the two', () => {
    const rule = 'mains-circuit-unprotected';
    expect(says(rule, cable(''))).toBe(
      'error on line 16, “carries 4 A at 230 V”: “mains” is on the mains and has neither a breaker nor a fuse.\n',
    );
    for (const line of ['breaker B 10 A', 'fuse 10 A', 'breaker B 10', 'fuse', 'brekaer B 10 A'])
      expect(says(rule, cable(`  ${line}\n`)), line).toBe('');
    expect(says(rule, cable('  residual-current 30 mA\n'))).toMatch(/^warning/);
    for (const volts of ['24 V', '50 V']) expect(says(rule, cable('').replace('230 V\n}', `${volts}\n}`)), volts).toBe('');
    expect(says(rule, cable('').replace('230 V\n}', '51 V\n}'))).toMatch(/^error/);
    const elsewhere: readonly (readonly [string, string])[] = [
      ['europe', 'north-america'],
      ['earthing TN', 'earthing TT'],
      ['  earthing TN\n', ''],
    ];
    for (const [here, there] of elsewhere) expect(says(rule, cable('').replace(here, there)), there).toMatch(/^error/);
  });

  test('of two devices in a row the smaller one is held against what the cable bears', () => {
    expect(margins('protection-over-cable-rating', cable('  breaker B 10 A\n  fuse 63 A\n  method C\n')).map(({ value }) => value)).toEqual(
      [10],
    );
    expect(margins('protection-over-cable-rating', cable('  breaker B 63 A\n  fuse 10 A\n  method C\n')).map(({ value }) => value)).toEqual(
      [10],
    );
  });

  test('what a cable bears is held against its breaker or its fuse, where there is one', () => {
    for (const device of ['breaker B 10 A', 'fuse 10 A'])
      expect(
        margins('protection-over-cable-rating', cable(`  ${device}\n  method C\n`)).map(({ value, limit }) => [value, limit]),
        device,
      ).toEqual([[10, 19.5]]);
    expect(margins('protection-over-cable-rating', cable('  method C\n'))).toEqual([]);
    expect(margins('protection-over-cable-rating', cable('  fuse 10 A\n'))).toEqual([]);
  });

  test('what a cable carries is held against its breaker or its fuse, where both are stated', () => {
    for (const device of ['breaker B 10 A', 'fuse 10 A'])
      expect(
        margins('protection-below-load', cable(`  ${device}\n`)).map(({ value, limit, kept }) => [value, limit, kept]),
        device,
      ).toEqual([[4, 10, true]]);
    expect(margins('protection-below-load', cable(''))).toEqual([]);
    expect(margins('protection-below-load', cable('  fuse 10 A\n').replace('  carries 4 A at 230 V\n', ''))).toEqual([]);
  });
});
