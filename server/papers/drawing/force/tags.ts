import { type Element, rect } from '../svg.ts';
import { type Anchor, text, widthOf } from '../text.ts';

/** Texts at lines, each on a piece of paper of its own: above its line, or below it where another one stands there already. */
export class Tags {
  readonly #taken: { x: number; y: number; width: number }[] = [];

  at(words: string, x: number, lineY: number, anchor: Anchor, name: string, below = false): Element[] {
    const width = widthOf(words, 'small');
    const from = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    const free = (y: number): boolean =>
      !this.#taken.some((other) => Math.abs(other.y - y) < 13 && other.x < from + width + 4 && from < other.x + other.width + 4);
    const above = [lineY - 5, lineY + 14];
    const y = [...(below ? above.reverse() : above), lineY - 19, lineY + 28].find(free) ?? lineY - 5;
    this.#taken.push({ x: from, y, width });
    return [rect('halo', from - 2, y - 11, width + 4, 14, 2), text(words, x, y, 'small', anchor, name)];
  }
}
