// What the figures of a battery and the sun read of a file: 0.1 A at rest are 8640 C a day; leaves of 15 s and 10 s with 1.5 s at
// the stop and drives of 5 A and 4 A draw 2 · 5 · 16.5 + 2 · 4 · 11.5 = 257 C in a cycle. All by hand.
import { describe, expect, it } from 'vitest';
import { figures } from '../../server/figures/battery/figure.ts';
import { goesInto, valuesIn } from './told.ts';

interface Parts {
  readonly standby?: string;
  readonly drives?: string;
  readonly wires?: string;
  readonly battery?: string;
  readonly solar?: string;
  readonly site?: string;
  readonly motion?: string;
}
const driveModel = (name: string, speed: number, current: string): string =>
  `drive-model ${name} {\n  kind direct\n  rotation 120 deg\n  shaft-speed ${speed} deg/s\n${current}}\n`;
const leaf = (name: string): string => `leaf ${name} {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n`;
const drives = 'drive d : slow {\n  moves west\n}\ndrive e : quick {\n  moves east\n}\n';
const wires = '  wire d to D1\n  wire d to D2\n  wire e to D3\n  wire nobody to D3\n';
const text = ({
  standby = '  standby 100 mA\n',
  battery = '    voltage 24 V\n    capacity 7 Ah over 20 h\n',
  solar = '',
  site = '',
  motion = '  seat 1.5 s\n',
  ...of
}: Parts): string =>
  `panel-model p {\n${standby}  terminal D1 motor\n  terminal D2 motor\n  terminal D3 motor\n}\n${driveModel('slow', 6, '  consumes 5 A\n')}${driveModel('quick', 9, '  consumes 4 A\n')}${driveModel('mute', 6, '')}` +
  `${leaf('west')}${leaf('east')}${of.drives ?? drives}${site === '' ? '' : `site {\n${site}}\n`}${motion === '' ? '' : `motion {\n${motion}}\n`}` +
  `panel box : p {\n${of.wires ?? wires}${battery === '' ? '' : `  battery {\n${battery}  }\n`}${solar === '' ? '' : `  solar {\n${solar}  }\n`}}\n`;
const plain = '    voltage 24 V\n    capacity 7 Ah over 20 h\n';
const ofBattery = (parts: Parts): Record<string, number> => valuesIn(figures, text(parts));
const daily = (parts: Parts): number | undefined => ofBattery(parts)['panel.box.daily-charge'];

