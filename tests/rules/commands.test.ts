// How the gate is commanded: whether anything does, how near a fixed control is, and how long the gate waits before it closes.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
const said = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const marginsIn = (rule: string, text: string) => marginsOf(judge(text).installation).filter((margin) => margin.rule.name === rule);

describe('a gate that nothing commands', () => {
  const rule = 'control-missing';
  const drive = 'drive west-arm : birch-arm {\n  moves west\n}\n';
  const panel = (name: string, wire = 'link C2 C0'): string => `panel ${name} : marram-one {\n  ${wire}\n}\n`;
  const loop = 'sensor exit-loop : finch-loop {\n  watches opening\n}\n';
  test('shows four panels at most', () => {
    expect(
      said(rule, head + drive + ['a', 'b', 'c', 'd', 'e'].map((name) => panel(name)).join('')).match(/the panel that would be commanded/g),
    ).toHaveLength(4);
  });
  test('is told of a drive without a name', () => {
    expect(said(rule, `${head}drive : birch-arm {\n  moves west\n}\n`)).toContain(
      ': A drive moves the gate, and nothing in the file commands it.\n',
    );
    expect(said(rule, `${head}drive : birch-arm {\n  moves west\n}\n${drive}`)).toContain(
      ': “west-arm” moves the gate, and nothing in the file commands it.\n',
    );
  });
  test('is not told where a loop on any of its panels commands it', () => {
    expect(said(rule, head + drive + loop + panel('a') + panel('b', 'wire exit-loop to C1 C0'))).toBe('');
    expect(said(rule, head + drive + loop + panel('a', 'wire exit-loop to C1 C0') + panel('b'))).toBe('');
    expect(said(rule, head + drive + loop + panel('a') + panel('b', 'wire exit-loop to S1 S0'))).not.toBe('');
  });
  test('is not told where the terminal of a sensor cannot be found: it may be the very one', () => {
    expect(said(rule, head + drive + loop + panel('a', 'wire exit-loop to C7 C0'))).toBe('');
    expect(said(rule, head + drive + loop + panel('a', 'wire exit-loop to C1 C0').replace('marram-one', 'marram-two'))).toBe('');
    expect(said(rule, head + drive + panel('a', 'wire west-arm to D7 D2'))).not.toBe('');
  });
  test('is not told where a line of its motion cannot be read: it may be the dwell', () => {
    expect(said(rule, `${head}${drive}motion {\n  dwell 20\n}\n`)).toBe('');
    expect(said(rule, `${head}${drive}motion {\n  speed 80 %\n}\n`)).not.toBe('');
  });
});

describe('a control within reach', () => {
  const rule = 'control-within-reach';
  const site = (lines: string, rules = 'north-america'): string =>
    `${head}site "Example" {\n  rules ${rules}\n  users public\n}\ncontrol way {\n${lines}  acts impulse\n}\n`;
  test.each([
    ['push-button', true],
    ['key-switch', true],
    ['keypad', true],
    ['intercom', true],
    ['transmitter', false],
    ['loop', false],
    ['clock', false],
  ])('%s', (by, isFixed) => {
    const text = site(`  by ${by}\n  reach 1.8 m\n`);
    expect(said(rule, text)).toBe(
      isFixed
        ? 'warning on line 11, “reach 1.8 m”: “way” is 1800 mm from the moving gate; it should be 1829 mm (6 ft) away (from memory).\n'
        : '',
    );
    expect(marginsIn(rule, text).map(({ kept, limit }) => [kept, limit])).toEqual(isFixed ? [[false, 6 * 0.3048]] : []);
  });
  test('of 6 ft, in feet or in metres, is far enough', () => {
    expect(said(rule, site('  by keypad\n  reach 6 ft\n'))).toBe('');
    expect(said(rule, site('  by keypad\n  reach 1.8288 m\n'))).toBe('');
    expect(said(rule, site('  by keypad\n  reach 1828 mm\n'))).not.toBe('');
    expect(
      marginsIn(rule, site('  by keypad\n  reach 2 m\n')).map(({ held, subject, value, kept }) => [held.name, subject, value, kept]),
    ).toEqual([['distance from the gate', 'way', 2, true]]);
  });
  test('is not judged elsewhere, nor where no distance is stated', () => {
    expect(said(rule, site('  by keypad\n  reach 1 m\n', 'europe'))).toBe('');
    expect(marginsIn(rule, site('  by keypad\n  reach 1 m\n', 'europe'))).toEqual([]);
    expect(said(rule, site('  by keypad\n'))).toBe('');
    expect(marginsIn(rule, site('  by keypad\n'))).toEqual([]);
  });
});

