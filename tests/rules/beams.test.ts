// How high the lowest ray may be that is to see somebody on the ground, and what else may see them. The test body is 300 mm high at most
// when it lies: DHF, Powered Gate Myth Buster #4.
import { describe, expect, test } from 'vitest';
import { judge } from '../kit/pages.ts';

const head =
  'language 1\nuse "../library/sensors.gate"\nuse "../library/panels.gate"\nsite "Example" {\n  rules europe\n  users public\n}\n';
const leaf = (name: string): string =>
  `leaf ${name} {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\ndrive ${name}-floor {\n  moves ${name}\n}\n`;
const beam = (name: string, height: string, more = '', model = 'finch-beam'): string =>
  `sensor ${name} : ${model} {\n  watches closing\n  height ${height}\n${more}}\n`;
const panel = (...names: readonly string[]): string =>
  `panel main : rowan-pair {\n${names.map((name) => `  wire ${name} to ${name.startsWith('edge') ? 'E1 E0' : 'T1 T0'}\n`).join('')}  registered ${names.join(' ')}\n}\n`;
const said = (...parts: readonly string[]): string[] =>
  judge(head + parts.join(''))
    .findings.filter(({ rule }) => rule === 'beam-too-high')
    .map(({ what }) => what);
const high = (name: string, height: number): string =>
  `“${name}” has the lowest ray, at ${height} mm: more than 300 mm, so that it passes over who lies on the ground.`;

test('300 mm is low enough, and a millimetre more is not', () => {
  expect(said(leaf('west'), beam('beam', '300 mm'), panel('beam'))).toEqual([]);
  expect(said(leaf('west'), beam('beam', '301 mm'), panel('beam'))).toEqual([high('beam', 301)]);
  expect(said(leaf('west'), beam('beam', '0.35 m'), panel('beam'))).toEqual([high('beam', 350)]);
});

test('it is said of a beam that nothing tests too', () => {
  const relay = 'panel main : rowan-pair {\n  wire beam to G1 G0\n}\n';
  expect(said(leaf('west'), beam('beam', '400 mm', '', 'finch-relay'), relay)).toEqual([high('beam', 400)]);
});

test('two high beams are each named', () => {
  expect(said(leaf('west'), beam('beam', '600 mm'), beam('other', '900 mm'), panel('beam', 'other'))).toEqual([
    high('beam', 600),
    high('other', 900),
  ]);
});

test('what has to be touched, or sees vehicles only, is no low beam, nor a high one', () => {
  const edge = beam('edge', '100 mm', '  on west closing-edge\n  terminator 8.2 kohm\n', 'finch-edge');
  expect(said(leaf('west'), beam('beam', '600 mm'), edge, panel('beam', 'edge'))).toEqual([high('beam', 600)]);
  expect(said(leaf('west'), beam('beam', '200 mm'), edge.replace('100 mm', '500 mm'), panel('beam', 'edge'))).toEqual([]);
  expect(
    said(
      leaf('west'),
      beam('beam', '200 mm'),
      'sensor-model plain {\n  kind beam\n  output two-wire\n}\n',
      beam('other', '600 mm', '', 'plain'),
      panel('beam', 'other'),
    ),
  ).toEqual([]);
});

test('where the beam that sees people states no height, nothing else is held in its place', () => {
  const unstated = beam('beam', '').replace('  height \n', '');
  const edge = beam('edge', '500 mm', '  on west closing-edge\n  terminator 8.2 kohm\n', 'finch-edge');
  const behind = beam('behind', '500 mm').replace('closing', 'opening');
  expect(said(leaf('west'), unstated, edge, panel('beam', 'edge'))).toEqual([]);
  expect(said(leaf('west'), unstated, behind, panel('beam', 'behind'))).toEqual([]);
  // One that the panel does not heed may be the lowest or not: that it is not heeded is what is said of it.
  expect(said(leaf('west'), beam('beam', '500 mm'), panel())).toEqual([]);
});

