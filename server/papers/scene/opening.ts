// Where the leaves of an installation stand, in metres on the ground. Seen from above by somebody who stands inside and
// looks out: x to the right along the line of the closed gate, y towards the inside. What a file does not say is assumed
// here, and told as an assumption.
import { type Installation, type Leaf, perSubject } from '../../model/index.ts';
import type { Point } from './point.ts';

/** Drawn where nothing is stated, metres. */
export const assumed = { thickness: 0.05, pillar: 0.36, gap: 0.02, hingeGap: 0.02, between: 1.6, slideOff: 0.06 } as const;

interface Placed {
  readonly leaf: Leaf;
  readonly width: number;
  readonly thickness: number;
}

export interface Swing extends Placed {
  readonly kind: 'swing';
  /** The hinge axis. */
  readonly hinge: Point;
  /** 1: the closed leaf points to the right of its hinge; −1: to the left. */
  readonly along: 1 | -1;
  /** 1: it opens inward; −1: outward. */
  readonly side: 1 | -1;
  /** Radians. */
  readonly angle: number;
  /** The leaf in its own coordinates: x along the closed leaf from the axis, y towards the side that it opens to. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** The face of the post towards the leaf, and its front on the side that the leaf opens to, in the same coordinates. */
  readonly post: { readonly face: number; readonly front: number };
}

export interface Slide extends Placed {
  readonly kind: 'slide';
  /** The way that it opens: −1 to the left, 1 to the right. */
  readonly way: 1 | -1;
  readonly distance: number;
  /** The closing edge of the closed leaf. */
  readonly edge: Point;
  /** Length of the leaf with its tail. */
  readonly length: number;
}

export type PlacedLeaf = Swing | Slide;

/** One gap in the line of the gate that one or two leaves close. */
export interface Gap {
  readonly leaves: readonly PlacedLeaf[];
  /** Where the posts begin, left and right. */
  readonly left: number;
  readonly right: number;
}

/** The whole opening: every gap of it, from the left to the right. */
export interface PlacedOpening {
  readonly gaps: readonly Gap[];
  /** Leaves that cannot be drawn. */
  readonly left: readonly Leaf[];
  /** What is assumed, in whole sentences. */
  readonly assumed: readonly string[];
}

/** A point in a swing leaf's own coordinates, with the leaf open by `angle`, on the ground. */
export function onGround({ hinge, along, side }: Swing, x: number, y: number, angle = 0): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { x: hinge.x + along * (x * cos - y * sin), y: hinge.y + side * (x * sin + y * cos) };
}

/** Which way an SVG turns when the leaf opens: 1 for clockwise. */
export const turnOf = ({ along, side }: Swing): 1 | -1 => (along * side) as 1 | -1;

const canSwing = ({ facts: { width, opens } }: Leaf): boolean => width !== undefined && opens !== undefined;
const canSlide = ({ facts: { width, slides, opens } }: Leaf): boolean => width !== undefined && slides !== undefined && opens === undefined;

/** Where the leaves of an installation stand; `gaps` is empty where none can be drawn. */
export const placedOpeningOf = perSubject((installation: Installation): PlacedOpening => {
  const gaps: Gap[] = [];
  const left: Leaf[] = [];
  const told = new Set<string>();
  const done = new Set<Leaf>();
  let from = 0;
  const free = new FreeLeaves(installation.leaves, done);
  for (const leaf of installation.leaves) {
    if (done.has(leaf)) continue;
    done.add(leaf);
    if (!isDrawable(leaf)) {
      left.push(leaf);
      continue;
    }
    const partner = partnerOf(leaf, free);
    if (partner !== undefined) done.add(partner);
    const gap = canSwing(leaf) ? swinging(leaf, partner, from, told) : sliding(leaf, partner, from, told);
    gaps.push(gap);
    from = Math.max(gap.right, ...gap.leaves.map(reachRight)) + assumed.between;
  }
  if (gaps.length > 1) told.add('How far the openings are apart is not stated.');
  return { gaps, left, assumed: [...told] };
});

const isDrawable = (leaf: Leaf): boolean => canSwing(leaf) || canSlide(leaf);

/** The leaves that stand in no gap yet, by what they may be the partners of. None is looked at twice. */
class FreeLeaves {
  readonly #done: ReadonlySet<Leaf>;
  readonly #queues = new Map<string, { readonly leaves: Leaf[]; next: number }>();

  constructor(leaves: readonly Leaf[], done: ReadonlySet<Leaf>) {
    this.#done = done;
    for (const leaf of leaves) {
      const kind = FreeLeaves.#kindOf(leaf);
      if (kind === undefined) continue;
      const queue = this.#queues.get(kind);
      if (queue === undefined) this.#queues.set(kind, { leaves: [leaf], next: 0 });
      else queue.leaves.push(leaf);
    }
  }

  /** A swing leaf that overlaps with none; or a sliding one, by the way that it opens. */
  static #kindOf(leaf: Leaf): string | undefined {
    if (canSwing(leaf)) return leaf.covers === undefined && leaf.coveredBy === undefined ? 'swing' : undefined;
    return canSlide(leaf) ? leaf.facts.slides?.way : undefined;
  }

  has(leaf: Leaf | undefined): leaf is Leaf {
    return leaf !== undefined && isDrawable(leaf) && !this.#done.has(leaf);
  }

  /** The first of a kind in the order of the file. */
  first(kind: 'swing' | 'left' | 'right'): Leaf | undefined {
    const queue = this.#queues.get(kind);
    if (queue === undefined) return undefined;
    while (queue.next < queue.leaves.length && this.#done.has(queue.leaves[queue.next] as Leaf)) queue.next++;
    return queue.leaves[queue.next];
  }
}

