// Limits that are held as they stand: room for the vehicles that wait, the time for which drives push on, rollers and tail.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const said = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);
const marginsIn = (rule: string, text: string): readonly (readonly [value: number, limit: number, kept: boolean, at: string])[] =>
  marginsOf(judge(text).installation).flatMap((margin) =>
    margin.rule.name === rule ? [[margin.value, margin.limit, margin.kept, text.slice(margin.at.start, margin.at.end)] as const] : [],
  );

describe('room for the vehicles that wait', () => {
  const site = (...lines: string[]): string =>
    `language 1\nsite {\n  rules europe\n  users limited\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  const queue = (...lines: string[]): string => said('queue-reaches-road', site(...lines));

  test('for one vehicle is enough where one is all that comes in 95 % of the time, and a centimetre less is none', () => {
    // ρ = 20 · 30 / 3600 = 1/6; none and one: 5/6 + 5/6 · (e^(1/6) − 1) = 98.4 %.
    expect(queue('traffic 20 /h taking 30 s room 6 m', 'waiting-room 6 m')).toBe('');
    expect(queue('traffic 20 /h taking 30 s room 6 m', 'waiting-room 5.99 m')).toContain(
      'There is room for no vehicle on 5.99 m; for 16.7 % of the busiest hour there are more. Room for one vehicle, 6 m, is enough for 95 % of it.',
    );
  });

  test('for one vehicle is not enough where two are', () => {
    // ρ = 1/3; none and one: 2/3 + 2/3 · (e^(1/3) − 1) = 93.04 %.
    expect(queue('traffic 40 /h taking 30 s room 6 m', 'waiting-room 11 m')).toContain(
      'There is room for one vehicle on 11 m; for 6.96 % of the busiest hour there are more. Room for 2 vehicles, 12 m, is enough for 95 % of it.',
    );
  });

  test('is never enough where the queue is longer than is followed', () => {
    const text = site('traffic 119.9 /h taking 30 s room 6 m', 'waiting-room 300 m');
    expect(said('queue-reaches-road', text)).toContain('There is room for 50 vehicles on 300 m; ');
    expect(said('queue-reaches-road', text)).toContain(' Room for 60 vehicles would still be too little for 95 % of it.');
    expect(marginsIn('queue-reaches-road', text)).toEqual([[Number.POSITIVE_INFINITY, 50, false, 'waiting-room 300 m']]);
  });

  test('is measured by the longest vehicle where nothing else is said', () => {
    expect(marginsIn('queue-reaches-road', site('traffic 40 /h taking 30 s', 'vehicle 5 m at 8 km/h', 'waiting-room 10 m'))).toEqual([
      [2, 2, true, 'waiting-room 10 m'],
    ]);
  });

  test.each([
    ['no room for waiting is stated', ['traffic 40 /h taking 30 s room 6 m']],
    ['nothing is known of the traffic', ['waiting-room 1 m']],
    ['it is not known how much room each takes', ['traffic 40 /h taking 30 s', 'waiting-room 1 m']],
    ['it is not known how long each takes', ['traffic 40 /h room 6 m', 'waiting-room 1 m']],
    ['the queue never ends, which is told elsewhere', ['traffic 130 /h taking 30 s room 6 m', 'waiting-room 1 m']],
  ])('is not held against anything where %s', (_, lines) => {
    expect(queue(...lines)).toBe('');
    expect(marginsIn('queue-reaches-road', site(...lines))).toEqual([]);
  });
});

describe('the seat', () => {
  const motion = (line: string): string => `language 1\nmotion {\n  ${line}\n}\n`;
  test.each([
    ['seat 1 s', ''],
    ['seat 2 s', ''],
    [
      'seat 999 ms',
      'note on line 3, “seat 999 ms”: A seat of 999 ms is shorter than usual practice (1 s to 2 s), and no drive says what its maker allows.\n  Source: common practice, no source\n',
    ],
    [
      'seat 2.01 s',
      'note on line 3, “seat 2.01 s”: A seat of 2.01 s is longer than usual practice (1 s to 2 s), and no drive says what its maker allows.\n  Source: common practice, no source\n',
    ],
    ['speed 80 %', ''],
  ])('%s', (line, expected) => expect(said('seat-outside-practice', motion(line))).toBe(expected));

  test('is held against both ends', () => {
    expect(marginsIn('seat-outside-practice', motion('seat 1.5 s'))).toEqual([
      [1.5, 1, true, 'seat 1.5 s'],
      [1.5, 2, true, 'seat 1.5 s'],
    ]);
  });
  test('is held against what each model allows, and then not against practice', () => {
    const model = (name: string, seat: string): string =>
      `drive-model ${name} {\n  kind direct\n  rotation 110 deg\n  shaft-speed 8 deg/s\n  ${seat}\n}\ndrive ${name}-drive : ${name} {\n  moves west\n}\n`;
    const site = (seat: string, ...models: string[]): string => motion(`seat ${seat}`) + models.join('');
    expect(said('seat-outside-practice', site('3 s', model('slow', 'seat 2 s .. 4 s')))).toBe('');
    expect(said('seat-outside-practice', site('1.5 s', model('slow', 'seat 2 s .. 4 s')))).toContain(
      'warning on line 3, “seat 1.5 s”: A seat of 1.5 s is shorter than “slow” allows (2 s to 4 s).',
    );
    expect(said('seat-outside-practice', site('3 s', model('slow', 'seat 2 s .. 4 s'), model('quick', 'seat 0.5 s .. 1 s')))).toContain(
      'is longer than “quick” allows (0.5 s to 1 s)',
    );
    expect(said('seat-outside-practice', site('3 s', model('mute', '')))).toContain('note on line 3');
  });
});

describe('rollers and tail', () => {
  const leaf = (...lines: string[]): string => `language 1\nleaf slide {\n  width 5 m\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  test('as far apart as the tail is long is near enough, and a millimetre more is not', () => {
    expect(said('rollers-beyond-tail', leaf('slides left 4.8 m', 'tail 2 m', 'roller-spacing 2000 mm'))).toBe('');
    expect(said('rollers-beyond-tail', leaf('slides left 4.8 m', 'tail 2 m', 'roller-spacing 2001 mm'))).toContain(
      'error on line 6, “roller-spacing 2001 mm”: ',
    );
  });

  test.each([
    ['of a leaf that does not slide', ['opens inward 90 deg', 'tail 2 m', 'roller-spacing 2.2 m']],
    ['without a tail', ['slides left 4.8 m', 'roller-spacing 2.2 m']],
    ['that are not stated', ['slides left 4.8 m', 'tail 2 m']],
  ])('rollers %s are not held against anything', (_, lines) => {
    expect(said('rollers-beyond-tail', leaf(...lines))).toBe('');
    expect(marginsIn('rollers-beyond-tail', leaf(...lines))).toEqual([]);
  });
});
