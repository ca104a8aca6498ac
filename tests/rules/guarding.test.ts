// What panels heed and sensors guard where something is missing or odd: rings and forks of chains, models that say little,
// drives that nobody wired, inputs of the other sort, files without a site.
import { describe, expect, test } from 'vitest';
import { guards, heedingOf, measureOf, sensorsFor } from '../../server/circuits/index.ts';
import type { Installation, Leaf, Sensor } from '../../server/model/index.ts';
import { ruleNamed } from '../../server/rules/index.ts';
import { marginsAbout, marginsOf } from '../../server/rules/margins.ts';
import { commandsOf, forcesProven, heldInView, measuresFor, needsForceTest } from '../../server/safeguards/index.ts';
import { installationOf, judge } from '../kit/pages.ts';

const block = (head: string, ...lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const library = 'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
const site = block('site "x"', 'rules europe', 'users public');
const leaf = (name = 'west'): string =>
  block(`leaf ${name}`, 'width 2 m', 'height 1.6 m', 'mass 150 kg', 'opens inward 90 deg') +
  block(`drive ${name}-drive : birch-floor`, `moves ${name}`);
const sensor = (name: string, model: string, ...lines: readonly string[]): string =>
  block(`sensor ${name}${model === '' ? '' : ` : ${model}`}`, ...lines);
const edge = (name: string, ...lines: readonly string[]): string =>
  sensor(name, 'finch-edge', 'watches closing', 'on west closing-edge', ...lines);
const panel = (name: string, ...lines: readonly string[]): string => block(`panel ${name} : rowan-pair`, ...lines);

const of = (...parts: readonly string[]): Installation => installationOf(library + site + leaf() + parts.join(''));
const sensorOf = (installation: Installation, name: string): Sensor => installation.sensors.find((one) => one.name === name) as Sensor;
const west = (installation: Installation): Leaf => installation.leaves[0] as Leaf;
const heeds = (name: string, ...parts: readonly string[]): boolean => heedingOf(sensorOf(of(...parts), name)) !== undefined;

describe('a chain of edges', () => {
  test('that leads round in a ring ends', () => {
    const ring = edge('a', 'chains-into b') + edge('b', 'chains-into c') + edge('c', 'chains-into a');
    expect(['a', 'b', 'c'].map((name) => heeds(name, ring, panel('main')))).toEqual([false, false, false]);
    const wired = of(ring, panel('main', 'wire b to E1 E0'));
    expect(['a', 'b', 'c'].map((name) => heedingOf(sensorOf(wired, name))?.tested)).toEqual([false, false, false]);
    // Into a ring that it is no part of.
    expect(heeds('c', edge('a', 'chains-into b') + edge('b', 'chains-into a') + edge('c'), panel('main', 'wire a to E1 E0'))).toBe(false);
  });
  test('is heeded by whichever of those in front is wired', () => {
    const fork = edge('one', 'chains-into far') + edge('two', 'chains-into far') + edge('far', 'terminator 8.2 kohm');
    for (const first of ['one', 'two']) expect(heeds('far', fork, panel('main', `wire ${first} to E1 E0`)), first).toBe(true);
    expect(heeds('far', fork, panel('main'))).toBe(false);
  });
  test('ends at what is no edge, or of which nothing is known', () => {
    const far = (between: string): boolean =>
      heeds(
        'far',
        edge('near', 'chains-into mid'),
        between,
        edge('far', 'terminator 8.2 kohm'),
        block('sensor-model dumb', 'kind edge'),
        panel('main', 'wire near to E1 E0'),
      );
    expect(far(edge('mid', 'chains-into far'))).toBe(true);
    expect(far(sensor('mid', 'finch-relay', 'watches closing', 'chains-into far'))).toBe(false);
    expect(far(sensor('mid', '', 'watches closing', 'chains-into far'))).toBe(false);
    expect(far(sensor('mid', 'dumb', 'watches closing', 'chains-into far'))).toBe(false);
  });
  test('is as long as there are edges, and its last may have the terminator', () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const chain = names.map((name, i) => edge(name, i + 1 < names.length ? `chains-into ${names[i + 1]}` : 'terminator 8.2 kohm')).join('');
    const installation = of(chain, panel('main', 'wire a to E1 E0'));
    expect(names.map((name) => heedingOf(sensorOf(installation, name))?.tested)).toEqual([true, true, true, true, true]);
  });
});

