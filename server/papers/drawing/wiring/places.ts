// Boxes from top to bottom in the order of what they are wired to, each as near to its terminals as the one above lets it.
import type { Steps } from '../../../model/index.ts';
import { widthOf, wrapped } from '../text.ts';
import type { Box, Line, Pin } from './boxes.ts';
import { boxWidth, padding, pitch, resistorRoom, rowMiddle, textLine } from './sizes.ts';

/** A line of a box as it breaks. */
export interface BrokenLine {
  readonly words: string;
  readonly of: Line;
}

/** A box with its place from the top of the strip. */
interface Placed {
  readonly box: Box;
  readonly y: number;
  readonly height: number;
  readonly lines: readonly BrokenLine[];
}

export interface PlacedBox extends Placed {
  /** The place of each pin, from the top of the strip. */
  readonly pins: readonly number[];
  readonly chained: readonly Placed[];
}

/** Beside the pins of a box: as wide as what they say. */
export const pinRoomOf = ({ pins }: Box): number =>
  pins.length === 0 ? padding : Math.min(130, Math.max(...pins.map(({ words }) => widthOf(words, 'small')))) + 24;

export function* placeBoxes(boxes: readonly Box[]): Steps<PlacedBox[]> {
  const placed: PlacedBox[] = [];
  let free = 0;
  for (const box of inOrder(boxes)) {
    yield;
    const next = placeBox(box, free);
    placed.push(next);
    free = endOf(next) + 10;
  }
  return placed;
}

/** Where a box ends, with what is chained behind it. */
export function endOf({ y, height, chained }: PlacedBox): number {
  const last = chained[chained.length - 1];
  return last === undefined ? y + height : last.y + last.height;
}

/** By the middle of their rows; those that are wired to none come last. */
function inOrder(boxes: readonly Box[]): Box[] {
  const mean = ({ pins }: Box): number => (pins.length === 0 ? Infinity : pins.reduce((sum, { row }) => sum + row, 0) / pins.length);
  const byMean = boxes.map((box, i) => ({ box, i, mean: mean(box) }));
  return byMean.sort((a, b) => (a.mean === b.mean ? a.i - b.i : a.mean - b.mean)).map(({ box }) => box);
}

function placeBox(box: Box, free: number): PlacedBox {
  const pins = [...box.pins].sort((a, b) => a.row - b.row);
  const lines = linesOf(box, pinRoomOf(box));
  const height = heightFor(lines.length, pins.length);
  const lead = (height - pins.length * pitch) / 2;
  const wanted = pins.length === 0 ? free : rowMiddle((pins[0] as Pin).row) - pitch / 2 - lead;
  const y = Math.max(free, wanted);
  return {
    box: { ...box, pins },
    y,
    height,
    lines,
    pins: pins.map((_, i) => y + lead + i * pitch + pitch / 2),
    chained: placeChained(box.chained, y + height),
  };
}

function placeChained(boxes: readonly Box[], top: number): Placed[] {
  let below = top;
  return boxes.map((box) => {
    const lines = linesOf(box, padding);
    const height = heightFor(lines.length, 0);
    const y = below + 14;
    below = y + height;
    return { box, y, height, lines };
  });
}

function linesOf({ lines, resistor }: Box, indent: number): BrokenLine[] {
  const width = boxWidth - indent - padding - (resistor === undefined ? 0 : resistorRoom);
  return lines.flatMap((of) => {
    const strong = of.name === 'strong';
    return wrapped(of.words, width, strong ? 'normal' : 'small', strong ? 2 : 3, strong).map((words) => ({ words, of }));
  });
}

const heightFor = (lines: number, pins: number): number => Math.max(lines * textLine + 2 * padding - 2, pins * pitch, 30);
