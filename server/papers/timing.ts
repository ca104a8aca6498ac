// The timing chart of one full cycle: what each leaf and the panel do, second by second.
import { inDegrees } from '../figures/index.ts';
import { decidingOverlap } from '../figures/least-lag/working.ts';
import { leafAfter, motionOf } from '../figures/run-time/working.ts';
import { headPlace, type Installation } from '../model/index.ts';
import { showSi } from '../vocabulary/index.ts';
import { margin, nothing, notes, picture, sheetWidth, shows, Things, whole, type Drawing, type Note, type Table } from './drawing.ts';
import { siteTitle } from './plan.ts';
import { scaleOf, ticks } from './scale.ts';
import { arrowHead, hatch, line, path, rect, through, type Element, type Point } from './svg.ts';
import { fitted, short, text, widthOf } from './text.ts';
import { timesOf, type LeafTimes, type Run, type Times } from './times.ts';

const left = 150;
const right = sheetWidth - margin - 10;
const rowHeight = 86;
/** Below a row whose leaf starts second. */
const lagHeight = 22;
const barHeight = 20;
/** A dwell that would take more than this share of the chart is cut. */
const longest = 0.38;
/** What standing open takes, as a share of all else, where no dwell is stated. */
const unknown = 0.34;

const seconds = (value: number): string => showSi(value, 's');

/** Seconds to places. Where the gate stands open for long, or for nobody knows how long, a part of that is left out. */
interface Axis {
  readonly at: (time: number) => number;
  /** The place of the break; undefined without one. */
  readonly cut: number | undefined;
  readonly marks: readonly number[];
}

function axisOf({ open, warns, end, dwell, seat }: Times): Axis {
  const stands = warns - open;
  const rest = end - stands;
  const most = Math.max(seat * 1.5, (rest * longest) / (1 - longest));
  if (dwell !== undefined && stands <= most) return { at: scaleOf(0, end, left, right).at, cut: undefined, marks: ticks(0, end, 12) };
  // In place of the real stretch one of another length is drawn, with the break near its end.
  const drawn = dwell === undefined ? Math.max(seat * 1.5, rest * unknown) : most;
  const { at } = scaleOf(0, rest + drawn, left, right);
  const before = Math.min(drawn * 0.82, stands * 0.82);
  const place = (time: number): number => (time <= open + before ? at(time) : time >= warns ? at(time - stands + drawn) : at(open + before) + ((time - open - before) / (stands - before)) * (at(open + drawn) - at(open + before)));
  const marks = ticks(0, rest + drawn, 12);
  const step = (marks[1] ?? 1) - (marks[0] ?? 0);
  const after = dwell === undefined ? [] : ticks(warns, end, Math.max(1, Math.floor((end - warns) / step)), [step]);
  return { at: place, cut: at(open + drawn * 0.86), marks: [...marks.filter((mark) => mark <= open + before), ...after] };
}

