// Text in drawings: how wide it is, where it is cut and where it breaks. No font can be asked here, so widths are those of
// a common sans serif, a little on the wide side.
import { clean, type Element, element } from './svg.ts';

/** Heights of letters, in units of a drawing. */
export const sizes = { small: 12, normal: 14, large: 18 } as const;
export type Size = keyof typeof sizes;

/** No name of a file stands in a drawing with more characters. */
export const longest = 60;

const narrow = new Set("ijl.,:;'|!I’‘");
const slim = new Set('frt()[]{}/ -"*°·');
const broad = new Set('mwMW@%—…');

function shareOf(code: number, character: string): number {
  if (narrow.has(character)) return 0.3;
  if (slim.has(character)) return 0.4;
  if (broad.has(character)) return 0.96;
  if (code >= 0x1100) return 1.05;
  return character >= 'A' && character <= 'Z' ? 0.72 : 0.62;
}

/** About how wide a text is, in units of the drawing; letters that are `strong` are wider. */
export function widthOf(text: string, size: Size, strong = size === 'large'): number {
  let width = 0;
  for (const character of text) width += shareOf(character.codePointAt(0) ?? 0, character);
  return width * sizes[size] * (strong ? 1.1 : 1);
}

/** A text of a file with at most so many characters, and `…` where it was longer. */
export function short(text: string, most: number = longest): string {
  // Cut before it is cleaned: a text of a million characters is not read to its end.
  const head = text.length > most * 4 ? text.slice(0, most * 4) : text;
  const characters = [...clean(head)];
  return characters.length > most || head.length < text.length ? characters.slice(0, most - 1).join('') + '…' : characters.join('');
}

/** A text that is no wider than that; cut with `…` where it was. */
export function fitted(text: string, width: number, size: Size, strong?: boolean): string {
  const whole = short(text, 400);
  if (widthOf(whole, size, strong) <= width) return whole;
  const characters = [...whole];
  let used = widthOf('…', size, strong);
  let count = 0;
  for (const character of characters) {
    used += widthOf(character, size, strong);
    if (used > width) break;
    count++;
  }
  return characters.slice(0, count).join('').trimEnd() + '…';
}

const beforeUnit = /(\d) (?=(?:m|mm|s|ms|N|kN|V|A|mA|kg|ft|in|lbf|lb|ohm|kohm|Ah|W|Hz|%|mm²)(?:[\s,.;:)]|$))/g;

/** The words of a text; a number and its unit are one. */
const wordsOf = (text: string): string[] => text.replace(beforeUnit, '$1\u00a0').split(' ');

/** A word in pieces that are no wider than that, broken behind a hyphen where there is one in the last half. */
function pieces(word: string, width: number, size: Size, strong: boolean | undefined): string[] {
  const found: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && widthOf(piece + character, size, strong) > width) {
      const hyphen = piece.lastIndexOf('-') + 1;
      const end = hyphen > piece.length / 2 ? hyphen : piece.length;
      found.push(piece.slice(0, end));
      piece = piece.slice(end);
    }
    piece += character;
  }
  return [...found, piece];
}

/** A text in lines no wider than that; a word that is wider by itself is broken. What is left behind the last line is cut with `…`. */
export function wrapped(text: string, width: number, size: Size, most = 12, strong?: boolean): string[] {
  const lines: string[] = [];
  let line = '';
  const whole = wordsOf(short(text, 2000));
  const words = whole.flatMap((each) => (widthOf(each, size, strong) > width ? pieces(each, width, size, strong) : [each]));
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (widthOf(longer, size, strong) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = fitted(word, width, size, strong);
    if (lines.length >= most) break;
  }
  if (line !== '') lines.push(line);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), fitted(`${lines[most - 1] ?? ''} …`, width, size, strong)];
}

export type Anchor = 'start' | 'middle' | 'end';

/** One line of text; `y` is its base line. */
export const text = (words: string, x: number, y: number, size: Size = 'normal', anchor: Anchor = 'start', name = ''): Element =>
  element('text', { class: name === '' ? size : `${size} ${name}`, x, y, ...(anchor === 'start' ? {} : { 'text-anchor': anchor }) }, words);
