// What the gate stands on: the line of the gate and its posts.
import { assumed, type Gap, type Swing } from '../../scene/opening.ts';
import { hatch, line, path, rect } from '../svg.ts';
import type { Plan } from './plan.ts';

export function drawGround(plan: Plan): void {
  for (const gap of plan.layout.scene.gaps) {
    const from = plan.at({ x: gap.left - assumed.pillar - 0.3, y: 0 });
    const to = plan.at({ x: gap.right + assumed.pillar + 0.3, y: 0 });
    plan.back.push(line('ground', from, to));
    drawPost(plan, gap.left - assumed.pillar, hungOn(gap, 1));
    drawPost(plan, gap.right, hungOn(gap, -1));
  }
}

/** The swing leaf that hangs on the left (1) or the right (−1) post of a gap. */
const hungOn = ({ leaves }: Gap, along: 1 | -1): Swing | undefined =>
  leaves.find((leaf): leaf is Swing => leaf.kind === 'swing' && leaf.along === along);

function drawPost(plan: Plan, x: number, swing: Swing | undefined): void {
  // In front of the leaf's own face as stated; how deep it is, is not.
  const front = swing === undefined ? assumed.pillar / 2 : swing.post.front;
  const side = swing?.side ?? 1;
  const top = Math.min(side * front, side * (front - assumed.pillar));
  const corner = plan.at({ x, y: top });
  const size = assumed.pillar * plan.layout.perMetre;
  plan.middle.push(rect('post', corner.x, corner.y, size, size), path('strokes', hatch(corner.x, corner.y, size, size, 7)));
  plan.places.keep({ x: corner.x, y: corner.y, width: size, height: size });
}
