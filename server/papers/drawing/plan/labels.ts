// Labels of leaves, and of the room behind them.
import { inDegrees } from '../../../figures/index.ts';
import { showSi } from '../../../vocabulary/index.ts';
import { onGround, type PlacedLeaf } from '../../scene/opening.ts';
import { drawnRoomOf, wallAcross, wallAlong } from '../../scene/plan.ts';
import { short } from '../text.ts';
import type { Plan } from './plan.ts';
import { leafThing, roomThing, roomTitle } from './things.ts';

export function labelLeaf(plan: Plan, placed: PlacedLeaf): void {
  const { leaf } = placed;
  const { opens, slides } = leaf.facts;
  const id = leafThing(plan, leaf);
  const name = short(leaf.name);
  const title = `leaf ${name}`;
  const width = plan.length(placed.width);
  if (placed.kind === 'swing') {
    const words = [name, `${width}, ${opens?.way ?? ''} ${showSi(inDegrees(placed.angle), 'deg')}`];
    const near = plan.at(onGround(placed, placed.width * 0.55, placed.box.y + placed.box.height, placed.angle * 0.45));
    plan.label({ id, title, words, near, loose: true });
    return;
  }
  const words = [name, `${width}, slides ${slides?.way ?? ''} by ${plan.length(placed.distance)}`];
  const near = plan.at({ x: placed.edge.x + placed.way * placed.width * 0.5, y: placed.edge.y + placed.thickness / 2 });
  plan.label({ id, title, words, near });
}

export function labelRoom(plan: Plan, placed: PlacedLeaf): void {
  const { leaf } = placed;
  const room = drawnRoomOf(leaf);
  if (room === undefined) return;
  const near =
    placed.kind === 'swing'
      ? onGround(placed, placed.width * 0.7, wallAcross(placed, room.value), placed.angle)
      : { x: wallAlong(placed, room.value), y: placed.edge.y };
  const words = [`${plan.length(room.value)} room`, 'position not stated'];
  plan.label({ id: roomThing(plan, leaf, room), title: roomTitle(leaf), words, near: plan.at(near) });
}
