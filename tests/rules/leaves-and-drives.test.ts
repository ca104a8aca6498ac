// What is said of leaves, the drives that move them and the order in which they start: at the limits, and where something is not stated.
import { describe, expect, test } from 'vitest';
import { type Finding, marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, lineOf, saidOf } from '../kit/pages.ts';

const says = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const found = (rule: string, text: string): Finding[] => judge(text).findings.filter((finding) => finding.rule === rule);
const lines = (rule: string, text: string): number[] => {
  const analysis = judge(text);
  return analysis.findings.filter((finding) => finding.rule === rule).map((finding) => lineOf(analysis, finding.start));
};
const margins = (name: string, text: string) => marginsOf(judge(text).installation).filter(({ rule }) => rule.name === name);

const leaf = (name: string, more = ''): string => `leaf ${name} {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n${more}}\n`;
const drive = (name: string, moves: string, model = 'birch-arm'): string => `drive ${name} : ${model} {\n  moves ${moves}\n}\n`;
const drives = 'language 1\nuse "../library/drives.gate"\n';

describe('which drive moves which leaf', () => {
  test('every further drive of a leaf is told of, with the first one', () => {
    expect(
      says('leaf-driven-twice', drives + leaf('west') + drive('a', 'west') + drive('b', 'west') + drive('c', 'west')),
    ).toBe(`warning on line 12, “west”: “b” moves “west”, which “a” moves already.
  See line 9, “moves west”: the first drive of this leaf
warning on line 15, “west”: “c” moves “west”, which “a” moves already.
  See line 9, “moves west”: the first drive of this leaf\n`);
    expect(says('leaf-driven-twice', drives + leaf('west') + drive('a', 'west') + drive('a', 'west'))).toBe('');
  });

  test('a leaf without a drive is told of where others have one, with four of those', () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const text = drives + leaf('north') + names.map((name) => leaf(name) + drive(`${name}-arm`, name)).join('');
    expect(found('leaf-without-drive', text).map(({ what, related }) => [what, related.map(({ message }) => message)])).toEqual([
      ['No drive moves “north”.', ['moves “a”', 'moves “b”', 'moves “c”', 'moves “d”']],
    ]);
    expect(lines('leaf-without-drive', drives + leaf('north') + leaf('south') + leaf('a') + drive('arm', 'a'))).toEqual([3, 8]);
  });

  test('a leaf without a drive is none where its drive may be the one that is not plain', () => {
    const pair = drives + leaf('west') + leaf('east');
    expect(says('leaf-without-drive', pair)).toBe('');
    expect(says('leaf-without-drive', pair + drive('a', 'west') + drive('b', 'esat'))).toBe('');
    expect(says('leaf-without-drive', pair + drive('a', 'west') + 'drive b : birch-arm {\n}\n')).toBe('');
    expect(says('leaf-without-drive', pair + drive('a', 'west') + 'drvie b : birch-arm {\n  moves east\n}\n')).toBe('');
    expect(says('leaf-without-drive', pair + drive('a', 'west') + drive('b', 'east') + leaf('east'))).toBe('');
  });
});

describe('what a drive is made for', () => {
  const rule = 'leaf-over-drive-rating';
  const gate = (limits: string, facts = '  width 3 m\n  mass 300 kg\n'): string =>
    `language 1\ndrive-model ram {\n${limits}}\nleaf west {\n${facts}}\n${drive('arm', 'west', 'ram')}`;
  const held = (text: string): unknown[] =>
    margins(rule, text).map(({ held, subject, value, limit, kept }) => [held.name, subject, value, limit, kept]);

  test('is held against what is stated of the leaf, each by itself', () => {
    expect(held(gate('  widest-leaf 3 m\n  heaviest-leaf 290 kg\n'))).toEqual([
      ['width for its drive', 'west', 3, 3, true],
      ['mass for its drive', 'west', 300, 290, false],
    ]);
    expect(held(gate('  widest-leaf 2.9 m\n'))).toEqual([['width for its drive', 'west', 3, 2.9, false]]);
    expect(held(gate('  heaviest-leaf 300 kg\n'))).toEqual([['mass for its drive', 'west', 300, 300, true]]);
    expect(held(gate('  widest-leaf 3 m\n  heaviest-leaf 290 kg\n', '  mass 300 kg\n'))).toEqual([
      ['mass for its drive', 'west', 300, 290, false],
    ]);
    expect(held(gate(''))).toEqual([]);
    expect(held(gate('  widest-leaf 2 m\n').replace('leaf west', 'leaf east'))).toEqual([]);
    expect(held(gate('  widest-leaf 2 m\n').replace(': ram', ''))).toEqual([]);
  });

  test('is told with the line in the model, in the same file too', () => {
    expect(
      says(rule, gate('  heaviest-leaf 290 kg\n')),
    ).toBe(`error on line 7, “mass 300 kg”: “west” weighs 300 kg, more than the 290 kg that its drive “arm” (ram) is made for.
  See line 9, “drive arm”: the drive
  See line 10, “moves west”: moves this leaf
  See line 3, “heaviest-leaf 290 kg”: the most that its maker allows\n`);
  });
});