describe('what is drawn in a day', () => {
  it('at rest, where nothing is said of cycles', () => {
    expect(ofBattery({})).toEqual({ 'panel.box.daily-charge': 8640, 'panel.box.standby-time': 126_000 });
    expect(goesInto(text({}), 'panel.box.daily-charge')).toEqual([
      'panel.box.daily-charge at “battery”: 2.4 Ah a day',
      '  standby current: 0.1 A (panel.box.standby-current)',
      '  cycles a day: 0 (default: none)',
      '  charge for a cycle: current of each drive × twice its run and seat: 0 C',
    ]);
    expect(goesInto(text({ site: '  users public\n' }), 'panel.box.daily-charge')[2]).toBe('  cycles a day: 0 (default: none)');
  });
  it('and by the cycles of the battery, each drive once; those of the site do not count then', () => {
    const parts = { battery: `${plain}    cycles 30 /day\n`, site: '  cycles 500 /day\n' };
    expect(daily(parts)).toBe(8640 + 30 * 257);
    expect(goesInto(text(parts), 'panel.box.daily-charge')).toEqual([
      'panel.box.daily-charge at “battery”: 4.54 Ah a day',
      '  standby current: 0.1 A (panel.box.standby-current)',
      '  cycles a day: 30',
      '  charge for a cycle: current of each drive × twice its run and seat: 257 C',
    ]);
  });
  it('or else by those of the site', () => {
    const parts = { site: '  cycles 10 /day\n' };
    expect(daily(parts)).toBe(8640 + 10 * 257);
    expect(goesInto(text(parts), 'panel.box.daily-charge')[2]).toBe('  cycles a day: 10 (the site)');
  });
  it('without a seat where none is stated', () => {
    for (const motion of ['', '  dwell 9 s\n'])
      expect(daily({ site: '  cycles 10 /day\n', motion })).toBe(8640 + 10 * (2 * 5 * 15 + 2 * 4 * 10));
  });
  it('nothing is told where a drive does not say what it draws or how long it runs, where it moves nothing, or none is wired', () => {
    const site = '  cycles 10 /day\n';
    for (const more of [
      { drives: drives.replace(': quick', ': mute') },
      { drives: drives.replace('  moves east\n', '') },
      { drives: drives.replace('drive e : quick', 'drive e') },
      { wires: '' },
    ]) {
      expect(ofBattery({ site, ...more }), JSON.stringify(more)).toEqual({});
      // At rest none of that counts.
      expect(daily(more), JSON.stringify(more)).toBe(8640);
    }
    const long = text({ site }).replace('slow {\n  kind direct\n  rotation 120 deg', 'slow {\n  kind rack');
    expect(valuesIn(figures, long)).toEqual({});
  });
  it('nothing is told without a battery, its capacity, or what is drawn at rest, if that is anything', () => {
    for (const parts of [{ battery: '' }, { battery: '    voltage 24 V\n' }, { standby: '' }, { standby: '  standby 0 A\n' }])
      expect(ofBattery({ ...parts, site: '  cycles 10 /day\n', solar: '    peak 60 W\n    sun 1 h\n' }), JSON.stringify(parts)).toEqual({});
  });
  it('the second of two panels has one of its own', () => {
    const both = `panel other : p {\n}\n${text({})}`;
    expect(valuesIn(figures, both)).toEqual({ 'panel.box.daily-charge': 8640, 'panel.box.standby-time': 126_000 });
    expect(goesInto(both, 'panel.box.daily-charge')).toHaveLength(4);
  });
});

describe('the time at rest', () => {
  it('is told with the longest rating, and the exponent of the longest and the shortest, in whatever order they stand', () => {
    // ln(20/5) / ln(1.12 A / 0.35 A) = 1.19184. 0.5 A: 20 h · (0.35/0.5)^k, half of it.
    const lines = ['    capacity 5.6 Ah over 5 h\n', '    capacity 6.5 Ah over 10 h\n', '    capacity 7 Ah over 20 h\n'];
    const expected = [
      '  I, standby current: 0.5 A (panel.box.standby-current)',
      '  C, rated capacity: 25200 C',
      '  H, time of that rating: 72000 s',
      '  k, Peukert exponent: 1.19184 (the two capacities stated)',
      '  share that may be used: 0.5 (default)',
      '  temperature factor: 1 (default: 27 °C and above)',
    ];
    const exponent = Math.log(4) / Math.log(3.2);
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
      [1, 0, 2],
      [1, 2, 0],
    ]) {
      const parts = { standby: '  standby 500 mA\n', battery: order.map((i) => lines[i]).join('') };
      expect(ofBattery(parts)['panel.box.standby-time']).toBe(Number(((72_000 * 0.7 ** exponent) / 2).toPrecision(6)));
      const [head, ...inputs] = goesInto(text(parts), 'panel.box.standby-time');
      expect(inputs).toEqual(expected);
      // It points to the first line.
      expect(head).toBe(`panel.box.standby-time at “${(lines[order[0] as number] as string).trim()}”: 6.54 h`);
    }
  });
  it('has the usual exponent where two ratings are of one time', () =>
    expect(
      goesInto(text({ battery: '    capacity 7 Ah over 20 h\n    capacity 6 Ah over 20 h\n' }), 'panel.box.standby-time').slice(2, 5),
    ).toEqual([
      '  C, rated capacity: 25200 C',
      '  H, time of that rating: 72000 s',
      '  k, Peukert exponent: 1.25 (lead-acid, from memory)',
    ]));
  it('is told in hours, and in days from two on', () => {
    // 6 Ah / 0.125 A are 48 h.
    const at = (capacity: string): string | undefined =>
      goesInto(
        text({ standby: '  standby 125 mA\n', battery: `    capacity ${capacity} over 20 h\n    discharge 100 %\n` }),
        'panel.box.standby-time',
      )[0]?.split(': ')[1];
    expect([at('6 Ah'), at('5.99 Ah')]).toEqual(['2 days', '47.9 h']);
  });
  it('of a cold battery is shorter, and says where the table ends', () => {
    const at = (temperature: string): [number | undefined, string | undefined] => {
      const parts = { battery: `${plain}    discharge 60 %\n    coldest ${temperature}\n` };
      return [ofBattery(parts)['panel.box.standby-time'], goesInto(text(parts), 'panel.box.standby-time').at(-1)];
    };
    // 25 200 C · 0.6 / 0.1 A over 1.19 at 50 °F, and over 1.59 at 20 °F and below.
    expect(at('10 °C')).toEqual([127_059, '  temperature factor: 1.19 (simplified IEEE method, at 10 °C)']);
    expect(at('-6.66666666666667 °C')).toEqual([95_094.3, '  temperature factor: 1.59 (simplified IEEE method, at -7 °C)']);
    expect(at('-10 °C')).toEqual([
      95_094.3,
      '  temperature factor: 1.59 (simplified IEEE method, whose table ends at -7 °C: it should be more, at -10 °C)',
    ]);
    expect(goesInto(text({ battery: `${plain}    discharge 60 %\n` }), 'panel.box.standby-time').slice(-2)).toEqual([
      '  share that may be used: 0.6',
      '  temperature factor: 1 (default: 27 °C and above)',
    ]);
  });
});

