// What lines, slots and blocks look like, in words: for messages, hover and the manual.
import { isAsPrinted } from './printed.ts';
import type { BlockSpec, LineSpec, Slot } from './spec.ts';
import { type Dimension, unitsOf } from './units.ts';

/** The names of the units of a dimension, the most usual first. */
export const unitNamesOf = (dimension: Dimension): string[] => unitsOf(dimension).map((unit) => unit.name);

const article = (word: string): string => (/^[aeiou]/.test(word) ? 'an ' : 'a ') + word;

/** Names that are looked up in the panel or its model, or among the rules, and not among the blocks of the file. */
const notOfThisFile: ReadonlySet<string> = new Set(['option', 'selector', 'terminal', 'rule']);

const printed = ', in quotation marks where it does not begin with a letter';

/** What a slot takes, in words; `list` may shorten the words of a choice. */
export function slotInWords(slot: Slot, list = (words: readonly string[]): string => words.join(', ')): string {
  switch (slot.kind) {
    case 'quantity':
      return `${article(slot.dimension)} (${unitNamesOf(slot.dimension).join(', ')})`;
    case 'tolerance':
      return 'a tolerance (± 5 %)';
    case 'range':
      return `a range such as “2 s .. 120 s”`;
    case 'count':
      return 'a whole number';
    case 'choice':
      return `one of ${list(Object.keys(slot.options))}`;
    case 'name':
      return isAsPrinted(slot) ? `a name${printed}` : 'a name';
    case 'ref':
      if (isAsPrinted(slot)) return `the name of ${article(slot.to)}${printed}`;
      return `the name of ${article(slot.to)}${notOfThisFile.has(slot.to) ? '' : ' of this file'}`;
    case 'text':
      return 'a text in double quotes';
    case 'date':
      return 'a date (YYYY-MM-DD)';
  }
}

/** The shape of a line, for messages, hover and the manual: `closes onto LEAF [overlap LENGTH]`. */
export function lineShape(word: string, spec: LineSpec): string {
  let out = word;
  for (const [key, slot] of Object.entries(spec.slots)) {
    if (slot.kind === 'tolerance') {
      out += ' [± TOLERANCE]';
      continue;
    }
    const one = slotShape(key, slot);
    const part = (slot.after === undefined ? '' : slot.after + ' ') + one + (slot.many === true ? ' …' : '');
    out += slot.optional === true ? ` [${part}]` : ` ${part}`;
  }
  return out;
}

function slotShape(key: string, slot: Slot): string {
  switch (slot.kind) {
    case 'quantity':
      return slot.dimension.toUpperCase().replaceAll(' ', '-');
    case 'choice':
      return Object.keys(slot.options).join('|');
    case 'range':
      return 'LOW .. HIGH';
    case 'text':
      return '"…"';
    case 'date':
      return 'YYYY-MM-DD';
    case 'count':
      return 'NUMBER';
    case 'ref':
      return slot.to.toUpperCase();
    default:
      return key.toUpperCase();
  }
}

/** The shape of a block's header. */
export function headerShape(word: string, spec: BlockSpec): string {
  const parts = [word, spec.named && 'NAME', spec.model !== undefined && ': MODEL', spec.title === true && '["…"]', '{ … }'];
  return parts.filter((part) => part !== false).join(' ');
}
