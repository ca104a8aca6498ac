// Measured forces: which leaves lack them, which points, and until when they hold.
import { describe, expect, it } from 'vitest';
import { marginsOf } from '../../server/rules/index.ts';
import { judge, lineOf } from '../kit/pages.ts';

const leaf = (name: string, more = ''): string =>
  `leaf ${name} {\n  width 1.5 m\n  height 1.6 m\n  mass 90 kg\n  opens inward 90 deg\n  ${more}\n}\ndrive ${name}-floor : birch-floor {\n  moves ${name}\n}\n`;
const gate = (rules: string, ...parts: readonly string[]): string =>
  `language 1\nuse "../library/drives.gate"\nsite "Example" {\n  rules ${rules}\n  users limited\n}\ncontrol fobs {\n  acts impulse\n}\n${parts.join('')}`;
const reading = (name: string, peak = '300 N'): string =>
  `  force ${name} closing gap 300 mm height 800 mm peak ${peak} after-750-ms 90 N after-5-s 12 N\n`;
const measured = (day: string, ...lines: readonly string[]): string => `measured {\n  ${day}\n  by "KL"\n${lines.join('')}}\n`;
const said = (rule: string, text: string, asOf?: string): string[] => {
  const analysis = judge(text, undefined, asOf);
  return analysis.findings
    .filter((finding) => finding.rule === rule)
    .map(({ start, what }) => `${analysis.text.split('\n')[lineOf(analysis, start) - 1]?.trim()}: ${what}`);
};

describe('leaves of which no force is recorded', () => {
  const rule = 'force-not-measured';
  it('are named, up to four, and counted beyond', () => {
    const names = ['one', 'two', 'three', 'four', 'five', 'six'];
    const of = (count: number): string[] => said(rule, gate('europe', ...names.slice(0, count).map((name) => leaf(name))));
    expect(of(1)).toEqual(['leaf one {: No force is recorded for “one”.']);
    expect(of(2)).toEqual(['leaf one {: No force is recorded for “one” and “two”.']);
    expect(of(4)).toEqual(['leaf one {: No force is recorded for “one”, “two”, “three” and “four”.']);
    expect(of(6)).toEqual(['leaf one {: No force is recorded for “one”, “two”, “three”, “four” and 2 more.']);
  });
  it('are those without records, all of them pointed to', () => {
    const text = gate('europe', leaf('one'), leaf('two'), leaf('three'), measured('on 2026-05-14', reading('one')));
    expect(said(rule, text)).toEqual(['leaf two {: No force is recorded for “two” and “three”.']);
    expect(
      judge(text)
        .findings.find((finding) => finding.rule === rule)
        ?.related.map(({ message }) => message),
    ).toEqual(['nor for this leaf']);
  });
  it('are not asked for under other rules, nor where nothing drives them', () => {
    expect(said(rule, gate('north-america', leaf('one')))).toEqual([]);
    expect(said(rule, gate('europe', leaf('one').replace(/drive[^]*/, '')))).toEqual([]);
  });
});

describe('the day of the last records', () => {
  const rule = 'force-test-overdue';
  it('is good for a year, to the day, and not before it has come', () => {
    const text = gate('europe', leaf('west'), measured('on 2026-05-14', reading('west')));
    expect(said(rule, text, '2026-05-13')).toEqual([
      'on 2026-05-14: The forces of “west” are dated 2026-05-14, which is after the day of this verdict, 2026-05-13.',
    ]);
    expect(said(rule, text, '2026-05-14')).toEqual([]);
    expect(said(rule, text, '2027-05-14')).toEqual([]);
    expect(said(rule, text, '2027-05-15')).toEqual([
      'on 2026-05-14: The forces of “west” were last measured on 2026-05-14; they were due again by 2027-05-14.',
    ]);
  });
  it('is the last one, and its own line is shown', () => {
    const text = gate(
      'europe',
      leaf('west'),
      measured('instrument "gauge"', reading('west')),
      measured('on 2024-03-01', reading('west')),
      measured('on 2025-03-01', reading('west')),
    );
    expect(said(rule, text)).toEqual([
      'on 2025-03-01: The forces of “west” were last measured on 2025-03-01; they were due again by 2026-03-01.',
    ]);
  });
  it('is not asked for where there are no records, no day, or no need of them', () => {
    expect(said(rule, gate('europe', leaf('west')))).toEqual([]);
    expect(said(rule, gate('europe', leaf('west'), measured('instrument "gauge"', reading('west'))))).toEqual([]);
    expect(said(rule, gate('north-america', leaf('west'), measured('on 2020-01-01', reading('west'))))).toEqual([]);
  });
});

describe('the points at which forces are measured', () => {
  const rule = 'force-points-missing';
  it('are asked for only where something is measured and the height of the leaf is known', () => {
    expect(said(rule, gate('europe', leaf('west')))).toEqual([]);
    expect(said(rule, gate('north-america', leaf('west'), measured('on 2026-05-14', reading('west'))))).toEqual([]);
    expect(said(rule, gate('europe', leaf('west').replace('height 1.6 m', ''), measured('on 2026-05-14', reading('west'))))).toEqual([
      'leaf west {: The height of “west” is not stated, so nobody can say at which heights its forces are to be measured.',
    ]);
  });
});

describe('forces over their limits', () => {
  const rule = 'force-over-limit';
  it('are held for every leaf that has records, at the line of the first', () => {
    const text = gate('europe', leaf('west'), leaf('east'), measured('on 2026-05-14', reading('east', '401 N'), reading('east', '380 N')));
    expect(said(rule, text)).toEqual([
      'force east closing gap 300 mm height 800 mm peak 401 N after-750-ms 90 N after-5-s 12 N: “east” closing, at a gap of 300 mm and 800 mm up, has a peak of 401 N where 400 N are allowed (the worse of two readings).',
    ]);
    const margins = (of: string): unknown[] =>
      marginsOf(judge(of).installation)
        .filter((margin) => margin.rule.name === rule)
        .map(({ subject, value, limit }) => [subject, value, limit]);
    expect(margins(text)).toEqual([['east', 401, 400]]);
    expect(margins(text.replace('rules europe', 'rules north-america'))).toEqual([]);
  });
});
