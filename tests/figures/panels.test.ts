// What the figures of panels read from a file: what hangs on an output, what is drawn at rest, adjusters, edge loops.
import { describe, expect, it } from 'vitest';
import { judge } from '../kit/pages.ts';
import { told, values } from './told.ts';

const block = (head: string, lines: string): string => `${head} {\n  ${lines.replaceAll('\n', '\n  ')}\n}\n`;

describe('what the outputs of a panel feed', () => {
  const outputs = 'output V1 V2 gives 0.2 A at 24 V\noutput T1 gives 60 mA at 24 V\noutput M1 M2 gives 8 A at 24 V';
  const model = (own = outputs): string =>
    block(
      'panel-model p',
      `standby 60 mA\nterminal V1 supply-out\nterminal V2 supply-out\nterminal V0 common\nterminal G0 common\nterminal G1 safety-input normally-closed common G0\nterminal T0 common\nterminal T1 two-wire-input common T0\nterminal K1 command-input common T0\nterminal M1 motor\nterminal M2 motor\n${own}`,
    );
  const devices =
    'sensor relay : finch-relay {\n  watches closing\n}\nsensor pair : finch-beam {\n  watches closing\n}\nsensor strip : finch-edge {\n  watches closing\n}\nsensor dumb : dumb {\n  watches closing\n}\nsensor-model dumb {\n  kind beam\n  output relay\n}\ncontrol pad {\n  acts impulse\n  consumes 70 mA\n}\ncontrol key {\n  acts impulse\n}\ndrive-model d {\n  kind rack\n  consumes 3 A\n}\ndrive pump : d {\n  moves x\n}\n';
  const file = (wires: string, own?: string): string =>
    `language 1\nuse "../library/sensors.gate"\n${model(own)}${devices}${block('panel box : p', wires)}`;
  const loads = (wires: string): unknown => values(file(wires), 'panel.box.output.');

  it('is a drive over its motor terminals, with what its model draws', () => {
    expect(told(file('wire pump to M1 M2'), 'panel.box.output.M1.load')).toBe(
      'panel.box.output.M1.load 3 A at “wire pump to M1 M2”\n  pump: 3 A\n  what the output can give: 8 A (panel-model p)\n',
    );
    expect(loads('wire pump to M1 M2\nwire pump to M2 M1')).toEqual({ 'M1.load': 3 });
    expect(values(file('wire pump to M1 M2').replace('  consumes 3 A\n', ''), 'panel.box.output.')).toEqual({});
  });
  // 370 W / (0.7 · 0.8 · 230 V).
  it('is a drive by the plate of its motor, where its model does not say what it draws', () => {
    const text = file('wire pump to M1 M2').replace('  consumes 3 A\n', '  motor 370 W efficiency 70 % power-factor 80 %\n');
    expect(values(text, 'panel.box.output.')).toEqual({});
    expect(values(`${text}site "Example" {\n  users limited\n  supply 230 V 50 Hz\n}\n`, 'panel.box.output.')).toEqual({
      'M1.load': 2.87267,
    });
  });
  it('is not a contact that only switches it, nor a test wire, nor what is not there', () => {
    for (const wires of [
      'wire relay to G1 V1',
      'wire relay to T1 T0',
      'wire pad to K1 V1',
      'wire strip to V1 V0',
      'wire relay test to V1',
      'wire pair test to T1',
      'wire pump test to V1',
      'wire ghost to T1 T0',
      'wire ghost supply to V1 V0',
    ])
      expect(loads(wires), wires).toEqual({});
    expect(loads('wire relay to G1 V1\nwire relay supply to V1 V0\nwire pair to T1 T0')).toEqual({ 'V1.load': 0.04, 'T1.load': 0.025 });
  });
  it('is nothing for a resistive edge, and unknown for a device that does not say', () => {
    expect(told(file('wire strip supply to V1 V0\nwire pad supply to V1 V0'), 'panel.box.output.V1.load')).toBe(
      'panel.box.output.V1.load 0.07 A at “wire strip supply to V1 V0”\n  strip: 0 A\n  pad: 0.07 A\n  what the output can give: 0.2 A (panel-model p)\n',
    );
    for (const name of ['dumb', 'key']) expect(loads(`wire ${name} supply to V1 V0\nwire pad supply to V2 V0`), name).toEqual({});
  });
  it('has no figure without outputs, or where nothing hangs on them', () => {
    expect(values(file('wire pad supply to V1 V0', 'measures K1 over 1 kohm at 5 V'), 'panel.box.output.')).toEqual({});
    expect(loads('')).toEqual({});
    expect(values(file('wire pad supply to V1 V0').replace('panel box : p', 'panel box'), 'panel.')).toEqual({});
  });

  const battery = (voltage: string, wires: string, own?: string): string =>
    file(`${wires}\nbattery {\n  voltage ${voltage}\n  capacity 7 Ah\n}`, own);
  const wires =
    'wire relay supply to V1 V0\nwire relay to G1 G0\nwire strip to K1 T0\nwire pad to K1 T0\nwire key to K1 T0\nwire pump to M1 M2\naccessory "receiver" draws 30 mA from V1';
  // 40 mA, 70 mA and 30 mA; the drive stands, the edge and the key draw nothing.
  const own = '  the panel itself: 0.06 A (panel-model p)\n  relay: 0.04 A (sensor-model finch-relay)\n  pad: 0.07 A\n  receiver: 0.03 A\n';
  it('at rest, is each sensor and control once, and no drive', () => {
    expect(told(file(wires), 'panel.box.standby-current')).toBe(`panel.box.standby-current 0.2 A at “panel box”\n${own}`);
    expect(told(file(''), 'panel.box.standby-current')).toBe(
      'panel.box.standby-current 0.06 A at “panel box”\n  the panel itself: 0.06 A (panel-model p)\n',
    );
  });
  it('at rest, is drawn from a battery of half the voltage twice over, but for the panel itself', () => {
    expect(told(battery('12 V', wires), 'panel.box.standby-current')).toBe(
      `panel.box.standby-current 0.34 A at “panel box”\n${own}  outputs over battery voltage: 2\n`,
    );
    expect(told(battery('24 V', wires), 'panel.box.standby-current')).toBe(`panel.box.standby-current 0.2 A at “panel box”\n${own}`);
    // A lower output saves nothing, and of several the highest counts, in any order, up to 60 V: what lies above is no output for sensors.
    const standby = (outs: string): unknown => values(battery('12 V', wires, outs), 'panel.box.')['standby-current'];
    expect(standby('output V1 gives 0.2 A at 5 V')).toBe(0.2);
    for (const outs of [
      'output V1 gives 0.2 A at 18 V\noutput T1 gives 1 A at 60 V\noutput M1 gives 1 A at 24 V',
      'output T1 gives 1 A at 60 V\noutput M1 gives 1 A at 61 V',
    ])
      expect(standby(outs)).toBe(0.76);
    expect(standby('output V1 gives 0.2 A at 24 V\noutput M1 gives 8 A at 230 V')).toBe(0.34);
    expect(told(battery('12 V', wires).replace('    voltage 12 V\n', ''), 'panel.box.standby-current')).not.toContain('outputs over');
  });
  it('at rest, is unknown where the panel does not say, or a sensor that needs a supply', () => {
    expect(told(file(`${wires}\nwire dumb to G1 G0`), 'panel.box.standby-current')).toBe('panel.box.standby-current none\n');
    expect(told(file(wires).replace('  standby 60 mA\n', ''), 'panel.box.standby-current')).toBe('panel.box.standby-current none\n');
    expect(told(file(`${wires}\nwire ghost to G1 G0`), 'panel.box.standby-current')).toContain('standby-current 0.2 A');
  });
});