/** The leaf that closes the same gap: one that overlaps with it, else the next of the same kind. */
function partnerOf(leaf: Leaf, free: FreeLeaves): Leaf | undefined {
  const { covers, coveredBy } = leaf;
  const bound = [covers, coveredBy].filter((other) => free.has(other)).sort((a, b) => a.at.start - b.at.start)[0];
  if (bound !== undefined) return canSwing(bound) === canSwing(leaf) ? bound : undefined;
  if (covers !== undefined || coveredBy !== undefined) return undefined;
  return free.first(canSwing(leaf) ? 'swing' : leaf.facts.slides?.way === 'left' ? 'right' : 'left');
}

/** How far to the right a leaf comes, closed or open. */
function reachRight(placed: PlacedLeaf): number {
  if (placed.kind === 'swing') return placed.hinge.x + placed.width * (placed.along === 1 ? 1 : Math.max(0, -Math.cos(placed.angle)));
  return Math.max(placed.edge.x, placed.edge.x + placed.way * (placed.length + placed.distance));
}

function swinging(first: Leaf, second: Leaf | undefined, from: number, told: Set<string>): Gap {
  const width = first.facts.width?.value ?? 0;
  if (second === undefined) {
    told.add(`On which side ${first.name} is hinged is not stated: it is drawn on the left, seen from inside.`);
    const leaf = swing(first, { x: from, y: 0 }, 1);
    return { leaves: [leaf], left: from + leaf.post.face, right: from + width + assumed.hingeGap };
  }
  told.add(`Which leaf stands on the left is not stated: ${first.name} is drawn there, as it comes first in the file.`);
  const closes = first.facts.closes ?? second.facts.closes;
  const gap = closes?.gap ?? assumed.gap;
  if (closes === undefined) told.add('The gap between the two leaves is not stated.');
  const leftLeaf = swing(first, { x: from, y: 0 }, 1);
  const rightLeaf = swing(second, { x: from + width + gap + (second.facts.width?.value ?? 0), y: 0 }, -1);
  return { leaves: [leftLeaf, rightLeaf], left: from + leftLeaf.post.face, right: rightLeaf.hinge.x - rightLeaf.post.face };
}

function swing(leaf: Leaf, hinge: Point, along: 1 | -1): Swing {
  const { width, opens, thickness: stated, 'hinge-offset': offset, 'hinge-gap': gap, 'post-proud': proud } = leaf.facts;
  const thickness = stated?.value ?? assumed.thickness;
  const begins = offset?.along ?? 0;
  const out = offset?.out ?? -thickness / 2;
  const end = width?.value ?? 0;
  return {
    kind: 'swing',
    leaf,
    width: end,
    thickness,
    hinge,
    along,
    side: opens?.way === 'outward' ? -1 : 1,
    angle: opens?.angle ?? 0,
    box: { x: begins, y: -out - thickness, width: Math.max(0, end - begins), height: thickness },
    post: { face: begins - (gap?.value ?? assumed.hingeGap), front: (proud?.value ?? 0) - out },
  };
}

function sliding(first: Leaf, second: Leaf | undefined, from: number, told: Set<string>): Gap {
  told.add('That the leaf runs on the inner side of its posts is not stated.');
  const one = first.facts.slides;
  const distance = one?.distance ?? 0;
  if (second === undefined) {
    const way = one?.way === 'left' ? -1 : 1;
    // Room for the open leaf on the left, so that what is drawn before it is not run over.
    const start = from + (way === -1 ? lengthOf(first) : 0);
    const edge = way === -1 ? start + distance : start;
    return { leaves: [slide(first, edge, way)], left: start, right: start + distance };
  }
  const [leftLeaf, rightLeaf] = one?.way === 'left' ? [first, second] : [second, first];
  const leftDistance = leftLeaf.facts.slides?.distance ?? 0;
  const start = from + lengthOf(leftLeaf);
  const middle = start + leftDistance;
  const right = middle + (rightLeaf.facts.slides?.distance ?? 0);
  return { leaves: [slide(leftLeaf, middle, -1), slide(rightLeaf, middle, 1)], left: start, right };
}

const lengthOf = ({ facts: { width, tail } }: Leaf): number => (width?.value ?? 0) + (tail?.value ?? 0);

function slide(leaf: Leaf, edge: number, way: 1 | -1): Slide {
  const { width, slides, thickness, passes } = leaf.facts;
  const thick = thickness?.value ?? assumed.thickness;
  const off = passes.find((each) => each.distance !== undefined)?.distance ?? assumed.slideOff;
  return {
    kind: 'slide',
    leaf,
    width: width?.value ?? 0,
    thickness: thick,
    way,
    distance: slides?.distance ?? 0,
    edge: { x: edge, y: assumed.pillar / 2 + off + thick / 2 },
    length: lengthOf(leaf),
  };
}
