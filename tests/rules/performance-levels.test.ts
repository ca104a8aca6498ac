// What is said of safety functions that do not reach their level, which part is named, and when parts are due.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, lineOf, saidOf } from '../kit/pages.ts';

const says = (rule: string, text: string, day?: string): string => saidOf(judge(text, undefined, day), ruleNamed(rule) as Rule);

describe('a safety function', () => {
  const rule = 'performance-level-too-low';
  /** Panels with what their makers declare, and a function through all of them. */
  const chain = (declared: readonly string[], asks: string, rules = 'europe'): string =>
    `language 1\nsite {\n  rules ${rules}\n  users public\n}\n${declared.map((lines, i) => `panel-model box-${i + 1} {\n${lines}}\npanel p${i + 1} : box-${i + 1} {\n}\n`).join('')}function stop {\n${asks}  parts ${declared.map((_, i) => `p${i + 1}`).join(' ')}\n}\n`;
  const through = (components: string, asks: string): string => `language 1\nfunction stop {\n${asks}${components}}\n`;
  const what = (text: string): string => judge(text).findings.find((finding) => finding.rule === rule)?.what ?? '';
  const e = '  performance-level e\n  pfhd 20 FIT\n';
  const b = (fit: number): string => `  performance-level b\n  pfhd ${fit} FIT\n`;
  const c = '  performance-level c\n  pfhd 1200 FIT\n';

  test('is held to PL c in Europe, and the part of the lowest level is named wherever it stands', () => {
    const usual = (name: string) => `The function “stop” reaches PL b, but PL c is usual for gates (from memory): “${name}” has PL b.`;
    expect(what(chain([e, b(4000), e], ''))).toBe(usual('p2'));
    expect(what(chain([e, e, b(4000)], ''))).toBe(usual('p3'));
    // The second fails more often, and is of a better level.
    expect(what(chain([b(10), c], ''))).toBe(usual('p1'));
    expect(what(chain([b(4000)], '', 'north-america'))).toBe('');
  });

  test('of two parts of the lowest level the one is named that fails more often', () => {
    const worse = (name: string) => `The function “stop” reaches PL a, but PL c is usual for gates (from memory): “${name}” has PL b.`;
    expect(what(chain([b(4000), b(6500)], ''))).toBe(worse('p2'));
    expect(what(chain([b(6500), b(4000)], ''))).toBe(worse('p1'));
  });

  test('is told of with what of it is from memory', () => {
    const contactors = (lines: string): string =>
      `  subsystem contactors {\n    category 3\n${lines}    component "K1" mttfd 25 years coverage 90 %\n    component "K2" channel second mttfd 25 years coverage 90 %\n  }\n`;
    expect(what(through(contactors('    common-cause 75\n'), '  required-level e\n'))).toBe(
      'The function “stop” reaches PL d (from memory: the table or a limit of the standard), but PL e is required here: “contactors” has PL d.',
    );
    expect(what(through(contactors(''), '  required-level c\n'))).toBe(
      'The function “stop” reaches PL b (from memory: the table or a limit of the standard), but PL c is required here: “contactors” has PL b, because nothing is said against failures by a common cause.',
    );
    // Between b and c only the limit from memory tells.
    expect(what(chain(['  pfhd 5000 FIT\n'], '  required-level c\n'))).toBe(
      'The function “stop” reaches PL b (from memory: the table or a limit of the standard), but PL c is required here: “p1” has PL b.',
    );
  });

  test('surely fails by the part that is declared so low, or else by the one that fails most often', () => {
    expect(what(chain(['  pfhd 2900 FIT\n', b(10)], '  required-level c\n'))).toBe(
      'The function “stop” reaches no more than PL b, but PL c is required here: “p2” is declared as PL b.',
    );
    expect(what(chain(['  performance-level d\n  pfhd 20000 FIT\n'], '  required-level c\n'))).toBe(
      'The function “stop” reaches no more than PL a, but PL c is required here: it fails dangerously at least 2.00e-5 times an hour, by “p1”.',
    );
    expect(what(chain(['  pfhd 8000 FIT\n', '  pfhd 8000 FIT\n'], '  required-level c\n'))).toBe(
      'The function “stop” reaches no more than PL a, but PL c is required here: it fails dangerously at least 1.60e-5 times an hour, mostly by “p1”.',
    );
  });

  test('of a channel of less than three years reaches no level', () => {
    // 1 / (8760 · 2) = 5.71e-5, which is PL a by the number alone.
    expect(what(through('  subsystem board {\n    component "old board" mttfd 2 years\n  }\n', '  required-level c\n'))).toBe(
      'The function “stop” reaches no more than PL a (no performance level when reckoned in full, from memory), but PL c is required here: it fails dangerously at least 5.71e-5 times an hour, by “board”.',
    );
  });

  test('is asked for by the risk: each step of it is one level', () => {
    const levels = {
      'slight seldom avoidable': 'a',
      'slight seldom unavoidable': 'b',
      'slight often avoidable': 'b',
      'serious seldom avoidable': 'c',
      'serious often avoidable': 'd',
      'serious often unavoidable': 'e',
    };
    const asked = (risk: string): string[] =>
      marginsOf(judge(chain([c], `  risk ${risk}\n`)).installation).flatMap(({ rule: own, limit }) =>
        own.name === rule ? [' abcde'.charAt(limit)] : [],
      );
    for (const [risk, level] of Object.entries(levels)) expect(asked(risk), risk).toEqual([level]);
  });

  test('has a margin of whole levels, and none while nothing of it is known', () => {
    const held = (text: string): unknown[] =>
      marginsOf(judge(text).installation)
        .filter((margin) => margin.rule.name === rule)
        .map(({ value, limit, kept }) => [value, limit, kept]);
    expect(held(chain([e], '  required-level c\n'))).toEqual([[5, 3, true]]);
    expect(held(chain([c], '  required-level d\n'))).toEqual([[3, 4, false]]);
    expect(held(chain([''], '  required-level c\n'))).toEqual([]);
    expect(held('language 1\nfunction stop {\n  required-level c\n}\n')).toEqual([]);
  });
});