describe('the dwell', () => {
  const rule = 'dwell-shorter-than-clearance';
  const site = (vehicle: string, dwell: string, clearance = ''): string =>
    `${head}site "Example" {\n  rules europe\n  users limited\n${vehicle}${clearance}}\nmotion {\n${dwell}}\n`;
  test('of just the time that the vehicle takes is enough, however it is reckoned', () => {
    const lengths = Array.from({ length: 30 }, (_, i) => 4 + i / 2);
    // At 3.6 km/h a metre takes a second; at 6 km/h 0.6 s; at 12 km/h 0.3 s.
    for (const [speed, perMetre] of [
      [3.6, 10],
      [6, 6],
      [12, 3],
    ] as const)
      for (const length of lengths) {
        const tenths = (length + 2) * perMetre;
        const text = (less: number): string =>
          site(`  vehicle ${length} m at ${speed} km/h\n`, `  dwell ${((tenths * 10 - less) / 100).toFixed(2)} s\n`, '  clearance 2 m\n');
        expect(said(rule, text(0)), `${length} m at ${speed} km/h`).toBe('');
        expect(said(rule, text(1)), `${length} m at ${speed} km/h`).toContain(`takes ${tenths / 10} s to be clear of it.`);
      }
  });
  test('of the time that was asked for is enough, though the reckoning has a digit more', () => {
    // 18.1 m at 3 km/h: 21.72 s, and 21.720000000000002 s for a machine.
    const text = site('  vehicle 14.1 m at 3 km/h\n', '  dwell 21.72 s\n', '  clearance 4 m\n');
    expect(said(rule, text)).toBe('');
    expect(said(rule, text.replace('21.72', '21.71'))).toContain(
      'The gate closes 21.7 s after it is open, but the longest vehicle takes 21.72 s to be clear of it.',
    );
  });
  test('is a margin on its line, kept or not', () => {
    const text = site('  vehicle 12 m at 6 km/h\n', '  dwell 9 s\n', '  clearance 2 m\n');
    const [margin] = marginsIn(rule, text);
    expect([
      margin?.held.name,
      margin?.subject,
      margin?.value,
      margin?.limit.toFixed(9),
      margin?.kept,
      text.slice(margin?.at.start, margin?.at.end),
    ]).toEqual(['dwell', '', 9, '8.400000000', true, 'dwell 9 s']);
    expect(marginsIn(rule, text.replace('dwell 9 s', 'dwell 8 s')).map(({ kept }) => kept)).toEqual([false]);
  });
  test.each([
    ['no vehicle is stated', site('', '  dwell 1 s\n')],
    ['it does not close by itself', site('  vehicle 12 m at 6 km/h\n', '  speed 80 %\n')],
    ['there is no motion', site('  vehicle 12 m at 6 km/h\n', '  dwell 1 s\n').replace(/motion[^]*/, '')],
    ['there is no site', `${head}motion {\n  dwell 1 s\n}\n`],
  ])('is held against nothing where %s', (_, text) => {
    expect(said(rule, text)).toBe('');
    expect(marginsIn(rule, text)).toEqual([]);
  });
});
