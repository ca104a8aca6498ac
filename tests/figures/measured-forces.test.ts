// The forces measured on a leaf, sorted by hand: what belongs together, what of it is judged, and what that proves.
import { describe, expect, it } from 'vitest';
import { type ForceRecords, forceRecordsOf, inCalibration, isRagged } from '../../server/figures/force-records/working.ts';
import type { Leaf } from '../../server/model/index.ts';
import { judge } from '../kit/pages.ts';

const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const swing = ['width 2 m', 'height 1.8 m', 'opens inward 90 deg'];
const calibrated = 'instrument "G-1" calibrated 2026-01-10';
/** Lines of one day, written without the name of the leaf. */
interface Day {
  readonly on?: string | undefined;
  readonly instrument?: string;
  readonly force: readonly string[];
}
const dayText = ({ on, instrument, force }: Day): string =>
  block('measured', [
    ...(on === undefined ? [] : [`on ${on}`]),
    'by "KL"',
    ...(instrument === undefined ? [] : [instrument]),
    ...force.map((line) => `force west ${line}`),
  ]);
function leafWith(leaf: readonly string[], days: readonly Day[]): Leaf {
  const west = judge(`language 1\n${block('leaf west', ['mass 150 kg', ...leaf])}${days.map(dayText).join('')}`).installation.leaves[0];
  if (west === undefined) throw new Error('no leaf');
  return west;
}
function recordsOf(leaf: readonly string[], ...days: readonly Day[]): ForceRecords {
  const records = forceRecordsOf(leafWith(leaf, days));
  if (records === undefined) throw new Error('nothing measured');
  return records;
}
/** A reading of 100 N at a place, or of another peak. */
const at = (gap: string, height: string, peak = '100 N', movement = 'closing'): string =>
  `${movement} gap ${gap} height ${height} peak ${peak} after-750-ms ${peak.replaceAll(/\d+/g, '50')} after-5-s ${peak.replaceAll(/\d+/g, '10')}`;
const spots = (records: ForceRecords): string[] =>
  records.spots.map(
    (spot) => `${spot.movement} ${spot.gap * 1000} ${spot.height * 1000} ${spot.day}: ${spot.readings.map(({ peak }) => peak).join(', ')}`,
  );

describe('readings belong together', () => {
  const on = '2026-05-14';
  it('by the point of the plan that they are at, however they are spread over lines', () => {
    // The first point is 50 mm wide at 50 mm; others are 300 mm at 900 mm and at 1500 mm.
    expect(
      spots(
        recordsOf(swing, {
          on,
          force: [
            at('50 mm', '50 mm', '101 N'),
            at('300 mm', '900 mm', '201 N'),
            at('55 mm', '60 mm', '102 N'),
            at('310 mm', '880 mm', '202 N'),
          ],
        }),
      ),
    ).toEqual(['closing 50 50 2026-05-14: 101, 102', 'closing 300 900 2026-05-14: 201, 202']);
  });
  it('on both sides of 500 mm too, and the limit is that of the point', () => {
    const records = recordsOf(swing, { on, force: [at('500 mm', '900 mm', '101 N'), at('510 mm', '900 mm', '402 N')] });
    expect(spots(records)).toEqual(['closing 500 900 2026-05-14: 101, 402']);
    expect(records.spots[0]?.excess).toEqual([{ which: 'peak', value: 402, limit: 400 }]);
    // Beyond what counts for the point it is a place of its own, with the limit of wider gaps.
    expect(recordsOf(swing, { on, force: [at('521 mm', '900 mm', '1400 N')] }).spots[0]).toMatchObject({ limitGap: 0.521, excess: [] });
    expect(recordsOf(swing, { on, force: [at('520 mm', '900 mm', '1400 N')] }).spots[0]).toMatchObject({
      limitGap: 0.5,
      excess: [{ which: 'peak', limit: 400 }],
    });
  });
  it('but not where a point takes any gap, and the limits differ', () => {
    const near = [...swing, 'room-when-open 450 mm'];
    const force = [at('450 mm', '1 m', '399 N', 'opening'), at('510 mm', '1 m', '1399 N', 'opening')];
    expect(spots(recordsOf(near, { on, force }))).toEqual(['opening 450 1000 2026-05-14: 399', 'opening 510 1000 2026-05-14: 1399']);
    expect(recordsOf(near, { on, force }).spots.flatMap(({ excess }) => excess.filter(({ which }) => which === 'peak'))).toEqual([]);
  });
  it('at no point of the plan only where gap, height and movement are the same', () => {
    const force = [
      at('200 mm', '900 mm', '101 N'),
      at('210 mm', '900 mm', '102 N'),
      at('200 mm', '890 mm', '103 N'),
      at('200 mm', '900 mm', '104 N'),
      at('200 mm', '900 mm', '105 N', 'opening'),
    ];
    const apart = [
      'closing 200 900 2026-05-14: 101, 104',
      'closing 210 900 2026-05-14: 102',
      'closing 200 890 2026-05-14: 103',
      'opening 200 900 2026-05-14: 105',
    ];
    const records = recordsOf(swing, { on, force });
    expect(spots(records)).toEqual(apart);
    // They count for no point.
    expect([records.asked, records.missing]).toEqual([27, 27]);
  });
  it('and so with no height of the leaf, where there is no plan', () => {
    const records = recordsOf(['width 2 m', 'opens inward 90 deg'], {
      on,
      force: [at('300 mm', '900 mm', '101 N'), at('310 mm', '900 mm', '102 N')],
    });
    expect(spots(records)).toEqual(['closing 300 900 2026-05-14: 101', 'closing 310 900 2026-05-14: 102']);
    expect(records).toMatchObject({ plan: undefined, asked: undefined, missing: undefined, closingProven: false, openingProven: false });
  });
});

