// The stated lag between the starts of two leaves, and the least that keeps overlapping leaves apart.
import { decidingOverlap } from '../../../figures/least-lag/working.ts';
import { headPlace } from '../../../model/index.ts';
import type { LeafTimes } from '../../scene/times.ts';
import { shows, whole } from '../drawing.ts';
import { arrowHead, type Element, line, path, rect, through } from '../svg.ts';
import { short, text, widthOf } from '../text.ts';
import { left, right } from './axis.ts';
import { type Chart, seconds } from './chart.ts';

type Way = 'opening' | 'closing';

/** The starts of the first and the last leaf in one movement. */
interface Lag {
  readonly way: Way;
  readonly first: LeafTimes;
  readonly second: LeafTimes;
  /** Seconds. */
  readonly lag: number;
  /** Undefined where the leaves do not overlap. */
  readonly least: number | undefined;
}

/** The lags of those leaves whose rows are drawn. */
export function drawLags(chart: Chart, bars: ReadonlyMap<LeafTimes, number>): void {
  const [one, ...others] = bars.keys();
  if (one === undefined || others.length === 0) return;
  for (const way of ['opening', 'closing'] as const) {
    const lag = lagOf(chart, way, one, others);
    if (lag.lag > 0 || lag.least !== undefined) drawLag(chart, lag, bars);
  }
}

function lagOf({ installation }: Chart, way: Way, one: LeafTimes, others: readonly LeafTimes[]): Lag {
  let first = one;
  let second = one;
  for (const each of others) {
    if (each[way].start < first[way].start) first = each;
    // Of several the last one, whose row is the lowest.
    if (each[way].start >= second[way].start) second = each;
  }
  return { way, first, second, lag: second[way].start - first[way].start, least: decidingOverlap(installation, way)?.[way].lag };
}

function drawLag(chart: Chart, of: Lag, bars: ReadonlyMap<LeafTimes, number>): void {
  const { axis, drawn } = chart;
  const { way, first, second, lag, least } = of;
  // In the wrong order no lag helps; that is for the rules to say.
  const id = lagThing(chart, of);
  const y = (bars.get(second) ?? 0) + 56;
  const firstY = (bars.get(first) ?? 0) + 56;
  const from = axis.at(first[way].start);
  const to = axis.at(second[way].start);
  const parts: Element[] = [];
  if (to - from > 3) {
    const [start, tip] = [
      { x: from, y },
      { x: to, y },
    ];
    parts.push(line('lead', { x: from, y: firstY }, start), line('lag', start, tip), arrowHead('lag-head', start, tip, 7));
  }
  if (least !== undefined) parts.push(...leastMark(axis.at(first[way].start + least), y));
  const words = [lag > 0 ? `lag ${seconds(lag)}` : 'no lag', ...(least === undefined ? [] : [`least ${seconds(least)}`])].join(', ');
  const tooShort = least !== undefined && lag < least - 0.005;
  const x = Math.max(left, Math.min(from, right - widthOf(words, 'small')));
  parts.push(text(tooShort ? `${words}: too short` : words, x, y + 29, 'small', 'start', tooShort ? 'in-alert strong' : ''));
  parts.push(rect('hit', x - 2, y - 8, Math.max(to - from, widthOf(words, 'small')) + 6, 38, 3));
  drawn.push(shows(id, lagInWords(of), ...parts));
}

/** The line that states the lag; else the motion, or the leaf that starts first. */
function lagThing({ installation: { motion }, things }: Chart, { way, first }: Lag): string {
  const fact = motion?.facts.lag.find((each) => each.movement === way);
  if (fact !== undefined) return things.note(`motion.lag.${way}`, `lag ${way}`, whole(fact.line));
  return things.note('motion', 'motion', headPlace(motion ?? first.leaf));
}

function lagInWords({ way, first, second, lag, least }: Lag): string {
  const apart = least === undefined ? '' : `; the least that keeps them apart is ${seconds(least)}`;
  return `${way}: ${short(second.leaf.name)} starts ${seconds(lag)} after ${short(first.leaf.name)}${apart}`;
}

/** The sign for the least lag; `y` is that of the lag's arrow. */
export const leastMark = (x: number, y: number, high = 15, low = 13): Element[] => [
  line('least', { x, y: y - high }, { x, y: y + low }),
  path(
    'lag-head',
    through(
      [
        { x, y: y + low - 2 },
        { x: x + 4, y: y + low + 4 },
        { x: x - 4, y: y + low + 4 },
      ],
      true,
    ),
  ),
];
