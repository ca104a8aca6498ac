// How rules speak of what stands in a file.
import type { Statement } from '../../grammar/index.ts';
import type { TerminalRole } from '../model/index.ts';
import { blocks, characterInWords, firstDifference, hasUnusual, looksTheSame, quoted } from '../vocabulary/index.ts';

export { characterCode, quoted } from '../vocabulary/index.ts';

/** “a, b, c”: the first words of a list, and how many more there are. */
export function listed(words: readonly string[], most = 12): string {
  return words.length <= most ? words.join(', ') : `${words.slice(0, most).join(', ')} and ${words.length - most} more`;
}

/** A path as people speak of it: the file and the folder that it is in. */
export function shortPath(path: string): string {
  return path
    .split('/')
    .filter((part) => part !== '')
    .slice(-2)
    .join('/');
}

/** “a sensor”, “an edge”. */
export const withArticle = (word: string): string => (/^[aeiou]/i.test(word) ? 'an ' : 'a ') + word;

/** A block as people speak of it: leaf “west”; a block without a name of its own is just its word. */
export const blockInWords = (block: { readonly kind: string; readonly name: string }): string =>
  block.name === '' ? `This ${block.kind === 'measured' ? 'measured block' : block.kind}` : `The ${block.kind} ${quoted(block.name)}`;

/** What tells two texts apart that look the same: “еast” has U+0435 (Cyrillic) where “east” has U+0065 (Latin). */
export function unlike(one: string, other: string): string {
  const [a, b] = firstDifference(one, other).map((character) => (character === '' ? 'nothing' : characterInWords(character)));
  return `${quoted(one)} has ${a} where ${quoted(other)} has ${b}`;
}

/** “ Perhaps “width” is meant.” for the end of a remedy; empty where nothing is near. Says it where what was found looks just like it. */
export function perhaps(meant: string | undefined, found: string): string {
  if (meant === undefined) return '';
  const hint = ` Perhaps ${quoted(meant)} is meant`;
  const looksSo = (hasUnusual(found) || hasUnusual(meant)) && looksTheSame(found, meant);
  return looksSo ? `${hint}, which looks the same: ${unlike(found, meant)}.` : `${hint}.`;
}

/** “ Its “м” is U+043C (Cyrillic).” for the end of a remedy, of the first letter that is not of the alphabet of all units and words. */
export function foreignLetter(found: string): string {
  const [letter] = hasUnusual(found) ? (/(?!\p{Script=Latin})\p{L}/u.exec(found) ?? []) : [];
  return letter === undefined ? '' : ` Its ${quoted(letter)} is ${characterInWords(letter)}.`;
}

/** A number for people: at most four significant digits. */
export const rounded = (value: number): string => String(Number(value.toPrecision(4)));

/** A list for the end of a sentence that must not grow too long: names can be of any length. */
export const clipped = (text: string): string => (text.length > 200 ? text.slice(0, 199).trimEnd() + '…' : text);

/** What a terminal is for, in the words of the vocabulary. */
export const roleInWords = (role: TerminalRole): string => blocks['panel-model'].lines.terminal.slots.role.options[role];

/** The first quantity of a line (or the one behind a keyword), as it was written: “8.2 kohm”. */
export function written(line: Statement, after?: string): string {
  const from = line.values.findIndex((value) => value.kind === 'word' && value.text === after) + 1;
  const number = line.values.slice(from).find((value) => value.kind === 'number');
  if (number === undefined) return '';
  return number.unit === undefined ? number.text : `${number.text} ${number.unit.text}`;
}

/** Ohms for people. */
export const ohmsInWords = (ohms: number): string => (ohms >= 1000 ? `${rounded(ohms / 1000)} kohm` : `${rounded(ohms)} ohm`);

/** “E1, E2 and E3”, each quoted. `count`: of how many `names` are the first. */
export function quotedList(names: readonly string[], most = 6, count: number = names.length): string {
  const shown = names.slice(0, most).map(quoted);
  const more = count - shown.length;
  const last = more > 0 ? `${more} more` : shown.pop();
  return shown.length === 0 ? `${last}` : `${shown.join(', ')} and ${last}`;
}
