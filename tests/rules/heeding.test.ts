// What a panel heeds, whom a sensor guards, and in which ways a gate is commanded: what all rules about safeguarding build on,
// held against what the wiring does, case by case.
import { describe, expect, test } from 'vitest';
import { guards, heedingOf } from '../../server/circuits/index.ts';
import type { Installation, Leaf, Sensor } from '../../server/model/index.ts';
import { commandsOf, heldInView, measuresFor, needsForceTest } from '../../server/safeguards/index.ts';
import { judge } from '../kit/pages.ts';

const head =
  'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\nsite "x" {\n  rules europe\n  users public\n}\n';
const leaf = (name = 'west', way = 'opens inward 90 deg'): string =>
  `leaf ${name} {\n  width 2 m\n  height 1.6 m\n  mass 150 kg\n  ${way}\n}\ndrive ${name}-drive : birch-floor {\n  moves ${name}\n}\n`;
const sensor = (name: string, model: string, ...lines: string[]): string =>
  `sensor ${name} : ${model} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const panel = (lines: readonly string[], model = 'rowan-pair', name = 'main'): string =>
  `panel ${name} : ${model} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const control = (name: string, ...lines: string[]): string => `control ${name} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;

const installationOf = (...parts: string[]): Installation => judge(head + parts.join('')).installation;
const leafOf = (installation: Installation, name = 'west'): Leaf => installation.leaves.find((one) => one.name === name) as Leaf;
const sensorOf = (installation: Installation, name: string): Sensor => installation.sensors.find((one) => one.name === name) as Sensor;

const relay = sensor('beam', 'finch-relay', 'watches closing');
const edge = sensor('edge', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm');
const twoWire = sensor('beam', 'finch-beam', 'watches closing');

describe('a panel heeds', () => {
  const heeds = (name: string, ...parts: string[]): boolean => heedingOf(sensorOf(installationOf(leaf(), ...parts), name)) !== undefined;
  test.each<[string, boolean, string, readonly string[]]>([
    ['a relay contact on a safety input', true, 'beam', [relay, panel(['wire beam to G1 G0'])]],
    ['a relay contact on a stop input', true, 'beam', [relay, panel(['wire beam to H1 H0'])]],
    ['not a relay contact on an input for commands', false, 'beam', [relay, panel(['wire beam to K1 K0'])]],
    ['not a relay contact on an input for edges', false, 'beam', [relay, panel(['wire beam to E1 E0'])]],
    ['not an edge on a stop input', false, 'edge', [edge, panel(['wire edge to H1 H0'])]],
    ['not a sensor of which only the supply ends on such an input', false, 'beam', [relay, panel(['wire beam supply to G1 G0'])]],
    ['not a sensor of which only the test input ends there', false, 'beam', [relay, panel(['wire beam test to G1'])]],
    ['not an input that a link bridges', false, 'beam', [relay, panel(['wire beam to G1 G0', 'link G1 G0'])]],
    ['an input beside one that a link bridges', true, 'beam', [relay, panel(['wire beam to G1 G0', 'link G2 G0'])]],
    [
      'not a contact beside which another lies on the same input',
      false,
      'beam',
      [relay, sensor('other', 'finch-relay', 'watches closing'), panel(['wire beam to G1 G0', 'wire other to G1 G0'])],
    ],
    [
      'a contact whose neighbour has an input of its own',
      true,
      'beam',
      [relay, sensor('other', 'finch-relay', 'watches closing'), panel(['wire beam to G1 G0', 'wire other to G2 G0'])],
    ],
    [
      'a contact beside whose input only a supply is wired',
      true,
      'beam',
      [relay, sensor('other', 'finch-relay', 'watches closing'), panel(['wire beam to G1 G0', 'wire other supply to G1 G0'])],
    ],
    ['a sensor on two wires that it has learnt', true, 'beam', [twoWire, panel(['wire beam to T1 T0', 'registered beam'])]],
    ['not one that it has not learnt', false, 'beam', [twoWire, panel(['wire beam to T1 T0'])]],
    [
      'not one that only another panel has learnt',
      false,
      'beam',
      [twoWire, panel(['wire beam to T1 T0']), panel(['registered beam'], 'rowan-pair', 'other')],
    ],
    [
      'not one of which it has learnt a neighbour only',
      false,
      'beam',
      [
        twoWire,
        sensor('back', 'finch-beam', 'watches opening'),
        panel(['wire beam to T1 T0', 'wire back to T1 T0', 'registered back']),
        panel(['registered beam'], 'rowan-pair', 'other'),
      ],
    ],
    [
      'the second edge of a chain',
      true,
      'far',
      [
        sensor('near', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel(['wire near to E1 E0']),
      ],
    ],
    [
      'the third edge of a chain',
      true,
      'far',
      [
        sensor('near', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into mid'),
        sensor('mid', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel(['wire near to E1 E0']),
      ],
    ],
    [
      'not a chain that nothing brings to the panel',
      false,
      'far',
      [
        sensor('near', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel([]),
      ],
    ],
    [
      'not an edge behind a relay contact, which carries no loop on',
      false,
      'far',
      [
        sensor('near', 'finch-relay', 'watches closing', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel(['wire near to G1 G0']),
      ],
    ],
    [
      'not an edge that hangs behind another chain',
      false,
      'alone',
      [
        sensor('near', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        sensor('alone', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel(['wire near to E1 E0']),
      ],
    ],
    ['not a sensor of an unknown model', false, 'beam', [sensor('beam', 'nobody-knows', 'watches closing'), panel(['wire beam to G1 G0'])]],
    ['not a sensor that names no model', false, 'beam', ['sensor beam {\n  watches closing\n}\n', panel(['wire beam to G1 G0'])]],
  ])('%s', (_, expected, name, parts) => expect(heeds(name, ...parts)).toBe(expected));
});

describe('a fault is found before the next movement', () => {
  const because = (name: string, ...parts: string[]): string | undefined =>
    heedingOf(sensorOf(installationOf(leaf(), ...parts), name))?.because;
  test.each<[string, string, string, readonly string[]]>([
    ['of a sensor on two wires', '', 'beam', [twoWire, panel(['wire beam to T1 T0', 'registered beam'])]],
    ['of a relay contact whose test input is wired', '', 'beam', [relay, panel(['wire beam to G1 G0', 'wire beam test to X1 V0'])]],
    [
      'of a relay contact whose supply the test output switches',
      '',
      'beam',
      [relay, panel(['wire beam to G1 G0', 'wire beam supply to X1 V0'])],
    ],
    [
      'not where only its signal ends on the test output too',
      'its test input is not wired to a test output',
      'beam',
      [relay, panel(['wire beam to G1 G0', 'wire beam to X1'])],
    ],
    [
      'not where its test input is wired to a supply',
      'its test input is not wired to a test output',
      'beam',
      [relay, panel(['wire beam to G1 G0', 'wire beam test to V1'])],
    ],
    [
      'not where another panel tests it',
      'its test input is not wired to a test output',
      'beam',
      [relay, panel(['wire beam to G1 G0']), panel(['wire beam test to X1 V0'], 'rowan-pair', 'other')],
    ],
    [
      'not on a stop input, which nothing says the panel tries',
      'it reports to a stop input, and a panel tests what reports to its safety inputs',
      'beam',
      [relay, panel(['wire beam to H1 H0', 'wire beam test to X1 V0'])],
    ],
    [
      'not where the panel tests no contacts',
      'marram-one cannot test a relay output',
      'beam',
      [relay, panel(['wire beam to S1 S0'], 'marram-one')],
    ],
    [
      'not where the panel’s model is not known',
      'it has no test input',
      'beam',
      [
        'sensor-model bare {\n  kind beam\n  output relay\n  measure D\n}\n',
        sensor('beam', 'bare', 'watches closing'),
        panel(['wire beam to G1 G0']),
      ],
    ],
    ['of an edge with a terminator', '', 'edge', [edge, panel(['wire edge to E1 E0'])]],
    [
      'not of an edge without one',
      'its loop has no terminator, so a cut cable goes unseen',
      'edge',
      [edge.replace('  terminator 8.2 kohm\n', ''), panel(['wire edge to E1 E0'])],
    ],
    [
      'of an edge whose chain ends in one',
      '',
      'near',
      [
        sensor('near', 'finch-edge', 'watches closing', 'on west closing-edge', 'chains-into far'),
        sensor('far', 'finch-edge', 'watches closing', 'on west closing-edge', 'terminator 8.2 kohm'),
        panel(['wire near to E1 E0']),
      ],
    ],
  ])('%s', (_, expected, name, parts) => {
    const why = because(name, ...parts);
    expect(why).toBe(expected);
    expect(heedingOf(sensorOf(installationOf(leaf(), ...parts), name))?.tested).toBe(expected === '');
  });
});

describe('a sensor guards', () => {
  const slides = 'slides left 4 m';
  const guarded = (way: string, movement: 'closing' | 'opening' | 'pedestrian', text: string): boolean => {
    const installation = installationOf(leaf('west', way), text, panel(['wire it to E1 E0']));
    return guards(sensorOf(installation, 'it'), leafOf(installation), movement);
  };
  test.each<[string, string, 'closing' | 'opening' | 'pedestrian', string, boolean]>([
    ['the closing movement, from the closing edge', '', 'closing', 'on west closing-edge', true],
    ['not the closing movement, from the opening edge', '', 'closing', 'on west opening-edge', false],
    ['the opening movement, from the opening edge', '', 'opening', 'on west opening-edge', true],
    ['not the opening movement, from the closing edge', '', 'opening', 'on west closing-edge', false],
    ['the opening movement of a swing leaf, from the hinge edge', '', 'opening', 'on west hinge-edge', true],
    ['not the opening movement of a sliding leaf, which has no hinge', slides, 'opening', 'on west hinge-edge', false],
    ['not the opening movement, from the underside', '', 'opening', 'on west bottom-edge', false],
    ['the pedestrian opening, as it closes again, from the closing edge', '', 'pedestrian', 'on west closing-edge', true],
    ['not the pedestrian opening, from the opening edge', '', 'pedestrian', 'on west opening-edge', false],
    ['nothing, as an edge that sits on no leaf', '', 'closing', '', false],
  ])('%s', (_, way, movement, on, expected) => {
    expect(
      guarded(
        way === '' ? 'opens inward 90 deg' : way,
        movement,
        sensor('it', 'finch-edge', 'watches closing opening pedestrian', ...(on === '' ? [] : [on])),
      ),
    ).toBe(expected);
  });
  test('no movement that it does not watch, nor any where it is not said', () => {
    expect(guarded('opens inward 90 deg', 'opening', sensor('it', 'finch-relay', 'watches closing'))).toBe(false);
    expect(guarded('opens inward 90 deg', 'closing', sensor('it', 'finch-relay', 'watches closing'))).toBe(true);
    expect(guarded('opens inward 90 deg', 'closing', sensor('it', 'finch-relay', 'height 200 mm'))).toBe(false);
  });
  test('no other leaf than the one that it sits on', () => {
    const installation = installationOf(leaf(), leaf('east'), edge, panel(['wire edge to E1 E0']));
    expect(guards(sensorOf(installation, 'edge'), leafOf(installation), 'closing')).toBe(true);
    expect(guards(sensorOf(installation, 'edge'), leafOf(installation, 'east'), 'closing')).toBe(false);
    expect(measuresFor(leafOf(installation), 'closing', false)).toEqual({ C: true, D: false, E: false });
    expect(measuresFor(leafOf(installation, 'east'), 'closing', false)).toEqual({ C: false, D: false, E: false });
  });
  test('no leaf that another panel drives', () => {
    const drives = (first: string, second: string) =>
      installationOf(
        leaf(),
        relay,
        panel([...(first === '' ? [] : [first]), 'wire beam to G1 G0']),
        panel(second === '' ? [] : [second], 'rowan-pair', 'other'),
      );
    const d = (installation: Installation): boolean => measuresFor(leafOf(installation), 'closing', false).D;
    expect(d(drives('wire west-drive to LA1 LA2', ''))).toBe(true);
    expect(d(drives('', 'wire west-drive to LA1 LA2'))).toBe(false);
    expect(d(drives('wire west-drive to LA1 LA2', 'wire west-drive to LB1 LB2'))).toBe(true);
    // Nobody says what drives it.
    expect(d(drives('', ''))).toBe(true);
  });
  test('a leaf of two drives only by the panel that stops both', () => {
    const second = 'drive west-second : birch-floor {\n  moves west\n}\n';
    const d = (own: readonly string[], other: readonly string[]): boolean => {
      const installation = installationOf(
        leaf(),
        second,
        relay,
        panel([...own, 'wire beam to G1 G0']),
        panel(other, 'rowan-pair', 'other'),
      );
      return measuresFor(leafOf(installation), 'closing', false).D;
    };
    const [first, next] = ['wire west-drive to LA1 LA2', 'wire west-second to LB1 LB2'];
    expect(d([first, next], [])).toBe(true);
    expect(d([first], [next])).toBe(false);
    expect(d([], [first, next])).toBe(false);
  });
  test('what is not tested counts only where testing is not asked for', () => {
    const installation = installationOf(leaf(), relay, panel(['wire beam to G1 G0']));
    expect(measuresFor(leafOf(installation), 'closing', false).D).toBe(true);
    expect(measuresFor(leafOf(installation), 'closing', true).D).toBe(false);
    const tested = installationOf(leaf(), relay, panel(['wire beam to G1 G0', 'wire beam test to X1 V0']));
    expect(measuresFor(leafOf(tested), 'closing', true).D).toBe(true);
  });
});

describe('measured forces', () => {
  const points = [50, 300, 500].flatMap((gap) =>
    [50, 800, 1300].map(
      (height) =>
        `  force west closing gap ${gap} mm height ${height} mm peak 300 N 310 N 305 N after-750-ms 90 N 90 N 90 N after-5-s 12 N 12 N 12 N`,
    ),
  );
  const measured = `measured {\n  on 2026-05-14\n  instrument "gauge" calibrated 2026-02-01\n${points.join('\n')}\n}\n`;
  const model = (name: string, how: string): string =>
    `drive-model ${name} {\n  kind direct\n  rotation 110 deg\n  shaft-speed 6 deg/s\n${how}}\n`;
  const drive = (name: string, of: string): string => `drive ${name} : ${of} {\n  moves west\n}\n`;
  const bare = leaf().replace(/drive [^]*/, '');
  const c = (tested: boolean, ...parts: string[]): boolean =>
    measuresFor(
      leafOf(
        installationOf(model('limited', '  limits-force\n'), model('sensing', '  senses-obstacles\n'), model('plain', ''), bare, ...parts),
      ),
      'closing',
      tested,
    ).C;
  test.each<[string, readonly string[], boolean, boolean]>([
    [
      'are force limitation where the drive limits its force; tested only where it senses obstacles',
      [drive('a', 'limited'), measured],
      true,
      false,
    ],
    ['are tested force limitation where it senses obstacles', [drive('a', 'sensing'), measured], true, true],
    ['are none without a limit of the drive', [drive('a', 'plain'), measured], false, false],
    ['are none where one of two drives has no limit', [drive('a', 'sensing'), drive('b', 'plain'), measured], false, false],
    ['are not tested where one of two drives senses nothing', [drive('a', 'sensing'), drive('b', 'limited'), measured], true, false],
    ['are none where nothing drives the leaf', [measured], false, false],
    ['are none where none is recorded', [drive('a', 'sensing')], false, false],
  ])('%s', (_, parts, all, tested) => {
    expect(c(false, ...parts)).toBe(all);
    expect(c(true, ...parts)).toBe(tested);
  });
  test('serve the pedestrian opening too, and never the opening', () => {
    const west = leafOf(installationOf(model('sensing', '  senses-obstacles\n'), bare, drive('a', 'sensing'), measured));
    for (const tested of [false, true]) {
      expect(measuresFor(west, 'pedestrian', tested).C).toBe(true);
      expect(measuresFor(west, 'opening', tested).C).toBe(false);
    }
  });
});

describe('the ways in which a gate is commanded', () => {
  const byItself = {
    control: 'by nobody',
    dwell: 'closing by itself after the dwell',
    loop: 'at a vehicle on a loop',
    selector: 'as its selector is set',
  } as const;
  const kinds = (...parts: string[]): string[] =>
    commandsOf(installationOf(leaf(), ...parts)).map(
      ({ kind, control: by, cause }) => `${kind}: ${by === undefined ? byItself[cause] : `“${by.name}” (${kind})`}`,
    );
  test.each<[string, readonly string[], readonly string[]]>([
    ['held', [control('a', 'by push-button', 'acts hold-to-run', 'sight full')], ['hold-to-run: “a” (hold-to-run)']],
    ['held by key', [control('a', 'by key-switch', 'acts hold-to-run', 'sight full')], ['hold-to-run by key: “a” (hold-to-run by key)']],
    ...['by push-button', 'by key-switch', 'by transmitter\n  sight full', 'by intercom\n  sight full', 'sight full'].map(
      (lines): [string, readonly string[], readonly string[]] => [
        `held where nobody is known to see the gate: ${lines.replace('\n ', ',')}`,
        [control('a', lines, 'acts hold-to-run')],
        ['hold-to-run, gate not in view: “a” (hold-to-run, gate not in view)'],
      ],
    ),
    ...['by transmitter', 'by intercom', 'by loop', '# by nobody knows what'].map(
      (lines): [string, readonly string[], readonly string[]] => [
        `an impulse from anywhere, whatever is said to be in view: ${lines}`,
        [control('a', lines, 'acts impulse', 'sight full')],
        ['impulse, gate not in view: “a” (impulse, gate not in view)'],
      ],
    ),
    ['only stopped', [control('a', 'by push-button', 'acts stop')], []],
    [
      'a part for people on foot that closes after a dwell',
      ['motion {\n  pedestrian west to 60 % dwell 9 s\n}\n'],
      ['automatic: closing by itself after the dwell'],
    ],
    ['closing by itself in the position of a selector', [panel(['select reply closes-alone'])], ['automatic: as its selector is set']],
    [
      'a loop on an input for commands',
      [sensor('ground', 'finch-loop', 'watches opening'), panel(['wire ground to K1 K0'])],
      ['automatic: at a vehicle on a loop'],
    ],
    ['not by a loop on an input for guards', [sensor('ground', 'finch-loop', 'watches closing'), panel(['wire ground to G1 G0'])], []],
    ['not by a position in which it waits for a command', [panel(['select reply steps'])], []],
    [
      'an impulse with the gate in view',
      [control('a', 'by push-button', 'acts impulse', 'sight full')],
      ['impulse, gate in view: “a” (impulse, gate in view)'],
    ],
    ['an impulse without', [control('a', 'acts impulse', 'sight none')], ['impulse, gate not in view: “a” (impulse, gate not in view)']],
    ['an impulse of which nothing is said', [control('a', 'acts impulse')], ['impulse, gate not in view: “a” (impulse, gate not in view)']],
    ['automatic', [control('a', 'acts automatic')], ['automatic: “a” (automatic)']],
    ['a control of which nothing is said', [control('a', 'by push-button')], []],
    ['closing after a dwell', ['motion {\n  dwell 20 s\n}\n'], ['automatic: closing by itself after the dwell']],
  ])('%s', (_, parts, expected) => expect(kinds(...parts)).toEqual(expected));

  test('only held: every way is, and there is one', () => {
    const only = (...parts: string[]): boolean => heldInView(installationOf(leaf(), ...parts));
    const held = (name: string, by = 'by push-button'): string => control(name, by, 'acts hold-to-run', 'sight full');
    expect(only()).toBe(false);
    expect(only(held('a'))).toBe(true);
    expect(only(held('a', 'by key-switch'), held('b'))).toBe(true);
    expect(only(held('a'), held('b', 'by transmitter'))).toBe(false);
    expect(only(held('a'), control('b', 'acts impulse'))).toBe(false);
    expect(only(held('a'), 'motion {\n  dwell 20 s\n}\n')).toBe(false);
  });

  test('forces are measured where a driven leaf touches people, under European rules', () => {
    const needs = (text: string, ...parts: string[]): boolean => needsForceTest(leafOf(installationOf(text, ...parts)));
    const impulse = control('a', 'acts impulse');
    expect(needs(leaf(), impulse)).toBe(true);
    expect(needs(leaf().replace(/drive [^]*/, ''), impulse)).toBe(false);
    expect(needs(leaf(), control('a', 'by push-button', 'acts hold-to-run', 'sight full'))).toBe(false);
    expect(needs(leaf(), control('a', 'by transmitter', 'acts hold-to-run', 'sight full'))).toBe(true);
    expect(
      needs(leaf(), impulse, sensor('field', 'finch-curtain', 'watches closing'), panel(['wire field to T1 T0', 'registered field'])),
    ).toBe(false);
    expect(
      needs(leaf(), impulse, sensor('field', 'finch-curtain', 'watches opening'), panel(['wire field to T1 T0', 'registered field'])),
    ).toBe(true);
    const american = judge((head + leaf() + impulse).replace('rules europe', 'rules north-america')).installation;
    expect(needsForceTest(leafOf(american))).toBe(false);
    const unsaid = judge((head + leaf() + impulse).replace('  rules europe\n', '')).installation;
    expect(needsForceTest(leafOf(unsaid))).toBe(false);
  });
});
