// What covers each hazard of a leaf, and what is there but does not: as pictures and papers show it, hazard by hazard.
import { describe, expect, test } from 'vitest';
import type { Leaf } from '../../server/model/index.ts';
import { type JudgedHazard, judgedHazardsOf, judgedPlacesOf, openingForcesProven } from '../../server/safeguards/index.ts';
import { installationOf, judge } from '../kit/pages.ts';

const block = (head: string, ...lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const head =
  'language 1\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\nsite "x" {\n  rules europe\n  users public\n}\n' +
  block('drive-model push', 'kind direct', 'rotation 180 deg', 'shaft-speed 6 deg/s') +
  block('drive-model rack', 'kind rack', 'speed 0.2 m/s') +
  block('drive-model sensing', 'kind direct', 'rotation 180 deg', 'shaft-speed 6 deg/s', 'senses-obstacles') +
  block('sensor-model plain-edge', 'kind edge', 'output resistive');
/**
 * A swing leaf whose hinge, underside and opened side can hurt somebody, in this order behind its closing edge: opening side, hinge,
 * underside.
 */
const swings = (name = 'west', ...more: readonly string[]): string =>
  block(
    `leaf ${name}`,
    'width 2 m',
    'height 1.6 m',
    'mass 150 kg',
    'opens inward 90 deg',
    'room-when-open 100 mm',
    'thickness 40 mm',
    'hinge-gap 10 mm',
    'hinge-offset 0 mm by 0 mm',
    'ground-gap 60 mm',
    ...more,
  );
const slides = block(
  'leaf west',
  'width 2 m',
  'mass 150 kg',
  'slides left 2 m',
  'room-when-open 100 mm',
  'infill-opening slot 12.1 mm',
  'passes fence 20 mm',
  'passes wall 100 mm',
);
const drive = (of = 'push', name = 'west'): string => block(`drive ${name}-drive : ${of}`, `moves ${name}`);
const edge = (name: string, on: string, watches: string): string =>
  block(`sensor ${name} : finch-edge`, ...(on === '' ? [] : [`on ${on}`]), `watches ${watches}`, 'terminator 8.2 kohm');
const eye = (name: string, model: string, watches: string): string => block(`sensor ${name} : ${model}`, `watches ${watches}`);
const panel = (...lines: readonly string[]): string => block('panel main : rowan-pair', ...lines);

const leafOf = (parts: readonly string[], name = 'west'): Leaf =>
  installationOf(head + parts.join('')).leaves.find((leaf) => leaf.name === name) as Leaf;
/** Each hazard: what covers it, what does not, and in which movements it stays open. */
function told(
  parts: readonly string[],
  name?: string,
): Record<string, { readonly by: readonly string[]; readonly notBy: readonly string[]; readonly open: readonly string[] }> {
  const says = (list: JudgedHazard['by']): string[] => list.map((one) => `${one.name} ${one.says}`);
  return Object.fromEntries(
    (judgedHazardsOf(leafOf(parts, name)) ?? []).map(({ hazard, covered, open, by, notBy }) => {
      expect(covered).toBe(open.length === 0);
      return [hazard.kind, { by: says(by), notBy: says(notBy), open }];
    }),
  );
}
const uncovered = (...open: readonly string[]) => ({ by: [], notBy: [], open });

describe('hazards', () => {
  test('are those of the leaf, each by itself; none where nothing drives it', () => {
    expect(told([swings(), drive()])).toEqual({
      'closing-edge': uncovered('closing'),
      'opening-side': uncovered('opening'),
      hinge: uncovered('closing'),
      underside: uncovered('closing', 'opening'),
    });
    expect(told([slides, drive('rack')])).toEqual({
      'closing-edge': uncovered('closing'),
      'opening-side': uncovered('opening'),
      'reach-through': uncovered('closing', 'opening'),
      'running-past': uncovered('closing', 'opening'),
    });
    expect(judgedHazardsOf(leafOf([swings()]))).toBe(undefined);
    expect(judgedPlacesOf(leafOf([swings()]))).toBe(undefined);
  });
  test('in other places than the closing edge are judged alike, and it is left out', () => {
    const leaf = leafOf([swings(), drive()]);
    expect(judgedPlacesOf(leaf)?.map(({ hazard }) => hazard.kind)).toEqual(['opening-side', 'hinge', 'underside']);
    expect(judgedPlacesOf(leaf)).toEqual(judgedHazardsOf(leaf)?.slice(1));
  });
});

describe('an edge', () => {
  const coveredBy = (on: string, of: 'swings' | 'slides'): string[] =>
    Object.entries(
      told([
        of === 'swings' ? swings() : slides,
        drive(of === 'swings' ? 'push' : 'rack'),
        edge('strip', on, 'closing, opening'),
        panel('wire strip to E1 E0'),
      ]),
    ).flatMap(([kind, { by }]) => (by.length > 0 ? [`${kind}: ${by.join('; ')}`] : []));
  const says = 'strip gives way and stops it';
  test.each<[string, 'swings' | 'slides', readonly string[]]>([
    ['west closing-edge', 'swings', [`closing-edge: ${says}`]],
    ['west opening-edge', 'swings', [`opening-side: ${says}`]],
    ['west hinge-edge', 'swings', [`hinge: ${says}`]],
    ['west bottom-edge', 'swings', [`underside: ${says}`]],
    ['west post-edge', 'swings', []],
    ['west post-edge', 'slides', [`reach-through: ${says}`, `running-past: ${says}`]],
    ['west opening-edge', 'slides', [`opening-side: ${says}`, `running-past: ${says}`]],
    ['', 'swings', []],
  ])('on “%s” of a leaf that %s', (on, of, expected) => expect(coveredBy(on, of)).toEqual(expected));

  test('covers its own leaf and no other', () => {
    const parts = [
      swings(),
      swings('east'),
      drive(),
      drive('push', 'east'),
      edge('strip', 'east hinge-edge', 'closing'),
      panel('wire strip to E1 E0'),
    ];
    expect(told(parts)['hinge']).toEqual(uncovered('closing'));
    expect(told(parts, 'east')['hinge']).toEqual({ by: ['strip gives way and stops it'], notBy: [], open: [] });
  });
  test('that the panel does not heed, or that does not watch, is told of', () => {
    const hinge = (watches: string, ...wires: readonly string[]) =>
      told([swings(), drive(), edge('strip', 'west hinge-edge', watches), panel(...wires)])['hinge'];
    expect(hinge('closing')).toEqual({ by: [], notBy: ['strip is meant to, but the panel does not heed it'], open: ['closing'] });
    expect(hinge('opening', 'wire strip to E1 E0')).toEqual({ by: [], notBy: ['strip does not watch closing'], open: ['closing'] });
    const under = (watches: string) =>
      told([swings(), drive(), edge('strip', 'west bottom-edge', watches), panel('wire strip to E1 E0')])['underside'];
    expect(under('closing')).toEqual({ by: ['strip gives way and stops it'], notBy: ['strip does not watch opening'], open: ['opening'] });
    expect(under('pedestrian')).toEqual({ by: [], notBy: ['strip does not watch closing and opening'], open: ['closing', 'opening'] });
    expect(under('closing, opening')).toEqual({ by: ['strip gives way and stops it'], notBy: [], open: [] });
  });
  test('and a second one cover both movements together', () => {
    const parts = [
      swings(),
      drive(),
      edge('one', 'west bottom-edge', 'closing'),
      edge('two', 'west bottom-edge', 'opening'),
      panel('wire one to E1 E0', 'wire two to E2 E0'),
    ];
    expect(told(parts)['underside']).toEqual({ by: ['one gives way and stops it', 'two gives way and stops it'], notBy: [], open: [] });
  });
  test('of which it is not known what it does covers nothing', () => {
    const strip = (on: string) =>
      told([swings(), drive(), edge('strip', on, 'closing').replace('finch-edge', 'plain-edge'), panel('wire strip to E1 E0')]);
    expect(strip('west closing-edge')['closing-edge']).toEqual(uncovered('closing'));
    expect(strip('west hinge-edge')['hinge']).toEqual(uncovered('closing'));
  });
  test('that reports to a panel that does not drive the leaf covers nothing there', () => {
    const hinge = (first: readonly string[], second: readonly string[]) =>
      told([
        swings(),
        drive(),
        edge('strip', 'west hinge-edge', 'closing'),
        panel('wire strip to E1 E0', ...first),
        block('panel other : rowan-pair', ...second),
      ])['hinge'];
    const driven = 'wire west-drive to LA1 LA2';
    expect(hinge([driven], [])?.by).toEqual(['strip gives way and stops it']);
    expect(hinge([], [driven])).toEqual({
      by: [],
      notBy: ['strip is meant to, but reports to a panel that does not drive the leaf'],
      open: ['closing'],
    });
    // Nobody says what drives it.
    expect(hinge([], [])?.by).toEqual(['strip gives way and stops it']);
    const { findings } = judge(
      head +
        [
          swings(),
          drive(),
          edge('strip', 'west hinge-edge', 'closing'),
          panel('wire strip to E1 E0'),
          block('panel other : rowan-pair', driven),
        ].join(''),
    );
    expect(
      findings.filter(({ rule }) => rule === 'hazard-uncovered').flatMap(({ related }) => related.map(({ message }) => message)),
    ).toContain('“strip” is meant to, but reports to a panel that does not drive the leaf');
  });
});

describe('a sensor that sits on no leaf', () => {
  const one = (model: string, terminals: string, watches = 'closing, opening') =>
    told([swings(), drive(), eye('eye', model, watches), panel(`wire eye to ${terminals}`, 'registered eye')]);
  test('and lets the leaf touch nobody covers the closing edge, and the places that its field lies on, in what it watches', () => {
    const by = ['eye lets the leaf touch nobody'];
    const all = { by, notBy: [], open: [] };
    const across = {
      'closing-edge': all,
      'opening-side': uncovered('opening'),
      hinge: uncovered('closing'),
      underside: uncovered('closing', 'opening'),
    };
    expect(one('finch-curtain', 'T1 T0')).toEqual(across);
    const lying = (watches: string, guards: string, more = '') => one('finch-curtain', 'T1 T0', `${watches}\n  guards ${guards}${more}`);
    const everywhere = 'west hinge, underside, opening-side';
    expect(lying('closing, opening', everywhere)).toEqual({ 'closing-edge': all, 'opening-side': all, hinge: all, underside: all });
    expect(lying('closing, opening', 'west hinge')).toEqual({ ...across, hinge: all });
    expect(lying('closing', everywhere)).toEqual({
      'closing-edge': all,
      'opening-side': { by: [], notBy: ['eye does not watch opening'], open: ['opening'] },
      hinge: all,
      underside: { by, notBy: ['eye does not watch opening'], open: ['opening'] },
    });
    const over = { by: [], notBy: ['eye passes over who lies on the ground'], open: ['closing'] };
    expect(lying('closing, opening', 'west hinge', '\n  height 301 mm')).toMatchObject({ 'closing-edge': over, hinge: over });
    expect(lying('closing, opening', 'west hinge', '\n  height 300 mm')).toMatchObject({ 'closing-edge': all, hinge: all });
    // On the places of another leaf it covers none of this one.
    const other = told([
      swings(),
      swings('east'),
      drive(),
      eye('eye', 'finch-curtain', 'opening, closing\n  guards east hinge'),
      panel('wire eye to T1 T0', 'registered eye'),
    ]);
    expect(other['hinge']).toEqual(uncovered('closing'));
  });
  test('and guards places of a leaf only need not reach across the opening', () => {
    const wide = swings().replace('width 2 m', 'width 6 m');
    const at = (watches: string) =>
      told([
        wide,
        drive(),
        block('sensor-model short-field', 'kind curtain', 'output two-wire', 'measure E', 'reach 5 m'),
        eye('eye', 'short-field', `${watches}\n  guards west opening-side`),
        panel('wire eye to T1 T0', 'registered eye'),
      ])['opening-side'];
    expect(at('opening')).toEqual({ by: ['eye lets the leaf touch nobody'], notBy: [], open: [] });
    expect(at('closing, opening')?.notBy).toEqual(['eye does not reach across the opening']);
  });
  test('and sees who stands there covers the closing edge alone', () => {
    const covered = {
      'closing-edge': { by: ['eye sees who stands in the way'], notBy: [], open: [] },
      'opening-side': uncovered('opening'),
      hinge: uncovered('closing'),
      underside: uncovered('closing', 'opening'),
    };
    expect(one('finch-beam', 'T1 T0')).toEqual(covered);
    expect(one('finch-relay', 'G1 G0')).toEqual(covered);
    expect(one('finch-loop', 'G1 G0')['closing-edge']).toEqual(uncovered('closing'));
    expect(one('finch-beam', 'G1 G0')['closing-edge']).toEqual({
      by: [],
      notBy: ['eye is meant to, but the panel does not heed it'],
      open: ['closing'],
    });
    expect(one('finch-beam', 'T1 T0', 'opening')['closing-edge']).toEqual({
      by: [],
      notBy: ['eye does not watch closing'],
      open: ['closing'],
    });
  });
  test('but on an edge does what the edge asks for, or not', () => {
    const there = (on: string, model = 'finch-relay') =>
      told([swings(), drive(), block(`sensor eye : ${model}`, `on west ${on}`, 'watches closing, opening'), panel('wire eye to G1 G0')]);
    expect(there('hinge-edge')['hinge']).toEqual({ by: [], notBy: ['eye does not limit the force there'], open: ['closing'] });
    expect(there('hinge-edge')['closing-edge']).toEqual(uncovered('closing'));
    // One ray that the leaf carries along spans nothing; a curtain on the leaf looks ahead of it.
    expect(there('closing-edge')['closing-edge']).toEqual({
      by: [],
      notBy: ['eye is one ray that the leaf carries along'],
      open: ['closing'],
    });
    const field = told([
      swings(),
      drive(),
      block('sensor eye : finch-curtain', 'on west closing-edge', 'watches closing'),
      panel('wire eye to T1 T0', 'registered eye'),
    ]);
    expect(field['closing-edge']).toEqual({ by: ['eye lets the leaf touch nobody'], notBy: [], open: [] });
    expect(there('closing-edge')['hinge']).toEqual(uncovered('closing'));
    expect(there('opening-edge')['opening-side']).toEqual({ by: [], notBy: ['eye does not limit the force there'], open: ['opening'] });
  });
  test('comes with those on the leaf in the order of the text', () => {
    const strip = edge('strip', 'west closing-edge', 'closing');
    const wires = panel('wire strip to E1 E0', 'wire eye to G1 G0', 'wire back to G2 G0');
    const names = (...parts: readonly string[]) =>
      told([swings(), drive(), ...parts, wires])['closing-edge']?.by.map((says) => says.split(' ')[0]);
    const [first, last] = [eye('eye', 'finch-relay', 'closing'), eye('back', 'finch-relay', 'closing')];
    expect(names(strip, first, last)).toEqual(['strip', 'eye', 'back']);
    expect(names(first, strip, last)).toEqual(['eye', 'strip', 'back']);
    expect(names(first, last, strip)).toEqual(['eye', 'back', 'strip']);
  });
});

describe('without a sensor', () => {
  test('a guard covers the hinge alone', () => {
    expect(told([swings('west', 'hinge-guard 300 mm'), drive()])).toMatchObject({
      hinge: { by: ['west has a guard at the hinge'], notBy: [], open: [] },
      underside: uncovered('closing', 'opening'),
      'opening-side': uncovered('opening'),
      'closing-edge': uncovered('closing'),
    });
  });
  test('a control that is held in full view covers all', () => {
    const held = (sight: string, ...more: readonly string[]) =>
      told([swings(), drive(), block('control key', 'by key-switch', 'acts hold-to-run', `sight ${sight}`), ...more]);
    const all = { by: ['west moves only while a control in full view is held'], notBy: [], open: [] };
    expect(held('full')).toEqual({ 'closing-edge': all, 'opening-side': all, hinge: all, underside: all });
    expect(held('none')['hinge']).toEqual(uncovered('closing'));
    // Beside it nothing is asked of a sensor that watches one movement only.
    expect(held('full', edge('strip', 'west bottom-edge', 'closing'), panel('wire strip to E1 E0'))['underside']).toEqual({
      by: [...all.by, 'strip gives way and stops it'],
      notBy: [],
      open: [],
    });
    // A second control in view does not make the first one seen, and one that does nothing asks for no sight.
    expect(held('none', block('control second', 'acts hold-to-run', 'sight full'))['hinge']).toEqual(uncovered('closing'));
    expect(held('full', block('control second', 'by push-button'))['hinge']).toEqual(all);
  });
  test('measured forces cover the opened side, where the drive limits them and the records hold', () => {
    const heights = [50, 800, 1300];
    const records = (movement: string, gaps: readonly number[], peak = 300): string[] =>
      gaps.flatMap((gap) =>
        heights.map(
          (height) =>
            `force west ${movement} gap ${gap} mm height ${height} mm peak ${peak} N ${peak} N ${peak} N after-750-ms 90 N 90 N 90 N after-5-s 12 N 12 N 12 N`,
        ),
      );
    const measured = (...lines: readonly string[]): string =>
      block('measured', 'on 2026-05-14', 'instrument "gauge" calibrated 2026-02-01', ...lines);
    const closing = records('closing', [50, 300, 500]);
    const leaf = swings('west').replace('room-when-open 100 mm', 'room-when-open 300 mm');
    const of = (parts: readonly string[]) => ({ proven: openingForcesProven(leafOf(parts)), hazards: told(parts) });
    const openingGaps = [50, 300];
    const whole = [leaf, drive('sensing'), measured(...closing, ...records('opening', openingGaps))];
    const found = of(whole);
    expect(found.proven).toBe(true);
    expect(found.hazards['opening-side']).toEqual({
      by: ['west keeps to the force limits while opening, as measured'],
      notBy: [],
      open: [],
    });
    expect(found.hazards['hinge']).toEqual(uncovered('closing'));
    expect(found.hazards['underside']).toEqual(uncovered('closing', 'opening'));
    for (const parts of [
      [leaf, drive('push'), whole[2] ?? ''],
      [leaf, drive('sensing'), measured(...closing)],
      [leaf, drive('sensing')],
      [leaf, drive('sensing'), measured(...closing, ...records('opening', openingGaps, 1500))],
    ]) {
      expect(of(parts).proven).toBe(false);
      expect(of(parts).hazards['opening-side']).toEqual(uncovered('opening'));
    }
  });
});
