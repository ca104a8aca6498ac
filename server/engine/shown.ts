// What is shown of figures and margins: their values in the reader's unit, as plain data and in plain words.
import { type Figure, type Input, workingFigures } from '../figures/index.ts';
import { inOneGo, type Steps } from '../model/index.ts';
import type { Margin } from '../rules/index.ts';
import { inSi, type Reader, readerOf, type SiUnit, showSi } from '../vocabulary/index.ts';
import type { Analysis } from './analysis.ts';

/** A figure as plain data, for a panel beside the editor and for tools. Values in SI, angles in degrees, temperatures in kelvin. */
export interface FigureShown {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  readonly unit: SiUnit;
  /** In the reader's unit, and in words where they say more. */
  readonly shown: string;
  readonly formula: string;
  readonly inputs: readonly InputShown[];
  readonly source: string;
  readonly standing: string;
  readonly changedBy: string;
  /** The place that causes it, in the file's own offsets. */
  readonly start: number;
  readonly end: number;
}

/** One number that went into a figure, in SI too. */
export interface InputShown extends Omit<Input, 'unit'> {
  readonly unit: SiUnit;
  readonly shown: string;
}

/** Every figure of a file. */
export const figuresShown = (analysis: Analysis): FigureShown[] => inOneGo(showingFigures(analysis));

/** @internal The same in small steps. */
export function* showingFigures({ installation }: Analysis): Steps<FigureShown[]> {
  const reader = readerOf(installation);
  const shown: FigureShown[] = [];
  for (const figure of yield* workingFigures(installation)) {
    yield;
    shown.push({
      id: figure.id,
      title: figure.kind.title,
      ...inSi(figure.value, figure.kind.unit),
      shown: numberAndWords(figure, reader),
      formula: figure.kind.formula,
      inputs: inputsOf(figure).map((input) => ({
        ...input,
        ...inSi(input.value, input.unit),
        shown: showSi(input.value, input.unit, reader),
      })),
      source: figure.kind.source.text,
      standing: figure.kind.source.standing,
      changedBy: figure.kind.changedBy,
      start: figure.at.start,
      end: figure.at.end,
    });
  }
  return shown;
}

/** `west` of `leaf.west.run-time`; none where the figure is of the whole site or of a part of a panel. */
export function subjectOf(figure: Figure): string | undefined {
  const pattern = figure.kind.id;
  const at = pattern.indexOf('NAME');
  return at < 0 || pattern.includes('PANEL') ? undefined : figure.id.slice(at, figure.id.length - (pattern.length - at - 4));
}

/** The last part of a figure's id, in words: `leaf.west.run-time` is its run time. */
export function nameOfFigure(figure: Figure): string {
  const part = figure.kind.id.slice(figure.kind.id.lastIndexOf('.') + 1);
  return (part === 'NAME' ? figure.id.slice(figure.id.lastIndexOf('.') + 1) : part).replaceAll('-', ' ');
}

/** The value for people, and behind it in words what it says; in words alone where the number is but a code for them. */
function numberAndWords(figure: Figure, reader: Reader): string {
  const words = shownValue(figure, reader);
  const number = showSi(figure.value, figure.kind.unit, reader);
  return figure.kind.coded === true || words === number ? words : `${number}; ${words}`;
}

/** The value for people in the little room beside a line; in words where the figure has them. */
export function shownValue(figure: Figure, reader: Reader): string {
  const words = figure.words?.();
  if (words === undefined || words === '') return showSi(figure.value, figure.kind.unit, reader);
  // Words may begin with the name that stands before them anyway.
  const name = figure.id.slice(figure.id.lastIndexOf('.') + 1) + ' ';
  return words.startsWith(name) ? words.slice(name.length) : words;
}

/** A value of what is held, in the reader's unit or in the rule's words. */
export const shownHeld = ({ held }: Margin, value: number, reader: Reader): string =>
  held.says?.(value) ?? showSi(value, held.unit, reader);

/** `0.4 s to spare`, or `20 mm too much`. */
export function spareInWords(margin: Margin, reader: Reader): string {
  const { held, kept, left } = margin;
  const size = Math.abs(left);
  if (size === 0) return kept ? 'nothing to spare' : 'just reached';
  const shown = held.saysLeft?.(size) ?? shownHeld(margin, size, reader);
  return `${shown} ${kept ? 'to spare' : held.way === 'most' ? 'too much' : 'too little'}`;
}

/** A figure's inputs; a fault in working them out costs the derivation and not the editor. */
export function inputsOf(figure: Figure): readonly Input[] {
  try {
    return figure.inputs();
  } catch {
    return [];
  }
}