describe('a contact', () => {
  const own = (contact: string): string =>
    block(
      'panel-model own',
      'tests-relay-outputs',
      'terminal G0 common',
      `terminal G1 safety-input ${contact} common G0`,
      'terminal X1 test-output',
    ) +
    sensor('beam', 'finch-relay', 'watches closing') +
    sensor('other', 'finch-relay', 'watches closing');
  const wires = block('panel main : own', 'wire beam to G1 G0', 'wire other to G1 G0');
  test('is not hidden by another beside it on an input that waits for one to close', () => {
    expect(heeds('beam', own('normally-open'), wires)).toBe(true);
    expect(heeds('beam', own('normally-closed'), wires)).toBe(false);
    // Of which it is not said what it waits for: nobody can tell.
    expect(heeds('beam', own(''), wires)).toBe(false);
  });
  test('of a model that does not say how it reports is not heeded, wherever it is wired', () => {
    const mute = block('sensor-model mute', 'kind beam', 'measure D') + sensor('it', 'mute', 'watches closing');
    for (const wire of ['wire it to G1 G0', 'wire it to Z9', 'wire it to H1 H0', 'wire it to T1 T0', 'wire it to E1 E0'])
      expect(heeds('it', mute, panel('main', wire)), wire).toBe(false);
  });
  test('on a terminal that is not there, besides one that is, is heeded by that one', () => {
    const relay = sensor('beam', 'finch-relay', 'watches closing');
    const because = (...wires: readonly string[]): string | undefined =>
      heedingOf(sensorOf(of(relay, panel('main', ...wires)), 'beam'))?.because;
    expect(because('wire beam to Z9 G1', 'wire beam test to Z9 X1')).toBe('');
    expect(because('wire beam to G1 Z9', 'wire beam test to Z9')).toBe('its test input is not wired to a test output');
    expect(because('wire beam to Z9 H1', 'wire beam test to X1 V0')).toBe(
      'it reports to a stop input, and a panel tests what reports to its safety inputs',
    );
    expect(because('wire beam to Z9')).toBe(undefined);
  });
});

test('of several that a line registers, each is learnt, by that panel alone', () => {
  const two = sensor('beam', 'finch-beam', 'watches closing') + sensor('back', 'finch-beam', 'watches opening');
  const main = (line: string): string => panel('main', 'wire beam to T1 T0', 'wire back to T1 T0', line);
  for (const name of ['beam', 'back']) {
    expect(heeds(name, two, main('registered beam back'), panel('other'))).toBe(true);
    expect(heeds(name, two, main('registered beam back'))).toBe(true);
    expect(heeds(name, two, main('# none'), panel('other', 'registered beam back'))).toBe(false);
  }
});

describe('of two panels', () => {
  const relay = sensor('beam', 'finch-relay', 'watches closing');
  const second = block('drive west-second : birch-floor', 'moves west');
  const [first, next] = ['wire west-drive to LA1 LA2', 'wire west-second to LB1 LB2'];
  const d = (own: readonly string[], other: readonly string[]): boolean =>
    measuresFor(west(of(second, relay, panel('main', ...own, 'wire beam to G1 G0'), panel('other', ...other))), 'closing', false).D;
  test('one stops a leaf of two drives only if it drives both, whichever comes first', () => {
    expect(d([first], [next])).toBe(false);
    expect(d([next], [first])).toBe(false);
    expect(d([first, next], [next])).toBe(true);
    expect(d([first, next], [first, next])).toBe(true);
  });
  test('a drive that nobody wired says nothing', () => {
    expect(d([first], [])).toBe(true);
    expect(d([next], [])).toBe(true);
    expect(d([], [first])).toBe(false);
    expect(d([], [next])).toBe(false);
  });
  test('a sensor that neither heeds is still meant for the leaf, though it protects nobody', () => {
    const installation = of(relay, panel('main', first), panel('other'));
    expect(guards(sensorOf(installation, 'beam'), west(installation), 'closing')).toBe(true);
    expect(measuresFor(west(installation), 'closing', false)).toEqual({ C: false, D: false, E: false });
    expect(sensorsFor(west(installation))).toEqual([]);
  });
  test('the sensors that may guard a leaf are its own and those of its panel, in the order of the text', () => {
    const names = (line: string): string[] =>
      sensorsFor(
        west(
          of(
            relay,
            edge('strip', 'terminator 8.2 kohm'),
            sensor('last', 'finch-relay', 'watches closing'),
            panel('main', 'wire beam to G1 G0', 'wire last to G2 G0', 'wire strip to E1 E0', line),
            panel('other'),
          ),
        ),
      ).map(({ name }) => name);
    expect(names(first)).toEqual(['beam', 'strip', 'last']);
    expect(names('# not wired')).toEqual(['beam', 'strip', 'last']);
    // A drive on two wires is driven by that panel once.
    expect(names('wire west-drive to LA1\n  wire west-drive to LA2')).toEqual(['beam', 'strip', 'last']);
    const elsewhere = of(relay, edge('strip', 'terminator 8.2 kohm'), panel('main', 'wire beam to G1 G0'), panel('other', first));
    expect(sensorsFor(west(elsewhere)).map(({ name }) => name)).toEqual(['strip']);
  });
});

