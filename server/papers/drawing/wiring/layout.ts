// How the strip of a panel lies on its sheet: rows, boxes, lanes, and the columns that they make.
import type { Steps } from '../../../model/index.ts';
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import { mostDrawn } from '../../scene/limit.ts';
import type { Row, Strip } from '../../scene/strip.ts';
import { limitNotes, margin, type Note, type Things } from '../drawing.ts';
import { short, widthOf } from '../text.ts';
import { type Box, boxesOf } from './boxes.ts';
import { type Lanes, lanesOf, linkLanesOf } from './lanes.ts';
import { type DrawnLink, noteLinks, noteStrip, noteUnused } from './noted.ts';
import { type PlacedBox, placeBoxes } from './places.ts';
import { bendRoom, boxWidth, laneWidth } from './sizes.ts';

export interface Layout {
  readonly strip: Strip;
  /** All of them, in the order of the file. */
  readonly boxes: readonly Box[];
  readonly links: readonly DrawnLink[];
  /** What is drawn: the first `mostDrawn` rows and links, and boxes from top to bottom. */
  readonly rows: readonly Row[];
  readonly drawnLinks: readonly DrawnLink[];
  readonly placed: readonly PlacedBox[];
  readonly lanes: Lanes;
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

/** The things of a strip, all noted, and how what is drawn of it lies. */
export function* layOut(strip: Strip, things: Things, reader: Reader): Steps<Layout> {
  const noted = noteStrip(strip, things, reader);
  const boxes = yield* boxesOf(noted);
  const links = yield* noteLinks(noted);
  yield* noteUnused(noted);
  const rows = strip.rows.slice(0, mostDrawn);
  const drawnLinks = links.slice(0, mostDrawn).map((link) => ({ ...link, rows: link.rows.filter(isDrawn).slice(0, mostDrawn) }));
  const placed = yield* placeBoxes(boxes.slice(0, mostDrawn).map(drawnBox));
  const lanes = lanesOf(placed);
  const linkLanes = linkLanesOf(drawnLinks);
  const roleWidth = Math.min(330, Math.max(90, ...rows.map((row) => widthOf(roleInWords(row), 'small')))) + 8;
  const cellWidth = Math.min(150, Math.max(46, ...rows.map(({ name }) => widthOf(short(name), 'normal', true) + 24)));
  const linksWidth = (linkLanes.length === 0 ? 0 : Math.max(...linkLanes) + 1) * 10 + 12;
  const cellX = margin + roleWidth + linksWidth;
  const wireX = cellX + cellWidth;
  const boxX = wireX + lanes.count * laneWidth + bendRoom;
  const width = boxX + boxWidth + margin;
  const { terminals } = noted;
  return { strip, boxes, links, rows, drawnLinks, placed, lanes, linkLanes, terminals, roleWidth, cellWidth, cellX, wireX, boxX, width };
}

const isDrawn = (row: number): boolean => row < mostDrawn;

/** A box with those of its pins whose terminals are drawn. */
const drawnBox = (box: Box): Box => ({
  ...box,
  pins: box.pins.filter(({ row }) => isDrawn(row)).slice(0, mostDrawn),
  chained: box.chained.slice(0, mostDrawn),
});

/** What is there of a strip and not drawn; none where all is. */
export function limitsOf({ strip: { panel, rows }, boxes, links }: Layout): Note[] {
  const most = (counts: readonly number[]): number => counts.reduce((one, other) => Math.max(one, other), 0);
  return limitNotes(
    [
      [rows.length, 'terminals'],
      [boxes.length, 'boxes'],
      [links.length, 'links'],
      [most(boxes.map(({ pins }) => pins.length)), 'wires of one device'],
      [most(boxes.map(({ chained }) => chained.length)), 'edges of one chain'],
    ],
    `Panel ${short(panel.name)}: drawn`,
  );
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
