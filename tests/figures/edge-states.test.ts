// What goes into the states of an edge loop, by hand: which line of the panel's model, which cables, which damp.
import { describe, expect, it } from 'vitest';
import { loopsOf } from '../../server/circuits/index.ts';
import { type LoopState, stateOf } from '../../server/figures/edge-loop/working.ts';
import { judge } from '../kit/pages.ts';

const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const edgeModel = block('sensor-model strip', ['kind edge', 'output resistive', 'terminator 8.2 kohm', 'pressed-resistance 500 ohm']);
const panelModel = (...lines: readonly string[]): string =>
  block('panel-model some', [
    'terminal E0 common',
    'terminal E1 edge-input common E0 terminator 8.2 kohm',
    'terminal E2 edge-input common E0 terminator 8.2 kohm',
    ...lines,
  ]);
const panel = block('panel main : some', ['wire front to E1 E0', 'wire back to E2 E0']);
const edge = (name: string, ...lines: readonly string[]): string => block(`sensor ${name} : strip`, ['watches closing', ...lines]);
const both = [edge('front', 'terminator 8.2 kohm ± 5 %'), edge('back', 'terminator 10 kohm ± 1 %')];
const wire = block('cable-model wire', ['area 0.5 mm2', 'class 5']);
const feed = (model: string, ...lines: readonly string[]): string =>
  block(`cable run${model}`, ['feeds front', 'carries 1 mA at 5 V', ...lines]);

function statesIn(...parts: readonly string[]): (LoopState | undefined)[] {
  const main = judge(`language 1\n${parts.join('')}`).installation.panels[0];
  if (main === undefined) throw new Error('no panel');
  return (loopsOf(main) ?? []).map(stateOf);
}
/** The state of the first loop, which has to be one. */
function firstIn(...parts: readonly string[]): LoopState {
  const [first] = statesIn(...parts);
  if (first === undefined) throw new Error('no state');
  return first;
}

describe('the line of its own input counts', () => {
  it('of several, for what it measures with and what it takes as rest', () => {
    const [front, back] = statesIn(
      edgeModel,
      panelModel(
        'window E2 9 kohm .. 11 kohm',
        'measures E2 over 10 kohm ± 2 % at 5 V',
        'window E1 6 kohm .. 11 kohm',
        'measures E1 over 8.2 kohm ± 1 % at 12 V',
      ),
      panel,
      ...both,
    );
    expect(front).toMatchObject({
      from: 'panel-model some',
      terminator: { resistance: 8200, tolerance: 0.05 },
      measures: { resistor: 8200, tolerance: 0.01, voltage: 12 },
      window: { value: { low: 6000, high: 11000 } },
    });
    expect(back).toMatchObject({
      from: 'panel-model some',
      terminator: { resistance: 10000, tolerance: 0.01 },
      measures: { resistor: 10000, tolerance: 0.02, voltage: 5 },
      window: { value: { low: 9000, high: 11000 } },
    });
    // 7790 ohm and 8610 ohm, seen with a resistor that is 1 % off.
    expect(front?.states.rest.low).toBeCloseTo(7790 / 1.01, 9);
    expect(front?.states.rest.high).toBeCloseTo(8610 / 0.99, 9);
    expect(back?.states.rest.low).toBeCloseTo(9900 / 1.02, 9);
  });
  it('and another input’s does not', () => {
    const front = firstIn(edgeModel, panelModel('window E2 9 kohm .. 11 kohm', 'measures E2 over 10 kohm ± 2 % at 5 V'), panel, ...both);
    expect([front.measures, front.window]).toEqual([undefined, undefined]);
    expect(front.states.rest).toEqual({ low: 7790, high: 8610 });
  });
});

describe('cables', () => {
  const seen = (...cables: readonly string[]): [string[], number] => {
    const { cables: counted, cable } = firstIn(edgeModel, panelModel(), panel, ...both, wire, ...cables);
    return [counted.map(({ name }) => name), cable];
  };
  it('of 0.5 mm²: 39 ohm a kilometre, there and back, at 70 °C', () => {
    const [names, ohms] = seen(feed(' : wire', 'length 40 m'));
    expect(names).toEqual(['run']);
    expect(ohms).toBeCloseTo(2 * 0.04 * 39 * (1 + 0.00393 * 50), 9);
  });
  it('all that feed an edge of the loop, and none that feeds another', () => {
    const [names, ohms] = seen(
      feed(' : wire', 'length 40 m'),
      feed(' : wire', 'length 10 m').replace('cable run', 'cable more'),
      feed(' : wire', 'length 1 km').replace('cable run', 'cable far').replace('feeds front', 'feeds back'),
    );
    expect(names).toEqual(['run', 'more']);
    expect(ohms).toBeCloseTo(2 * 0.05 * 39 * (1 + 0.00393 * 50), 9);
  });
  it('not one of which length, cross-section or model is not stated', () => {
    expect(seen(feed(' : wire'))).toEqual([[], 0]);
    expect(seen(feed('', 'length 40 m'))).toEqual([[], 0]);
    expect(seen(block('cable-model bare', ['class 5']), feed(' : bare', 'length 40 m'))).toEqual([[], 0]);
    expect(seen()).toEqual([[], 0]);
  });
});

describe('edges', () => {
  it('pressed, the one that keeps most counts; damp adds up', () => {
    const hard = block('sensor-model hard', ['kind edge', 'output resistive', 'terminator 8.2 kohm', 'pressed-resistance 700 ohm']);
    const chain = [
      edge('front', 'chains-into middle', 'leakage 100 kohm'),
      edge('middle', 'chains-into last').replace(': strip', ': hard'),
      edge('last', 'terminator 8.2 kohm ± 5 %', 'leakage 300 kohm'),
    ];
    const { states, leakages, terminated } = firstIn(edgeModel, hard, panelModel(), panel, ...chain);
    expect(states.pressed).toEqual({ low: 0, high: 700 });
    expect(leakages.map(({ name }) => name)).toEqual(['front', 'last']);
    expect(terminated.name).toBe('last');
    // 100 kohm and 300 kohm side by side are 75 kohm.
    expect(states.open.low).toBeCloseTo(75e3, 6);
    expect(states.rest.low).toBeCloseTo(1 / (1 / 7790 + 1 / 75e3), 9);
  });
  it('of which nothing is stated keep nothing when pressed, and have no damp', () => {
    const { states, leakages } = firstIn(edgeModel.replace('  pressed-resistance 500 ohm\n', ''), panelModel(), panel, ...both);
    expect(states.pressed).toEqual({ low: 0, high: 0 });
    expect(states.open.low).toBe(Infinity);
    expect(leakages).toEqual([]);
  });
  it('there is no state without a terminator, with two of them, or on a chain that leads nowhere', () => {
    expect(statesIn(edgeModel, panelModel(), panel, edge('front'))).toEqual([undefined]);
    expect(
      statesIn(
        edgeModel,
        panelModel(),
        panel,
        edge('front', 'chains-into more', 'terminator 8.2 kohm'),
        edge('more', 'terminator 8.2 kohm'),
      ),
    ).toEqual([undefined]);
    expect(statesIn(edgeModel, panelModel(), panel, edge('front', 'chains-into nobody', 'terminator 8.2 kohm'))).toEqual([undefined]);
  });
});