describe('days', () => {
  const three = (peak: string): string => `${peak} ${peak} ${peak}`;
  const full = (on: string, peak: string, instrument = `instrument "G-1" calibrated ${on}`): Day => ({
    on,
    instrument,
    force: [at('300 mm', '900 mm', three(peak))],
  });
  it('of several the last complete one counts for each place, wherever it stands in the file', () => {
    const early = { ...full('2025-05-14', '101 N'), force: [at('300 mm', '900 mm', three('101 N')), at('50 mm', '900 mm', '301 N')] };
    const late = full('2026-05-14', '201 N');
    for (const days of [
      [early, late],
      [late, early],
    ]) {
      const records = recordsOf(swing, ...days);
      expect(spots(records).sort()).toEqual(['closing 300 900 2026-05-14: 201, 201, 201', 'closing 50 900 2025-05-14: 301']);
      expect(records.lastDay).toBe('2026-05-14');
      expect(records.oldestDay).toBe('2026-05-14');
    }
  });
  it('a complete one stands beside what was read after it, until the next complete one', () => {
    const later = { on: '2026-06-14', instrument: calibrated, force: [at('300 mm', '900 mm', '99 N')] };
    const days = (records: ForceRecords): string[] => records.spots.map(({ day }) => day);
    expect(days(recordsOf(swing, full('2026-05-14', '901 N'), later))).toEqual(['2026-06-14', '2026-05-14']);
    expect(days(recordsOf(swing, full('2026-05-14', '901 N'), later, full('2026-07-14', '99 N')))).toEqual(['2026-07-14']);
    // Readings that nobody can rely on put an end to nothing, nor do two on one day and one on another.
    for (const instrument of ['instrument "G-2"', 'instrument "G-2" calibrated 2020-01-01'])
      expect(days(recordsOf(swing, full('2026-05-14', '901 N'), full('2026-07-14', '99 N', instrument)))).toEqual([
        '2026-07-14',
        '2026-05-14',
      ]);
    const two = { ...later, force: [at('300 mm', '900 mm', '99 N 98 N')] };
    expect(days(recordsOf(swing, full('2026-05-14', '901 N'), two, { ...later, on: '2026-06-15' }))).toHaveLength(3);
  });
  it('the day that counts for the next measuring is that of the point which has waited longest', () => {
    const other = { on: '2024-05-14', instrument: 'instrument "G-1" calibrated 2024-05-01', force: [at('50 mm', '900 mm', three('99 N'))] };
    expect(recordsOf(swing, full('2026-05-14', '99 N'), other)).toMatchObject({ lastDay: '2026-05-14', oldestDay: '2024-05-14' });
    const single = { on: '2026-09-01', instrument: calibrated, force: [at('50 mm', '900 mm', '99 N')] };
    expect(recordsOf(swing, other, single)).toMatchObject({ lastDay: '2026-09-01', oldestDay: '2024-05-14' });
    // Where no point was ever measured in full, the last day.
    expect(recordsOf(swing, single)).toMatchObject({ lastDay: '2026-09-01', oldestDay: '2026-09-01' });
  });
  it('a reading without a day is of none', () => {
    const records = recordsOf(swing, { force: [at('300 mm', '900 mm')] }, { on: '2026-05-14', force: [at('50 mm', '900 mm')] });
    expect(spots(records)).toEqual(['closing 50 900 2026-05-14: 100']);
    const none = recordsOf(swing, { force: [at('300 mm', '900 mm')] });
    expect([none.spots, none.lastDay, none.missing]).toEqual([[], undefined, 27]);
  });
  it('readings of a point add up within a day, not over days', () => {
    const force = [at('300 mm', '900 mm', '101 N 102 N')];
    expect(recordsOf(swing, { on: '2026-05-14', force: [...force, at('300 mm', '910 mm')] }).missing).toBe(24);
    expect(recordsOf(swing, { on: '2025-05-14', force }, { on: '2026-05-14', force }).missing).toBe(25);
  });
});

