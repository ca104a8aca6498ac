// Values that were worked out, behind the lines that cause them.
import { firstIndex, type Span } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { nameOfFigure, shownValue, subjectOf } from '../engine/inside.ts';
import type { Figure, Topic } from '../figures/index.ts';
import { marginsAbout } from '../rules/index.ts';
import { type Reader, readerOf, showSi } from '../vocabulary/index.ts';
import { derivation } from './derivation.ts';

export interface InlayValue {
  /** Behind the last thing on the line that is not a comment. */
  readonly offset: number;
  /** `run time 17.9 s`; with the name of its subject where that is not the block it stands in: `west drive time 19.4 s`. */
  readonly label: string;
  readonly id: string;
  /** The derivation, in Markdown. */
  readonly tooltip: () => string;
}

/**
 * The values to show in a stretch of the text, in the order of their places; several of one line stand side by side.
 * `wants` says of which topics; without it, of all.
 */
export function inlayValues(analysis: Analysis, range?: Span, wants: (topic: Topic) => boolean = () => true): InlayValue[] {
  const reader = readerOf(analysis.installation);
  const values: InlayValue[] = [];
  for (const figure of analysis.figures) {
    if (!wants(figure.kind.topic)) continue;
    const offset = endOfFact(analysis, figure);
    if (range !== undefined && (offset < range.start || offset > range.end)) continue;
    values.push({
      offset,
      label: labelOf(analysis, figure, reader),
      id: figure.id,
      tooltip: () => derivation(figure, reader, marginsAbout(analysis.installation, figure.id)),
    });
  }
  return values.sort((a, b) => a.offset - b.offset || Number(isSetting(a)) - Number(isSetting(b)));
}

/** The derivation of one value, in Markdown; undefined where the file has no value of that id. */
export function inlayTooltip(analysis: Analysis, id: string): string | undefined {
  const figure = analysis.figures.find((candidate) => candidate.id === id);
  return figure === undefined
    ? undefined
    : derivation(figure, readerOf(analysis.installation), marginsAbout(analysis.installation, figure.id));
}

/** Where to set a panel stands behind what it has to be set for. */
const isSetting = ({ id }: InlayValue): boolean => id.includes('.adjuster.');

/** Short, because several share a line: words only where the bare number says nothing to anybody. */
function labelOf(analysis: Analysis, figure: Figure, reader: Reader): string {
  const value =
    figure.kind.unit === '1'
      ? shownValue(figure, reader).replace(/ from the low stop$/, '')
      : showSi(figure.value, figure.kind.unit, reader);
  const subject = subjectOf(figure);
  const name = nameOfFigure(figure);
  return [
    subject === undefined || subject === name.replaceAll(' ', '-') || isNamed(analysis, figure.at.start, subject) ? '' : subject,
    name,
    value,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** Whether the block around an offset bears that name. */
function isNamed(analysis: Analysis, offset: number, name: string): boolean {
  const { items } = analysis.installation.reading.tree;
  const around = Math.max(0, firstIndex(items, ({ start }) => start > offset) - 1);
  const first = items[around]?.values[0];
  return first?.kind === 'word' && first.text === name;
}

/** Where the line of a figure's place ends, its comment and the blanks before that left out. */
function endOfFact(analysis: Analysis, figure: Figure): number {
  const { text } = analysis;
  const from = Math.max(0, Math.min(figure.at.end, text.length));
  let end = from;
  while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
  const comment = firstCommentFrom(analysis, from);
  if (comment !== undefined && comment < end) end = comment;
  while (end > from && /\s/.test(text.charAt(end - 1))) end--;
  return end;
}

/** The start of the first comment at or after an offset. */
function firstCommentFrom(analysis: Analysis, offset: number): number | undefined {
  const { comments } = analysis.installation.reading.tree;
  return comments[firstIndex(comments, ({ start }) => start >= offset)]?.start;
}
