// Finds places for labels and marks where they cover as little as can be of what is drawn.
import type { Point } from '../scene/point.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const overlap = (a: Box, b: Box): number => {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
};

const square = 32;
const squares = 1024;
const squareOf = (place: number): number => Math.floor(place / square);

export class Places {
  readonly #within: Box;
  /** What must not be covered. */
  readonly #hard: Box[] = [];
  /** What had better not be, by the squares of a grid that it touches. */
  readonly #soft = new Map<number, Box[]>();

  constructor(within: Box) {
    this.#within = within;
  }

  /** Keeps a surface free. */
  keep(box: Box): void {
    this.#hard.push(box);
  }

  /** Along a line: small boxes that labels go around if they can. */
  avoid(from: Point, to: Point, wide = 6): void {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const count = Math.max(1, Math.ceil(length / wide));
    for (let i = 0; i <= count; i++) {
      const x = from.x + ((to.x - from.x) * i) / count;
      const y = from.y + ((to.y - from.y) * i) / count;
      // Small as they are, they count for the square that their middle lies in.
      const key = squareOf(x) * squares + squareOf(y);
      const box = { x: x - wide / 2, y: y - wide / 2, width: wide, height: wide };
      const others = this.#soft.get(key);
      if (others === undefined) this.#soft.set(key, [box]);
      else others.push(box);
    }
  }

  /** A free place for a box of that size near a point, which is then kept; where all is full, the least bad one, and `covers` is true. */
  near(near: Point, width: number, height: number, least = 8): { readonly box: Box; readonly covers: boolean } {
    let best: Box | undefined;
    let bestCost = Infinity;
    let covers = false;
    for (const away of distances) {
      for (const direction of directions) {
        const { box, moved } = this.#beside(near, width, height, direction, away + least);
        if (away + 2 * moved >= bestCost) continue;
        const covered = this.#costOf(box, bestCost - away - 2 * moved);
        const cost = away + 2 * moved + covered;
        if (cost < bestCost) {
          bestCost = cost;
          covers = covered > 0;
          best = box;
        }
      }
      if (bestCost <= away) break;
    }
    const found = best ?? { x: near.x, y: near.y, width, height };
    this.keep(found);
    return { box: found, covers };
  }

  /** A box in a direction from a point, moved to where it lies within the drawing; and how far it was moved. */
  #beside({ x, y }: Point, width: number, height: number, [dx, dy]: readonly [number, number], away: number): { box: Box; moved: number } {
    const middleX = x + dx * (away + width / 2);
    const middleY = y + dy * (away + height / 2);
    const { x: left, y: top, width: wide, height: high } = this.#within;
    const box = {
      x: Math.min(Math.max(middleX - width / 2, left), left + wide - width),
      y: Math.min(Math.max(middleY - height / 2, top), top + high - height),
      width,
      height,
    };
    return { box, moved: Math.abs(box.x + width / 2 - middleX) + Math.abs(box.y + height / 2 - middleY) };
  }

  /** What a box would cover; no more is added up than `most`, as then it is no better than what is found. */
  #costOf(box: Box, most: number): number {
    let cost = 0;
    const wider = { x: box.x - 3, y: box.y - 2, width: box.width + 6, height: box.height + 4 };
    for (const other of this.#hard) {
      const shared = overlap(wider, other);
      if (shared > 0) cost += 400 + shared;
      if (cost >= most) return cost;
    }
    for (let column = squareOf(box.x - 6); column <= squareOf(box.x + box.width + 6); column++)
      for (let row = squareOf(box.y - 6); row <= squareOf(box.y + box.height + 6); row++) {
        const others = this.#soft.get(column * squares + row);
        if (others !== undefined) for (const other of others) cost += overlap(box, other);
        if (cost >= most) return cost;
      }
    return cost;
  }
}

/** The point of a box that is nearest to another one. */
export const nearest = (box: Box, { x, y }: Point): Point => ({
  x: Math.min(Math.max(x, box.x), box.x + box.width),
  y: Math.min(Math.max(y, box.y), box.y + box.height),
});

const distances = [0, 10, 22, 36, 54, 76, 100, 130, 165] as const;
const directions: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [0.8, -0.8],
  [0.8, 0.8],
  [-0.8, -0.8],
  [-0.8, 0.8],
  [1, -0.4],
  [1, 0.4],
  [-1, -0.4],
  [-1, 0.4],
  [0.4, -1],
  [-0.4, -1],
  [0.4, 1],
  [-0.4, 1],
];
