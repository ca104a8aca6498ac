// Minimum gaps against crushing: EN ISO 13854 (EN 349), as published in the AUVA glossary "Safety Distances", millimetres.
import { expect, it } from 'vitest';
import { type BodyPart, crushed, leastGap } from '../../server/figures/hazards/gaps.ts';

const published: Readonly<Record<BodyPart, number>> = {
  body: 500,
  head: 300,
  leg: 180,
  foot: 120,
  toes: 50,
  arm: 120,
  hand: 100,
  finger: 25,
};

it('holds the published gap for every part of the body', () => {
  expect(Object.fromEntries(Object.entries(leastGap).map(([part, gap]) => [part, Math.round(gap * 1000)]))).toEqual(published);
});

it.each([
  [501, []],
  [500, []],
  [499, ['body']],
  [299, ['body', 'head']],
  [119, ['body', 'head', 'leg', 'foot', 'arm']],
  [0, ['body', 'head', 'leg', 'foot', 'toes', 'arm', 'hand', 'finger']],
])('a gap that shrinks to %i mm crushes %j', (millimetres, parts) => {
  expect(crushed(millimetres / 1000)).toEqual(parts);
});
