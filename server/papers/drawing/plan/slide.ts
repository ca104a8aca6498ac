// Sliding leaves: closed, open, the strip that they sweep, and what stands behind them when open.
import type { Leaf, Steps } from '../../../model/index.ts';
import type { Slide } from '../../scene/opening.ts';
import { drawnRoomOf, wallAlong } from '../../scene/plan.ts';
import { shows } from '../drawing.ts';
import type { Box } from '../placing.ts';
import { arrowHead, type Element, group, hatch, line, path, rect } from '../svg.ts';
import { short } from '../text.ts';
import { drawCarried, tellAllCarried } from './carried.ts';
import { drawRack, tellDrive } from './drives.ts';
import type { Plan } from './plan.ts';
import { leafThing, roomThing } from './things.ts';

export function* drawSlide(plan: Plan, leaf: Slide): Steps<void> {
  const { leaf: it, way, distance } = leaf;
  const id = leafThing(plan, it);
  const opens = `slides to the ${it.facts.slides?.way ?? ''} by ${plan.length(distance)}`;
  const title = `leaf ${short(it.name)}, ${plan.length(leaf.width)} wide, ${opens}`;
  const closed = boxAt(plan, leaf, 0);
  const open = boxAt(plan, leaf, way * distance);
  const swept = {
    x: Math.min(closed.x, open.x),
    y: closed.y - 5,
    width: (leaf.length + distance) * plan.layout.perMetre,
    height: closed.height + 10,
  };
  plan.back.push(shows(id, `${title}: what it sweeps`, boxed('swept', swept), boxed('swept-edge', swept), boxed('hit', swept)));
  plan.back.push(boxed('leaf-open', open));
  const shown = shows(id, title, ...leafParts(plan, leaf, closed));
  plan.middle.push(group({ 'data-moves': `leaf.${it.name}` }, shown, ...(yield* drawCarried(plan, leaf))));
  for (const drive of it.drives) {
    yield;
    drawRack(plan, leaf, drive);
  }
  const room = drawnRoomOf(it);
  if (room !== undefined) drawWall(plan, leaf, room);
  drawWay(plan, leaf);
  plan.places.avoid({ x: swept.x, y: closed.y + 2 }, { x: swept.x + swept.width, y: closed.y + 2 }, 10);
  plan.rows.push(rowOf(plan, leaf));
}

/** The same in words alone. */
export function* tellSlide(plan: Plan, leaf: Slide): Steps<void> {
  const { leaf: it } = leaf;
  leafThing(plan, it);
  yield* tellAllCarried(plan, leaf);
  for (const drive of it.drives) {
    yield;
    tellDrive(plan, drive);
    plan.takes('drive');
  }
  const room = drawnRoomOf(it);
  if (room !== undefined) roomThing(plan, it, room);
  plan.rows.push(rowOf(plan, leaf));
}

const boxed = (name: string, { x, y, width, height }: Box): Element => rect(name, x, y, width, height);

/** The leaf with its tail on the paper, moved by so many metres. */
function boxAt(plan: Plan, { edge, way, length, thickness }: Slide, shift: number): Box {
  const { perMetre } = plan.layout;
  const from = plan.at({ x: Math.min(edge.x, edge.x + way * length) + shift, y: edge.y - thickness / 2 });
  return { x: from.x, y: from.y, width: length * perMetre, height: Math.max(3, thickness * perMetre) };
}

function leafParts(plan: Plan, { leaf, way, width, length }: Slide, closed: Box): Element[] {
  const { perMetre } = plan.layout;
  const { tail } = leaf.facts;
  const x = way === 1 ? closed.x : closed.x + (length - width) * perMetre;
  const parts = [rect('leaf', x, closed.y, width * perMetre, closed.height)];
  if (tail !== undefined) {
    const tailX = way === 1 ? closed.x + width * perMetre : closed.x;
    parts.push(rect('leaf-open', tailX, closed.y, tail.value * perMetre, closed.height));
  }
  return [...parts, rect('hit', closed.x, closed.y - 4, closed.width, closed.height + 8)];
}

function drawWall(plan: Plan, leaf: Slide, room: NonNullable<Leaf['facts']['room-when-open']>): void {
  const { leaf: it, edge, way } = leaf;
  const x = wallAlong(leaf, room.value);
  const from = plan.at({ x, y: edge.y - 0.3 });
  const to = plan.at({ x, y: edge.y + 0.3 });
  const wide = 0.1 * plan.layout.perMetre;
  const left = way === 1 ? from.x : from.x - wide;
  const height = to.y - from.y;
  plan.back.push(
    shows(
      roomThing(plan, it, room),
      `what stands behind the open leaf ${short(it.name)}, ${plan.length(room.value)} from it`,
      line('wall', from, to),
      path('strokes', hatch(left, from.y, wide, height, 7)),
      rect('hit', left, from.y, wide, height),
    ),
  );
  plan.places.keep({ x: left, y: from.y, width: wide, height });
}

/** The way that it opens, as an arrow inside of it. */
function drawWay(plan: Plan, { edge, way, distance }: Slide): void {
  const { y } = plan.at({ x: 0, y: edge.y + 0.3 });
  const tip = { x: plan.at({ x: edge.x + way * (0.3 + distance * 0.35), y: 0 }).x, y };
  const back = { x: plan.at({ x: edge.x + way * 0.3, y: 0 }).x, y };
  plan.back.push(line('axis', back, tip), arrowHead('arrow', back, tip));
  plan.places.avoid(back, tip);
}

function rowOf(plan: Plan, { leaf: { name, facts }, width, distance }: Slide): string[] {
  const { slides, tail, 'room-when-open': room } = facts;
  const told = [
    `${plan.length(width)} wide`,
    `travels ${plan.length(distance)}`,
    ...(tail === undefined ? [] : [`tail ${plan.length(tail.value)}`]),
    room === undefined ? 'room behind it not stated' : `${plan.length(room.value)} to what stands behind it when open`,
  ];
  return [`leaf ${short(name)}`, `slides to the ${slides?.way ?? ''}`, told.join(', ')];
}
