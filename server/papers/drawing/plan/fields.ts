// Fields that stand on the ground: beams, curtains, loops. Where they stand no file says, and so does the drawing.
import type { Field } from '../../scene/fields.ts';
import { shows } from '../drawing.ts';
import { type Element, hatch, hitLine, line, path, rect } from '../svg.ts';
import { short } from '../text.ts';
import { watchesInWords } from './carried.ts';
import type { Plan } from './plan.ts';
import { controlThing, sensorThing } from './things.ts';

const fieldThing = (plan: Plan, { device }: Field): string =>
  device.kind === 'sensor' ? sensorThing(plan, device.it) : controlThing(plan, device.it);
const nameOf = ({ device }: Field): string => `${device.kind} ${short(device.it.name)}`;

/** A field in words, and the first of them drawn. */
export function drawField(plan: Plan, field: Field): void {
  const { kind, device } = field;
  const id = fieldThing(plan, field);
  const title = `${nameOf(field)}: ${kind}, position not stated`;
  const does = device.kind === 'sensor' ? watchesInWords(device.it) : 'commands';
  const told = [heightInWords(plan, field), does, 'position not stated'].filter((part) => part !== '');
  plan.rows.push([nameOf(field), kind === 'loop' ? 'loop in the ground' : kind, told.join(', ')]);
  if (!plan.takes('field')) return;
  plan.back.push(shows(id, title, ...(kind === 'beam' ? drawBeam(plan, field) : drawSurface(plan, field))));
}

function drawBeam(plan: Plan, { left, right, y }: Field): Element[] {
  const from = plan.at({ x: left, y });
  const to = plan.at({ x: right, y });
  plan.places.avoid(from, to, 6);
  const eyes = [rect('eye', from.x - 9, from.y - 5, 9, 10, 2), rect('eye', to.x, to.y - 5, 9, 10, 2)];
  return [line('beam', from, to), ...eyes, hitLine(from, to)];
}

function drawSurface(plan: Plan, { kind, left, right, y, depth }: Field): Element[] {
  const from = plan.at({ x: left, y });
  const to = plan.at({ x: right, y });
  const height = depth * plan.layout.perMetre;
  const top = from.y - height / 2;
  const width = to.x - from.x;
  plan.places.avoid({ x: from.x, y: top }, { x: to.x, y: top });
  plan.places.avoid({ x: from.x, y: top + height }, { x: to.x, y: top + height });
  plan.places.avoid({ x: from.x, y: top }, { x: from.x, y: top + height });
  plan.places.avoid({ x: to.x, y: top }, { x: to.x, y: top + height });
  const shape =
    kind === 'curtain'
      ? [rect('presence', from.x, top, width, height), path('presence-strokes', hatch(from.x, top, width, height, 12))]
      : [rect('loop', from.x, top, width, height, 10), rect('loop', from.x + 5, top + 5, width - 10, height - 10, 7)];
  return [...shape, rect('hit', from.x, top, width, height, 4)];
}

/** How high a field stands over the ground; empty for what lies in it. */
function heightInWords(plan: Plan, { kind, device }: Field): string {
  if (kind === 'loop' || device.kind !== 'sensor') return '';
  const { height } = device.it.facts;
  return height === undefined ? 'height not stated' : `${plan.length(height.value)} high`;
}

/** `nth` of the fields, from 0. */
export function labelField(plan: Plan, field: Field, nth: number): void {
  const { kind, device, left, right, y } = field;
  const share = kind === 'loop' ? 0.5 : 0.5 + 0.18 * ((nth % 3) - 1);
  const height = heightInWords(plan, field);
  plan.label({
    id: fieldThing(plan, field),
    title: nameOf(field),
    words: [`${short(device.it.name)}${height === '' ? '' : `, ${height}`}`, `${kind}, position not stated`],
    near: plan.at({ x: left + (right - left) * share, y }),
    tone: 'in-field',
  });
}