describe('a part that wears by switching', () => {
  const rule = 'part-due-for-replacement';
  const contactor = (b10d: number, fitted = ''): string =>
    `language 1\nsite {\n  cycles 100 /day\n}\nfunction stop {\n  subsystem contactor {\n    component "K1" b10d ${b10d}${fitted === '' ? '' : ` fitted ${fitted}`}\n  }\n}\n`;

  // 100 cycles a day are 36 500 a year.
  test('is told of where it lasts less than 20 years', () => {
    expect(says(rule, contactor(725_000))).toContain(
      'note on line 7, “component "K1" b10d 725000”: “K1” is to be replaced after 19.9 years of so many cycles, sooner than the 20 years',
    );
    expect(says(rule, contactor(730_000))).toBe('');
  });

  test('is due on the day after its years are over, and not before', () => {
    const due = (b10d: number, fitted: string): string => says(rule, contactor(b10d, fitted), '2026-11-25');
    // 365 000 operations are ten years: 3652.5 days.
    expect(due(365_000, '2016-11-25')).toMatch(/^note /);
    expect(due(365_000, '2016-11-24')).toBe(
      'warning on line 7, “component "K1" b10d 365000 fitted 2016-11-24”: “K1” is to be replaced after 10 years of so many cycles; it has been in use since 2016-11-24.\n',
    );
    // 20 years are 7305 days.
    const old = (since: string) =>
      `: “K1” has served for more than the 20 years for which safety parts are meant (from memory); it has been in use since ${since}.\n`;
    for (const b10d of [730_000, 2_000_000]) {
      expect(due(b10d, '2006-11-25')).toBe('');
      expect(due(b10d, '2006-11-24')).toContain(old('2006-11-24'));
    }
  });

  test('is told of once, however many functions it is part of', () => {
    const text = `language 1\nsite {\n  cycles 100 /day\n}\npanel-model box {\n  b10d 365000\n}\npanel main : box {\n}\nfunction stop {\n  parts main\n}\nfunction release {\n  parts main\n}\n`;
    const analysis = judge(text);
    expect(analysis.findings.filter((finding) => finding.rule === rule).map(({ start }) => lineOf(analysis, start))).toEqual([8]);
  });
});
