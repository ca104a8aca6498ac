// What the figures of the force window read of a file, and how they tell the setting on the panel. Values by hand.
import { describe, expect, it } from 'vitest';
import { figures } from '../../server/figures/force-window/figure.ts';
import { goesInto, valuesIn } from './told.ts';

const ofForce = (text: string): Record<string, number> => valuesIn(figures, text);
const model = (name: string, ...facts: readonly string[]): string =>
  `drive-model ${name} {\n${facts.map((fact) => `  ${fact}\n`).join('')}}\n`;
const leaf = (name: string, ...facts: readonly string[]): string => `leaf ${name} {\n${facts.map((fact) => `  ${fact}\n`).join('')}}\n`;
const drive = (leafName: string, modelName: string): string => `drive of-${leafName} : ${modelName} {\n  moves ${leafName}\n}\n`;

/** 90° at 6 deg/s, up to 150 N·m; a leaf of 160 kg·m² that needs 20 N·m, guarded out to half a metre. */
const shaft = (...more: readonly string[]): string =>
  model('shaft', 'kind direct', 'rotation 120 deg', 'shaft-speed 6 deg/s', 'torque 150 N·m', ...more);
const swing = ['width 2 m', 'mass 120 kg', 'opens inward 90 deg'];
const west = leaf('west', ...swing, 'friction 10 N', 'hinge-guard 500 mm');
const plain = shaft() + west + drive('west', 'shaft');

it('each kind says what pushes', () =>
  expect(figures.slice(0, 4).map(({ id, title, unit }) => [id, title, unit])).toEqual([
    ['leaf.NAME.force-least', 'The least push of ram or rack that moves the leaf from rest at any place', 'N'],
    ['leaf.NAME.force-most', 'The most push of ram or rack that the force limits leave at any place', 'N'],
    ['leaf.NAME.torque-least', 'The least torque of the shaft that moves the leaf from rest at any place', 'N·m'],
    ['leaf.NAME.torque-most', 'The most torque of the shaft that the force limits leave at any place', 'N·m'],
  ]));

describe('a sliding leaf', () => {
  // 400 kg at 0.2 m/s within 0.5 s: 160 N. A track of 2 %: 400 · 9.80665 · sin(atan 0.02) = 78.437 N, and 3 % of the rest of the weight,
  // 117.656 N.
  const text = (slope: string, ...more: readonly string[]): string =>
    model('rack', 'kind rack', 'speed 0.2 m/s', 'ramp 0.5 s', 'thrust 800 N', 'senses-obstacles') +
    leaf('gate', 'width 4 m', 'mass 400 kg', 'slides left 3.5 m', `slope ${slope}`, ...more) +
    drive('gate', 'rack');
  // Of the 48 steps of 3.5 m the first with 50 mm and more to go is at 0.0729 m.
  it('is told in metres, newtons and kilograms; up the track it needs the most', () => {
    expect(ofForce(text('2 %'))).toMatchObject({
      'leaf.gate.force-least': 356.094,
      'leaf.gate.force-most': 400,
      'leaf.gate.force-window': 1.1233,
    });
    expect(goesInto(text('2 %'), 'leaf.gate.force-least', 'leaf.gate.force-most')).toEqual([
      'leaf.gate.force-least at “mass 400 kg”',
      '  deciding opening: 0 m',
      '  r, lever there: 1',
      '  I, mass: 400 kg',
      '  a, acceleration of the drive: 0.4 m/s² (drive-model rack)',
      '  friction: 117.656 N (not stated, 3 % of the weight (from memory))',
      '  gravity, opening: 78.4375 N',
      '  wind: 0 N (no working wind is stated, or the leaf slides)',
      'leaf.gate.force-most at “mass 400 kg”',
      '  deciding opening: 0.0729167 m',
      '  r, lever there: 1',
      '  the limit there: 400 N (by the gap)',
      '  gap there: 0.0729167 m',
    ]);
  });
  it('with the track falling it is the closing that climbs', () => {
    expect(ofForce(text('-2 %'))['leaf.gate.force-least']).toBe(356.094);
    expect(goesInto(text('-2 %'), 'leaf.gate.force-least')[6]).toBe('  gravity, closing: 78.4375 N');
  });
  it('with the friction that is stated', () =>
    expect(goesInto(text('2 %', 'friction 90 N'), 'leaf.gate.force-least')[5]).toBe('  friction: 90 N'));
});

