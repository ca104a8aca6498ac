// What the chart of one leaf's window is put together from.
import { type SettingWindow, ways } from '../../../figures/force-window/working.ts';
import { inDegrees } from '../../../figures/index.ts';
import type { Leaf } from '../../../model/index.ts';
import type { Reader } from '../../../vocabulary/index.ts';
import { type Sample, samplesOf } from '../../scene/force.ts';
import { margin, sheetWidth } from '../drawing.ts';
import { type Scale, scaleOf } from '../scale.ts';
import type { Element } from '../svg.ts';

export const left = 92;
export const right = sheetWidth - margin - 10;
const chartHeight = 250;

export interface Chart {
  readonly leaf: Leaf;
  /** The thing of the leaf. */
  readonly id: string;
  readonly window: SettingWindow;
  readonly reader: Reader;
  readonly samples: readonly Sample[];
  /** Degrees or metres open, and pushes in N or N·m, to places. */
  readonly x: Scale;
  readonly y: Scale;
  readonly top: number;
  readonly bottom: number;
  readonly drawn: Element[];
  /** The same as a table. */
  readonly rows: (readonly string[])[];
}

/** What the charts of all leaves share. */
export type Shared = Pick<Chart, 'reader' | 'drawn' | 'rows'>;

export function chartOf({ reader, drawn, rows }: Shared, leaf: Leaf, id: string, window: SettingWindow, top: number): Chart {
  const samples = samplesOf(window);
  const bottom = top + chartHeight;
  const travel = samples[samples.length - 1]?.at ?? 0;
  const x = scaleOf(0, window.of.swing ? inDegrees(travel) : travel, left, right);
  const y = scaleOf(0, highestOf(window, samples), bottom, top);
  return { leaf, id, window, reader, samples, x, y, top, bottom, drawn, rows };
}

/** What is far above all that matters is left out of the picture: the drive's greatest, or twice the window. */
function highestOf({ of, least, most }: SettingWindow, samples: readonly Sample[]): number {
  const finite = samples.flatMap((sample) => ways.map((way) => sample.allows[way])).filter((value) => value < Infinity);
  const twice = most.push < Infinity ? most.push * 2 : 0;
  const matters = Math.max(least.push, of.setting ?? 0, twice, Math.min(of.greatest, least.push * 4));
  return Math.max(Math.min(Math.max(of.greatest, ...finite), Math.max(matters * 1.15, 1)), least.push * 1.2);
}

/** The place of a sample along the travel. */
export const placeOf = ({ window, x }: Chart, { at }: Sample): number => x.at(window.of.swing ? inDegrees(at) : at);

/** The place of a push; what is above the chart stands at its upper edge. */
export const clipped = ({ y }: Chart, push: number): number => y.at(Math.min(push, y.to));