describe('a line with more of one force than of another', () => {
  const line = (peak: string, later: string, end: string): ForceRecords =>
    recordsOf(swing, { on: '2026-05-14', force: [`closing gap 300 mm height 900 mm peak ${peak} after-750-ms ${later} after-5-s ${end}`] });
  it.each([
    ['100 N 90 N', '50 N 40 N', '10 N 9 N', false],
    ['100 N 90 N', '50 N', '10 N 9 N', true],
    ['100 N 90 N', '50 N 40 N', '10 N', true],
    ['100 N', '50 N 40 N', '10 N 9 N', true],
    ['100 N 90 N', '50 N', '10 N', true],
  ])('%s, %s, %s', (peak, later, end, ragged) => {
    expect(line(peak, later, end).spots.flatMap(({ records }) => records.map(isRagged))).toEqual([ragged]);
  });
  it('says what it says at worst: nothing that was read is left out', () => {
    expect(line('100 N 450 N', '50 N', '10 N')).toMatchObject({
      missing: 26,
      spots: [
        {
          readings: [
            { peak: 100, static: 50, end: 10 },
            { peak: 450, static: 50, end: 10 },
          ],
          judged: { peak: 450, static: 50, end: 10 },
          excess: [{ which: 'peak', value: 450, limit: 400 }],
        },
      ],
    });
    expect(line('100 N', '50 N 160 N', '10 N')).toMatchObject({
      missing: 26,
      spots: [{ judged: { peak: 100, static: 160, end: 10 }, excess: [{ which: 'static', value: 160, limit: 150 }] }],
    });
    expect(line('100 N', '50 N', '10 N 26 N')).toMatchObject({
      missing: 26,
      spots: [{ judged: { peak: 100, static: 50, end: 26 }, excess: [{ which: 'end', value: 26, limit: 25 }] }],
    });
  });
});

describe('the instrument', () => {
  it.each([
    ['2026-05-14', calibrated, true],
    ['2026-01-10', calibrated, true],
    ['2027-01-10', calibrated, true],
    ['2027-01-11', calibrated, false],
    // Calibrated only after the measuring.
    ['2026-01-09', calibrated, false],
    ['2026-05-14', undefined, undefined],
    [undefined, calibrated, undefined],
    [undefined, undefined, undefined],
  ])('on %s with %s: %s', (on, instrument, expected) => {
    const record = leafWith(swing, [{ on, ...(instrument === undefined ? {} : { instrument }), force: [at('300 mm', '900 mm')] }])
      .forces[0];
    expect(record === undefined ? 'no record' : inCalibration(record.measured)).toBe(expected);
  });
});

