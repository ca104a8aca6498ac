// The busiest hour: how much of it the gate is busy, and what is said where that is more than there is.
import { expect, it } from 'vitest';
import { marginsOf } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const analysis = (traffic: string) => judge(`language 1\n\nsite "Example" {\n  rules europe\n  users limited\n  ${traffic}\n}\n`);
const said = (traffic: string): string[] =>
  analysis(traffic)
    .findings.filter(({ rule }) => rule === 'gate-saturated')
    .map(({ what }) => what);
const share = (traffic: string): number[] =>
  marginsOf(analysis(traffic).installation)
    .filter(({ rule }) => rule.name === 'gate-saturated')
    .map(({ value }) => Math.round(value * 1e6) / 1e6);

it('is full when all of it is taken, and not a vehicle before', () => {
  expect(share('traffic 119 /h taking 30 s')).toEqual([0.991667]);
  expect(said('traffic 119 /h taking 30 s')).toEqual([]);
  expect(share('traffic 120 /h taking 30 s')).toEqual([1]);
  expect(said('traffic 120 /h taking 30 s')).toEqual([
    'In the busiest hour 120 vehicles come, but each keeps the gate busy for 30 s, so that no more than 120 can pass.',
  ]);
  expect(said('traffic 100 /h taking 45 s')).toEqual([
    'In the busiest hour 100 vehicles come, but each keeps the gate busy for 45 s, so that no more than 80 can pass.',
  ]);
});

it.each([
  ['no traffic is stated', ''],
  ['nobody can tell for how long a vehicle keeps the gate busy', 'traffic 120 /h'],
])('is not judged where %s', (_, traffic) => {
  expect(said(traffic)).toEqual([]);
  expect(share(traffic)).toEqual([]);
});
