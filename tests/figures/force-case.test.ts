// What the file says of the forces on a leaf, each number by hand.
import { describe, expect, it } from 'vitest';
import { type ForceCase, forceCaseOf } from '../../server/figures/force-window/working.ts';
import { heard } from '../kit/heard.ts';
import { judge } from '../kit/pages.ts';

interface Gate {
  readonly leaf?: readonly string[];
  readonly drive?: readonly string[];
  readonly model?: readonly string[];
  readonly site?: readonly string[];
  readonly more?: readonly string[];
}
const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}`;
const found = ({ leaf = [], drive = [], model = [], site, more = [] }: Gate): ForceCase | undefined => {
  const text = [
    'language 1\nuse "../library/sensors.gate"',
    ...(site === undefined ? [] : [block('site "Example"', site)]),
    block('drive-model push', model),
    block('leaf west', ['mass 120 kg', ...leaf]),
    block('drive push-west : push', ['moves west', ...drive]),
    ...more,
    '',
  ].join('\n');
  const west = judge(heard(text)).installation.leaves[0];
  return west === undefined ? undefined : forceCaseOf(west);
};
const shaft: Required<Pick<Gate, 'leaf' | 'model'>> = {
  leaf: ['width 2 m', 'height 1.5 m', 'opens inward 90 deg'],
  model: ['kind direct', 'rotation 120 deg', 'shaft-speed 6 deg/s', 'torque 300 N·m least 50 N·m'],
};
const rack: Required<Pick<Gate, 'leaf' | 'model'>> = {
  leaf: ['width 4 m', 'height 1.5 m', 'slides left 4 m'],
  model: ['kind rack', 'speed 0.2 m/s', 'thrust 800 N'],
};
const ram: Required<Pick<Gate, 'leaf' | 'model' | 'drive'>> = {
  leaf: shaft.leaf,
  model: ['kind linear-ram', 'stroke 400 mm', 'speed 16 mm/s', 'thrust 3000 N'],
  drive: ['post-bracket 150 mm by 150 mm', 'leaf-bracket 800 mm'],
};

/** A case that is there, with more lines of the leaf, model or site. */
function caseOf(of: Gate, more: Gate = {}): ForceCase {
  const it = found({
    ...of,
    ...more,
    leaf: [...(of.leaf ?? []), ...(more.leaf ?? [])],
    model: [...(of.model ?? []), ...(more.model ?? [])],
  });
  if (it === undefined) throw new Error('no case');
  return it;
}

describe('a case is there', () => {
  it('where the drive states the push of its own kind: a thrust of a ram or rack, a torque of a shaft', () => {
    expect(caseOf(shaft)).toMatchObject({
      unit: 'N·m',
      swing: true,
      greatest: 300,
      lowestSetting: 50,
      setting: undefined,
      limited: true,
      relieved: false,
      width: 2,
      mass: 120,
      inertia: 160,
    });
    expect(caseOf(ram)).toMatchObject({ unit: 'N', swing: true, greatest: 3000, inertia: 160 });
    expect(caseOf(rack)).toMatchObject({ unit: 'N', swing: false, greatest: 800, inertia: 120 });
    const instead = (lines: readonly string[], push?: string): string[] => [
      ...lines.filter((line) => !/^(thrust|torque) /.test(line)),
      ...(push === undefined ? [] : [push]),
    ];
    for (const push of [undefined, 'thrust 800 N']) expect(found({ ...shaft, model: instead(shaft.model, push) }), push).toBeUndefined();
    for (const push of [undefined, 'torque 300 N·m'])
      for (const of of [ram, rack]) expect(found({ ...of, model: instead(of.model, push) }), push).toBeUndefined();
    // Of both, each takes its own.
    expect(caseOf(shaft, { model: ['thrust 800 N'] }).greatest).toBe(300);
    expect(caseOf(rack, { model: ['torque 300 N·m'] }).greatest).toBe(800);
  });
  it('and where the motion, the width and the mass are known', () => {
    expect(found({ ...shaft, leaf: ['width 2 m'] })).toBeUndefined();
    expect(found({ ...shaft, leaf: ['opens inward 90 deg'] })).toBeUndefined();
    expect(found({ ...ram, drive: [] })).toBeUndefined();
    for (const of of [shaft, rack]) {
      const text = `language 1\n${block('drive-model push', of.model)}\n${block('leaf west', of.leaf)}\ndrive push-west : push {\n  moves west\n}\n`;
      const [west] = judge(text).installation.leaves;
      expect(west === undefined ? 'no leaf' : forceCaseOf(west)).toBeUndefined();
      const [alone] = judge(`language 1\n${block('leaf west', ['mass 120 kg', ...of.leaf])}\n`).installation.leaves;
      expect(alone === undefined ? 'no leaf' : forceCaseOf(alone)).toBeUndefined();
    }
  });
});

describe('the numbers', () => {
  it('acceleration: the full speed of the drive over its ramp, whatever the site runs it at', () => {
    expect(caseOf(shaft, { model: ['ramp 1.5 s'] }).acceleration).toBeCloseTo((4 * Math.PI) / 180, 12);
    expect(caseOf(rack, { model: ['ramp 0.5 s'], more: ['motion {\n  speed 50 %\n}'] }).acceleration).toBeCloseTo(0.4, 12);
    for (const of of [shaft, rack]) expect(caseOf(of).acceleration).toBe(0);
  });
  it('friction: the stated pull at the free edge, else none at hinges and 3 % of what rests on the rollers', () => {
    expect(caseOf(shaft, { leaf: ['friction 20 N'] })).toMatchObject({ friction: 40, leastFromMemory: false });
    expect(caseOf(shaft)).toMatchObject({ friction: 0, leastFromMemory: false });
    expect(caseOf(rack, { leaf: ['friction 20 N'] })).toMatchObject({ friction: 20, leastFromMemory: false });
    expect(caseOf(rack, { leaf: ['friction 0 N'] })).toMatchObject({ friction: 0, leastFromMemory: false });
    expect(caseOf(rack).friction).toBeCloseTo(120 * 9.80665 * 0.03, 9);
    expect(caseOf(rack).leastFromMemory).toBe(true);
  });
  it('on a sloping track rollers carry less', () => {
    // A track that climbs 3 over 10 carries 10 of √109 of the weight.
    expect(caseOf(rack, { leaf: ['slope 30 %'] }).friction).toBeCloseTo((120 * 9.80665 * 0.03 * 10) / Math.sqrt(109), 9);
  });
  it('climb: of a track its slope, of a swing leaf its rising hinges', () => {
    expect(caseOf(rack, { leaf: ['slope 30 %'] }).climb).toBeCloseTo((120 * 9.80665 * 3) / Math.sqrt(109), 9);
    expect(caseOf(rack, { leaf: ['slope -30 %'] }).climb).toBeCloseTo((-120 * 9.80665 * 3) / Math.sqrt(109), 9);
    expect(caseOf(rack).climb).toBe(0);
    // 120 kg by 50 mm over a quarter turn; the ground under it is nothing to a swing leaf.
    expect(caseOf(shaft, { leaf: ['rises 50 mm', 'slope 30 %'] }).climb).toBeCloseTo((120 * 9.80665 * 0.05) / (Math.PI / 2), 9);
    expect(caseOf(shaft).climb).toBe(0);
  });
  it('the lean of the hinges, and where the leaf hangs lowest', () => {
    expect(caseOf(shaft)).toMatchObject({ tilt: 0, lowest: 0 });
    const closed = caseOf(shaft, { leaf: ['hinge-tilt 2 deg lowest closed'] });
    expect([closed.tilt, closed.lowest]).toEqual([(2 * Math.PI) / 180, 0]);
    const open = caseOf(shaft, { leaf: ['hinge-tilt 2 deg lowest open'] });
    expect([open.tilt, open.lowest]).toEqual([(2 * Math.PI) / 180, Math.PI / 2]);
    expect(caseOf(rack, { leaf: ['hinge-tilt 2 deg lowest open'] })).toMatchObject({ tilt: 0, lowest: 0 });
  });
  it('the setting of the site, the limits, and whether the drive lets go', () => {
    expect(caseOf(shaft, { more: ['motion {\n  force 40 %\n}'] }).setting).toBe(120);
    expect(caseOf(shaft, { site: ['rules north-america'] }).limited).toBe(false);
    expect(caseOf(shaft, { site: ['rules europe'] }).limited).toBe(true);
    expect(caseOf(shaft, { model: ['senses-obstacles'] }).relieved).toBe(true);
    expect(caseOf(shaft, { leaf: ['hinge-guard 300 mm', 'room-when-open 200 mm'] })).toMatchObject({ guard: 0.3, room: 0.2 });
    expect(caseOf(shaft)).toMatchObject({ guard: undefined, room: undefined });
    // Where no least is stated it can be set to nothing; and the least is never more than the most.
    expect(caseOf(rack).lowestSetting).toBe(0);
    expect(caseOf({ ...rack, model: rack.model.map((line) => line.replace('800 N', '800 N least 900 N')) }).lowestSetting).toBe(800);
  });
});

describe('the wind in which the gate is to work', () => {
  const windy = { site: ['working-wind 8 m/s'] };
  // ½ · 1.25 kg/m³ · 64 m²/s².
  const pressure = 40;
  it('of a lattice: 1.6 of its bars, from memory; from 80 % on by Table 7.9', () => {
    expect(caseOf(shaft, { ...windy, leaf: ['infill 50 %'] }).wind).toBeCloseTo(pressure * 1.6 * 0.5 * 1.5 * 2, 9);
    expect(caseOf(shaft, { ...windy, leaf: ['infill 50 %'] }).leastFromMemory).toBe(true);
    expect(caseOf(shaft, { ...windy, leaf: ['infill 79 %'] }).leastFromMemory).toBe(true);
    for (const infill of ['80 %', '100 %'])
      expect(caseOf(shaft, { ...windy, leaf: [`infill ${infill}`] }).leastFromMemory, infill).toBe(false);
  });
  it('is nothing to a sliding leaf, and nothing where none is stated', () => {
    expect(caseOf(rack, { ...windy, leaf: ['infill 50 %', 'friction 20 N'] })).toMatchObject({ wind: 0, leastFromMemory: false });
    expect(caseOf(shaft, { leaf: ['infill 50 %'] })).toMatchObject({ wind: 0, leastFromMemory: false });
    expect(caseOf(shaft, { site: ['working-wind 0 m/s'], leaf: ['infill 50 %'] })).toMatchObject({ wind: 0, leastFromMemory: false });
  });
  it('takes the worse of the leaf by itself and as a part of the closed gate', () => {
    // By itself 2.3 over the 450 mm at both ends and 1.4 between: 1.5 m · (2.3 · 0.1012 + 1.4 · 1.1 + 2.3 · 0.7987) m².
    const alone = 40 * 1.5 * (2.3 * 0.10125 + 1.4 * 1.1 + 2.3 * 0.79875);
    expect(caseOf(shaft, windy).wind).toBeCloseTo(alone, 9);
    // One of two that close against each other has no free end while it is closed; on its way it has.
    expect(
      caseOf(shaft, { ...windy, more: [block('leaf east', ['width 2 m', 'height 1.5 m', 'mass 120 kg', 'opens inward 90 deg'])] }).wind,
    ).toBeCloseTo(alone, 9);
    // With a corner 2.1 and 1.8, which is worse; only the closed gate has it.
    expect(caseOf(shaft, { ...windy, leaf: ['return-corner 1.5 m'] }).wind).toBeCloseTo(
      40 * 1.5 * (2.1 * 0.10125 + 1.8 * 1.1 + 2.1 * 0.79875),
      9,
    );
  });
});

describe('what protects', () => {
  const withSensors = (...sensors: readonly (readonly [string, string, (string | undefined)?])[]): Gate => ({
    more: sensors.map(([model, watches, on], i) =>
      block(`sensor eye-${i} : ${model}`, [
        `watches ${watches}`,
        ...(on === undefined ? [] : [`on west ${on}`]),
        ...(model === 'finch-edge' ? ['terminator 8.2 kohm'] : []),
      ]),
    ),
  });
  const none = { edge: false, bottom: false, untouched: false };
  it('nothing, where nothing is there', () => expect(caseOf(shaft)).toMatchObject({ closing: none, opening: none }));
  it('an edge along the bottom, in the movements that it watches', () => {
    expect(caseOf(shaft, withSensors(['finch-edge', 'closing', 'bottom-edge']))).toMatchObject({
      closing: { ...none, bottom: true },
      opening: none,
    });
    expect(caseOf(shaft, withSensors(['finch-edge', 'opening', 'bottom-edge']))).toMatchObject({
      closing: none,
      opening: { ...none, bottom: true },
    });
    expect(caseOf(shaft, withSensors(['finch-edge', 'closing, opening', 'hinge-edge']))).toMatchObject({ closing: none, opening: none });
    // A beam there is no edge.
    expect(caseOf(shaft, withSensors(['finch-beam', 'closing, opening', 'bottom-edge']))).toMatchObject({ closing: none, opening: none });
  });
  it('presence detection that lets the leaf touch nobody, on the leaf or beside it, in the movements that it watches', () => {
    for (const on of ['closing-edge', undefined]) {
      expect(caseOf(shaft, withSensors(['finch-curtain', 'closing', on])), on).toMatchObject({
        closing: { ...none, untouched: true },
        opening: none,
      });
      // Across the opening it sees nobody behind the leaf that opens.
      expect(caseOf(shaft, withSensors(['finch-curtain', 'opening', on])), on).toMatchObject({
        closing: none,
        opening: { ...none, untouched: on !== undefined },
      });
      expect(caseOf(shaft, withSensors(['finch-beam', 'closing, opening', on])), on).toMatchObject({ closing: none, opening: none });
    }
    expect(
      caseOf(shaft, {
        more: [
          block('sensor-model late', ['kind edge', 'output resistive', 'terminator 8.2 kohm', 'measure E']),
          ...['on west hinge-edge', ''].map((on, i) => block(`sensor eye-${i} : late`, ['watches closing, opening', on])),
        ],
      }),
    ).toMatchObject({ closing: none, opening: none });
  });
  it('not a sensor of which nothing is known, nor one that does not say what it is; a curtain touches nobody', () => {
    const unknown = (...lines: readonly string[]): ForceCase =>
      caseOf(shaft, {
        more: [
          block('sensor-model some', ['output relay', 'contact normally-closed', ...lines]),
          block('sensor eye : some', ['watches closing', 'on west bottom-edge']),
        ],
      });
    expect(unknown()).toMatchObject({ closing: none, opening: none });
    expect(unknown('measure C')).toMatchObject({ closing: none, opening: none });
    expect(unknown('measure E')).toMatchObject({ closing: none, opening: none });
    expect(unknown('kind curtain', 'measure E')).toMatchObject({ closing: { ...none, untouched: true }, opening: none });
    expect(caseOf(shaft, { more: [block('sensor eye', ['watches closing', 'on west bottom-edge'])] })).toMatchObject({
      closing: none,
      opening: none,
    });
  });
  it('a leading edge that stops the leaf within what it gives', () => {
    expect(
      caseOf(rack, { ...withSensors(['finch-edge', 'closing', 'closing-edge']), model: ['stops-in 200 ms', 'ramp 0.1 s'] }),
    ).toMatchObject({ closing: { ...none, edge: true }, opening: none });
    expect(caseOf(rack, { ...withSensors(['finch-edge', 'closing', 'closing-edge']), model: ['stops-in 2 s'] }).closing.edge).toBe(false);
    // The way that it needs to stop is not stated.
    expect(caseOf(rack, withSensors(['finch-edge', 'closing', 'closing-edge'])).closing.edge).toBe(false);
  });
});