test('how a drive is released is not asked where the line that says it cannot be read', () => {
  expect(says('manual-release-not-stated', drives + leaf('west') + drive('a', 'west'))).toContain('It is not stated how “a” is released');
  expect(says('manual-release-not-stated', `${drives}${leaf('west')}drive a : birch-arm {\n  moves west\n  release crowbar\n}\n`)).toBe('');
});

describe('a leaf that nothing drives', () => {
  test('may fall shut, and may open against a wall: nobody stands there unaware', () => {
    const tilted = leaf('west', '  hinge-tilt 2 deg lowest closed\n  room-when-open 300 mm\n');
    expect(says('leaf-moves-when-released', drives + tilted)).toBe('');
    expect(says('open-leaf-crushes', drives + tilted)).toBe('');
    expect(lines('leaf-moves-when-released', drives + tilted + drive('a', 'west'))).toEqual([7]);
    expect(lines('open-leaf-crushes', drives + tilted + drive('a', 'west'))).toEqual([8]);
  });
});

describe('an edge behind an opening leaf', () => {
  const gate = (sensor: string, wire: string): string =>
    `${drives}use "../library/panels.gate"\nuse "../library/sensors.gate"\nsensor-model dumb {\n  kind edge\n  output resistive\n}\nsite {\n  rules europe\n  users public\n}\n${leaf('west', '  room-when-open 350 mm\n')}${drive('a', 'west', 'birch-floor')}${sensor}panel main : rowan-pair {\n${wire}}\n`;
  const wired = '  wire strip to E2 E0\n';
  const edge = (model: string, watches = 'opening', on = 'west opening-edge'): string =>
    `sensor strip : ${model} {\n  watches ${watches}\n  on ${on}\n  terminator 8.2 kohm\n}\n`;

  test('protects where it is wired, watches the opening and claims to limit the force', () => {
    expect(says('open-leaf-crushes', gate(edge('finch-edge'), wired))).toBe('');
    const alone =
      'error on line 17, “room-when-open 350 mm”: “west” opens to within 350 mm of something fixed, which crushes a body; nothing there limits the force or keeps the leaf off a person.\n';
    expect(says('open-leaf-crushes', gate(edge('finch-edge'), ''))).toBe(alone);
    expect(says('open-leaf-crushes', gate(edge('dumb'), wired))).toBe(alone);
    expect(says('open-leaf-crushes', gate(edge('finch-edge', 'closing'), wired))).toBe(alone);
    expect(says('open-leaf-crushes', gate(edge('finch-edge', 'opening', 'west closing-edge'), wired))).toBe(alone);
    expect(says('open-leaf-crushes', gate(edge('finch-edge', 'opening', 'west hinge-edge'), wired))).toBe(alone);
  });

  test('a beam there is named only where it sees who stands in the way', () => {
    const beam = (watches: string, wire: string): string[] =>
      found('open-leaf-crushes', gate(`sensor eye : finch-beam {\n  watches ${watches}\n}\n`, wire)).flatMap(({ related }) =>
        related.map(({ message }) => message),
      );
    const wire = '  wire eye to T1 T0\n  registered eye\n';
    expect(beam('opening', wire)).toEqual(['“eye” sees who stands in the way, which only adds to force limitation']);
    expect(beam('closing', wire)).toEqual([]);
    expect(beam('opening', '')).toEqual([]);
  });
});

describe('the axis of a leaf in North America', () => {
  const gate = (gap: string, { rules = 'north-america', opens = 'opens inward 90 deg', more = '', moves = 'west' } = {}): string =>
    `${drives}site {\n  rules ${rules}\n  users public\n}\nleaf west {\n  width 2 m\n  mass 150 kg\n  ${opens}\n  hinge-gap ${gap}\n  hinge-offset 3 in by 1 in\n${more}}\n${drive('a', moves)}`;
  const held = (text: string): number[] => margins('pivot-gap-too-wide', text).map(({ value }) => Math.round(value * 1e4) / 10);

  test('is up to 4 in from its post', () => {
    expect(lines('pivot-gap-too-wide', gate('7 in'))).toEqual([]);
    expect(lines('pivot-gap-too-wide', gate('7.01 in'))).toEqual([11]);
    expect(held(gate('7 in'))).toEqual([101.6]);
  });

  test('is not held where it is guarded, where the leaf slides or nothing moves it, or elsewhere', () => {
    for (const other of [{ rules: 'europe' }, { opens: 'slides left 2 m' }, { more: '  hinge-guard 350 mm\n' }, { moves: 'north' }])
      expect(held(gate('9 in', other)), JSON.stringify(other)).toEqual([]);
  });
});