describe('what is proven', () => {
  const day = (force: readonly string[], on = '2026-05-14', instrument = calibrated): Day => ({ on, instrument, force });
  const three = '100 N 100 N 100 N';
  const closing = (peak = three): string[] =>
    ['50 mm', '300 mm', '500 mm'].flatMap((gap) => ['50 mm', '900 mm', '1500 mm'].map((height) => at(gap, height, peak)));
  const opening = at('300 mm', '1 m', three, 'opening');
  const proven = (leaf: readonly string[], ...days: readonly Day[]): [boolean, boolean] => {
    const { closingProven, openingProven } = recordsOf(leaf, ...days);
    return [closingProven, openingProven];
  };
  it('closing, where all nine points have their three readings; opening never where none is asked for', () => {
    expect(proven(swing, day(closing()))).toEqual([true, false]);
    expect(proven(swing, day([...closing(), opening]))).toEqual([true, false]);
    expect(proven(swing, day(closing().slice(1)))).toEqual([false, false]);
    expect(proven(swing, day(closing('100 N 100 N')))).toEqual([false, false]);
  });
  it('opening, where something is near', () => {
    const near = [...swing, 'room-when-open 450 mm'];
    expect(proven(near, day(closing()))).toEqual([true, false]);
    expect(proven(near, day([...closing(), opening]))).toEqual([true, true]);
    expect(proven(near, day([opening]))).toEqual([false, true]);
  });
  it('a sliding leaf with something near has all nine points again', () => {
    const near = ['width 4 m', 'height 1.8 m', 'slides left 4 m', 'room-when-open 450 mm'];
    const all = [...closing(), ...closing().map((line) => line.replace('closing', 'opening'))];
    expect(recordsOf(near, day(all))).toMatchObject({ asked: 54, missing: 0, closingProven: true, openingProven: true });
    expect(recordsOf(near, day(all.slice(0, -1)))).toMatchObject({ missing: 3, closingProven: true, openingProven: false });
  });
  it('nothing by an instrument out of calibration', () => expect(proven(swing, day(closing(), '2027-05-14'))).toEqual([false, false]));
  it('not where a force of that movement is too great, at a point or beside one; one of the other movement does not count', () => {
    const near = [...swing, 'room-when-open 450 mm'];
    const all = [...closing(), opening];
    expect(proven(near, day([...all, at('200 mm', '900 mm', '401 N')]))).toEqual([false, true]);
    expect(proven(near, day([...closing(), at('300 mm', '1 m', '401 N 401 N 401 N', 'opening')]))).toEqual([true, false]);
    expect(proven(swing, day([...closing(), at('200 mm', '900 mm', '401 N', 'opening')]))).toEqual([true, false]);
  });
});

describe('what was fitted since', () => {
  const three = '100 N 100 N 100 N';
  const all = ['50 mm', '300 mm', '500 mm'].flatMap((gap) => ['50 mm', '900 mm', '1500 mm'].map((height) => at(gap, height, three)));
  const models =
    block('drive-model arm "A"', ['kind direct', 'rotation 110 deg', 'shaft-speed 7 deg/s', 'limits-force']) +
    block('sensor-model strip "S"', ['kind edge', 'output two-wire', 'measure C']) +
    block('sensor-model eye "E"', ['kind beam', 'output two-wire', 'measure D']) +
    block('panel-model box "P"', []);
  const proven = (
    fitted: { site?: string; drive?: string; other?: string; edge?: string; beam?: string; panel?: string },
    on: string,
  ): boolean => {
    const day = (word: string, value: string | undefined): string[] => (value === undefined ? [] : [`${word} ${value}`]);
    const text =
      'language 1\n' +
      block('site "Example"', ['rules europe', 'users limited', ...day('installed', fitted.site)]) +
      block('leaf west', ['mass 150 kg', ...swing]) +
      block('leaf east', ['mass 150 kg', ...swing]) +
      block('drive a : arm', ['moves west', ...day('fitted', fitted.drive)]) +
      block('drive b : arm', ['moves east', ...day('fitted', fitted.other)]) +
      block('sensor front : strip', ['watches closing', 'on west closing-edge', ...day('fitted', fitted.edge)]) +
      block('sensor low : eye', ['watches closing', 'height 200 mm', ...day('fitted', fitted.beam)]) +
      block('panel main : box', day('fitted', fitted.panel)) +
      dayText({ on, instrument: `instrument "G-1" calibrated ${on}`, force: all }) +
      models;
    const west = judge(text).installation.leaves[0];
    return west !== undefined && forceRecordsOf(west)?.closingProven === true;
  };
  it.each(['site', 'drive', 'edge', 'panel'] as const)('proves nothing before the %s; on its day and after it does', (what) => {
    expect(proven({ [what]: '2026-05-14' }, '2026-05-13')).toBe(false);
    expect(proven({ [what]: '2026-05-14' }, '2026-05-14')).toBe(true);
    expect(proven({ [what]: '2026-05-14' }, '2026-05-15')).toBe(true);
  });
  it('the last of them decides', () => {
    expect(proven({ site: '2020-01-01', drive: '2026-05-14', panel: '2022-01-01' }, '2026-05-13')).toBe(false);
    expect(proven({ site: '2020-01-01', drive: '2022-05-14', panel: '2026-05-14' }, '2026-05-13')).toBe(false);
  });
  it('what does not decide the force of this leaf may be newer', () =>
    expect(proven({ other: '2026-05-14', beam: '2026-05-14' }, '2026-05-13')).toBe(true));
});

it('nothing is there where nothing was measured', () => expect(forceRecordsOf(leafWith(swing, []))).toBeUndefined());
