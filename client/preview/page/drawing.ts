// A drawing in the page: let in through the allow-list, its things found by their ids, marked, and moved.
import type { CycleAnswer } from '../../../server/lsp/requests.ts';
import { allowedAttribute, allowedElement } from '../allowed.ts';
import { transformAt } from '../cycle.ts';
import { makeSvg } from './elements.ts';

/** How far beside a thin line, in pixels, a click still means it: 24 across, as for every other target. */
const reach = 12;

/** A copy of what is allowed of it; undefined where the text is no drawing. */
export function importDrawing(text: string): SVGSVGElement | undefined {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  return parsed.localName === 'svg' ? (copy(parsed) as SVGSVGElement | undefined) : undefined;
}

function copy(from: Element): SVGElement | undefined {
  if (from.namespaceURI !== 'http://www.w3.org/2000/svg' || !allowedElement(from.localName)) return undefined;
  const element = makeSvg(from.localName as keyof SVGElementTagNameMap);
  for (const { name, value } of from.attributes) {
    const allowed = allowedAttribute(name, value);
    if (allowed !== undefined) element.setAttribute(name, allowed);
  }
  for (const child of from.childNodes) {
    if (child.nodeType === Node.TEXT_NODE) element.append(child.nodeValue ?? '');
    else if (child.nodeType === Node.ELEMENT_NODE) {
      const inner = copy(child as Element);
      if (inner !== undefined) element.append(inner);
    }
  }
  return element;
}

/** What is marked, and how: at the cursor, or under the pointer or the keyboard's focus. */
export type Mark = 'selected' | 'pointed';

export class Drawing {
  readonly svg: SVGSVGElement;
  /** Its things, by id; one may be drawn in several pieces. */
  private readonly pieces = new Map<string, SVGGraphicsElement[]>();
  /** What moves, with the place that it was drawn at. */
  private readonly moving: { readonly element: SVGElement; readonly thing: string; readonly drawnAt: string }[] = [];
  private readonly marks: SVGGElement;
  private readonly marked: Record<Mark, string | undefined> = { selected: undefined, pointed: undefined };

  constructor(svg: SVGSVGElement) {
    this.svg = svg;
    for (const element of svg.querySelectorAll<SVGGraphicsElement>('[data-thing]')) {
      const id = element.dataset['thing'] ?? '';
      this.pieces.set(id, [...(this.pieces.get(id) ?? []), element]);
    }
    for (const element of svg.querySelectorAll<SVGElement>('[data-moves]'))
      this.moving.push({ element, thing: element.dataset['moves'] ?? '', drawnAt: element.getAttribute('transform') ?? '' });
    this.marks = makeSvg('g', { class: 'marks' });
    svg.append(this.marks);
  }

  /** Ids of everything in it that stands in the file. */
  get things(): { has(id: string): boolean } {
    return this.pieces;
  }

  get moves(): boolean {
    return this.moving.length > 0;
  }

  get size(): { readonly width: number; readonly height: number } {
    const { width, height } = this.svg.viewBox.baseVal;
    return width > 0 && height > 0 ? { width, height } : { width: 300, height: 150 };
  }

  moveTo(cycle: CycleAnswer, time: number): void {
    for (const { element, thing, drawnAt } of this.moving) {
      const motions = cycle.leaves.filter((one) => one.thing === thing);
      if (motions.length > 0)
        element.setAttribute('transform', [...motions.map((leaf) => transformAt(leaf, time)), drawnAt].join(' ').trim());
    }
    this.drawMarks();
  }

  mark(mark: Mark, thing: string | undefined): void {
    const known = thing !== undefined && this.pieces.has(thing) ? thing : undefined;
    if (this.marked[mark] === known) return;
    for (const piece of this.pieces.get(this.marked[mark] ?? '') ?? []) piece.classList.remove(mark);
    for (const piece of this.pieces.get(known ?? '') ?? []) piece.classList.add(mark);
    this.marked[mark] = known;
    this.drawMarks();
  }

  /** Where the pieces of a thing are on the screen, those left out that have no extent. */
  private placesOf(thing: string): { readonly piece: SVGGraphicsElement; readonly box: DOMRect }[] {
    return (this.pieces.get(thing) ?? [])
      .map((piece) => ({ piece, box: piece.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 || box.height > 0);
  }

  /** Where a thing is on the screen, all pieces together; undefined where it is not drawn. */
  placeOf(thing: string): DOMRect | undefined {
    const boxes = this.placesOf(thing).map(({ box }) => box);
    if (boxes.length === 0) return undefined;
    const left = Math.min(...boxes.map((box) => box.left));
    const top = Math.min(...boxes.map((box) => box.top));
    return new DOMRect(left, top, Math.max(...boxes.map((box) => box.right)) - left, Math.max(...boxes.map((box) => box.bottom)) - top);
  }

  /** The thing at a point of the screen, or the nearest within reach. */
  thingAt(x: number, y: number): string | undefined {
    const at = (px: number, py: number): string | undefined => {
      const thing = document.elementFromPoint(px, py)?.closest<SVGElement>('[data-thing]');
      return thing !== null && thing !== undefined && this.svg.contains(thing) ? thing.dataset['thing'] : undefined;
    };
    const here = at(x, y);
    if (here !== undefined) return here;
    for (let radius = 3; radius <= reach; radius += 3)
      for (let turn = 0; turn < 12; turn++) {
        const found = at(x + radius * Math.cos((turn * Math.PI) / 6), y + radius * Math.sin((turn * Math.PI) / 6));
        if (found !== undefined) return found;
      }
    return undefined;
  }

  /** Corners around what stands at the cursor, a broken frame around what is pointed at: shapes, so that no colour is needed to tell. */
  drawMarks(): void {
    this.marks.replaceChildren();
    const matrix = this.svg.getScreenCTM();
    if (matrix === null || matrix.a === 0) return;
    const pixel = 1 / matrix.a;
    const back = matrix.inverse();
    for (const mark of ['pointed', 'selected'] as const) {
      const thing = this.marked[mark];
      for (const { piece, box } of thing === undefined ? [] : this.placesOf(thing)) {
        // The drawing has an outline of its own for most of what can be pointed at.
        if (mark === 'pointed' && piece.querySelector(':scope > .hit') !== null) continue;
        const from = new DOMPoint(box.left, box.top).matrixTransform(back);
        const to = new DOMPoint(box.right, box.bottom).matrixTransform(back);
        const d = mark === 'selected' ? corners(from, to, pixel) : frame(from, to, pixel);
        for (const layer of ['halo', 'line'])
          this.marks.append(makeSvg('path', { class: `${mark}-${layer}`, d, 'vector-effect': 'non-scaling-stroke' }));
      }
    }
  }
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The four corners of a frame around a box, a little apart from it; lengths in pixels of the screen. */
function corners(from: Point, to: Point, pixel: number): string {
  const pad = 5 * pixel;
  const [left, top, right, bottom] = [from.x - pad, from.y - pad, to.x + pad, to.y + pad];
  const arm = Math.min(12 * pixel, (right - left) / 3, (bottom - top) / 3);
  const corner = (x: number, y: number, dx: number, dy: number): string => `M${x + dx * arm} ${y}H${x}V${y + dy * arm}`;
  return corner(left, top, 1, 1) + corner(right, top, -1, 1) + corner(right, bottom, -1, -1) + corner(left, bottom, 1, -1);
}

function frame(from: Point, to: Point, pixel: number): string {
  const pad = 3 * pixel;
  return `M${from.x - pad} ${from.y - pad}H${to.x + pad}V${to.y + pad}H${from.x - pad}Z`;
}
