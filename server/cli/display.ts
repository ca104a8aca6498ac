// Text for a terminal: nothing in a file may drive the terminal or hide what it says.

/**
 * Characters that do something instead of showing something: they drive a terminal, change the direction of reading or cannot be
 * seen. And the first sign of what build servers take for a command wherever in a line it stands: `##[` (GitHub's older form,
 * read by `ActionCommand.TryParse` of its runner with `IndexOf`) and `##vso[` (Azure Pipelines, from memory).
 */
const hidden =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufff9-\ufffb]|#(?=#(?:vso)?\[)|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/gi;

/** A text with every control character made visible; tabs and line ends become spaces. */
export function visible(text: string): string {
  return text.replace(/[\t\r\n]+/g, ' ').replace(hidden, standIn);
}

/** A path with every control character made visible, tabs and line ends too: no two of them become one. */
export const visiblePath = (path: string): string => path.replace(/[\t\r\n]/g, standIn).replace(hidden, standIn);

/** A path as it may begin a line: not as a command for a build server (`::`, `##[`), an option or a blank. */
export function linePath(path: string): string {
  return (/^(?:##|::|-|\s)/.test(path) ? './' : '') + visiblePath(path);
}

/** Lines of which none begins, behind its blanks, as GitHub's workflow commands do. */
export const guarded = (lines: string): string => lines.replace(/^(\s*):(?=:)/gm, '$1<003A>');

function standIn(character: string): string {
  const code = character.charCodeAt(0);
  if (code < 0x20) return String.fromCharCode(0x2400 + code);
  if (code === 0x7f) return '\u2421';
  return `<${code.toString(16).toUpperCase().padStart(4, '0')}>`;
}

/** Columns that a character takes on a terminal: none for what joins the one before it, two for wide ones. */
function widthOf(character: string): number {
  if (character.length === 1 && character < '\u0300') return 1;
  if (/^\p{M}$/u.test(character)) return 0;
  const code = character.codePointAt(0) as number;
  const wide =
    (code >= 0x1100 && code <= 0x115f) ||
    (code >= 0x2e80 && code <= 0xa4cf) ||
    (code >= 0xac00 && code <= 0xd7a3) ||
    (code >= 0xf900 && code <= 0xfaff) ||
    (code >= 0xfe30 && code <= 0xfe6f) ||
    (code >= 0xff00 && code <= 0xff60) ||
    (code >= 0xffe0 && code <= 0xffe6) ||
    (code >= 0x1f300 && code <= 0x1faff) ||
    (code >= 0x20000 && code <= 0x3fffd);
  return wide ? 2 : 1;
}

/** A line as shown, and the carets that stand below it. */
export interface Excerpt {
  readonly line: string;
  readonly carets: string;
}

interface Cell {
  readonly text: string;
  readonly width: number;
  marked: boolean;
}

const tabWidth = 4;

/**
 * A source line with carets from column `from` to `to` (UTF-16 units from 0, half-open), at most `room` columns wide.
 * A longer line is cut with … so that the first caret stays in sight.
 */
export function excerptOf(source: string, from: number, to: number, room: number): Excerpt {
  // What lies far off the carets is cut away before anything is measured: a line can have millions of characters.
  const first = Math.max(0, Math.min(from, source.length) - room);
  const cells = cellsOf(source.slice(first, from + 2 * room), from - first, Math.max(from + 1, to) - first);
  const isMoreBehind = from + 2 * room < source.length;
  let start = 0;
  let end = cells.length;
  let cutFront = first > 0;
  if (cutFront || isMoreBehind || widthBetween(cells, 0, cells.length) > room) {
    const markedAt = Math.max(
      0,
      cells.findIndex((cell) => cell.marked),
    );
    // The first caret keeps at least half of the room behind it, for what it points at.
    while (widthBetween(cells, start, markedAt) > room / 2 && (cutFront || widthBetween(cells, start, cells.length) >= room)) {
      start++;
      cutFront = true;
    }
    end = start;
    let used = cutFront ? 1 : 0;
    while (end < cells.length && used + (cells[end] as Cell).width <= room - 1) used += (cells[end++] as Cell).width;
  }
  const cutBack = end < cells.length || isMoreBehind;
  const shown = cells.slice(start, end);
  let carets = cutFront ? ' ' : '';
  for (const cell of shown) carets += (cell.marked ? '^' : ' ').repeat(cell.width);
  return { line: (cutFront ? '…' : '') + shown.map((cell) => cell.text).join('') + (cutBack ? '…' : ''), carets: carets.trimEnd() };
}

function cellsOf(source: string, from: number, to: number): Cell[] {
  const cells: Cell[] = [];
  let column = 0;
  let at = 0;
  for (const character of source) {
    const text = character === '\t' ? ' '.repeat(tabWidth - (column % tabWidth)) : shownOf(source, at, character);
    const width = text === character ? widthOf(character) : text.length;
    cells.push({ text, width, marked: at < to && at + character.length > from });
    column += width;
    at += character.length;
  }
  // A finding at the end of the line, where something is missing, points right behind it.
  if (at <= from) cells.push({ text: '', width: 1, marked: true });
  // What takes no room of its own is pointed at by what it stands on.
  const marked = cells.findIndex((cell) => cell.marked);
  if (marked >= 0 && !cells.some((cell) => cell.marked && cell.width > 0)) {
    const bearer = cells.slice(0, marked).findLast((cell) => cell.width > 0);
    if (bearer === undefined) cells.push({ text: '', width: 1, marked: true });
    else bearer.marked = true;
  }
  return cells;
}

/** What stands behind a sign decides whether it begins a command. */
const shownOf = (source: string, at: number, character: string): string =>
  character === '#' && /^##(?:vso)?\[/i.test(source.slice(at, at + 6)) ? standIn(character) : character.replace(hidden, standIn);

function widthBetween(cells: readonly Cell[], start: number, end: number): number {
  let width = 0;
  for (let i = start; i < end; i++) width += (cells[i] as Cell).width;
  return width;
}

/** Breaks a text into lines of at most `width` columns; the lines after the first are indented by `indent`. */
export function wrapped(text: string, width: number, indent: string): string {
  if (width < indent.length + 20) return text;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = line === '' ? word : line + ' ' + word;
  }
  lines.push(line);
  return lines.join('\n');
}

/** How many, in words: `1 file`, `2 files`. */
export const count = (number: number, one: string, many = one + 's'): string => `${number} ${number === 1 ? one : many}`;

type Paint = (text: string) => string;
export type Colours = Readonly<Record<'error' | 'warning' | 'note' | 'strong' | 'faint', Paint>>;

/** The colours of the text output; plain text where nobody wants them. */
export function coloursFor(wanted: boolean): Colours {
  const paint = (code: number): Paint => (wanted ? (text) => `\u001b[${code}m${text}\u001b[0m` : (text) => text);
  return { error: paint(31), warning: paint(33), note: paint(36), strong: paint(1), faint: paint(2) };
}
