// What the figures of the traffic read of a file: every value by hand, from 90 or 2000 vehicles an hour at a pair of leaves
// that take 15 s and 10 s.
import { describe, expect, it } from 'vitest';
import { figures } from '../../server/figures/traffic/figure.ts';
import { goesInto, valuesIn } from './told.ts';

const models = `
drive-model slow {
  kind direct
  rotation 120 deg
  shaft-speed 6 deg/s
  duty 40 %
}
drive-model quick {
  kind direct
  rotation 120 deg
  shaft-speed 9 deg/s
  duty 20 %
}
`;
const leaf = (name: string, more = ''): string => `leaf ${name} {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n${more}}\n`;
const drive = (leafName: string, model: string): string => `drive of-${leafName} : ${model} {\n  moves ${leafName}\n}\n`;
const site = (...facts: readonly string[]): string => `site {\n${facts.join('\n')}\n}\n`;
const motion = (...facts: readonly string[]): string => `motion {\n${facts.join('\n')}\n}\n`;
/** The covering leaf of the slow drive closes last: opening 15 s, closing 15 s and the lag. */
const pair = models + leaf('west', '  closes onto east\n') + leaf('east') + drive('west', 'slow') + drive('east', 'quick');
const ofTraffic = (text: string): Record<string, number> => valuesIn(figures, text);
const cyclesIn = (text: string): number | undefined => ofTraffic(text)['motion.cycles-an-hour'];

describe('cycles an hour', () => {
  // 15 s, 19 s, twice 3 s and the 20 s for which it stands open are 60 s.
  it('are no more than follow one another: warning, opening, dwell, warning, closing', () => {
    const text = pair + site('traffic 2000 /h', 'vehicle 5 m at 3.5 m/s') + motion('lag closing 4 s', 'pre-warning 3 s', 'dwell 20 s');
    expect(cyclesIn(text)).toBe(60);
    expect(goesInto(text, 'motion.cycles-an-hour')).toEqual([
      'motion.cycles-an-hour at “traffic 2000 /h”',
      '  vehicles an hour: 2000 1/h',
      '  time of a whole cycle: 60 s (pre-warning, opening, dwell or else the vehicle’s passage, pre-warning, closing)',
    ]);
  });
  // (5 m + 2 m) / 3.5 m/s are 2 s: a cycle of 42 s.
  it('by the passage of the vehicle where no dwell is stated', () =>
    expect(cyclesIn(pair + site('traffic 2000 /h', 'vehicle 5 m at 3.5 m/s') + motion('lag closing 4 s', 'pre-warning 3 s'))).toBe(
      85.7143,
    ));
  it('by the movements alone where neither is known', () =>
    expect(cyclesIn(pair + site('traffic 2000 /h') + motion('lag closing 4 s', 'pre-warning 3 s'))).toBe(90));
  it('with a dwell of nothing, which is not the same as none', () =>
    expect(
      cyclesIn(pair + site('traffic 2000 /h', 'vehicle 5 m at 3.5 m/s') + motion('lag closing 4 s', 'pre-warning 3 s', 'dwell 0 s')),
    ).toBe(90));
  it('are the vehicles where they come more seldom', () =>
    expect(cyclesIn(pair + site('traffic 90 /h') + motion('lag closing 4 s', 'pre-warning 3 s'))).toBe(90));
});