describe('a swing leaf', () => {
  it('with a shaft that starts in 0.5 s: 12 deg/s² on 160 kg·m² are 33.5103 N·m, with no friction where none is stated', () => {
    const text = shaft('ramp 0.5 s') + leaf('west', ...swing) + drive('west', 'shaft');
    expect(ofForce(text)['leaf.west.torque-least']).toBe(33.5103);
    expect(goesInto(text, 'leaf.west.torque-least')).toEqual([
      'leaf.west.torque-least at “mass 120 kg”',
      '  deciding opening: 0 deg',
      '  r, lever there: 1',
      '  I, inertia: 160 kg·m²',
      '  a, acceleration of the drive: 12 deg/s² (drive-model shaft)',
      '  friction: 0 N·m (not stated, left out)',
      '  gravity, opening: 0 N·m',
      '  wind: 0 N·m (no working wind is stated, or the leaf slides)',
    ]);
  });
  it('that no guard covers is told at its mass, from where 50 mm of gap begin', () => {
    // 0.05 m / (2 · sin 45°) from the hinge, for 400 N there.
    const text = shaft('senses-obstacles') + leaf('west', ...swing, 'friction 10 N') + drive('west', 'shaft');
    expect(ofForce(text)['leaf.west.torque-most']).toBe(14.1421);
    const most = goesInto(text, 'leaf.west.torque-most');
    expect(most[0]).toBe('leaf.west.torque-most at “mass 120 kg”');
    expect(most.slice(3, 5)).toEqual([
      '  the limit there: 400 N (by the gap)',
      '  deciding distance from the hinge: 0.0353553 m (where 50 mm of gap begin (from memory); no guard reaches so far)',
    ]);
  });
  it('which nobody can be held by in closing has 1400 N in opening, 700 N·m at half a metre, where nothing is near', () => {
    const text =
      model('shaft', 'kind direct', 'rotation 120 deg', 'shaft-speed 6 deg/s', 'torque 1500 N·m', 'senses-obstacles') +
      west +
      drive('west', 'shaft') +
      'sensor-model eye {\n  kind curtain\n  output two-wire\n  measure E\n}\nsensor field : eye {\n  watches closing\n}\n' +
      'panel-model hearing {\n  terminal T0 common\n  terminal T1 two-wire-input common T0\n}\npanel main : hearing {\n  wire field to T1 T0\n}\n';
    expect(ofForce(text)['leaf.west.torque-most']).toBe(700);
    expect(goesInto(text, 'leaf.west.torque-most')).toEqual([
      'leaf.west.torque-most at “hinge-guard 500 mm”',
      '  deciding opening: 0 deg',
      '  r, lever there: 1',
      '  the limit there: 1400 N (no closing edge near)',
      '  deciding distance from the hinge: 0.5 m',
    ]);
    // Across the opening it sees nobody behind the leaf, nor does it from above.
    const both = text.replace('watches closing', 'watches closing, opening');
    expect(ofForce(both)['leaf.west.torque-most']).toBe(700);
    expect(ofForce(text.replace('watches closing', 'watches closing\n  height 2 m'))['leaf.west.torque-most']).toBe(200);
    // Nor in opening: then no limit is left, and no window to tell; the drive can be set as high as it goes.
    expect(ofForce(both.replace('watches', 'guards west opening-side\n  watches'))).toEqual({
      'leaf.west.torque-least': 20,
      'leaf.west.impact-bound': 936.642,
      'leaf.west.force-setting-least': 0.0133333,
      'leaf.west.force-setting-most': 1,
    });
  });
});

