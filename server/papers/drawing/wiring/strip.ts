// The strip of a panel with its links, and the wires that lead from it.
import type { Steps } from '../../../model/index.ts';
import { isFeed } from '../../scene/strip.ts';
import { eachOf, margin, shows } from '../drawing.ts';
import { circle, type Element, element, path, rect, through } from '../svg.ts';
import { fitted, short, text, widthOf } from '../text.ts';
import { drawBox } from './box.ts';
import { type Layout, roleInWords } from './layout.ts';
import { endOf, type PlacedBox } from './places.ts';
import { firstLane, laneWidth, pitch, rowMiddle } from './sizes.ts';

/** Draws a strip from `top` on; gives where it ends. */
export function* drawStrip(layout: Layout, top: number, drawn: Element[]): Steps<number> {
  const { rows, placed, cellX, cellWidth, boxX } = layout;
  const first = top + 32;
  drawn.push(headOf(layout, top));
  drawn.push(rect('strip', cellX - 6, first - 4, cellWidth + 12, rows.length * pitch + 8, 4));
  // Wires first, so that boxes and terminals lie over their ends.
  yield* eachOf(placed, (box) => drawWires(layout, box, first, drawn));
  drawJoints(layout, first, drawn);
  yield* eachOf(placed, (box) => drawBox(box, first, boxX, drawn));
  yield* eachOf(rows, (_, row) => drawTerminal(layout, row, first, drawn));
  drawLinks(layout, first, drawn);
  return first + Math.max(rows.length * pitch, ...placed.map(endOf)) + 4;
}

function headOf({ strip: { panel }, width }: Layout, top: number): Element {
  const { model } = panel;
  const title = model?.title === undefined ? '' : `, ${short(model.title)}`;
  const name = `${short(panel.name)}${model === undefined ? ', model not known' : `: ${short(model.name)}${title}`}`;
  const room = width - 2 * margin;
  return shows(
    `panel.${panel.name}`,
    `panel ${short(panel.name)}`,
    text(fitted(name, room - 8, 'normal', true), margin, top + 18, 'normal', 'start', 'strong'),
    rect('hit', margin - 4, top + 3, Math.min(room, widthOf(name, 'normal', true) + 8), 21, 3),
  );
}

function drawTerminal({ strip, rows, terminals, cellX, cellWidth, roleWidth }: Layout, i: number, first: number, drawn: Element[]): void {
  const row = rows[i];
  if (row === undefined) return;
  const { name, terminal } = row;
  const y = first + i * pitch;
  const isUsed = strip.used.has(i) || isFeed(terminal);
  const words = roleInWords(row);
  const role = fitted(words, roleWidth - 4, 'small');
  const parts: Element[] = [
    rect(isUsed ? 'terminal' : 'terminal-free', cellX, y + 2, cellWidth, pitch - 4, 2),
    text(fitted(name, cellWidth - 22, 'normal', true), cellX + 8, y + pitch / 2 + 4.5, 'normal', 'start', isUsed ? 'strong' : 'quiet'),
    circle('screw', { x: cellX + cellWidth - 8, y: y + pitch / 2 }, 3.4),
    text(role, margin + roleWidth - 8, y + pitch / 2 + 4, 'small', 'end', terminal === undefined ? 'in-alert' : 'quiet'),
  ];
  const thing = terminals.get(i);
  if (thing === undefined) drawn.push(...parts);
  else drawn.push(shows(thing, `terminal ${short(name)}: ${words}`, ...parts, rect('hit', cellX - 2, y + 1, cellWidth + 4, pitch - 2, 2)));
}

function drawLinks({ drawnLinks, linkLanes, cellX }: Layout, top: number, drawn: Element[]): void {
  for (const [i, { id, title, rows }] of drawnLinks.entries()) {
    if (rows.length < 2) continue;
    const x = cellX - 12 - (linkLanes[i] ?? 0) * 10;
    const ys = [...rows].sort((a, b) => a - b).map((row) => top + rowMiddle(row));
    const first = ys[0] as number;
    const last = ys[ys.length - 1] as number;
    const bracket = through([
      { x: cellX, y: first },
      { x, y: first },
      { x, y: last },
      { x: cellX, y: last },
    ]);
    const between = ys.slice(1, -1).map((y) =>
      through([
        { x: cellX, y },
        { x, y },
      ]),
    );
    const joints = ys.map((y) => circle('joint', { x: cellX, y }, 2.6));
    const hit = rect('hit', x - 5, first - 6, cellX - x + 6, last - first + 12, 2);
    drawn.push(shows(id, title, path('link', bracket + between.join('')), ...joints, hit));
  }
}

const laneX = ({ wireX }: Layout, lane: number): number => wireX + firstLane + lane * laneWidth;

function drawWires(layout: Layout, placed: PlacedBox, top: number, drawn: Element[]): void {
  const { wireX, boxX, lanes } = layout;
  for (const [i, { row, wire }] of placed.box.pins.entries()) {
    const from = { x: wireX, y: top + rowMiddle(row) };
    const to = { x: boxX, y: top + (placed.pins[i] as number) };
    const lane = lanes.of.get(placed)?.[i] ?? -1;
    const x = laneX(layout, lane);
    const bend =
      lane < 0
        ? []
        : [
            { x, y: from.y },
            { x, y: to.y },
          ];
    const shape = path(wire.look, through([from, ...bend, to]));
    // The surface that can be hit is the part next to the box, where no other wire runs.
    const hit = rect('hit', boxX - 36, to.y - 7, 36, 14, 2);
    if (wire.id === undefined) drawn.push(element('g', { class: 'thing' }, element('title', {}, wire.title), shape));
    else drawn.push(shows(wire.id, wire.title, shape, hit));
  }
}

/** The wires of one terminal: their lane, where they leave it, and whether one runs straight on. */
interface Parting {
  lane: number;
  readonly ys: number[];
  straight: boolean;
}

/** A dot where wires of one terminal part. */
function drawJoints(layout: Layout, top: number, drawn: Element[]): void {
  for (const [row, { lane, ys, straight }] of partingsOf(layout)) {
    if (lane < 0) continue;
    const x = laneX(layout, lane);
    const from = rowMiddle(row);
    const low = Math.min(from, ...ys);
    const high = Math.max(from, ...ys);
    if (straight || (low < from && from < high)) drawn.push(circle('joint', { x, y: top + from }, 2.8));
    for (const y of ys) if (y > low && y < high) drawn.push(circle('joint', { x, y: top + y }, 2.8));
  }
}

function partingsOf({ placed, lanes }: Layout): Map<number, Parting> {
  const byRow = new Map<number, Parting>();
  for (const each of placed)
    for (const [i, { row }] of each.box.pins.entries()) {
      const parting = byRow.get(row) ?? { lane: -1, ys: [], straight: false };
      const lane = lanes.of.get(each)?.[i] ?? -1;
      if (lane < 0) parting.straight = true;
      else {
        parting.lane = lane;
        parting.ys.push(each.pins[i] as number);
      }
      byRow.set(row, parting);
    }
  return byRow;
}
