// What a drawing is: the picture, the same in words and as a table, and where in the file each thing in it stands.
import type { Statement } from '../../../grammar/index.ts';
import type { Steps } from '../../model/index.ts';
import { mostDrawn } from '../scene/limit.ts';
import { drawingCaution } from '../words.ts';
import { plainStyle, type Theme } from './style.ts';
import { type Element, element, group, type Node, rect, rendering } from './svg.ts';
import { type Size, sizes, text, wrapped } from './text.ts';

export interface Table {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Something that is drawn and stands in the file. */
export interface Thing {
  readonly id: string;
  readonly label: string;
  /** Offsets of its declaration in the file. */
  readonly start: number;
  readonly end: number;
}

export interface Drawing {
  readonly id: 'plan' | 'timing' | 'force' | 'wiring';
  readonly title: string;
  readonly description: string;
  /** Undefined where there is nothing to draw; then `lacks` says why. */
  readonly picture: Element | undefined;
  readonly width: number;
  readonly height: number;
  readonly table: Table;
  readonly lacks: string | undefined;
  readonly things: readonly Thing[];
}

/** The things of a drawing as they are met; the first place of each counts. */
export class Things {
  readonly #found = new Map<string, Thing>();

  /** Notes a thing and gives its id. */
  note(id: string, label: string, { start, end }: { readonly start: number; readonly end: number }): string {
    if (!this.#found.has(id)) this.#found.set(id, { id, label, start, end });
    return id;
  }

  get all(): readonly Thing[] {
    return [...this.#found.values()];
  }
}

/** A whole block or line: where it begins and ends in the file. */
export const whole = ({ start, end }: Statement): { start: number; end: number } => ({ start, end });

/** A group that shows a thing. What is `moving` follows the slider. */
export const shows = (id: string, label: string, ...children: readonly Node[]): Element =>
  group({ class: 'thing', 'data-thing': id }, element('title', {}, label), ...children);

/** Width of every drawing but the wiring, and the margin around it. */
export const sheetWidth = 860;
export const margin = 24;

export interface Note {
  readonly words: string;
  readonly name?: string;
}

/** Does something to each of a list, and rests before each. */
export function* eachOf<T>(all: readonly T[], work: (one: T, index: number) => void): Steps<void> {
  for (const [i, one] of all.entries()) {
    yield;
    work(one, i);
  }
}

/** What a function makes of each of a list, with a rest before each. */
export function* mappedOf<T, R>(all: readonly T[], work: (one: T, index: number) => R): Steps<R[]> {
  const made: R[] = [];
  yield* eachOf(all, (one, i) => made.push(work(one, i)));
  return made;
}

/** Things of a kind as they are met, of which the first `mostDrawn` are drawn. */
export class Count {
  all = 0;

  /** Whether one more is drawn. */
  takes(): boolean {
    return this.all++ < mostDrawn;
  }
}

/** Of which kinds there are more than are drawn, in words; none where there are not. */
export function limitNotes(counts: readonly (readonly [number, string])[], drawn = 'Drawn'): Note[] {
  const limits = counts.flatMap(([all, kind]) => (all > mostDrawn ? [`the first ${mostDrawn} of ${all} ${kind}`] : []));
  if (limits.length === 0) return [];
  return [{ words: `${drawn} are ${listed(limits)}. The table and the list of parts have all of them.`, name: 'ink' }];
}

const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;

/** Lines of text one below the other from `y` on, each in at most so many rows; gives where they end. */
export function notes(
  lines: readonly Note[],
  x: number,
  y: number,
  width: number,
  into: Element[],
  size: Size = 'small',
  most = 4,
): number {
  let at = y;
  for (const { words, name } of lines)
    for (const row of wrapped(words, width, size, most)) {
      at += sizes[size] + 5;
      into.push(text(row, x, at, size, 'start', name ?? 'quiet'));
    }
  return at;
}

/** What a drawing is made of when all of it is drawn. */
export interface Sheet extends Pick<Drawing, 'id' | 'title' | 'description' | 'width' | 'height' | 'table'> {
  /** What the site is called. */
  readonly heading: string;
  readonly drawn: readonly Element[];
  readonly things: Things;
}

/** A drawing of which all is drawn; at its foot it says what no drawing can take the place of. */
export function finished(sheet: Sheet): Drawing {
  const { id, title, width, table, things } = sheet;
  const drawn = [...sheet.drawn];
  const foot = [{ words: drawingCaution, name: 'ink' }];
  const height = notes(foot, margin, sheet.height - margin, width - 2 * margin, drawn, 'small', 20) + margin;
  const description = `${sheet.description} ${drawingCaution}`;
  const picture = pictureOf({ ...sheet, description, height, drawn });
  return { id, title, description, picture, width, height, table, lacks: undefined, things: things.all };
}

/** The whole picture: paper, title and description for screen readers, then what is drawn. */
function pictureOf({ id, title, heading, description, width, height, drawn }: Sheet): Element {
  const [wide, high] = [Math.ceil(width), Math.ceil(height)];
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'pintle-drawing',
      'data-drawing': id,
      viewBox: `0 0 ${wide} ${high}`,
      role: 'graphics-document',
    },
    element('title', {}, `${title}: ${heading}`),
    element('desc', {}, description),
    rect('paper', 0, 0, wide, high),
    ...drawn,
  );
}

/** A drawing that cannot be made, and why. */
export const nothing = (id: Drawing['id'], title: string, table: Table, lacks: string): Drawing => ({
  id,
  title,
  description: lacks,
  picture: undefined,
  width: 0,
  height: 0,
  table,
  lacks,
  things: [],
});

/** A drawing as the text of an SVG; empty where there is nothing to draw. */
export function* svgOf({ picture }: Drawing): Steps<string> {
  return picture === undefined ? '' : yield* rendering(picture);
}

/** A drawing as a file of its own, with its style in it and its size in units of a screen; empty where there is nothing to draw. */
export function* fileOf(drawing: Drawing, theme: Theme): Steps<string> {
  const svg = yield* svgOf(drawing);
  if (svg === '') return '';
  const end = svg.indexOf('>');
  const size = ` width="${Math.ceil(drawing.width)}" height="${Math.ceil(drawing.height)}"`;
  const style = `<style>${escapedStyle(plainStyle(theme))}</style>`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.slice(0, end)}${size}>${style}${svg.slice(end + 1)}\n`;
}

/** Our own text: its only marks that XML knows are `>` and `"`, and it has no `<` or `&`. */
const escapedStyle = (style: string): string => style.replace(/&/g, '&amp;').replace(/</g, '&lt;');
