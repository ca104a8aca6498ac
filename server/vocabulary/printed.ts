// Names as they are printed on a product. One that does not begin with a letter stands in quotation marks, or it would be read as a number.
import { scan, type Value, type WordValue } from '../../grammar/index.ts';
import type { Slot } from './spec.ts';

/** True for a slot whose names are printed on a product. */
export const isAsPrinted = (slot: Slot): boolean =>
  slot.kind === 'ref' ? slot.to === 'terminal' : slot.kind === 'name' && slot.asPrinted === true;

/** Longer than this is no name that anybody prints beside a terminal. */
const longest = 32;

/** The name that a value gives in a slot: a word, or a text where names are as printed; undefined for anything else. */
export function nameIn(value: Value, slot: Slot): WordValue | undefined {
  if (slot.kind !== 'name' && slot.kind !== 'ref') return undefined;
  if (value.kind === 'word') return value;
  if (value.kind !== 'text' || !isAsPrinted(slot) || !isPrintable(value.text)) return undefined;
  return { kind: 'word', text: value.text, start: value.start, end: value.end };
}

/** True for a text that can be printed beside a terminal: one word, of whatever characters. */
export const isPrintable = (name: string): boolean => name.length > 0 && name.length <= longest && !/[\s"\\]/u.test(name);

/** A name as it is written in a file: in quotation marks where it would not be read as a word of its own. */
export function asWritten(name: string): string {
  const { tokens, comments, problems } = scan(name);
  const isWord = tokens.length === 1 && tokens[0]?.tokenType.name === 'Word' && tokens[0].image === name;
  return isWord && comments.length === 0 && problems.length === 0 ? name : `"${name}"`;
}
