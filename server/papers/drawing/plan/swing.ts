// Swing leaves: closed, open, what they sweep between, and what stands behind them when open.
import { inDegrees } from '../../../figures/index.ts';
import type { Leaf, Steps } from '../../../model/index.ts';
import { showSi } from '../../../vocabulary/index.ts';
import { onGround, type Swing, turnOf } from '../../scene/opening.ts';
import { drawnRoomOf, wallAcross } from '../../scene/plan.ts';
import { between, type Point } from '../../scene/point.ts';
import { shows } from '../drawing.ts';
import { circle, type Element, group, line, number, path, through } from '../svg.ts';
import { short } from '../text.ts';
import { drawCarried, tellAllCarried } from './carried.ts';
import { drawMechanism, tellDrive } from './drives.ts';
import type { Plan } from './plan.ts';
import { leafThing, roomThing } from './things.ts';

export function* drawSwing(plan: Plan, leaf: Swing): Steps<void> {
  const { leaf: it, angle, hinge } = leaf;
  const id = leafThing(plan, it);
  const opens = `opens ${it.facts.opens?.way ?? ''} by ${showSi(inDegrees(angle), 'deg')}`;
  const title = `leaf ${short(it.name)}, ${plan.length(leaf.width)} wide, ${opens}`;
  const { sector, arc } = sweptOf(plan, leaf);
  plan.back.push(shows(id, `${title}: what it sweeps`, path('swept', sector), path('swept-edge', arc), path('hit', sector)));
  plan.back.push(shows(id, `${title}: open`, path('leaf-open', outlineOf(plan, leaf, angle))));
  const room = drawnRoomOf(it);
  if (room !== undefined) drawWall(plan, leaf, room);
  const outline = outlineOf(plan, leaf, 0);
  const moving: Element[] = [shows(id, title, path('leaf', outline), path('hit', outline)), ...(yield* drawCarried(plan, leaf))];
  for (const drive of it.drives) {
    yield;
    const parts = drawMechanism(plan, leaf, drive);
    plan.front.push(...parts.fixed);
    moving.push(...parts.carried);
  }
  plan.middle.push(group({ 'data-moves': `leaf.${it.name}` }, ...moving), circle('pin', plan.at(hinge), 4));
  avoidSwept(plan, leaf);
  plan.rows.push(rowOf(plan, leaf));
}

/** The same in words alone. */
export function* tellSwing(plan: Plan, leaf: Swing): Steps<void> {
  const { leaf: it } = leaf;
  leafThing(plan, it);
  const room = drawnRoomOf(it);
  if (room !== undefined) roomThing(plan, it, room);
  yield* tellAllCarried(plan, leaf);
  for (const drive of it.drives) {
    yield;
    tellDrive(plan, drive);
    plan.takes('drive');
  }
  plan.rows.push(rowOf(plan, leaf));
}

/** The leaf's outline with the leaf open by `angle`, as the `d` of a path. */
function outlineOf(plan: Plan, leaf: Swing, angle: number): string {
  const { x, y, width, height } = leaf.box;
  const corner = (along: number, across: number): Point => plan.at(onGround(leaf, along, across, angle));
  return through([corner(x, y), corner(x + width, y), corner(x + width, y + height), corner(x, y + height)], true);
}

/** The sector that a leaf sweeps, and the arc of its tip, each as the `d` of a path. */
function sweptOf(plan: Plan, leaf: Swing): { readonly sector: string; readonly arc: string } {
  const { width, angle, hinge } = leaf;
  const centre = plan.at(hinge);
  const closed = plan.at(onGround(leaf, width, 0));
  const open = plan.at(onGround(leaf, width, 0, angle));
  const radius = number(width * plan.layout.perMetre);
  const flags = `${angle > Math.PI ? 1 : 0} ${turnOf(leaf) === 1 ? 1 : 0}`;
  const bow = `${number(closed.x)} ${number(closed.y)}A${radius} ${radius} 0 ${flags} ${number(open.x)} ${number(open.y)}`;
  return { sector: `M${number(centre.x)} ${number(centre.y)}L${bow}Z`, arc: `M${bow}` };
}

/** Labels go around the leaf, closed and open, and around the way of its tip. */
function avoidSwept(plan: Plan, leaf: Swing): void {
  const tip = (angle: number): Point => plan.at(onGround(leaf, leaf.width, 0, angle));
  const centre = plan.at(leaf.hinge);
  plan.places.avoid(centre, tip(0), 8);
  plan.places.avoid(centre, tip(leaf.angle), 5);
  for (let i = 0; i < 24; i++) plan.places.avoid(tip((leaf.angle * i) / 24), tip((leaf.angle * (i + 1)) / 24), 5);
}

function rowOf(plan: Plan, { leaf: { name, facts }, width, angle }: Swing): string[] {
  const { opens, thickness, 'room-when-open': room } = facts;
  const told = [
    `${plan.length(width)} wide`,
    `opens by ${showSi(inDegrees(angle), 'deg')}`,
    thickness === undefined ? 'thickness not stated' : `${plan.length(thickness.value)} thick`,
    room === undefined ? 'room behind it not stated' : `${plan.length(room.value)} to what stands behind it when open`,
  ];
  return [`leaf ${short(name)}`, `swings ${opens?.way ?? ''}`, told.join(', ')];
}

function drawWall(plan: Plan, leaf: Swing, room: NonNullable<Leaf['facts']['room-when-open']>): void {
  const y = wallAcross(leaf, room.value);
  const from = plan.at(onGround(leaf, leaf.width * 0.4, y, leaf.angle));
  const to = plan.at(onGround(leaf, leaf.width, y, leaf.angle));
  const back = plan.at(onGround(leaf, leaf.width * 0.4, y + 0.1, leaf.angle));
  const shift = { x: back.x - from.x, y: back.y - from.y };
  const shifted = ({ x, y: down }: Point): Point => ({ x: x + shift.x, y: down + shift.y });
  let strokes = '';
  const count = Math.max(2, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 10));
  for (let i = 1; i <= count; i++) strokes += through([between(from, to, i / count), shifted(between(from, to, (i - 0.7) / count))]);
  plan.back.push(
    shows(
      roomThing(plan, leaf.leaf, room),
      `what stands behind the open leaf ${short(leaf.leaf.name)}, ${plan.length(room.value)} from it`,
      line('wall', from, to),
      path('strokes', strokes),
      path('hit', through([from, to, shifted(to), shifted(from)], true)),
    ),
  );
  plan.places.avoid(from, to, 8);
  plan.places.avoid(shifted(from), shifted(to), 10);
}
