// How far a drive in the hinge turns, and whether an arm fits at all; how far a ram goes is the business of other rules.
import { expect, test } from 'vitest';
import { marginsOf } from '../../server/rules/index.ts';
import { judge } from '../kit/pages.ts';

const floor = ['moves west'];
const arm = (bracket: string) => ['moves west', 'shaft 180 mm by 220 mm', `leaf-bracket ${bracket}`];
const gate = (opens: string, model: string, lines: readonly string[]) =>
  judge(
    `language 1\nuse "../library/drives.gate"\nleaf west {\n  width 2 m\n  mass 150 kg\n  ${opens}\n}\ndrive mover : ${model} {\n  ${lines.join('\n  ')}\n}\n`,
  );
const said = (analysis: ReturnType<typeof judge>) =>
  analysis.findings.filter(({ rule }) => rule === 'angle-out-of-reach').map(({ what }) => what);
const margins = (analysis: ReturnType<typeof judge>) =>
  marginsOf(analysis.installation).filter(({ rule }) => rule.name === 'angle-out-of-reach');

test('a shaft that turns 110° opens a leaf by 110°, and by a tenth of a degree more that nobody sees', () => {
  expect(said(gate('opens inward 110 deg', 'birch-floor', floor))).toEqual([]);
  expect(said(gate('opens inward 110.09 deg', 'birch-floor', floor))).toEqual([]);
  expect(said(gate('opens inward 110.2 deg', 'birch-floor', floor))).toEqual(['“west” is to open 110°, but “mover” turns 110° at most.']);
  expect(said(gate('opens outward 115 deg', 'birch-floor', floor))).toEqual(['“west” is to open 115°, but “mover” turns 110° at most.']);
});

test('what is left of its turn is a margin', () => {
  const [margin, ...more] = margins(gate('opens inward 99 deg', 'birch-floor', floor));
  expect(more).toEqual([]);
  expect(margin).toMatchObject({ subject: 'mover', kept: true, figure: 'drive.mover.reachable-angle' });
  expect(margin?.left).toBeCloseTo(11, 9);
  expect(margin?.used).toBeCloseTo(0.9, 9);
});

test('an arm fits or does not; how far it could open beyond what it is asked is not known, so it is no margin', () => {
  const fits = gate('opens inward 90 deg', 'birch-arm', arm('520 mm'));
  expect(said(fits)).toEqual([]);
  expect(margins(fits)).toEqual([]);
  // 380 mm and 420 mm span 800 mm; to a bracket at 900 mm it is √(1080² + 220²) = 1102 mm, to one at 584 mm 795 mm.
  const apart = '“west” is to open 90°, but “mover” does not fit between its shaft and the leaf: its arms are too short or too long.';
  expect(said(gate('opens inward 90 deg', 'birch-arm', arm('900 mm')))).toEqual([apart]);
  expect(said(gate('opens inward 90 deg', 'birch-arm', arm('600 mm')))).toEqual([apart]);
  expect(said(gate('opens inward 90 deg', 'birch-arm', arm('584 mm')))).toEqual([]);
  expect(margins(gate('opens inward 90 deg', 'birch-arm', arm('900 mm')))).toMatchObject([{ kept: false, value: 0, limit: 90 }]);
});

test('rams, dead points and drives of which it cannot be told are left to others', () => {
  const shortOfIt = gate('opens inward 100 deg', 'birch-ram', ['moves west', 'post-bracket 250 mm by 250 mm', 'leaf-bracket 800 mm']);
  expect(shortOfIt.findings.map(({ rule }) => rule)).toContain('stroke-too-short');
  const dead = gate('opens inward 170 deg', 'birch-ram', ['moves west', 'post-bracket 150 mm by 150 mm', 'leaf-bracket 800 mm']);
  expect(dead.findings.map(({ rule }) => rule)).toContain('dead-point-in-travel');
  for (const analysis of [
    shortOfIt,
    dead,
    gate('opens inward 120 deg', 'birch-floor', ['moves nobody']),
    gate('slides left', 'birch-floor', floor),
    gate('opens inward 120 deg', 'no-model', floor),
  ])
    expect([said(analysis), margins(analysis)]).toEqual([[], []]);
});