describe('a low beam on one leaf alone', () => {
  const onWest = beam('low', '200 mm', '  on west closing-edge\n');
  test('is enough where that is the only one', () => {
    expect(said(leaf('west'), beam('beam', '600 mm'), onWest, panel('beam', 'low'))).toEqual([]);
  });
  test('does not see who lies before the other', () => {
    expect(said(leaf('west'), leaf('east'), beam('beam', '600 mm'), onWest, panel('beam', 'low'))).toEqual([high('beam', 600)]);
    expect(
      said(
        leaf('west'),
        leaf('east'),
        beam('beam', '600 mm'),
        onWest,
        onWest.replace('low', 'low-east').replace('on west', 'on east'),
        panel('beam', 'low', 'low-east'),
      ),
    ).toEqual([]);
  });
});

describe('a beam whose height is not stated', () => {
  const unstated = (name: string, more = '', model = 'finch-beam'): string => beam(name, '', more, model).replace('  height \n', '');
  const noted = (...parts: readonly string[]): string[] =>
    judge(head + parts.join(''))
      .findings.filter(({ rule, lacks }) => rule === 'not-judged' && lacks?.includes('height') === true)
      .map(({ what }) => /\. (“.*?”) does not state “height”/.exec(what)?.[1] ?? '');
  test('is named where it is relied on', () => {
    expect(noted(leaf('west'), unstated('beam'), panel('beam'))).toEqual(['“beam”']);
    expect(noted(leaf('west'), unstated('beam'), unstated('other'), panel('beam', 'other'))).toEqual(['“beam”', '“other”']);
    expect(noted(leaf('west'), beam('beam', '400 mm'), panel('beam'))).toEqual([]);
  });
  test('is named, of a curtain, for its lowest ray', () =>
    expect(noted(leaf('west'), unstated('beam', '', 'finch-curtain'), panel('beam'))).toEqual(['“beam”']));
  test('is named where it is relied on while the leaf opens, or opens for people on foot', () => {
    for (const movement of ['opening', 'pedestrian'])
      expect(noted(leaf('west'), unstated('beam').replace('closing', movement), panel('beam'))).toEqual(['“beam”']);
  });
  test('is named beside a low beam where it is the better one', () => {
    const curtain = unstated('field', '', 'finch-curtain');
    expect(noted(leaf('west'), curtain, beam('low', '300 mm'), panel('field', 'low'))).toEqual(['“field”']);
    expect(noted(leaf('west'), unstated('beam'), beam('low', '300 mm', '', 'finch-curtain'), panel('beam', 'low'))).toEqual([]);
  });
  test('is not named where nobody relies on it', () => {
    // Nothing moves, the panel does not hear it, and a loop sees nobody.
    expect(noted(leaf('west').replace(/drive[^]*/, ''), unstated('beam'), panel('beam'))).toEqual([]);
    expect(noted(leaf('west'), unstated('beam'), 'panel main : rowan-pair {\n}\n')).toEqual([]);
    expect(noted(leaf('west'), unstated('beam', '', 'finch-loop'), panel('beam'))).toEqual([]);
  });
  test('is not named beside a beam at 300 mm for the same leaf, and is beside a higher one', () => {
    expect(noted(leaf('west'), unstated('beam'), beam('low', '300 mm'), panel('beam', 'low'))).toEqual([]);
    expect(noted(leaf('west'), unstated('beam'), beam('other', '301 mm'), panel('beam', 'other'))).toEqual(['“beam”']);
    expect(noted(leaf('west'), unstated('beam'), beam('low', '300 mm').replace('closing', 'opening'), panel('beam', 'low'))).toEqual([
      '“beam”',
    ]);
    expect(noted(leaf('west'), unstated('beam'), beam('low', '300 mm'), panel('beam'))).toEqual(['“beam”']);
  });
  test('is not named where the line cannot be read', () => {
    expect(noted(leaf('west'), beam('beam', 'knee'), panel('beam'))).toEqual([]);
  });
});