describe('the queue', () => {
  // 3 s of warning, 15 s of opening, 2 s of passing: 20 s, half of the time at 90 an hour. 0.25 wait, for 0.5 · 20 / (2 · 0.5) s.
  const text = pair + site('traffic 90 /h', 'vehicle 5 m at 3.5 m/s') + motion('pre-warning 3 s', 'dwell 8 s');
  it('by warning, opening and passage, the vehicle’s length for each that waits', () => {
    const {
      'motion.queue-load': load,
      'motion.queue-length': length,
      'motion.queue-wait': wait,
      'motion.queue-vehicles': vehicles,
      'motion.queue-road': road,
      'motion.queue-overflow': overflow,
    } = ofTraffic(text);
    expect([load, length, wait, vehicles, road, overflow]).toEqual([0.5, 0.25, 10, 3, 15, undefined]);
    const busy = [
      '  vehicles an hour: 90 1/h',
      '  time for which each keeps the gate busy: 20 s (pre-warning, motion.opening-time and motion.clearance-time)',
    ];
    expect(goesInto(text, 'motion.queue-load', 'motion.queue-wait', 'motion.queue-road')).toEqual([
      'motion.queue-load at “traffic 90 /h”: 50 %',
      ...busy,
      'motion.queue-wait at “traffic 90 /h”',
      ...busy,
      '  load: 0.5',
      'motion.queue-road at “traffic 90 /h”',
      '  vehicles before the gate: 3 (motion.queue-vehicles)',
      '  room for each: 5 m (the longest vehicle)',
    ]);
  });
  it('by what is stated, where it is', () => {
    const stated = text.replace('traffic 90 /h', 'traffic 90 /h taking 10 s room 6.5 m');
    const values = ofTraffic(stated);
    expect(values['motion.queue-load']).toBe(0.25);
    expect(goesInto(stated, 'motion.queue-load', 'motion.queue-road')).toEqual([
      'motion.queue-load at “traffic 90 /h taking 10 s room 6.5 m”: 25 %',
      '  vehicles an hour: 90 1/h',
      '  time for which each keeps the gate busy: 10 s',
      'motion.queue-road at “traffic 90 /h taking 10 s room 6.5 m”',
      `  vehicles before the gate: ${values['motion.queue-vehicles']} (motion.queue-vehicles)`,
      '  room for each: 6.5 m',
    ]);
    // (1 − ρ)·e^ρ = 0.963 of the time there is none or one.
    expect([values['motion.queue-vehicles'], values['motion.queue-road']]).toEqual([1, 6.5]);
  });
  it('has a load without a vehicle stated, and no road', () =>
    expect(Object.keys(ofTraffic(site('traffic 90 /h taking 10 s'))).sort()).toEqual(
      ['cycles-an-hour', 'queue-length', 'queue-load', 'queue-vehicles', 'queue-wait'].map((name) => `motion.${name}`),
    ));
  it('is not told where nobody knows how long the gate is busy, and there is nothing to tell without traffic', () => {
    const known = { 'motion.cycles-an-hour': 90 };
    expect(ofTraffic(site('traffic 90 /h'))).toEqual(known);
    expect(ofTraffic(site('traffic 90 /h', 'vehicle 5 m at 3.5 m/s'))).toEqual(known);
    expect(ofTraffic(site('traffic 90 /h', 'vehicle 5 m at 3.5 m/s', 'waiting-room 60 m'))).toEqual(known);
    expect(Object.keys(ofTraffic(pair + site('traffic 90 /h')))).not.toContain('motion.queue-load');
    for (const none of [pair, pair + site('vehicle 5 m at 3.5 m/s', 'waiting-room 60 m') + motion('dwell 8 s'), ''])
      expect(ofTraffic(none)).toEqual({});
  });
  it('has a load and no more where the gate cannot keep up', () => {
    expect(ofTraffic(site('traffic 240 /h taking 20 s room 6 m', 'waiting-room 60 m'))).toEqual({
      'motion.cycles-an-hour': 240,
      'motion.queue-load': 1.33333,
    });
  });
});

describe('the room for waiting', () => {
  const text = (load: number, room: number): string => site(`traffic ${load * 100} /h taking 36 s room 6 m`, `waiting-room ${room} m`);
  it('is passed for the share of the time with more vehicles than it holds, and stands at the room', () => {
    // P(0) + P(1) at half load: 0.5 · e^0.5 = 0.824361; one metre less than two vehicles need holds one.
    expect(ofTraffic(text(0.5, 11))['motion.queue-overflow']).toBe(0.175639);
    expect(goesInto(text(0.5, 11), 'motion.queue-overflow')).toEqual([
      'motion.queue-overflow at “waiting-room 11 m”: 17.6 %',
      '  vehicles an hour: 50 1/h',
      '  time for which each keeps the gate busy: 36 s',
      '  load: 0.5',
      '  vehicles that the room holds: 1',
    ]);
  });
  it('holds none where it is shorter than a vehicle: whenever the gate is busy it is passed', () =>
    expect(ofTraffic(text(0.5, 5))['motion.queue-overflow']).toBe(0.5));
  it('is as good as never passed where it holds more than ever come', () =>
    expect(ofTraffic(text(0.5, 900))['motion.queue-overflow']).toBeLessThan(1e-8));
  it('is judged for as many vehicles as are followed, and no more', () => {
    const full = ofTraffic(text(0.999, 360));
    expect(full['motion.queue-overflow']).toBeGreaterThan(0.8);
    expect(Object.keys(full)).not.toContain('motion.queue-vehicles');
    expect(Object.keys(full)).not.toContain('motion.queue-road');
    expect(Object.keys(ofTraffic(text(0.999, 366)))).not.toContain('motion.queue-overflow');
  });
});