describe('what a sensor counts as', () => {
  const as = (...facts: readonly string[]): string | undefined =>
    measureOf(sensorOf(of(block('sensor-model it', 'output relay', ...facts), sensor('one', 'it', 'watches closing')), 'one'));
  test.each<[string, readonly string[], string | undefined]>([
    ['what its model claims', ['kind beam', 'measure D'], 'D'],
    ['nothing, where nobody says of what kind it is', ['measure C'], undefined],
    ['nothing, however much is claimed then', ['measure E'], undefined],
    ['force limitation, as an edge', ['kind edge', 'measure C'], 'C'],
    ['nothing, as an edge that says that it sees people', ['kind edge', 'measure D'], undefined],
    ['nothing, as a beam that says that it touches nobody', ['kind beam', 'measure E'], undefined],
    ['presence, as a curtain', ['kind curtain', 'measure D'], 'D'],
    ['nothing, as an edge that says that it touches nobody', ['kind edge', 'measure E'], undefined],
    ['nothing, as a beam that says that it limits a force', ['kind beam', 'measure C'], undefined],
    ['nothing, as a curtain that says so', ['kind curtain', 'measure C'], undefined],
    ['touching nobody, as a curtain', ['kind curtain', 'measure E'], 'E'],
    ['nothing, as a loop', ['kind loop', 'measure D'], undefined],
    ['nothing, without a claim', ['kind beam'], undefined],
  ])('%s', (_, facts, expected) => expect(as(...facts)).toBe(expected));

  test('without what it watches it guards nothing', () => {
    const closing = (...lines: readonly string[]) =>
      measuresFor(
        west(
          of(
            block('sensor-model it', 'kind beam', 'output relay', 'measure D'),
            sensor('one', 'it', ...lines),
            panel('main', 'wire one to G1 G0'),
          ),
        ),
        'closing',
        false,
      );
    expect(closing('watches closing')).toEqual({ C: false, D: true, E: false });
    expect(closing('height 200 mm')).toEqual({ C: false, D: false, E: false });
    expect(closing('watches opening')).toEqual({ C: false, D: false, E: false });
  });
  test('claiming nothing adds nothing', () => {
    const installation = of(
      block('sensor-model it', 'kind beam', 'output relay'),
      sensor('one', 'it', 'watches closing'),
      panel('main', 'wire one to G1 G0'),
    );
    expect(measuresFor(west(installation), 'closing', false)).toEqual({ C: false, D: false, E: false });
  });
});

