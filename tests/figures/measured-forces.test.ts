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
  it('but not on both sides of 500 mm, where the limit is another', () => {
    expect(spots(recordsOf(swing, { on, force: [at('500 mm', '900 mm', '101 N'), at('510 mm', '900 mm', '102 N')] }))).toEqual([
      'closing 500 900 2026-05-14: 101',
      'closing 510 900 2026-05-14: 102',
    ]);
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
  it('of several the last one counts for each place, wherever it stands in the file', () => {
    const early = { on: '2025-05-14', force: [at('300 mm', '900 mm', '101 N'), at('50 mm', '900 mm', '301 N')] };
    const late = { on: '2026-05-14', force: [at('300 mm', '900 mm', '201 N')] };
    for (const days of [
      [early, late],
      [late, early],
    ]) {
      const records = recordsOf(swing, ...days);
      expect(spots(records).sort()).toEqual(['closing 300 900 2026-05-14: 201', 'closing 50 900 2025-05-14: 301']);
      expect(records.lastDay).toBe('2026-05-14');
    }
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

it('nothing is there where nothing was measured', () => expect(forceRecordsOf(leafWith(swing, []))).toBeUndefined());