describe('the duty', () => {
  // 2 · (15 s + 1.5 s) and 2 · (10 s + 1.5 s), 40 times an hour: 1320 s and 920 s.
  const facts = site('traffic 40 /h') + motion('seat 1.5 s');
  const leaves = leaf('west') + leaf('east');
  const [west, east] = [drive('west', 'slow'), drive('east', 'quick')];
  const duties = { 'drive.of-west.duty': 0.366667, 'drive.of-east.duty': 0.255556, 'motion.duty': 0.366667 };
  it('is that of the busiest drive, first or second', () => {
    for (const drives of [west + east, east + west]) expect(ofTraffic(models + leaves + drives + facts)).toMatchObject(duties);
    expect(goesInto(models + leaves + east + west + facts, 'motion.duty', 'drive.of-east.duty')).toEqual([
      'motion.duty at “traffic 40 /h”: 36.7 %',
      '  run time: 15 s (leaf.west.run-time)',
      '  seat: 1.5 s',
      '  running time in a cycle: 33 s',
      '  cycles an hour: 40 1/h (motion.cycles-an-hour)',
      'drive.of-east.duty at “traffic 40 /h”: 25.6 %',
      '  run time: 10 s (leaf.east.run-time)',
      '  seat: 1.5 s',
      '  running time in a cycle: 23 s',
      '  cycles an hour: 40 1/h (motion.cycles-an-hour)',
    ]);
  });
  it('allows as many cycles as the drive that is rated for the fewest, first or second', () => {
    // 0.2 · 3600 / 23 against 0.4 · 3600 / 33.
    for (const drives of [west + east, east + west]) {
      const text = models + leaves + drives + facts;
      expect(ofTraffic(text)['motion.cycles-allowed']).toBe(31.3043);
      expect(goesInto(text, 'motion.cycles-allowed')).toEqual([
        'motion.cycles-allowed at “traffic 40 /h”',
        '  duty: 0.2 (drive-model quick)',
        '  running time in a cycle: 23 s (drive of-east)',
      ]);
    }
  });
  it('names the first of two that are alike', () => {
    const text = models + leaves + west + drive('east', 'slow') + facts;
    expect(goesInto(text, 'motion.duty')[1]).toBe('  run time: 15 s (leaf.west.run-time)');
    expect(goesInto(text, 'motion.cycles-allowed')[2]).toBe('  running time in a cycle: 33 s (drive of-west)');
  });
  it('has no seat where none is stated', () => {
    const text = models + leaves + west + site('traffic 40 /h');
    expect(ofTraffic(text)['drive.of-west.duty']).toBe(0.333333);
    expect(goesInto(text, 'drive.of-west.duty')[2]).toBe('  seat: 0 s');
    expect(goesInto(text + motion('dwell 9 s'), 'drive.of-west.duty')[2]).toBe('  seat: 0 s');
  });
  it('is not told of drives without a model, a leaf or a run time; nor are the cycles of one that is not rated', () => {
    const unrated = models.replace('  duty 40 %\n', '');
    const text = unrated + leaves + 'drive none {\n  moves east\n}\ndrive idle : quick {\n}\n' + west + facts;
    expect(ofTraffic(text)).toEqual({ 'motion.cycles-an-hour': 40, 'drive.of-west.duty': 0.366667, 'motion.duty': 0.366667 });
    expect(ofTraffic(text + drive('east', 'quick'))['motion.cycles-allowed']).toBeUndefined();
  });
});
