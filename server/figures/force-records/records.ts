// The forces measured on a leaf, sorted by point and day, and what they show.
import type { ForceRecord, Leaf, Measured } from '../../model/index.ts';
import { daysBetween } from '../../vocabulary/index.ts';
import { perSubject } from '../memo.ts';
import { excessOf, isAt, judged, planOf, repeats, type Excess, type Point, type Reading } from './maths.ts';

/** The readings at one place on the last day on which it was measured. */
export interface Spot {
  readonly movement: 'closing' | 'opening';
  readonly gap: number;
  readonly height: number;
  readonly day: string;
  /** The records of that day, in the order of the text. */
  readonly records: readonly ForceRecord[];
  readonly readings: readonly Reading[];
  readonly judged: Reading;
  readonly excess: readonly Excess[];
}

/** A point of the plan, and how far it is measured. */
export interface Planned {
  readonly point: Point;
  /** The most readings of it on any one day. */
  readonly readings: number;
  /** Of those, the ones with an instrument in calibration. */
  readonly calibrated: number;
}

export interface ForceRecords {
  readonly spots: readonly Spot[];
  /** undefined where the height of the leaf is not stated. */
  readonly plan: readonly Planned[] | undefined;
  /** Readings that the plan asks for and those still missing; undefined as above. */
  readonly asked: number | undefined;
  readonly missing: number | undefined;
  /** The last day on which anything was measured on this leaf; undefined where no record has a day. */
  readonly lastDay: string | undefined;
  /** Complete and within the limits for the closing edge, with an instrument in calibration. */
  readonly closingProven: boolean;
}

/** Readings of a line that are whole: with peak, static and residual force. */
function readingsOf({ fact }: ForceRecord): Reading[] {
  const count = Math.min(fact.peak.length, fact.static.length, fact.end.length);
  return Array.from({ length: count }, (_, i) => ({ peak: fact.peak[i] as number, static: fact.static[i] as number, end: fact.end[i] as number }));
}

/** What a line with more of one force than of another says at worst: nothing that was read is left out of the verdict. */
function worstOf({ fact }: ForceRecord): Reading {
  return { peak: Math.max(0, ...fact.peak), static: Math.max(0, ...fact.static), end: Math.max(0, ...fact.end) };
}

export const isRagged = ({ fact }: ForceRecord): boolean => fact.peak.length !== fact.static.length || fact.peak.length !== fact.end.length;

export const dayOf = (measured: Measured): string | undefined => measured.facts.on?.value;

/** The last day, a year after a date, on which what is done yearly is not yet due. */
export function aYearAfter(day: string): string {
  const year = String(Number(day.slice(0, 4)) + 1).padStart(4, '0');
  return day.endsWith('-02-29') ? `${year}-02-28` : year + day.slice(4);
}

/** Whether the instrument of a block was calibrated within the year before the day of measuring; undefined where a date is missing. */
export function inCalibration(measured: Measured): boolean | undefined {
  const day = dayOf(measured);
  const calibrated = measured.facts.instrument?.calibrated;
  if (day === undefined || calibrated === undefined) return undefined;
  return (daysBetween(calibrated, day) ?? -1) >= 0 && day <= aYearAfter(calibrated);
}

/** Everything measured on a leaf; undefined where there is nothing. */
export const forceRecordsOf = perSubject((leaf: Leaf): ForceRecords | undefined => {
  if (leaf.forces.length === 0) return undefined;
  const height = leaf.facts.height?.value;
  const points = height === undefined ? undefined : planOf(height, leaf.facts.opens !== undefined, leaf.facts['room-when-open']?.value);
  const dated = leaf.forces.filter((record) => dayOf(record.measured) !== undefined);
  // Readings belong together by the point of the plan that they are at, else by where exactly they were taken.
  const groups = new Map<string, { at: ForceRecord['fact']; point: number; records: ForceRecord[] }>();
  for (const record of dated) {
    const { movement, gap, height: up } = record.fact;
    const point = points?.findIndex((each) => isAt(each, movement, gap, up)) ?? -1;
    // The side of 500 mm on which the gap lies decides the limit, so it also keeps groups apart.
    const key = point >= 0 ? `${point} ${excessOf(gap, { peak: 1000, static: 0, end: 0 }).length}` : `${movement} ${gap} ${up}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { at: record.fact, point, records: [record] });
    else group.records.push(record);
  }
  const spots: Spot[] = [];
  const done = new Map<number, { readings: number; calibrated: number }>();
  for (const { at, point, records } of groups.values()) {
    const days = new Map<string, { records: ForceRecord[]; readings: Reading[]; calibrated: number }>();
    for (const record of records) {
      const day = dayOf(record.measured) as string;
      let kept = days.get(day);
      if (kept === undefined) days.set(day, (kept = { records: [], readings: [], calibrated: 0 }));
      const whole = readingsOf(record);
      kept.records.push(record);
      kept.readings.push(...(isRagged(record) ? [...whole, worstOf(record)] : whole));
      if (inCalibration(record.measured) === true) kept.calibrated += whole.length;
      const sum = done.get(point) ?? { readings: 0, calibrated: 0 };
      const read = kept.records.reduce((total, each) => total + readingsOf(each).length, 0);
      done.set(point, { readings: Math.max(sum.readings, read), calibrated: Math.max(sum.calibrated, kept.calibrated) });
    }
    const last = [...days.keys()].sort().at(-1) as string;
    const newest = days.get(last) as { records: ForceRecord[]; readings: Reading[] };
    const standing = judged(newest.readings);
    if (standing === undefined) continue;
    spots.push({ movement: at.movement, gap: at.gap, height: at.height, day: last, records: newest.records, readings: newest.readings, judged: standing, excess: excessOf(at.gap, standing) });
  }
  const plan = points?.map((point, i): Planned => ({ point, ...(done.get(i) ?? { readings: 0, calibrated: 0 }) }));
  const closing = plan?.filter(({ point }) => point.movement === 'closing') ?? [];
  return {
    spots,
    plan,
    asked: plan === undefined ? undefined : plan.length * repeats,
    missing: plan === undefined ? undefined : plan.reduce((sum, { readings }) => sum + Math.max(0, repeats - readings), 0),
    lastDay: dated.map((record) => dayOf(record.measured) as string).sort().at(-1),
    closingProven: closing.length > 0 && closing.every(({ calibrated }) => calibrated >= repeats) && spots.every((spot) => spot.movement !== 'closing' || spot.excess.length === 0),
  };
});