it('the capacity needed stands at the time that it is to last', () => {
  // 8640 C a day, 36 h, 1.19 at 10 °C, 60 %.
  const parts = { battery: `${plain}    lasts 36 h\n    discharge 60 %\n    coldest 10 °C\n` };
  expect(ofBattery(parts)['panel.box.battery-needed']).toBe(25_704);
  expect(goesInto(text(parts), 'panel.box.battery-needed')).toEqual([
    'panel.box.battery-needed at “lasts 36 h”: 7.14 Ah',
    '  charge a day: 8640 C (panel.box.daily-charge)',
    '  time that it is to last: 129600 s',
    '  share that may be used: 0.6',
    '  temperature factor: 1.19 (simplified IEEE method, at 10 °C)',
    '  what the battery gives at the average current: 25200 C (Peukert’s law, exponent 1.25 (lead-acid, from memory))',
  ]);
});

describe('the sun', () => {
  const solar = '    peak 60 W\n    sun 1.5 h\n';
  const values = { 'panel.box.daily-charge': 8640, 'panel.box.standby-time': 126_000 };
  it('gives what is stated of it', () => {
    // 60 W · 5400 s · 0.8; 8640 C · 24 V = 207 360 J over 5400 s · 0.8.
    const parts = { solar: `${solar}    efficiency 80 %\n` };
    expect(ofBattery(parts)).toEqual({ ...values, 'panel.box.solar-yield': 259_200, 'panel.box.solar-needed': 48 });
    expect(goesInto(text(parts), 'panel.box.solar-yield', 'panel.box.solar-needed')).toEqual([
      'panel.box.solar-yield at “peak 60 W”: 72 Wh a day; 57.6 Wh are drawn',
      '  Wp, rated power: 60 W',
      '  peak sun a day: 5400 s',
      '  η, efficiency: 0.8',
      'panel.box.solar-needed at “sun 1.5 h”',
      '  energy drawn in a day: 207360 J (panel.box.daily-charge × battery voltage)',
      '  peak sun a day: 5400 s',
      '  η, efficiency: 0.8',
    ]);
  });
  it('is not told without its power, its hours, or the battery’s voltage', () => {
    for (const parts of [{ solar: '    peak 60 W\n' }, { solar: '    sun 1.5 h\n' }, { solar, battery: '    capacity 7 Ah over 20 h\n' }])
      expect(ofBattery(parts), JSON.stringify(parts)).toEqual(values);
  });
});
