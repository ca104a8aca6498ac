// What is asked for so that a cable, its protection or a battery can be judged, and where nothing is asked.
import { describe, expect, it } from 'vitest';
import { judge, lineOf } from '../kit/pages.ts';

const asked = (text: string): string[] => {
  const analysis = judge(text);
  return analysis.findings
    .filter(({ rule }) => rule === 'electrical-facts-unstated')
    .map(({ start, what }) => `${analysis.text.split('\n')[lineOf(analysis, start) - 1]?.trim()}: ${what}`);
};

const site = (more: string, rules = 'europe'): string =>
  `site "Example" {\n  rules ${rules}\n  users limited\n  supply 230 V 50 Hz\n  ${more}\n}\n`;
const use = 'language 1\nuse "../library/cables.gate"\n';

const laid = '“mains” bears what its protection lets through is not judged: it is not stated how it is laid.';
const fault = '“mains” is cut off is not judged: its model does not say of its protective conductor.';

describe('how a cable is laid', () => {
  const cable = (lines: string, model = 'heron-mains'): string =>
    `${use}cable-model rubbery {\n  area 2.5 mm2\n  class 5\n  cores 3\n  insulation rubber\n}\ncable-model gauge {\n  area 14 AWG\n  class 2\n  cores 3\n}\ncable mains : ${model} {\n  length 20 m\n  carries 4 A at 230 V\n  ${lines}\n}\n`;
  it('is asked where something protects it', () => {
    expect(asked(cable('breaker B 10 A'))).toEqual([`breaker B 10 A: Whether ${laid}`]);
    expect(asked(cable('fuse 10 A'))).toEqual([`fuse 10 A: Whether ${laid}`]);
    expect(asked(cable(''))).toEqual([]);
  });
  it.each([
    ['it is stated, though no table has the cable', cable('fuse 10 A\n  method C', 'rubbery')],
    ['a line of it cannot be read, which may be the very one', cable('fuse 10 A\n  methd C')],
    ['nobody knows what cable it is', cable('fuse 10 A', 'unheard-of')],
    ['a gauge says enough under the rules of North America', cable('fuse 10 A', 'gauge') + site('', 'north-america')],
  ])('is not asked where %s', (_, text) => {
    expect(asked(text)).toEqual([]);
  });
});

describe('the least voltage at which something works', () => {
  const drives = (lines: string): string =>
    `drive-model shaft {\n  kind direct\n  rotation 110 deg\n  shaft-speed 6 deg/s\n  ${lines}\n}\ndrive floor : shaft {\n  moves west\n}\n`;
  const sensors = (lines: string): string =>
    `sensor-model reed-eye {\n  kind beam\n  output relay\n  ${lines}\n}\nsensor eye : reed-eye {\n  watches closing\n}\n`;
  const feed = (feeds: string, volts: string): string =>
    `cable feed : heron-signal {\n  feeds ${feeds}\n  length 20 m\n  carries 1 A at ${volts}\n}\n`;
  const ofFloor =
    'feeds floor: Whether enough voltage is left at the end of “feed” is not judged: the model “shaft” does not say the least that “floor” works at.';
  const ofEye =
    'feeds eye: Whether enough voltage is left at the end of “feed” is not judged: the model “reed-eye” does not say the least that “eye” works at.';
  it('is asked of drives as well as of sensors, up to 50 V and no further', () => {
    expect(asked(use + drives('') + feed('floor', '24 V'))).toEqual([ofFloor]);
    expect(asked(use + drives('') + feed('floor', '50 V'))).toEqual([ofFloor]);
    expect(asked(use + drives('') + feed('floor', '51 V'))).toEqual([
      'feeds floor: Whether “feed” is protected is not judged: it has no breaker or fuse of its own, and no mains cable to the panel of “floor” is stated.',
    ]);
    expect(asked(use + sensors('contact normally-closed') + feed('eye', '24 V'))).toEqual([ofEye]);
    expect(asked(use + drives('least-voltage 20 V') + feed('floor', '24 V'))).toEqual([]);
  });
  it('is asked where another line of the model cannot be read, and not where that line may be it', () => {
    expect(asked(use + drives('rated-for anything') + feed('floor', '24 V'))).toEqual([]);
    expect(asked(use + drives('least-voltage low') + feed('floor', '24 V'))).toEqual([]);
    // Words of a drive, and of a sensor, that mean something else.
    expect(asked(use + drives('torque strong') + feed('floor', '24 V'))).toEqual([ofFloor]);
    expect(asked(use + sensors('contact odd') + feed('eye', '24 V'))).toEqual([ofEye]);
  });
  it('is not asked of what nobody knows, nor of a panel', () => {
    expect(asked(`${use}drive floor : unheard-of {\n  moves west\n}\n${feed('floor', '24 V')}`)).toEqual([]);
    expect(asked(`${use}use "../library/panels.gate"\npanel main : rowan-pair {\n}\n${feed('main', '24 V')}`)).toEqual([]);
    expect(asked(`${use}${drives('')}cable feed : heron-signal {\n  feeds floor\n  length 20 m\n}\n`)).toEqual([]);
  });
});

