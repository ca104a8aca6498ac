// Edges, and fields that a leaf carries along.
import type { Sensor, Steps } from '../../../model/index.ts';
import { besideEdge, type Carried, carriedBy, edgeEnds } from '../../scene/fields.ts';
import type { PlacedLeaf } from '../../scene/opening.ts';
import { between, type Point } from '../../scene/point.ts';
import { shows } from '../drawing.ts';
import { band, type Element, hitLine, line, path, through } from '../svg.ts';
import { short } from '../text.ts';
import type { Plan } from './plan.ts';
import { sensorThing } from './things.ts';

/** What a leaf carries along; what sits on its post is drawn in front. */
export function* drawCarried(plan: Plan, leaf: PlacedLeaf): Steps<Element[]> {
  const moving: Element[] = [];
  for (const each of carriedBy(leaf)) {
    yield;
    tellCarried(plan, each);
    if (!plan.takes('carried')) continue;
    plan.carried.push(each);
    const { sensor, kind, edge } = each;
    const [from, to] = endsOnPaper(plan, each);
    const shown = shows(sensorThing(plan, sensor), titleOf(each), ...shapeOf(plan, kind, from, to), hitLine(from, to, 9));
    (edge === 'post-edge' ? plan.front : moving).push(shown);
    plan.places.avoid(from, to, 8);
  }
  return moving;
}

/** The same in words alone, for a leaf that is not drawn. */
export function* tellAllCarried(plan: Plan, leaf: PlacedLeaf): Steps<void> {
  for (const each of carriedBy(leaf)) {
    yield;
    tellCarried(plan, each);
    plan.takes('carried');
  }
}

function tellCarried(plan: Plan, each: Carried): void {
  const { sensor } = each;
  sensorThing(plan, sensor);
  plan.rows.push([nameOf(each), placeInWords(each), watchesInWords(sensor)]);
}

const nameOf = ({ sensor }: Carried): string => `sensor ${short(sensor.name)}`;
const placeInWords = ({ kind, edge, leaf }: Carried): string => `${kind} on the ${edge.replace('-', ' ')} of ${short(leaf.leaf.name)}`;
const titleOf = (each: Carried): string => `${nameOf(each)}: ${placeInWords(each)}`;

const endsOnPaper = (plan: Plan, { leaf, edge }: Carried): [Point, Point] => {
  const [from, to] = edgeEnds(leaf, edge);
  return [plan.at(from), plan.at(to)];
};

function shapeOf({ layout }: Plan, kind: Carried['kind'], from: Point, to: Point): Element[] {
  if (kind === 'edge') return [capsule(from, to)];
  if (kind === 'beam') return [line('beam', from, to)];
  const field = band(from, to, 0.3 * layout.perMetre);
  return [path('presence', field), path('presence-strokes', field)];
}

/** A strip of rubber: thick enough to be seen at any scale. */
function capsule(from: Point, to: Point): Element {
  const middle = between(from, to, 0.5);
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const long = Math.max(length, 14) / 2;
  const x = (to.x - from.x) / length;
  const y = (to.y - from.y) / length;
  const half = 3.2;
  const corners = [
    { x: middle.x + x * long - y * half, y: middle.y + y * long + x * half },
    { x: middle.x + x * (long + half), y: middle.y + y * (long + half) },
    { x: middle.x + x * long + y * half, y: middle.y + y * long - x * half },
    { x: middle.x - x * long + y * half, y: middle.y - y * long - x * half },
    { x: middle.x - x * (long + half), y: middle.y - y * (long + half) },
    { x: middle.x - x * long - y * half, y: middle.y - y * long + x * half },
  ];
  return path('edge', through(corners, true));
}

export function watchesInWords({ facts }: Sensor): string {
  const movements = facts.watches?.movements;
  return movements === undefined ? 'what it watches is not stated' : `watches ${movements.join(', ')}`;
}

export function labelCarried(plan: Plan, carried: Carried): void {
  const { sensor, leaf, kind, edge } = carried;
  const [from, to] = endsOnPaper(plan, carried);
  plan.label({
    id: sensorThing(plan, sensor),
    title: `sensor ${short(sensor.name)}`,
    words: [short(sensor.name), `${kind}, ${watchesInWords(sensor)}`],
    near: between(from, to, 0.5),
    around: plan.at(besideEdge(leaf, edge)),
    tone: 'in-field',
  });
}