describe('where the adjusters stand', () => {
  const adjuster = (name: string, sets: string, range: string, more = ''): string =>
    block(`adjuster ${name}`, `sets ${sets}\nrange ${range}${more}`);
  const adjusters =
    adjuster('a', 'dwell', '5 s .. 25 s') +
    adjuster('b', 'seat', '0 s .. 4 s') +
    adjuster('c', 'speed', '20 % .. 100 %') +
    adjuster('d', 'force', '10 % .. 60 %') +
    adjuster('e', 'slow-zone', '0 % .. 40 %') +
    adjuster('f', 'lag-opening', '0 s .. 8 s') +
    adjuster('g', 'lag-closing', '0 s .. 20 s', '\nsweep 300 deg');
  const file = (motion: string, own = adjusters): string =>
    `language 1\n${block('panel-model p', own.trimEnd())}panel box : p {\n}\n${motion === '' ? '' : block('motion', motion)}`;
  const whole = 'dwell 10 s\nseat 3 s\nspeed 80 %\nforce 20 %\nslow-zone last 10 % at 30 %\nlag opening 3 s\nlag closing 15 s';
  const all = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((name) => `panel.box.adjuster.${name}`);
  const shares = (motion: string, own?: string): unknown => values(file(motion, own), 'panel.box.adjuster.');

  it('by what the motion asks of each', () => {
    const inputs = (asked: string, low: string, high: string, sweep = 270): string =>
      `  value asked for: ${asked}\n  at the low stop: ${low} (panel-model p)\n  at the high stop: ${high} (panel-model p)\n  sweep: ${sweep} deg (panel-model p)\n`;
    expect(told(file(whole), ...all)).toBe(
      `panel.box.adjuster.a 0.25 at “dwell 10 s”: a about a quarter turn from the low stop\n${inputs('10 s', '5 s', '25 s')}` +
        `panel.box.adjuster.b 0.75 at “seat 3 s”: b about five eighths of a turn from the low stop\n${inputs('3 s', '0 s', '4 s')}` +
        `panel.box.adjuster.c 0.75 at “speed 80 %”: c about five eighths of a turn from the low stop\n${inputs('0.8', '0.2', '1')}` +
        `panel.box.adjuster.d 0.2 at “force 20 %”: d about an eighth of a turn from the low stop\n${inputs('0.2', '0.1', '0.6')}` +
        `panel.box.adjuster.e 0.25 at “slow-zone last 10 % at 30 %”: e about a quarter turn from the low stop\n${inputs('0.1', '0', '0.4')}` +
        `panel.box.adjuster.f 0.375 at “lag opening 3 s”: f about a quarter turn from the low stop\n${inputs('3 s', '0 s', '8 s')}` +
        `panel.box.adjuster.g 0.75 at “lag closing 15 s”: g about five eighths of a turn from the low stop\n${inputs('15 s', '0 s', '20 s', 300)}`,
    );
  });
  it('only for what is asked', () => {
    for (const [i, line] of whole.split('\n').entries())
      expect(shares(line), line).toEqual({
        [['a', 'b', 'c', 'd', 'e', 'f', 'g'][i] as string]: [0.25, 0.75, 0.75, 0.2, 0.25, 0.375, 0.75][i],
      });
    expect(shares('')).toEqual({});
    expect(shares('pre-warning 2 s')).toEqual({});
    expect(values(file(whole).replace('panel box : p', 'panel box'), 'panel.')).toEqual({});
  });
  it('not where the value is out of range, or the range one of something else, or it sets nothing', () => {
    expect(shares('dwell 26 s\nseat 3 s')).toEqual({ b: 0.75 });
    expect(
      shares(
        whole,
        adjuster('a', 'dwell', '0 % .. 50 %') +
          adjuster('c', 'speed', '0 s .. 2 s') +
          adjuster('e', 'slow-zone', '0 s .. 2 s') +
          adjuster('f', 'lag-opening', '0 % .. 50 %'),
      ),
    ).toEqual({});
    expect(shares(whole, block('adjuster a', 'range 5 s .. 25 s') + block('adjuster b', 'sets seat'))).toEqual({});
  });
  it('a stop is told as such', () => {
    expect(told(file('dwell 5 s'), 'panel.box.adjuster.a')).toContain('“dwell 5 s”: a at the low stop\n');
    expect(told(file('dwell 25 s'), 'panel.box.adjuster.a')).toContain('“dwell 25 s”: a at the high stop\n');
  });
});

