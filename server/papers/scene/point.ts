// Places in a plane: metres on the ground, or units of a drawing.

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The point that lies that share of the way from `a` to `b`. */
export const between = (a: Point, b: Point, share: number): Point => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
