// What a drawing of the plan is put together from.
import type { Drive } from '../../../model/index.ts';
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import type { Carried } from '../../scene/fields.ts';
import type { PlacedLeaf } from '../../scene/opening.ts';
import type { Point } from '../../scene/point.ts';
import { Count, limitNotes, type Note, shows, Things } from '../drawing.ts';
import { nearest, Places } from '../placing.ts';
import { circle, type Element, line, rect } from '../svg.ts';
import { fitted, sizes, text, widthOf } from '../text.ts';
import type { Layout } from './layout.ts';

/** Lengths of a label's lines, in units of the drawing. */
const longestLabel = 230;

export interface Label {
  readonly id: string;
  readonly title: string;
  /** Its lines; empty ones are left out, the first one is strong. */
  readonly words: readonly string[];
  /** The place on the paper that it belongs to. */
  readonly near: Point;
  /** The place that it is looked for around, where that is another one. */
  readonly around?: Point;
  /** The class of its colour. */
  readonly tone?: 'in-field' | 'in-drive';
  /** No line leads from it to its place. */
  readonly loose?: true;
}

/** What is drawn so many of, and no more; in the order in which the foot of a drawing speaks of them. */
const limited = {
  leaf: 'leaves',
  drive: 'drives',
  carried: 'edges and fields on leaves',
  field: 'fields on the ground',
  hazard: 'places where somebody can be hurt',
} as const;

export class Plan {
  readonly layout: Layout;
  readonly reader: Reader;
  readonly things = new Things();
  readonly places: Places;
  /** Three layers, from the ground up. */
  readonly back: Element[] = [];
  readonly middle: Element[] = [];
  readonly front: Element[] = [];
  /** The same as a table. */
  readonly rows: (readonly string[])[] = [];
  /** What is drawn on the leaves, to be labelled when all is drawn. */
  readonly carried: Carried[] = [];
  readonly drives: { readonly leaf: PlacedLeaf; readonly drive: Drive }[] = [];
  readonly #counts = { leaf: new Count(), drive: new Count(), carried: new Count(), field: new Count(), hazard: new Count() };

  constructor(layout: Layout, reader: Reader) {
    this.layout = layout;
    this.reader = reader;
    this.places = new Places(layout.area);
  }

  /** A point on the ground to its place on the paper. */
  at(point: Point): Point {
    return this.layout.at(point);
  }

  /** Whether one more of a kind is drawn; told it is in any case. */
  takes(kind: keyof typeof limited): boolean {
    return this.#counts[kind].takes();
  }

  /** How many of a kind there are. */
  readonly counted = (kind: keyof typeof limited): number => this.#counts[kind].all;

  /** What is there and not drawn; none where all is. */
  get limits(): Note[] {
    return limitNotes((Object.keys(limited) as (keyof typeof limited)[]).map((kind) => [this.#counts[kind].all, limited[kind]]));
  }

  /** Metres in the reader's unit. */
  length(metres: number): string {
    return showSi(metres, 'm', this.reader);
  }

  /** A label of a thing near its place, with a line to it where it stands off. */
  label({ id, title, words, near, around = near, tone, loose }: Label): void {
    const lines = words.filter((row) => row !== '').map((row, i) => fitted(row, longestLabel, 'small', i === 0));
    const lineHeight = sizes.small + 3;
    const width = Math.max(...lines.map((row, i) => widthOf(row, 'small', i === 0))) + 6;
    const { box, covers } = this.places.near(around, width, lines.length * lineHeight + 4);
    const parts: Element[] = loose === true ? [] : lead(nearest(box, near), near, 14, 1.8);
    if (parts.length > 0) this.places.avoid(nearest(box, near), near, 3);
    if (covers) parts.push(rect('halo', box.x, box.y, box.width, box.height, 2));
    for (const [i, row] of lines.entries()) {
      const name = i > 0 ? (tone ?? 'quiet') : tone === undefined ? 'strong' : `strong ${tone}`;
      parts.push(text(row, box.x + 3, box.y + (i + 1) * lineHeight - 1, 'small', 'start', name));
    }
    parts.push(rect('hit', box.x, box.y, box.width, box.height, 3));
    this.front.push(shows(id, title, ...parts));
  }
}

/** A line from a label or mark to its place, with a dot there; nothing where the two are no farther apart than `apart`. */
export const lead = (from: Point, to: Point, apart: number, dot: number): Element[] =>
  Math.hypot(from.x - to.x, from.y - to.y) > apart ? [line('lead', from, to), circle('bar', to, dot)] : [];
