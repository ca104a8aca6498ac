// Below the plan: its scale, its hazards one by one, and what is to be known of it.
import type { Steps } from '../../../model/index.ts';
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import type { MarkedHazard, UnjudgedHazard } from '../../scene/hazards.ts';
import { mostDrawn } from '../../scene/limit.ts';
import type { Point } from '../../scene/point.ts';
import { firstInWords } from '../../words.ts';
import { margin, type Note, sheetWidth } from '../drawing.ts';
import { foot, roundAbove } from '../scale.ts';
import { type Element, rect } from '../svg.ts';
import { short, text, wrapped } from '../text.ts';
import { hazardInWords, hazardMark, unjudgedInWords, unjudgedMark } from './hazards.ts';
import type { PlanScale } from './layout.ts';
import type { Plan } from './plan.ts';

/** A bar of a round length, so that the plan can be measured off at any size. */
export function scaleBar({ perMetre }: PlanScale, reader: Reader, y: number): Element[] {
  const unit = reader === 'american' ? foot : 1;
  const length = roundAbove(90 / perMetre / unit) * unit;
  const half = (length * perMetre) / 2;
  return [
    rect('bar', margin, y, half, 5),
    rect('bar-open', margin + half, y, half, 5),
    text('0', margin, y + 18, 'small', 'start', 'quiet'),
    text(barInWords(length, reader), margin + length * perMetre, y + 18, 'small', 'middle', 'quiet'),
  ];
}

function barInWords(length: number, reader: Reader): string {
  if (reader === 'american') return `${Number((length / foot).toPrecision(3))} ft`;
  return length >= 1 ? `${Number(length.toPrecision(3))} m` : showSi(length, 'm');
}

/** Every hazard with its mark and in words, from `top` on; gives where they end. */
export function* hazardList(
  marked: readonly MarkedHazard[],
  unjudged: readonly UnjudgedHazard[],
  reader: Reader,
  top: number,
  into: Element[],
): Steps<number> {
  if (marked.length + unjudged.length === 0) return top;
  into.push(text('Where the moving leaves can hurt somebody', margin, top + 4, 'normal', 'start', 'strong'));
  const told = [
    ...marked
      .slice(0, mostDrawn)
      .map((each) => ({ words: () => hazardInWords(each, reader), mark: (at: Point) => hazardMark(each, at, 9) })),
    ...unjudged
      .slice(0, Math.max(0, mostDrawn - marked.length))
      .map((each) => ({ words: () => unjudgedInWords(each), mark: (at: Point) => unjudgedMark(each, at, 9) })),
  ];
  let y = top + 12;
  for (const { words, mark } of told) {
    yield;
    const rows = wrapped(words(), sheetWidth - 2 * margin - 40, 'small', 3);
    const height = Math.max(24, rows.length * 15 + 8);
    const middle = y + height / 2;
    // Not a thing by itself: who looks for the hazard in the plan is to see it there.
    into.push(...mark({ x: margin + 12, y: middle }));
    for (const [i, row] of rows.entries()) into.push(text(row, margin + 34, middle + 4 + (i - (rows.length - 1) / 2) * 15, 'small'));
    y += height;
  }
  return y + 4;
}

export function planNotes(
  { layout: { scene }, limits }: Plan,
  marked: readonly MarkedHazard[],
  unjudged: readonly UnjudgedHazard[],
): Note[] {
  const { opening, leaves, others } = scene;
  const lines: Note[] = [...limits];
  const left = firstInWords(opening.left, 'leaves', ', ', (leaf) => short(leaf.name));
  if (left !== '') lines.push({ words: `Not drawn, as the width or the way it opens is not stated: ${left}.` });
  const signs = signsInWords(marked, unjudged);
  if (signs !== '') lines.push({ words: signs });
  const thin = [...leaves, ...others].some(({ leaf }) => leaf.facts.thickness === undefined) ? ', nor how thick every leaf is' : '';
  lines.push({ words: [...opening.assumed.slice(0, mostDrawn), `The size of the posts is not stated${thin}.`].join(' ') });
  return lines;
}

/** What the marks mean, of those that are there. */
function signsInWords(marked: readonly MarkedHazard[], unjudged: readonly UnjudgedHazard[]): string {
  const signs: string[] = [];
  if (marked.some(({ judged }) => !judged.covered)) signs.push('a filled diamond: not covered, or not enough');
  if (marked.some(({ judged }) => judged.covered)) signs.push('a ring with a tick: covered by what is named behind it');
  if (unjudged.length > 0) signs.push('a broken ring: cannot be judged, as facts are missing');
  const sentence = signs.join('; ');
  return sentence === '' ? '' : `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}