describe('without a site', () => {
  const bare = (...parts: readonly string[]): Installation => installationOf(library + parts.join(''));
  const held = block('control key', 'by key-switch', 'acts hold-to-run');
  test('a held control is seen from where it says, and not where nothing says it', () => {
    expect(heldInView(bare(leaf(), held))).toBe(false);
    expect(heldInView(bare(leaf(), block('control key', 'by key-switch', 'acts hold-to-run', 'sight full')))).toBe(true);
    expect(heldInView(bare(block('site "x"', 'sight full'), leaf(), held))).toBe(true);
    expect(
      heldInView(bare(block('site "x"', 'sight full'), leaf(), block('control key', 'by key-switch', 'acts hold-to-run', 'sight none'))),
    ).toBe(false);
    expect(heldInView(bare(block('site "x"', 'sight full'), leaf()))).toBe(false);
    // Who holds these may be anywhere, or nobody holds them.
    for (const by of ['by transmitter', 'by intercom', 'by loop', 'by clock', '# by nobody knows what'])
      expect(heldInView(bare(block('site "x"', 'sight full'), leaf(), block('control key', by, 'acts hold-to-run'))), by).toBe(false);
    // What only stops the gate moves nothing, and alone it holds nothing.
    const stop = block('control mushroom', 'by push-button', 'acts stop');
    expect(heldInView(bare(block('site "x"', 'sight full'), leaf(), held, stop))).toBe(true);
    expect(heldInView(bare(block('site "x"', 'sight full'), leaf(), stop))).toBe(false);
  });
  test('forces need no measuring, and measured ones count', () => {
    const points = [50, 300, 500].flatMap((gap) =>
      [50, 800, 1300].map(
        (height) =>
          `force west closing gap ${gap} mm height ${height} mm peak 300 N 310 N 305 N after-750-ms 90 N 90 N 90 N after-5-s 12 N 12 N 12 N`,
      ),
    );
    const gate =
      block('drive-model limited', 'kind direct', 'limits-force') +
      leaf().replace('birch-floor', 'limited') +
      block('measured', 'on 2026-05-14', 'instrument "gauge" calibrated 2026-02-01', ...points);
    expect(forcesProven(west(bare(gate)))).toBe(true);
    expect(forcesProven(west(bare(block('site "x"', 'users public'), gate)))).toBe(true);
    expect(forcesProven(west(bare(block('site "x"', 'rules north-america'), gate)))).toBe(false);
    expect(needsForceTest(west(bare(gate)))).toBe(false);
  });
});

test('forces need no measuring where the leaf touches nobody, tested or not', () => {
  const field =
    block('sensor-model field', 'kind curtain', 'output relay', 'measure E') +
    sensor('eye', 'field', 'watches closing') +
    block('control a', 'acts impulse');
  expect(needsForceTest(west(of(field, panel('main', 'wire eye to G1 G0'))))).toBe(false);
  expect(needsForceTest(west(of(field, panel('main'))))).toBe(true);
});

test('a loop that is held commands as nobody does who watches; its impulse is one', () => {
  const kinds = (...lines: readonly string[]): string[] => commandsOf(of(block('control a', ...lines))).map(({ kind }) => kind);
  expect(kinds('by loop', 'acts hold-to-run')).toEqual(['automatic']);
  expect(kinds('by loop', 'acts impulse')).toEqual(['impulse, gate not in view']);
  expect(kinds('by loop', 'acts impulse', 'sight full')).toEqual(['impulse, gate not in view']);
  expect(kinds('by clock', 'acts impulse')).toEqual(['automatic']);
  expect(kinds('by clock')).toEqual([]);
});

describe('margins', () => {
  test('are found by the figure that they are about', () => {
    const { installation } = judge(
      library +
        site +
        block('panel-model plain', 'performance-level b') +
        block('panel main : plain') +
        block('function one', 'parts main') +
        block('function two', 'parts main') +
        block('motion', 'seat 4 s'),
    );
    const about = (figure: string): string[] =>
      marginsAbout(installation, figure).map(({ subject, value, limit, kept }) => `${subject} ${value} ${limit} ${kept}`);
    expect(about('function.one.performance-level')).toEqual(['one 2 3 false']);
    expect(about('function.two.performance-level')).toEqual(['two 2 3 false']);
    expect(about('function.three.performance-level')).toEqual([]);
    expect(marginsOf(installation).flatMap(({ figure, held }) => (figure === undefined ? [held.name] : []))).toEqual(['seat', 'seat']);
  });
  test('there are none in a library', () =>
    expect(marginsOf(installationOf('language 1\nsensor-model bare {\n  kind beam\n}\n'))).toEqual([]));
});

test('what a cable may carry comes from a table, and from all that is said of how it is laid', () => {
  expect(ruleNamed('cable-overloaded')?.source.text).toBe('BS 7671, 433.1 and Appendix 4, Tables 4D1A, 4D2A and 4C1');
  const text = `language 1\nuse "../library/cables.gate"\n${block('cable feed : heron-supply', 'length 6 m', 'carries 16 A at 24 V', 'method B', 'ambient 40 °C', 'grouped 3')}`;
  const found = judge(text).findings.find(({ rule }) => rule === 'cable-overloaded');
  expect(found?.related.map(({ message, start, end }) => `${message}: ${text.slice(start, end)}`)).toEqual([
    'how it is laid: method B',
    'how warm it is there: ambient 40 °C',
    'what it is laid with: grouped 3',
  ]);
});
