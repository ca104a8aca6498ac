// How the strip of a panel lies on its sheet: rows, boxes, lanes, and the columns that they make.
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import type { Row, Strip } from '../../scene/strip.ts';
import { margin, type Things } from '../drawing.ts';
import { short, widthOf } from '../text.ts';
import { type Box, boxesOf } from './boxes.ts';
import { type Lanes, lanesOf, linkLanesOf } from './lanes.ts';
import { type DrawnLink, noteLinks, noteStrip, noteUnused } from './noted.ts';
import { type PlacedBox, placeBoxes } from './places.ts';
import { bendRoom, boxWidth, laneWidth } from './sizes.ts';

export interface Layout {
  readonly strip: Strip;
  /** In the order of the file. */
  readonly boxes: readonly Box[];
  /** From top to bottom. */
  readonly placed: readonly PlacedBox[];
  readonly lanes: Lanes;
  readonly links: readonly DrawnLink[];
  readonly linkLanes: readonly number[];
  /** The things of terminals, by row. */
  readonly terminals: ReadonlyMap<number, string>;
  readonly roleWidth: number;
  readonly cellWidth: number;
  /** Where the terminals, the wires and the boxes begin, and how wide it all is. */
  readonly cellX: number;
  readonly wireX: number;
  readonly boxX: number;
  readonly width: number;
}

export function layOut(strip: Strip, things: Things, reader: Reader): Layout {
  const noted = noteStrip(strip, things, reader);
  const boxes = boxesOf(noted);
  const links = noteLinks(noted);
  noteUnused(noted);
  const placed = placeBoxes(boxes);
  const lanes = lanesOf(placed);
  const linkLanes = linkLanesOf(links);
  const { rows } = strip;
  const roleWidth = Math.min(330, Math.max(90, ...rows.map((row) => widthOf(roleInWords(row), 'small')))) + 8;
  const cellWidth = Math.min(150, Math.max(46, ...rows.map(({ name }) => widthOf(short(name), 'normal', true) + 24)));
  const linksWidth = (linkLanes.length === 0 ? 0 : Math.max(...linkLanes) + 1) * 10 + 12;
  const cellX = margin + roleWidth + linksWidth;
  const wireX = cellX + cellWidth;
  const boxX = wireX + lanes.count * laneWidth + bendRoom;
  const width = boxX + boxWidth + margin;
  return { strip, boxes, placed, lanes, links, linkLanes, terminals: noted.terminals, roleWidth, cellWidth, cellX, wireX, boxX, width };
}

/** What a terminal is for, in few words. */
export function roleInWords({ terminal }: Row): string {
  if (terminal === undefined) return 'not a terminal of the model';
  const parts: string[] = [terminal.role.replaceAll('-', ' ')];
  if (terminal.contact !== undefined) parts.push(terminal.contact.replace('-', ' '));
  if (terminal.terminator !== undefined) parts.push(`at rest ${showSi(terminal.terminator, 'ohm')}`);
  if (terminal.common !== undefined) parts.push(`returns to ${short(terminal.common.text, 12)}`);
  return parts.join(', ');
}
