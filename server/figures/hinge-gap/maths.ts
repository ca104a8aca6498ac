// The gap between a swing leaf and its post through the whole travel.
//
// Hinge axis at the origin, closed leaf along +x, leaf opening towards +y by θ, seen from above. The leaf is a rectangle that
// turns about the origin; the post is a block with one face towards the leaf. Two fingers' ways lead into the gap: past the
// corner of the post on the side that the leaf opens to, and past the one on the side that it closes from. On each side the
// gap is the least distance between the two; the way in is the distance between that corner of the post and the leaf.
//
// SI throughout: m and rad. An impossible hinge gives undefined.

/** What a tape measures at the closed gate, in metres. */
export interface Hinge {
  /** Of the leaf, above 0. */
  readonly width: number;
  /** Of the leaf at its hinge end, above 0. */
  readonly thickness: number;
  /** Between the end of the leaf and the post, 0 or above. */
  readonly gap: number;
  /** How far the axis stands beyond the end of the leaf, towards the post; negative within the leaf. */
  readonly along: number;
  /** How far the axis stands out from the face on the opening side; negative within the thickness. */
  readonly out: number;
  /** How far the post stands out beyond that face. */
  readonly proud: number;
}

/** A gap over the travel, metres; below 0 where the leaf would have to pass through the post. */
export interface GapRange {
  readonly least: number;
  /** Opening angle at which it is least, radians; the smaller one where several are alike. */
  readonly at: number;
  /** The widest that the way in becomes. */
  readonly greatest: number;
}

export interface HingeGaps {
  readonly opening: GapRange;
  readonly closing: GapRange;
}

interface Box {
  readonly low: { readonly x: number; readonly y: number };
  readonly high: { readonly x: number; readonly y: number };
}

/** Distance from a point to a box, metres; inside it, how deep, below 0. */
function distance(x: number, y: number, { low, high }: Box): number {
  const dx = Math.max(low.x - x, x - high.x);
  const dy = Math.max(low.y - y, y - high.y);
  return dx > 0 && dy > 0 ? Math.sqrt(dx * dx + dy * dy) : Math.max(dx, dy);
}

const turn = 2 * Math.PI;
/** Lengths closer than this are the same, metres. */
const same = 1e-9;

/**
 * Least and greatest distance to a box of a point that turns about the origin by `way` · θ, θ from 0 to `travel`. The
 * distance can only turn round where the point is straight beside the origin or in line with it and a corner of the box,
 * so these directions and both ends are all that has to be looked at (inside the box, where only the sign matters, it may
 * be a little deeper elsewhere).
 */
function overTravel(x: number, y: number, box: Box, way: 1 | -1, travel: number): Sweep {
  const sweep = new Sweep(x, y, box, way, travel);
  sweep.towards(1, 0);
  sweep.towards(0, 1);
  sweep.towards(box.high.x, box.high.y);
  return sweep;
}

/** A corner of the leaf past the post, which has one corner and goes on without end. */
const pastPost = (x: number, y: number, post: Box, travel: number): GapRange => overTravel(x, y, post, 1, travel);

/** A corner of the post past the leaf, which turns away from under it. */
function pastLeaf(x: number, y: number, leaf: Box, travel: number): GapRange {
  const sweep = overTravel(x, y, leaf, -1, travel);
  const { low, high } = leaf;
  sweep.towards(low.x, low.y);
  sweep.towards(low.x, high.y);
  sweep.towards(high.x, low.y);
  // Passing right through a thin leaf it is deepest half way.
  const half = (low.y + high.y) / 2;
  const across = sweep.radius * sweep.radius - half * half;
  if (across > 0) {
    sweep.towards(Math.sqrt(across), half);
    sweep.towards(-Math.sqrt(across), half);
  }
  return sweep;
}

/** The least and greatest as they are found. */
class Sweep implements GapRange {
  readonly radius: number;
  least: number;
  at = 0;
  greatest: number;
  readonly #x: number;
  readonly #y: number;
  readonly #box: Box;
  readonly #way: 1 | -1;
  readonly #travel: number;

  constructor(x: number, y: number, box: Box, way: 1 | -1, travel: number) {
    this.#x = x;
    this.#y = y;
    this.#box = box;
    this.#way = way;
    this.#travel = travel;
    this.radius = Math.sqrt(x * x + y * y);
    this.least = this.greatest = distance(x, y, box);
    const cos = Math.cos(travel);
    const sin = way * Math.sin(travel);
    this.#look(x * cos - y * sin, x * sin + y * cos, travel);
  }

  /** Looks where the point is in line with a place, on either side of the origin. */
  towards(x: number, y: number): void {
    const length = Math.sqrt(x * x + y * y);
    if (length === 0) return;
    const scale = this.radius / length;
    this.#look(x * scale, y * scale, undefined);
    this.#look(-x * scale, -y * scale, undefined);
  }

  #look(x: number, y: number, known: number | undefined): void {
    const here = distance(x, y, this.#box);
    // The angle is only asked for where it matters.
    if (here >= this.least + same && here <= this.greatest) return;
    const angle = known ?? this.#angleOf(x, y);
    if (angle > this.#travel) return;
    if (here < this.least - same || (here < this.least + same && angle < this.at)) {
      this.least = Math.min(this.least, here);
      this.at = angle;
    }
    if (here > this.greatest) this.greatest = here;
  }

  /** From 0 to a whole turn. */
  #angleOf(x: number, y: number): number {
    const angle = this.#way * Math.atan2(this.#x * y - this.#y * x, this.#x * x + this.#y * y);
    return angle < 0 ? angle + turn : angle;
  }
}

const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;

/**
 * The gaps on both sides of the hinge while the leaf opens by `travel` (radians, above 0, up to π).
 * Undefined for a hinge or a travel that cannot be.
 */
export function hingeGaps(hinge: Hinge, travel: number): HingeGaps | undefined {
  const { width, thickness, gap, along, out, proud } = hinge;
  if (
    !amount(width) ||
    !amount(thickness) ||
    thickness === 0 ||
    !amount(gap) ||
    !Number.isFinite(along) ||
    !Number.isFinite(out) ||
    !Number.isFinite(proud)
  )
    return undefined;
  if (!(width > along) || !(travel > 0 && travel <= Math.PI)) return undefined;
  const leaf: Box = { low: { x: along, y: -out - thickness }, high: { x: width, y: -out } };
  const face = along - gap;
  const front = proud - out;
  // How deep the post is makes nothing come nearer: on the other side the way in is taken where the leaf’s own face is.
  const post: Box = { low: { x: -Infinity, y: -Infinity }, high: { x: face, y: front } };
  const back = Math.min(-out, front) - thickness;
  const side = (corner: number, heel: number): GapRange => {
    const way = pastLeaf(face, corner, leaf, travel);
    const end = pastPost(along, heel, post, travel);
    const nearer = end.least < way.least - same || (end.least < way.least + same && end.at < way.at) ? end : way;
    return { least: nearer.least, at: nearer.at, greatest: way.greatest };
  };
  return { opening: side(front, leaf.high.y), closing: side(back, leaf.low.y) };
}