describe('the window', () => {
  it('is told where something has to be overcome and something limits it', () => {
    expect(ofForce(plain)).toEqual({
      'leaf.west.torque-least': 20,
      'leaf.west.torque-most': 75,
      'leaf.west.force-window': 3.75,
      'leaf.west.impact-bound': 936.642,
      'leaf.west.force-setting-least': 0.133333,
      'leaf.west.force-setting-most': 0.5,
    });
    expect(ofForce(plain.replace('  friction 10 N\n', ''))).toEqual({
      'leaf.west.torque-least': 0,
      'leaf.west.torque-most': 75,
      'leaf.west.impact-bound': 936.642,
      'leaf.west.force-setting-least': 0,
      'leaf.west.force-setting-most': 0.5,
    });
    expect(ofForce(`site {\n  rules north-america\n}\n${plain}`)).toEqual({
      'leaf.west.torque-least': 20,
      'leaf.west.impact-bound': 936.642,
      'leaf.west.force-setting-least': 0.133333,
      'leaf.west.force-setting-most': 1,
    });
  });
  it('has no setting where the most is below the least, and one where both are the same', () => {
    expect(ofForce(plain.replace('friction 10 N', 'friction 40 N'))).toEqual({
      'leaf.west.torque-least': 80,
      'leaf.west.torque-most': 75,
      'leaf.west.force-window': 0.9375,
      'leaf.west.impact-bound': 936.642,
    });
    expect(ofForce(plain.replace('torque 150 N·m', 'torque 60 N·m least 60 N·m'))).toMatchObject({
      'leaf.west.force-setting-least': 1,
      'leaf.west.force-setting-most': 1,
    });
  });
  it('is told of the leaf whose drive says how hard it turns, and of no other', () => {
    const other =
      model('mute', 'kind direct', 'rotation 120 deg', 'shaft-speed 6 deg/s') +
      leaf('east', ...swing) +
      drive('east', 'mute') +
      leaf('still', ...swing);
    expect(Object.keys(ofForce(other))).toEqual([]);
    expect(Object.keys(ofForce(other + plain))).toEqual(Object.keys(ofForce(plain)));
    // A push says nothing of a shaft, and without its mass nothing is known of a leaf.
    expect(ofForce(plain.replace('torque 150 N·m', 'thrust 300 N'))).toEqual({});
    expect(ofForce(plain.replace('  mass 120 kg\n', ''))).toEqual({});
  });
});

