// A picture as plain data, and as the text of an SVG. What the text of a file may hold is escaped here and nowhere else;
// there is no way to write a script, an address or a style through this table of tags and attributes.
import type { Steps } from '../../model/index.ts';
import type { Point } from '../scene/point.ts';

export type Tag = 'svg' | 'g' | 'path' | 'line' | 'rect' | 'circle' | 'text' | 'title' | 'desc';

export interface Attributes {
  readonly class?: string;
  /** The id of the thing that the element shows; see drawing.ts. */
  readonly 'data-thing'?: string;
  /** The id under which a slider moves the element; see plan/motion.ts. */
  readonly 'data-moves'?: string;
  readonly 'data-drawing'?: string;
  readonly xmlns?: 'http://www.w3.org/2000/svg';
  readonly viewBox?: string;
  readonly role?: string;
  readonly 'aria-hidden'?: 'true';
  readonly 'text-anchor'?: 'start' | 'middle' | 'end';
  readonly transform?: string;
  readonly d?: string;
  readonly x?: number;
  readonly y?: number;
  readonly x1?: number;
  readonly y1?: number;
  readonly x2?: number;
  readonly y2?: number;
  readonly cx?: number;
  readonly cy?: number;
  readonly r?: number;
  readonly rx?: number;
  readonly width?: number;
  readonly height?: number;
}

export interface Element {
  readonly tag: Tag;
  readonly attributes: Attributes;
  readonly children: readonly Node[];
}
/** An element, or text from anywhere. */
export type Node = Element | string;

export const element = (tag: Tag, attributes: Attributes, ...children: readonly Node[]): Element => ({ tag, attributes, children });

/** Two decimals of a unit of the drawing are finer than any screen; what is not a number is 0. */
export function number(value: number): string {
  if (!Number.isFinite(value)) return '0';
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

/** Characters that XML does not know, that stand half, or that turn the order of the text around them. */
const foreign =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A text on one line without what could break or disguise it; each such character is shown as the sign for one. */
export const clean = (text: string): string => text.replace(/[\t\n\r\u0085\u2028\u2029]+/g, ' ').replace(foreign, '\ufffd');

const marks: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
/** Most texts need nothing of this: they are seen at a glance. */
const special = /[^ -~]|[&<>"']/;
const escaped = (text: string): string => (special.test(text) ? clean(text).replace(/[&<>"']/g, (mark) => marks[mark] as string) : text);

/** The text of an SVG or of a part of one; it rests after every so many elements. */
export function* rendering(node: Node): Steps<string> {
  const parts: string[] = [];
  // What is still to be written, the next one last: an element, or the end of one.
  const left: Node[] = [node];
  const ends: Element[] = [];
  for (let count = 1; left.length > 0; count++) {
    const next = left.pop() as Node;
    if (typeof next === 'string') parts.push(escaped(next));
    else if (ends[ends.length - 1] === next) {
      ends.pop();
      parts.push('</', next.tag, '>');
    } else {
      writeHead(next, parts);
      if (next.children.length === 0) continue;
      ends.push(next);
      left.push(next);
      for (let i = next.children.length - 1; i >= 0; i--) left.push(next.children[i] as Node);
    }
    if (count % restEvery === 0) yield;
  }
  return parts.join('');
}

const restEvery = 200;

function writeHead({ tag, attributes, children }: Element, parts: string[]): void {
  parts.push('<', tag);
  for (const name of Object.keys(attributes) as (keyof Attributes)[]) {
    const value = attributes[name];
    if (value !== undefined) parts.push(' ', name, '="', typeof value === 'number' ? number(value) : escaped(value), '"');
  }
  parts.push(children.length === 0 ? '/>' : '>');
}

/** Straight lines through points, as the `d` of a path. */
export function through(points: readonly Point[], closed = false): string {
  let d = '';
  for (const { x, y } of points) d += `${d === '' ? 'M' : 'L'}${number(x)} ${number(y)}`;
  return closed && d !== '' ? d + 'Z' : d;
}

export const line = (name: string, from: Point, to: Point): Element =>
  element('line', { class: name, x1: from.x, y1: from.y, x2: to.x, y2: to.y });
export const path = (name: string, d: string): Element => element('path', { class: name, d });
export const circle = (name: string, { x, y }: Point, r: number): Element => element('circle', { class: name, cx: x, cy: y, r });
export const rect = (name: string, x: number, y: number, width: number, height: number, rx?: number): Element =>
  element('rect', { class: name, x, y, width: Math.max(0, width), height: Math.max(0, height), ...(rx === undefined ? {} : { rx }) });
export const group = (attributes: Attributes, ...children: readonly Node[]): Element => element('g', attributes, ...children);

/** The four corners of a band around a line, `half` wide on both sides, as the `d` of a path. */
export function band(from: Point, to: Point, half: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const x = (-(to.y - from.y) / length) * half;
  const y = ((to.x - from.x) / length) * half;
  return through(
    [
      { x: from.x + x, y: from.y + y },
      { x: to.x + x, y: to.y + y },
      { x: to.x - x, y: to.y - y },
      { x: from.x - x, y: from.y - y },
    ],
    true,
  );
}

/** A surface around a line that can be hit with a pointer. */
export const hitLine = (from: Point, to: Point, half = 7): Element => path('hit', band(from, to, half));

/** A head of an arrow at `tip`, that came from `from`. */
export function arrowHead(name: string, from: Point, tip: Point, size = 7): Element {
  const length = Math.hypot(tip.x - from.x, tip.y - from.y) || 1;
  const x = ((tip.x - from.x) / length) * size;
  const y = ((tip.y - from.y) / length) * size;
  const wings = [
    { x: tip.x - x - y * 0.45, y: tip.y - y + x * 0.45 },
    { x: tip.x - x + y * 0.45, y: tip.y - y - x * 0.45 },
  ];
  return path(name, through([tip, ...wings], true));
}

/** Slanting strokes that fill a rectangle, `apart` from each other; `down` slants the other way. */
export function hatch(x: number, y: number, width: number, height: number, apart: number, down = false): string {
  let d = '';
  for (let at = apart / 2; at < width + height; at += apart) {
    // From the left or upper side to the lower or right one, at 45°.
    const from = at < height ? { x: 0, y: at } : { x: at - height, y: height };
    const to = at < width ? { x: at, y: 0 } : { x: width, y: at - width };
    const turned = (value: number): number => (down ? height - value : value);
    d += `M${number(x + from.x)} ${number(y + turned(from.y))}L${number(x + to.x)} ${number(y + turned(to.y))}`;
  }
  return d;
}