describe('leaves that overlap', () => {
  const gate = (motion: string, more = ''): string =>
    `language 1\n${leaf('west', '  closes onto east overlap 40 mm gap 20 mm\n')}${leaf('east')}${more}motion {\n${motion}}\n`;
  const order = (motion: string, more = ''): string[] => found('order-against-overlap', gate(motion, more)).map(({ what }) => what);

  test('start in the order that the overlap asks for, alone or among others', () => {
    for (const right of [
      'opening west east',
      'opening west',
      'closing east west',
      'closing east',
      'opening north west east',
      'opening west north east',
      'opening north west',
      'opening north east',
    ])
      expect(order(`  order ${right}\n`, leaf('north')), right).toEqual([]);
    const opening = '“east” is to start first when opening, but “west” covers “east”, so “west” must start first.';
    const closing = '“west” is to start first when closing, but “west” covers “east”, so “east” must start first.';
    for (const wrong of ['opening east west', 'opening east', 'opening east north west'])
      expect(order(`  order ${wrong}\n`, leaf('north')), wrong).toEqual([opening]);
    for (const wrong of ['closing west east', 'closing west']) expect(order(`  order ${wrong}\n`), wrong).toEqual([closing]);
    expect(order('  order closing north west east\n', leaf('north'))).toEqual([
      '“west” is to start before “east” when closing, but “west” covers “east”, so “east” must start first.',
    ]);
  });

  test('are told of once where the closing order is not the opening order backwards', () => {
    expect(order('  order opening west east\n  order closing west east\n')).toEqual([]);
    expect(order('  order closing west east\n  order opening west east\n')).toEqual([]);
    // It has a leaf more, or stands in another order from the second leaf on: not backwards either.
    expect(order('  order opening east west\n  order closing west east north\n', leaf('north'))).toHaveLength(1);
    expect(order('  order opening east west\n  order closing north west east\n', leaf('north'))).toHaveLength(1);
    expect(order('  order opening north east west\n  order closing west north east\n', leaf('north'))).toHaveLength(1);
    expect(order('  order opening east west\n  order closing west east\n')).toHaveLength(2);
    expect(order('  order opening north east west\n  order closing west east north\n', leaf('north'))).toHaveLength(2);
    expect(order('  order opening north east\n  order closing east\n', leaf('north'))).toEqual([]);
  });

  test('are each held to their order, where there are two pairs', () => {
    const south = leaf('south', '  closes onto north overlap 40 mm gap 20 mm\n') + leaf('north');
    expect(order('  order opening west east north south\n', south)).toEqual([
      '“north” is to start before “south” when opening, but “south” covers “north”, so “south” must start first.',
    ]);
  });

  test('a lag is one only where it is more than nothing', () => {
    const loose = (lag: string): number[] => lines('lag-without-overlap', `language 1\n${leaf('west')}motion {\n  lag ${lag}\n}\n`);
    expect(loose('opening 0.1 s')).toEqual([8]);
    expect(loose('closing 0 s')).toEqual([]);
  });
});

describe('the instrument that forces were measured with', () => {
  const force = '  force west closing gap 300 mm height 800 mm peak 300 N after-750-ms 90 N after-5-s 12 N\n';
  const measured = (instrument: string, forces = force): string =>
    says('instrument-out-of-calibration', `language 1\n${leaf('west')}measured {\n  on 2026-02-02\n${instrument}${forces}}\n`);

  test('counts with what was measured, on the day of its calibration and a year on', () => {
    for (const day of ['2026-02-02', '2025-02-02']) expect(measured(`  instrument "gauge" calibrated ${day}\n`), day).toBe('');
    expect(measured('  instrument "gauge" calibrated 2025-02-01\n')).toContain('was good until 2026-02-01');
    expect(measured('  instrument "gauge" calibrated 2026-02-03\n')).toContain('after it was measured with on 2026-02-02');
    expect(measured('  instrument "gauge" calibrated 2025-02-01\n', '')).toBe('');
  });

  test('is not asked for where its line cannot be read', () => {
    expect(measured('')).not.toBe('');
    expect(measured('  instrument 5 V\n')).toBe('');
    expect(measured('  instrument "gauge" calibrated 2025-02-01\n  instrument 5 V\n')).toContain('was good until 2026-02-01');
  });
});