describe('how a fault to earth is cut off', () => {
  const model = (lines: string): string => `cable-model plover {\n  class 2\n  area 2.5 mm2\n  ${lines}\n}\n`;
  const cable = (lines: string, of = 'plover'): string => `cable mains : ${of} {\n  length 20 m\n  method C\n  ${lines}\n}\n`;
  const guarded = cable('carries 4 A at 230 V\n  breaker B 10 A');
  const tn = 'earthing TN\n  external-impedance 0.35 ohm';
  it('is asked of a mains cable', () => {
    expect(asked(use + model('') + site(tn) + guarded)).toEqual([`cable mains : plover {: Whether a fault at the end of ${fault}`]);
    expect(asked(use + model('cores 3\n  kind flat') + site(tn) + guarded)).toEqual([
      `cable mains : plover {: Whether a fault at the end of ${fault}`,
    ]);
    for (const other of [
      site('earthing TT\n  earth-electrode 80 ohm') + guarded,
      site(tn) + cable('carries 4 A at 230 V\n  fuse 10 A'),
      site(tn) + cable('carries 4 A at 230 V'),
    ])
      expect(asked(use + model('') + other), other).toEqual([`cable mains : plover {: Whether a fault at the end of ${fault}`]);
    expect(asked(use + model('cores 3') + site('') + guarded)).toEqual([
      'site "Example" {: Whether a fault to earth is cut off in time is not judged: it is not stated how the supply is earthed.',
    ]);
    expect(asked(use + model('cores 3') + site('earthing TN') + guarded)).toEqual([
      'earthing TN: Whether a fault to earth is cut off in time is not judged: the impedance of the loop outside is not stated.',
    ]);
  });
  it.each([
    ['at extra-low voltage', site('earthing TN') + model('') + cable('carries 4 A at 24 V\n  breaker B 10 A')],
    ['of which nobody says what it carries', site('earthing TN') + model('') + cable('breaker B 10 A')],
    ['of two cores, which is a finding by itself', site(tn) + model('cores 2') + guarded],
    ['of which nobody knows what cable it is', site(tn) + cable('carries 4 A at 230 V\n  breaker B 10 A', 'unheard-of')],
    ['under the rules of North America', site(tn, 'north-america') + model('') + guarded],
    ['under the rules of North America, of the supply too', site('', 'north-america') + model('cores 3') + guarded],
  ])('is not asked of a cable %s', (_, text) => {
    expect(asked(use + text)).toEqual([]);
  });
});

describe('how long a battery lasts', () => {
  const panel = (
    standby: string,
    wires: string,
    battery = 'battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n  }',
  ): string => `panel-model sedge-cell {
  supply 24 V
  ${standby}
  terminal G0 common
  terminal G1 safety-input normally-closed common G0
  terminal G2 safety-input normally-closed common G0
}
sensor-model reed-eye {
  kind beam
  output relay
  contact normally-closed
}
sensor-model wren-eye {
  kind beam
  output relay
  contact normally-closed
  consumes 30 mA
}
sensor eye : reed-eye {
  watches closing
}
sensor other : wren-eye {
  watches opening
}
panel box : sedge-cell {
  ${wires}
  ${battery}
}
`;
  const unknown = (what: string): string[] => [`battery {: How long the battery of “box” lasts is not worked out: ${what}.`];
  it('is told to depend on the panel, and on each sensor that does not say what it draws', () => {
    expect(asked('language 1\n' + panel('', 'wire other to G2 G0'))).toEqual(unknown('the model “sedge-cell” lacks “standby”'));
    expect(asked('language 1\n' + panel('standby 50 mA', 'wire eye to G1 G0\n  wire other to G2 G0'))).toEqual(
      unknown('“reed-eye” lacks “consumes”'),
    );
    expect(asked('language 1\n' + panel('', 'wire eye to G1 G0\n  wire other to G2 G0'))).toEqual(
      unknown('the model “sedge-cell” lacks “standby”, and “reed-eye” lacks “consumes”'),
    );
  });
  it.each([
    ['all is stated', panel('standby 50 mA', 'wire other to G2 G0')],
    ['what a sensor draws cannot be read', panel('standby 50 mA', 'wire other to G2 G0').replace('30 mA', 'little')],
    ['there is none', panel('', 'wire eye to G1 G0', '')],
    ['a line of the panel cannot be read', panel('', 'wir eye to G1 G0')],
    ['what the panel draws cannot be read', panel('standby some', 'wire other to G2 G0')],
    ['nobody knows what panel it is', panel('', 'wire eye to G1 G0').replace('box : sedge-cell', 'box : unheard-of')],
  ])('is not asked where %s', (_, text) => {
    expect(asked('language 1\n' + text)).toEqual([]);
  });
});

describe('how cold a battery gets', () => {
  const cold = (coldest: string): string =>
    `${use}use "../library/panels.gate"\npanel main : rowan-pair {\n  battery {\n    voltage 24 V\n    capacity 7 Ah over 20 h\n    ${coldest}\n  }\n}\n`;
  const noted = (coldest: string): string[] => asked(cold(coldest)).filter((what) => what.includes('not known here'));
  it('is told where no table says what it still gives, and the table ends at 20 °F', () => {
    expect(noted('coldest -20 °C')).toEqual([
      'coldest -20 °C: What the battery of “main” gives at -20 °C is not known here: it is judged as if it were −7 °C, where the table ends.',
    ]);
    expect(noted('coldest -6.7 °C')).toHaveLength(1);
    expect(noted('coldest -6.6 °C')).toEqual([]);
    expect(noted('')).toEqual([]);
  });
});