describe('what a panel sees of an edge loop', () => {
  const file = (terminal: string, terminator: string, more = ''): string =>
    `language 1\nuse "../library/sensors.gate"\n${block('panel-model p', `terminal E0 common\nterminal E1 edge-input common E0${terminal}`)}sensor front : finch-edge {\n  watches closing\n  terminator ${terminator}\n${more}}\npanel box : p {\n  wire front to E1 E0\n}\n`;
  const id = (name: string): string => `panel.box.loop.E1.${name}`;

  it('is told without what the panel does not say, and without a cable that is not there', () => {
    // 820 ohm ± 10 %.
    const inputs =
      '  RT, terminator: 820 ohm\n  tolerance of the terminator: 0.1\n  cables there and back, warm: 0 ohm (default: no cable is stated)\n';
    expect(told(file('', '820 ohm ± 10 %'), id('resistance'), id('rest-least'), id('rest-greatest'), id('rest-voltage'))).toBe(
      `panel.box.loop.E1.resistance 820 ohm at “wire front to E1 E0”: 820 ohm, by the tolerances 738 ohm to 902 ohm\n  terminator of front: 820 ohm\n  tolerance of the terminator of front: 0.1\n` +
        `panel.box.loop.E1.rest-least 738 ohm at “wire front to E1 E0”: 738 ohm\n${inputs}panel.box.loop.E1.rest-greatest 902 ohm at “wire front to E1 E0”: 902 ohm\n${inputs}panel.box.loop.E1.rest-voltage none\n`,
    );
    expect(told(file(' terminator 1 kohm', '1 kohm ± 1 %'), id('resistance'))).toBe(
      'panel.box.loop.E1.resistance 1000 ohm at “wire front to E1 E0”: 1 kohm, by the tolerances 990 ohm to 1.01 kohm\n  terminator of front: 1000 ohm\n  tolerance of the terminator of front: 0.01\n  expected at E1: 1000 ohm (panel-model p)\n',
    );
  });
  it('is not told for a chain that leads nowhere, an edge without a terminator, or a panel without a name', () => {
    const ids = ['resistance', 'rest-least', 'rest-greatest'].map(id);
    const none = ids.map((each) => `${each} none\n`).join('');
    for (const text of [
      file('', '820 ohm', '  chains-into ghost\n'),
      file('', '820 ohm').replace('  terminator 820 ohm\n', ''),
      file('', '820 ohm').replace('wire front to', 'wire ghost to'),
    ])
      expect(told(text, ...ids)).toBe(none);
    expect(judge(file('', '820 ohm').replace('panel box', 'panel')).figures.map((figure) => figure.id)).toEqual([]);
  });
});
