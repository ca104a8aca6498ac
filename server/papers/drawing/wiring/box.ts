// A box: what it says, its pins, its terminator, and the boxes chained behind it.
import { shows } from '../drawing.ts';
import { circle, type Element, element, line, path, rect, through } from '../svg.ts';
import { fitted, sizes, text, widthOf } from '../text.ts';
import { type PlacedBox, pinRoomOf } from './places.ts';
import { boxWidth, padding, resistorRoom, textLine } from './sizes.ts';

/** `first` is the top of the strip. */
export function drawBox(placed: PlacedBox, first: number, x: number, drawn: Element[]): void {
  const { box, y, height, pins, chained } = placed;
  const screws = pins.flatMap((at, i) => [
    circle('screw', { x, y: first + at }, 3.4),
    text(fitted(box.pins[i]?.words ?? '', 130, 'small'), x + 9, first + at + 4, 'small', 'start', 'quiet'),
  ]);
  drawFrame(placed, first + y, x, pinRoomOf(box), screws, drawn);
  let before = first + y + height;
  for (const next of chained) {
    const top = first + next.y;
    for (const side of [40, 60]) drawn.push(line('wire', { x: x + side, y: before }, { x: x + side, y: top }));
    drawFrame(next, top, x, padding, [], drawn);
    before = top + next.height;
  }
}

type Frame = Pick<PlacedBox, 'box' | 'height' | 'lines'>;

/** A box with its lines; those that are things by themselves lie over it. */
function drawFrame(frame: Frame, top: number, x: number, indent: number, screws: readonly Element[], drawn: Element[]): void {
  const { box, height, lines } = frame;
  const parts: Element[] = [rect('box', x, top, boxWidth, height, 5), ...screws];
  const others: Element[] = [];
  const first = top + (height - lines.length * textLine) / 2 + sizes.small;
  for (const [i, { words, of }] of lines.entries()) {
    const at = first + i * textLine;
    const shape = text(words, x + indent, at, of.name === 'strong' ? 'normal' : 'small', 'start', of.name);
    if (of.thing === undefined) parts.push(shape);
    else others.push(shows(of.thing.id, of.thing.title, shape, rect('hit', x + indent - 3, at - 11, widthOf(words, 'small') + 6, 15, 2)));
  }
  if (box.resistor !== undefined) parts.push(...resistor(box.resistor, x + boxWidth - resistorRoom + 10, top + height / 2));
  parts.push(rect('hit', x, top, boxWidth, height, 5));
  if (box.id === undefined) drawn.push(element('g', { class: 'thing' }, element('title', {}, box.title), ...parts), ...others);
  else drawn.push(shows(box.id, box.title, ...parts), ...others);
}

/** A resistor across the end of a loop, or the open ends where there is none. */
function resistor(words: string, x: number, y: number): Element[] {
  const upper = y - 10;
  const lower = y + 10;
  const ends =
    through([
      { x: x - 8, y: upper },
      { x: x + 6, y: upper },
    ]) +
    through([
      { x: x - 8, y: lower },
      { x: x + 6, y: lower },
    ]);
  if (words === 'none')
    return [
      path('wire', ends),
      circle('screw', { x: x + 8, y: upper }, 2.4),
      circle('screw', { x: x + 8, y: lower }, 2.4),
      text('no terminator', x + 18, y + 4, 'small', 'start', 'in-alert'),
    ];
  return [
    path(
      'wire',
      ends +
        through([
          { x: x + 6, y: upper },
          { x: x + 6, y: lower },
        ]),
    ),
    rect('resistor', x + 2, y - 6, 8, 12),
    text(words, x + 16, y + 4, 'small', 'start', 'quiet'),
  ];
}
