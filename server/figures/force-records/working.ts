// The forces measured on a leaf, sorted by point and day, and what they show.
import { measureOf, panelsFor } from '../../circuits/index.ts';
import { type ForceRecord, headPlace, type Leaf, type Measured, perSubject } from '../../model/index.ts';
import { type Excess, excessOf, judged, nearestOf, type Point, peakLimit, planOf, pointAt, type Reading, repeats } from './maths.ts';

export { type Excess, type Point, peakLimit, repeats, slack } from './maths.ts';

/** The readings at one place on a day that still counts: the last complete one, and each after it; where none is complete, all. */
export interface Spot {
  readonly movement: 'closing' | 'opening';
  /** Of the first reading, m. */
  readonly gap: number;
  /** What decides the limit: the gap of the point that it counts for, else its own, m. */
  readonly limitGap: number;
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
  /** The last day with three readings by an instrument in calibration; undefined where there is none. */
  readonly completeOn: string | undefined;
}

/** Something that decides the force, and the day since which it does. */
export interface Since {
  readonly day: string;
  readonly what: 'site' | 'drive' | 'sensor' | 'panel';
  readonly name: string;
  readonly fact: NonNullable<Leaf['drives'][number]['facts']['fitted']>;
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
  /** The day on which the point was last measured in full that has waited longest; where none was, the last day. Undefined as above. */
  readonly oldestDay: string | undefined;
  /** What was fitted last of all that decides the force; undefined where no day is stated. What was measured before proves nothing. */
  readonly since: Since | undefined;
  /** Complete and within the limits for the closing edge, with an instrument in calibration, since what decides the force was fitted. */
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

/** The last day, a year after a date, on which what is done yearly is not yet due. Source of the year: ASR A1.7, 10.2, for measuring. */
export function aYearAfter(day: string): string {
  const year = String(Number(day.slice(0, 4)) + 1).padStart(4, '0');
  return day.endsWith('-02-29') ? `${year}-02-28` : year + day.slice(4);
}

/**
 * Whether the instrument of a block was calibrated within the year before the day of measuring; undefined where a date is missing. Yearly:
 * Door Industry Journal, Winter 2022, page 93.
 */
export const inCalibration = perSubject((measured: Measured): boolean | undefined => {
  const day = dayOf(measured);
  const calibrated = measured.facts.instrument?.calibrated;
  // Dates written year first are in the order of their texts.
  return day === undefined || calibrated === undefined ? undefined : calibrated <= day && day <= aYearAfter(calibrated);
});

/** The readings of one day at one place. */
interface OnDay {
  readonly records: ForceRecord[];
  readonly readings: Reading[];
  whole: number;
  calibrated: number;
}

interface Group {
  readonly point: number;
  readonly at: ForceRecord['fact'];
  readonly days: Map<string, OnDay>;
}

/** The days of a place that count, the last first: a day with three calibrated readings puts an end to all before it, and nothing else does. */
function standingOf({ days }: Group): { readonly standing: readonly [string, OnDay][]; readonly completeOn: string | undefined } {
  // Dates written year first are in the order of their texts.
  const all = [...days].sort(([a], [b]) => (a < b ? 1 : -1));
  const complete = all.findIndex(([, { calibrated }]) => calibrated >= repeats);
  return complete < 0 ? { standing: all, completeOn: undefined } : { standing: all.slice(0, complete + 1), completeOn: all[complete]?.[0] };
}

/** What was fitted last of all that decides how hard a leaf strikes: the gate itself, its drives, what limits the force, the panel. */
function sinceOf(leaf: Leaf): Since | undefined {
  const { site, panels } = leaf.installation;
  let last: Since | undefined;
  const later = (what: Since['what'], name: string, fact: Since['fact'] | undefined): void => {
    if (fact !== undefined && (last === undefined || fact.value > last.day)) last = { day: fact.value, what, name, fact };
  };
  later('site', site?.name ?? '', site?.facts.installed);
  for (const drive of leaf.drives) later('drive', drive.name, drive.facts.fitted);
  for (const sensor of leaf.sensors) if (measureOf(sensor) === 'C') later('sensor', sensor.name, sensor.facts.fitted);
  for (const panel of panels.length < 2 ? panels : panelsFor(leaf)) later('panel', panel.name, panel.facts.fitted);
  return last;
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
    // A point that takes any gap has the limit of each: there the gaps keep apart what has not the same limit.
    const key = point < 0 ? `${movement} ${gap} ${up}` : `${point} ${peakLimit(points?.[point]?.gap ?? gap)}`;
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
  const done: { readings: number; completeOn: string | undefined }[] = [];
  for (const group of groups.values()) {
    const { point, at, days } = group;
    const { standing, completeOn } = standingOf(group);
    if (point >= 0) {
      const best = (done[point] ??= { readings: 0, completeOn: undefined });
      for (const { whole } of days.values()) best.readings = Math.max(best.readings, whole);
      if (completeOn !== undefined && (best.completeOn === undefined || completeOn > best.completeOn)) best.completeOn = completeOn;
    }
    for (const [day, { records, readings }] of standing) {
      const verdict = judged(readings);
      if (verdict === undefined) continue;
      const { movement, gap, height: up } = records[0]?.fact ?? at;
      const limitGap = points?.[point]?.gap ?? gap;
      spots.push({ movement, gap, limitGap, height: up, day, records, readings, judged: verdict, excess: excessOf(limitGap, verdict) });
    }
  }
  const since = sinceOf(leaf);
  const plan = points?.map((point, i): Planned => ({ point, readings: done[i]?.readings ?? 0, completeOn: done[i]?.completeOn }));
  const isProven = (movement: 'closing' | 'opening'): boolean => {
    const asked = plan?.filter(({ point }) => point.movement === movement) ?? [];
    return (
      asked.length > 0 &&
      asked.every(({ completeOn }) => completeOn !== undefined && !(since !== undefined && completeOn < since.day)) &&
      spots.every((spot) => spot.movement !== movement || spot.excess.length === 0)
    );
  };
  let oldestDay: string | undefined;
  for (const { completeOn } of plan ?? [])
    if (completeOn !== undefined && (oldestDay === undefined || completeOn < oldestDay)) oldestDay = completeOn;
  return {
    spots,
    plan,
    asked: plan === undefined ? undefined : plan.length * repeats,
    missing: plan === undefined ? undefined : plan.reduce((sum, { readings }) => sum + Math.max(0, repeats - readings), 0),
    lastDay,
    oldestDay: oldestDay ?? lastDay,
    since,
    closingProven: isProven('closing'),
    openingProven: isProven('opening'),
  };
});

/** Of the forces at a spot the one that comes nearest to its limit, N. */
export const nearestLimitOf = (spot: Spot): { readonly value: number; readonly limit: number } => nearestOf(spot.limitGap, spot.judged);

/** The share of its limit that a spot takes: 1 is all of it. */
export function shareOf(spot: Spot): number {
  const { value, limit } = nearestLimitOf(spot);
  return value / limit;
}

/** The line with the day of what was measured on a leaf then. */
export function dateOf(leaf: Leaf, day: string): { start: number; end: number } {
  for (const { measured } of leaf.forces) {
    const on = measured.facts.on;
    if (on?.value === day) return { start: on.line.start, end: on.line.end };
  }
  return headPlace(leaf);
}
