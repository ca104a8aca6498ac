// The forces measured on a leaf, sorted by point and day, and what they show.
import { type ForceRecord, type Leaf, type Measured, perSubject } from '../../model/index.ts';
import { type Excess, excessOf, judged, nearestOf, type Point, peakLimit, planOf, pointAt, type Reading, repeats } from './maths.ts';

export { type Excess, type Point, repeats, slack } from './maths.ts';

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
  /** The same for the opening movement; false where the plan asks for no reading there. */
  readonly openingProven: boolean;
}

/** Puts the readings of a line that are whole, with peak, static and residual force, and gives how many there are. */
function wholeReadings({ fact }: ForceRecord, into: Reading[]): number {
  const count = Math.min(fact.peak.length, fact.static.length, fact.end.length);
  for (let i = 0; i < count; i++) into.push({ peak: fact.peak[i] as number, static: fact.static[i] as number, end: fact.end[i] as number });
  return count;
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
export const inCalibration = perSubject((measured: Measured): boolean | undefined => {
  const day = dayOf(measured);
  const calibrated = measured.facts.instrument?.calibrated;
  // Dates written year first are in the order of their texts.
  return day === undefined || calibrated === undefined ? undefined : calibrated <= day && day <= aYearAfter(calibrated);
});

interface Group {
  readonly point: number;
  readonly at: ForceRecord['fact'];
  readonly days: Map<string, { readonly records: ForceRecord[]; readonly readings: Reading[]; whole: number; calibrated: number }>;
}

/** Everything measured on a leaf; undefined where there is nothing. */
export const forceRecordsOf = perSubject((leaf: Leaf): ForceRecords | undefined => {
  if (leaf.forces.length === 0) return undefined;
  const height = leaf.facts.height?.value;
  const points = height === undefined ? undefined : planOf(height, leaf.facts.opens !== undefined, leaf.facts['room-when-open']?.value);
  // Readings belong together by the point of the plan that they are at, else by where exactly they were taken.
  const groups = new Map<string, Group>();
  let lastDay: string | undefined;
  for (const record of leaf.forces) {
    const day = dayOf(record.measured);
    if (day === undefined) continue;
    if (lastDay === undefined || day > lastDay) lastDay = day;
    const { movement, gap, height: up } = record.fact;
    const point = points === undefined ? -1 : pointAt(points, movement, gap, up);
    // The side of 500 mm on which the gap lies decides the limit, so it also keeps groups apart.
    const key = point >= 0 ? `${point} ${peakLimit(gap)}` : `${movement} ${gap} ${up}`;
    let group = groups.get(key);
    if (group === undefined) groups.set(key, (group = { point, at: record.fact, days: new Map() }));
    let kept = group.days.get(day);
    if (kept === undefined) group.days.set(day, (kept = { records: [], readings: [], whole: 0, calibrated: 0 }));
    kept.records.push(record);
    const count = wholeReadings(record, kept.readings);
    if (isRagged(record)) kept.readings.push(worstOf(record));
    kept.whole += count;
    if (inCalibration(record.measured) === true) kept.calibrated += count;
  }
  const spots: Spot[] = [];
  const done: { readings: number; calibrated: number }[] = [];
  for (const { point, at, days } of groups.values()) {
    let last = '';
    for (const [day, { whole, calibrated }] of days) {
      if (day > last) last = day;
      if (point < 0) continue;
      const best = (done[point] ??= { readings: 0, calibrated: 0 });
      best.readings = Math.max(best.readings, whole);
      best.calibrated = Math.max(best.calibrated, calibrated);
    }
    const newest = days.get(last);
    const standing = newest === undefined ? undefined : judged(newest.readings);
    if (newest === undefined || standing === undefined) continue;
    spots.push({
      movement: at.movement,
      gap: at.gap,
      height: at.height,
      day: last,
      records: newest.records,
      readings: newest.readings,
      judged: standing,
      excess: excessOf(at.gap, standing),
    });
  }
  const plan = points?.map((point, i): Planned => ({ point, readings: done[i]?.readings ?? 0, calibrated: done[i]?.calibrated ?? 0 }));
  const isProven = (movement: 'closing' | 'opening'): boolean => {
    const asked = plan?.filter(({ point }) => point.movement === movement) ?? [];
    return (
      asked.length > 0 &&
      asked.every(({ calibrated }) => calibrated >= repeats) &&
      spots.every((spot) => spot.movement !== movement || spot.excess.length === 0)
    );
  };
  return {
    spots,
    plan,
    asked: plan === undefined ? undefined : plan.length * repeats,
    missing: plan === undefined ? undefined : plan.reduce((sum, { readings }) => sum + Math.max(0, repeats - readings), 0),
    lastDay,
    closingProven: isProven('closing'),
    openingProven: isProven('opening'),
  };
});

/** Of the forces at a spot the one that comes nearest to its limit, N. */
export const nearestLimitOf = (spot: Spot): { readonly value: number; readonly limit: number } => nearestOf(spot.gap, spot.judged);

/** The share of its limit that a spot takes: 1 is all of it. */
export function shareOf(spot: Spot): number {
  const { value, limit } = nearestLimitOf(spot);
  return value / limit;
}
