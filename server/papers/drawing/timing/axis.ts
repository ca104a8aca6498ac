// Seconds to places of the chart.
import type { Times } from '../../scene/times.ts';
import { margin, sheetWidth } from '../drawing.ts';
import { scaleOf, ticks } from '../scale.ts';

export const left = 150;
export const right = sheetWidth - margin - 10;

/** A dwell that would take more than this share of the chart is cut. */
const longest = 0.38;
/** What standing open takes, as a share of all else, where no dwell is stated. */
const unknown = 0.34;
/** Where in the stretch that is drawn the break begins, and where it is drawn. */
const cutFrom = 0.82;
const cutAt = 0.86;

/** Where the gate stands open for long, or for nobody knows how long, a part of that is left out. */
export interface Axis {
  readonly at: (time: number) => number;
  /** The place of the break; undefined without one. */
  readonly cut: number | undefined;
  readonly marks: readonly number[];
}

export function axisOf({ open, warns, end, dwell, seat }: Times): Axis {
  const stands = warns - open;
  const rest = end - stands;
  const most = Math.max(seat * 1.5, (rest * longest) / (1 - longest));
  if (dwell !== undefined && stands <= most) return { at: scaleOf(0, end, left, right).at, cut: undefined, marks: ticks(0, end, 12) };
  // In place of the real stretch one of another length is drawn, with the break near its end.
  const drawn = dwell === undefined ? Math.max(seat * 1.5, rest * unknown) : most;
  const { at } = scaleOf(0, rest + drawn, left, right);
  const before = Math.min(drawn * cutFrom, stands * cutFrom);
  const place = (time: number): number => {
    if (time <= open + before) return at(time);
    if (time >= warns) return at(time - stands + drawn);
    return at(open + before) + ((time - open - before) / (stands - before)) * (at(open + drawn) - at(open + before));
  };
  const marks = ticks(0, rest + drawn, 12);
  const step = (marks[1] ?? 1) - (marks[0] ?? 0);
  const after = dwell === undefined ? [] : ticks(warns, end, Math.max(1, Math.floor((end - warns) / step)), [step]);
  return { at: place, cut: at(open + drawn * cutAt), marks: [...marks.filter((mark) => mark <= open + before), ...after] };
}