export function timingOf(installation: Installation): Drawing {
  const title = 'Timing of a full cycle';
  const table: Table = { caption: title, heads: ['What', 'From', 'To', 'Takes'], rows: [] };
  const times = timesOf(installation);
  if (times === undefined) return nothing('timing', title, table, whatLacks(installation));
  const things = new Things();
  const axis = axisOf(times);
  const rows: (readonly string[])[] = [];
  // Where no dwell is stated, nobody knows when closing begins: it is told from the command on.
  const moment = (time: number): string => (times.dwell === undefined && time >= times.warns - 1e-9 ? `${seconds(time - times.warns)} after the command to close` : seconds(time));
  const told = (what: string, from: number, to: number, note = ''): void => {
    rows.push([what, moment(from), moment(to), `${seconds(to - from)}${note}`]);
  };
  const drawn: Element[] = [];
  const facts = installation.motion?.facts;
  const heading = siteTitle(installation);
  drawn.push(text(fitted(`Timing: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'));

  // The phases of the whole gate, at the top.
  const top = 58;
  drawn.push(text('gate', margin, top + 19, 'normal', 'start', 'strong'));
  const { cycle } = times;
  const motionPlace = installation.motion === undefined ? { start: 0, end: 0 } : headPlace(installation.motion);
  const dwellId = facts?.dwell === undefined ? undefined : things.note('motion.dwell', 'dwell', whole(facts.dwell.line));
  const warnId = facts?.['pre-warning'] === undefined ? undefined : things.note('motion.pre-warning', 'pre-warning', whole(facts['pre-warning'].line));
  /** The first of these texts that fits in a stretch, in its part before a break. */
  const inside = (choices: readonly string[], x: number, width: number, y: number, tone: string): Element | undefined => {
    const room = axis.cut !== undefined && axis.cut > x && axis.cut < x + width ? axis.cut - x - 6 : width;
    const words = choices.find((each) => widthOf(each, 'small') <= room - 6);
    return words === undefined ? undefined : text(words, x + room / 2, y, 'small', 'middle', tone);
  };
  const phase = (id: string | undefined, from: number, to: number, name: string, choices: readonly string[], surface: 'state' | 'lamp'): void => {
    if (to <= from) return;
    const x = axis.at(from);
    const width = axis.at(to) - x;
    const parts: Element[] = [rect(surface, x, top, width, 28)];
    // What does not fit stands above its stretch.
    parts.push(inside(choices, x, width, top + 18, surface === 'state' ? '' : 'in-over') ?? text(choices[0] ?? '', x, top - 5, 'small', 'start', 'quiet'));
    parts.push(rect('hit', x, top, width, 28));
    drawn.push(shows(id ?? things.note('motion', 'motion', motionPlace), name, ...parts));
    if (times.dwell === undefined && from === times.open) rows.push(['standing open', moment(from), 'the command to close', 'not stated']);
    else told(name, from, to);
  };
  phase(warnId, 0, times.opens, 'warning before it opens', [`warns ${seconds(cycle.preWarning)}`], 'lamp');
  phase(undefined, times.opens, times.open, 'opening', [`opens ${seconds(cycle.opening)}`], 'state');
  const waits = times.dwell === undefined ? ['stands open until told to close', 'open until told'] : [`stands open ${seconds(times.dwell)}`, `open ${seconds(times.dwell)}`];
  phase(dwellId, times.open, times.warns, times.dwell === undefined ? 'standing open until it is told to close; how long is not stated' : 'standing open', waits, 'state');
  phase(warnId, times.warns, times.closes, 'warning before it closes', [`warns ${seconds(cycle.preWarning)}`], 'lamp');
  phase(undefined, times.closes, times.closed, 'closing', [`closes ${seconds(cycle.closing)}`], 'state');

  // One row for each leaf, in the order of the file.
  let y = top + 52;
  const bars = new Map<LeafTimes, number>();
  for (const each of times.leaves) {
    drawLeaf(each, y, axis, times, things, drawn, told);
    bars.set(each, y);
    y += rowHeight + (times.leaves.some((other) => other.opening.start < each.opening.start || other.closing.start < each.closing.start) ? lagHeight : 0);
  }
  drawLag(installation, times, bars, axis, things, drawn);

  // What the panel shows while nothing moves.
  const panelY = y + 2;
  drawn.push(text('panel', margin, panelY + 15, 'normal', 'start', 'strong'));
  const state = (id: string | undefined, from: number, to: number, choices: readonly string[]): void => {
    const x = axis.at(from);
    const width = axis.at(to) - x;
    if (!(width > 0)) return;
    const words = inside(choices, x, width, panelY + 15, '');
    const parts = [rect('state', x, panelY, width, 22), ...(words === undefined ? [] : [words]), rect('hit', x, panelY, width, 22)];
    drawn.push(shows(id ?? things.note('motion', 'motion', motionPlace), choices[0] ?? '', ...parts));
  };
  if (times.dwell === undefined) state(undefined, times.open, times.warns, ['waits for a command', 'waits']);
  else state(dwellId, times.open, times.warns, ['counts the dwell, then closes by itself', 'counts the dwell', 'dwell']);
  if (cycle.preWarning > 0) {
    state(warnId, times.warns, times.closes, ['lamp flashes', 'lamp']);
    state(warnId, 0, times.opens, ['lamp flashes', 'lamp']);
  }
  y = panelY + 36;

  // The axis.
  for (const mark of axis.marks) {
    const x = axis.at(mark);
    drawn.unshift(line('grid', { x, y: top + 30 }, { x, y }));
    drawn.push(line('axis', { x, y }, { x, y: y + 5 }), text(String(Number(mark.toPrecision(6))), x, y + 18, 'small', 'middle', 'quiet'));
  }
  drawn.push(line('axis', { x: left, y }, { x: right, y }), text('seconds', margin, y + 18, 'small', 'start', 'quiet'));
  if (axis.cut !== undefined) {
    const x = axis.cut;
    for (const at of [top + 14, panelY + 11, y]) drawn.push(path('break', through([{ x: x - 5, y: at + 11 }, { x: x + 1, y: at - 11 }, { x: x + 7, y: at - 11 }, { x: x + 1, y: at + 11 }], true)));
  }
  y += 34;
  y = legend(y, drawn, times);

  const whole2 = times.dwell === undefined ? undefined : times.closed;
  const sums = [`opening ${seconds(cycle.opening)}`, `closing ${seconds(cycle.closing)}`, ...(whole2 === undefined ? [] : [`whole cycle ${seconds(whole2)}`])];
  const lines: Note[] = [{ words: `In all: ${sums.join(', ')}. Times are from stop to stop, each leaf on its true motion.`, name: 'ink' }];
  if (axis.cut !== undefined) lines.push({ words: times.dwell === undefined ? 'No dwell is stated: how long the gate stands open is left out at the break.' : 'A part of the time in which the gate stands open is left out at the break.' });
  if (facts?.['pre-warning'] === undefined) lines.push({ words: 'No pre-warning is stated: none is drawn.' });
  if (facts?.seat === undefined) lines.push({ words: 'No seat is stated: none is drawn.' });
  y = notes(lines, margin, y, sheetWidth - 2 * margin, drawn);

  const description = describe(installation, times);
  const height = y + margin;
  return { id: 'timing', title, description, picture: picture('timing', `${title}: ${heading}`, description, sheetWidth, height, drawn), width: sheetWidth, height, table: { ...table, rows }, lacks: undefined, things: things.all };
}

function whatLacks(installation: Installation): string {
  const driven = installation.leaves.filter((leaf) => leaf.drives.length > 0);
  if (driven.length === 0) return 'Nothing drives a leaf: state a drive that moves it, with its model.';
  const without = driven.filter((leaf) => motionOf(leaf) === undefined);
  return `The motion of ${without.map((leaf) => short(leaf.name)).join(' and ')} cannot be worked out: that takes how far the leaf opens, a drive model with its kind and speed, and the brackets of a ram or an arm that can make the whole travel.`;
}

function describe(installation: Installation, times: Times): string {
  const { cycle } = times;
  const opening = decidingOverlap(installation, 'opening')?.opening;
  const closing = decidingOverlap(installation, 'closing')?.closing;
  const lag = opening === undefined || closing === undefined ? '' : ` Where the leaves overlap, the second start must be at least ${seconds(opening.lag)} later when opening and ${seconds(closing.lag)} when closing; stated are ${seconds(cycle.lagOpening)} and ${seconds(cycle.lagClosing)}.`;
  const dwell = times.dwell === undefined ? 'it stands open until it is told to close' : `it stands open for ${seconds(times.dwell)}`;
  return `${cycle.preWarning > 0 ? `The lamp warns for ${seconds(cycle.preWarning)} before each movement. ` : ''}The gate opens in ${seconds(cycle.opening)}, ${dwell}, and closes in ${seconds(cycle.closing)}. ${times.leaves.map(({ leaf, motion }) => `${short(leaf.name)} runs ${seconds(motion.runTime)}`).join(', ')}.${lag}`;
}

function drawLeaf({ leaf, motion, opening, closing }: LeafTimes, y: number, axis: Axis, times: Times, things: Things, drawn: Element[], told: (what: string, from: number, to: number, note?: string) => void): void {
  const id = things.note(`leaf.${leaf.name}`, `leaf ${short(leaf.name)}`, whole(leaf.at));
  const facts = leaf.installation.motion?.facts;
  const slowId = facts?.['slow-zone'] === undefined ? id : things.note('motion.slow-zone', 'slow zone', whole(facts['slow-zone'].line));
  const seatId = facts?.seat === undefined ? id : things.note('motion.seat', 'seat', whole(facts.seat.line));
  const name = short(leaf.name);
  drawn.push(shows(id, `leaf ${name}`, text(fitted(name, left - margin - 12, 'normal'), margin, y + 20, 'normal', 'start', 'strong'), text(`runs ${seconds(motion.runTime)}`, margin, y + 36, 'small', 'start', 'quiet'), rect('hit', margin - 4, y + 4, left - margin - 4, 40, 3)));

  // How far it is open, above its bars.
  const { linkage, runTime } = motion;
  const most = linkage.leaf[linkage.leaf.length - 1] as number;
  const base = y + 44;
  const high = base - y - 4;
  const points: Point[] = [{ x: axis.at(0), y: base }];
  const curve = (run: Run, back: boolean): void => {
    for (let i = 0; i <= 24; i++) {
      const time = (i * runTime) / 24;
      const position = leafAfter(motion, back ? 'closing' : 'opening', time) ?? 0;
      points.push({ x: axis.at(run.start + time), y: base - (high * position) / most });
    }
  };
  curve(opening, false);
  curve(closing, true);
  points.push({ x: axis.at(times.end), y: base });
  drawn.push(path('curve', through(points)));
  const shown = leaf.facts.opens === undefined ? showSi(most, 'm') : showSi(inDegrees(most), 'deg');
  const standing = (axis.at(opening.stop) + (axis.cut ?? axis.at(closing.start))) / 2;
  if (axis.at(closing.start) - axis.at(opening.stop) > 40) drawn.push(text(shown, standing, y - 2, 'small', 'middle', 'quiet'));

  for (const [run, way] of [[opening, 'opening'], [closing, 'closing']] as const) {
    const start = axis.at(run.start);
    const slow = axis.at(run.slow);
    const stop = axis.at(run.stop);
    const end = axis.at(run.end);
    const barY = base + 2;
    const inside = (words: string, width: number): Element[] => (width > widthOf(words, 'small') + 6 ? [text(words, start + width / 2, barY + 14, 'small', 'middle', 'in-over')] : []);
    drawn.push(shows(id, `${name} ${way} at full speed, ${seconds(run.slow - run.start)}`, rect('run', start, barY, slow - start, barHeight), ...inside(`${way} ${seconds(run.slow - run.start)}`, slow - start), rect('hit', start, barY, slow - start, barHeight)));
    told(`${name}: ${way}, at full speed`, run.start, run.slow, ', with speeding up and braking');
    if (run.stop > run.slow) {
      drawn.push(shows(slowId, `${name} ${way} in the slow zone, ${seconds(run.stop - run.slow)}`, rect('slow', slow, barY, stop - slow, barHeight), path('slow-strokes', hatch(slow, barY, stop - slow, barHeight, 8)), rect('hit', slow, barY, stop - slow, barHeight)));
      told(`${name}: ${way}, slow zone`, run.slow, run.stop);
    }
    if (run.end > run.stop) {
      const middle = barY + barHeight / 2;
      drawn.push(shows(seatId, `${name} pushing against its stop, ${seconds(run.end - run.stop)}`, rect('seat', stop, barY + 3, end - stop, barHeight - 6), path('seat-strokes', through([{ x: stop, y: middle }, { x: end, y: middle }])), rect('hit', stop, barY, Math.max(6, end - stop), barHeight)));
      told(`${name}: seat after ${way}`, run.stop, run.end);
    }
  }
}

/** The stated lag between the two starts, and the least that keeps overlapping leaves apart. */
function drawLag(installation: Installation, times: Times, bars: ReadonlyMap<LeafTimes, number>, axis: Axis, things: Things, drawn: Element[]): void {
  if (times.leaves.length < 2) return;
  for (const way of ['opening', 'closing'] as const) {
    const ordered = [...times.leaves].sort((a, b) => a[way].start - b[way].start);
    const first = ordered[0] as LeafTimes;
    const second = ordered[ordered.length - 1] as LeafTimes;
    const lag = second[way].start - first[way].start;
    const least = decidingOverlap(installation, way)?.[way].lag;
    if (lag <= 0 && least === undefined) continue;
    // In the wrong order no lag helps; that is for the rules to say.
    const fact = installation.motion?.facts.lag.find((each) => each.movement === way);
    const id = fact === undefined ? things.note('motion', 'motion', installation.motion === undefined ? headPlace(first.leaf) : headPlace(installation.motion)) : things.note(`motion.lag.${way}`, `lag ${way}`, whole(fact.line));
    const y = (bars.get(second) ?? 0) + 56;
    const from = axis.at(first[way].start);
    const to = axis.at(second[way].start);
    const parts: Element[] = [];
    const firstY = (bars.get(first) ?? 0) + 56;
    if (to - from > 3) {
      parts.push(line('lead', { x: from, y: firstY }, { x: from, y }), line('lag', { x: from, y }, { x: to, y }), arrowHead('lag-head', { x: from, y }, { x: to, y }, 7));
    }
    const words = [lag > 0 ? `lag ${seconds(lag)}` : 'no lag', ...(least === undefined ? [] : [`least ${seconds(least)}`])].join(', ');
    if (least !== undefined) {
      const x = axis.at(first[way].start + least);
      parts.push(line('least', { x, y: y - 15 }, { x, y: y + 13 }), leastTip(x, y + 11));
    }
    const short2 = least !== undefined && lag < least - 0.005;
    const x = Math.max(left, Math.min(from, right - widthOf(words, 'small')));
    parts.push(text(short2 ? `${words}: too short` : words, x, y + 29, 'small', 'start', short2 ? 'in-alert strong' : ''));
    parts.push(rect('hit', x - 2, y - 8, Math.max(to - from, widthOf(words, 'small')) + 6, 38, 3));
    drawn.push(shows(id, `${way}: ${short(second.leaf.name)} starts ${seconds(lag)} after ${short(first.leaf.name)}${least === undefined ? '' : `; the least that keeps them apart is ${seconds(least)}`}`, ...parts));
  }
}

function legend(y: number, drawn: Element[], times: Times): number {
  let x = margin;
  let at = y;
  const entry = (sample: (x: number, y: number) => readonly Element[], words: string): void => {
    const width = 34 + widthOf(words, 'small');
    if (x + width > sheetWidth - margin) {
      x = margin;
      at += 20;
    }
    drawn.push(...sample(x, at), text(words, x + 34, at + 10, 'small', 'start', 'quiet'));
    x += width + 22;
  };
  entry((from, top) => [rect('run', from, top, 28, 12)], 'full speed');
  if (times.leaves.some(({ opening }) => opening.stop > opening.slow)) entry((from, top) => [rect('slow', from, top, 28, 12), path('slow-strokes', hatch(from, top, 28, 12, 8))], 'slow zone');
  if (times.seat > 0) entry((from, top) => [rect('seat', from, top, 28, 12), path('seat-strokes', through([{ x: from, y: top + 6 }, { x: from + 28, y: top + 6 }]))], 'seat: pushing on against the stop');
  entry((from, top) => [path('curve', through([{ x: from, y: top + 12 }, { x: from + 14, y: top + 2 }, { x: from + 28, y: top + 2 }]))], 'how far it is open');
  if (times.leaves.some(({ leaf }) => leaf.covers !== undefined)) entry((from, top) => [line('least', { x: from + 14, y: top - 4 }, { x: from + 14, y: top + 8 }), leastTip(from + 14, top + 6)], 'least lag of overlapping leaves');
  return at + 18;
}

const leastTip = (x: number, y: number): Element => path('lag-head', through([{ x, y }, { x: x + 4, y: y + 6 }, { x: x - 4, y: y + 6 }], true));