describe('the setting on the panel', () => {
  const adjuster = (name: string, sets: string, range: string, ...more: readonly string[]): string =>
    `  adjuster ${name} {\n    sets ${sets}\n    range ${range}\n${more.map((line) => `    ${line}\n`).join('')}  }\n`;
  const panelModel = (name: string, adjusters: string): string =>
    `panel-model ${name} {\n  terminal D1 motor\n  terminal D2 motor\n  terminal G0 common\n  terminal G1 safety-input normally-closed common G0\n${adjusters}}\n`;
  const panel = (name: string, of: string, ...wires: readonly string[]): string =>
    `panel ${name} : ${of} {\n${wires.map((wire) => `  wire ${wire}\n`).join('')}}\n`;
  const push = adjuster('push', 'force', '10 % .. 100 %');
  const words = (text: string): (string | undefined)[] =>
    ['least', 'most'].map((end) => goesInto(text, `leaf.west.force-setting-${end}`)[0]?.split('”: ')[1]);
  const one = (adjusters: string): (string | undefined)[] => words(plain + panelModel('p', adjusters) + panel('main', 'p'));

  it('is told of an adjuster in even steps over 270° where nothing else is said', () => {
    // 13.3 % is 1/27 of the range: 10°; 50 % is 4/9 of it: 120°, a third of a turn.
    expect(one(push)).toEqual(['On main, push just off the low stop', 'On main, push about three eighths of a turn from the low stop']);
    const text = plain + panelModel('p', push) + panel('main', 'p');
    expect(goesInto(text, 'leaf.west.force-setting-least', 'leaf.west.force-setting-most')).toEqual([
      'leaf.west.force-setting-least at “hinge-guard 500 mm”: On main, push just off the low stop',
      '  push: 20 N·m',
      '  the most that the drive can: 150 N·m (drive-model shaft)',
      '  the least that it can be set to: 0 N·m (drive-model shaft)',
      'leaf.west.force-setting-most at “hinge-guard 500 mm”: On main, push about three eighths of a turn from the low stop',
      '  push: 75 N·m',
      '  the most that the drive can: 150 N·m (drive-model shaft)',
      '  the least that it can be set to: 0 N·m (drive-model shaft)',
    ]);
  });
  it('is told by its own curve and sweep', () => {
    // log 1.333 and log 5 of a decade are 0.125 and 0.699: of 270°, 34° and 189°; of two turns, a quarter and 1.4.
    expect(one(adjuster('push', 'force', '10 % .. 100 %', 'curve logarithmic'))).toEqual([
      'On main, push about an eighth of a turn from the low stop',
      'On main, push about half a turn from the low stop',
    ]);
    expect(one(adjuster('push', 'force', '10 % .. 100 %', 'curve logarithmic', 'sweep 720 deg'))).toEqual([
      'On main, push about a quarter turn from the low stop',
      'On main, push about one and three eighths turns from the low stop',
    ]);
  });
  it('is told to be out of reach, and at the stops to be there', () => {
    expect(one(adjuster('push', 'force', '20 % .. 40 %'))).toEqual([
      'On main, push cannot be set so low',
      'On main, push cannot be set so high',
    ]);
    expect(one(adjuster('push', 'force', '50 % .. 80 %'))).toEqual(['On main, push cannot be set so low', 'On main, push at the low stop']);
    expect(one(adjuster('push', 'force', '5 % .. 50 %'))).toEqual([
      'On main, push about an eighth of a turn from the low stop',
      'On main, push at the high stop',
    ]);
  });
  it('is not told where no adjuster sets the force as a share, or its scale cannot be', () => {
    for (const adjusters of [
      '',
      adjuster('zone', 'slow-zone', '0 % .. 100 %'),
      adjuster('push', 'force', '1 s .. 9 s'),
      '  adjuster push {\n    sets force\n  }\n',
      '  adjuster push {\n    range 0 % .. 100 %\n  }\n',
      adjuster('push', 'force', '0 % .. 100 %', 'curve logarithmic'),
    ])
      expect(one(adjusters), adjusters).toEqual([undefined, undefined]);
    expect(words(plain)).toEqual([undefined, undefined]);
    expect(words(`${plain}panel main {\n}\n`)).toEqual([undefined, undefined]);
    expect(
      one(
        adjuster('zone', 'slow-zone', '0 % .. 100 %') +
          '  adjuster half {\n    sets force\n  }\n' +
          adjuster('dwell', 'dwell', '1 s .. 9 s') +
          push,
      ),
    ).toEqual(one(push));
  });
  it('is that of the panel that the drive is wired to, which of two has to be known', () => {
    const models = panelModel('p', push) + panelModel('q', adjuster('other', 'force', '0 % .. 50 %'));
    const sensor =
      'sensor-model edge {\n  kind edge\n  output relay\n}\nsensor tip : edge {\n  watches closing\n  on west leading-edge\n}\n';
    const text = plain + models + sensor + leaf('east', ...swing) + 'drive of-east {\n  moves east\n}\n';
    const inner = ['On inner, push just off the low stop', 'On inner, push about three eighths of a turn from the low stop'];
    const outer = ['On outer, other about a quarter turn from the low stop', 'On outer, other at the high stop'];
    expect(
      words(text + panel('outer', 'q', 'tip to G1 G0', 'of-east to D1') + panel('inner', 'p', 'nobody to G1 G0', 'of-west to D2')),
    ).toEqual(inner);
    expect(words(text + panel('outer', 'q', 'of-east to D1', 'of-west to D2') + panel('inner', 'p', 'tip to G1 G0'))).toEqual(outer);
    expect(words(text + panel('inner', 'p') + panel('outer', 'q'))).toEqual([undefined, undefined]);
    // The only panel needs no wires, and may have others.
    expect(words(text + panel('inner', 'p', 'tip to G1 G0', 'of-east to D1'))).toEqual(inner);
  });
});

it('the blow stands at the mass', () => {
  // 160 kg·m² at 6 deg/s: 0.877298 J.
  expect(goesInto(plain, 'leaf.west.impact-bound')).toEqual([
    'leaf.west.impact-bound at “mass 120 kg”',
    '  E, greatest kinetic energy: 0.877298 J (leaf.west.kinetic-energy)',
    '  k, stiffness of the gauge: 500000 N/m (from memory)',
  ]);
});
