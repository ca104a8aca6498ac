// Where a caret stands: the blocks around it, the line it is on, and which slot of that line each value fills. It reads
// half-typed lines too, so it is more forgiving than reading by the vocabulary and reports nothing.
import { holds, type Span, type Statement, type Tree, type Value, type WordValue } from '../../grammar/index.ts';
import { anywhereLines, type BlockSpec, blocks, fits, type LineSpec, type Slot, topLines, unitNamed } from '../vocabulary/index.ts';

/** A block of the file and the entry of the vocabulary that describes it; none for a word that is not known. */
export interface Enclosing {
  readonly statement: Statement;
  readonly word: string;
  readonly spec: BlockSpec | undefined;
}

const blockSpecs: Readonly<Record<string, BlockSpec>> = blocks;
const topSpecs: Readonly<Record<string, LineSpec>> = topLines;
const anywhereSpecs: Readonly<Record<string, LineSpec>> = anywhereLines;

const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined => (Object.hasOwn(table, key) ? table[key] : undefined);

/** The block of that word inside another one, or at the top of a file. */
export function blockSpecOf(within: BlockSpec | undefined, isTop: boolean, word: string): BlockSpec | undefined {
  return isTop ? own(blockSpecs, word) : within === undefined ? undefined : own(within.blocks, word);
}

/** The line of that word inside a block, or at the top of a file. */
export function lineSpecOf(within: BlockSpec | undefined, isTop: boolean, word: string): LineSpec | undefined {
  return (isTop ? own(topSpecs, word) : within === undefined ? undefined : own(within.lines, word)) ?? own(anywhereSpecs, word);
}

/** The innermost of these blocks, and whether there is none. */
export const innermost = (around: readonly Enclosing[]): { readonly spec: BlockSpec | undefined; readonly isTop: boolean } => {
  const last = around[around.length - 1];
  return { spec: last?.spec, isTop: last === undefined };
};

/** Every statement with the blocks around it, in the order of the text. */
export function* statementsOf(tree: Tree): Generator<{ readonly statement: Statement; readonly around: readonly Enclosing[] }> {
  yield* within(tree.items, []);
}

function* within(
  items: readonly Statement[],
  around: readonly Enclosing[],
): Generator<{ readonly statement: Statement; readonly around: readonly Enclosing[] }> {
  for (const statement of items) {
    yield { statement, around };
    if (statement.body === undefined || statement.body.items.length === 0) continue;
    const { spec, isTop } = innermost(around);
    const word = statement.word?.text ?? '';
    yield* within(statement.body.items, [...around, { statement, word, spec: blockSpecOf(spec, isTop, word) }]);
  }
}

/** Where the inside of a body ends: before its closing brace; where that is missing, before whatever comes next. */
function insideEnd(text: string, statement: Statement): number {
  const body = statement.body as Span & { items: readonly Statement[] };
  const last = body.items[body.items.length - 1];
  const closes = text.charAt(body.end - 1) === '}' && body.end - 1 > body.start && (last === undefined || last.end < body.end);
  if (closes) return body.end - 1;
  let end = body.end;
  while (end < text.length && /\s/.test(text.charAt(end))) end++;
  return end < text.length ? Math.max(body.end, end - 1) : end;
}

/** The blocks whose braces hold the offset, outermost first. */
export function blocksAround(tree: Tree, offset: number): Enclosing[] {
  const around: Enclosing[] = [];
  let items = tree.items;
  for (;;) {
    const statement = items.find((item) => item.body !== undefined && offset > item.body.start && offset <= insideEnd(tree.text, item));
    if (statement?.body === undefined) return around;
    const { spec, isTop } = innermost(around);
    const word = statement.word?.text ?? '';
    around.push({ statement, word, spec: blockSpecOf(spec, isTop, word) });
    items = statement.body.items;
  }
}

/** The line or header at an offset, and the blocks around it; none between two lines. */
export function statementAt(
  tree: Tree,
  offset: number,
): { readonly statement: Statement; readonly around: readonly Enclosing[] } | undefined {
  const around = blocksAround(tree, offset);
  const items = around[around.length - 1]?.statement.body?.items ?? tree.items;
  const statement = items.find((item) => offset >= item.start && offset <= headEnd(item));
  return statement === undefined ? undefined : { statement, around };
}

/** Where the part of a statement before its body ends. */
export const headEnd = (statement: Statement): number =>
  statement.body === undefined
    ? statement.end
    : (statement.values[statement.values.length - 1]?.end ?? statement.word?.end ?? statement.body.start);

/** What a value of a line is: what fills a slot, the keyword of one, the unit of one, or nothing that the line knows. */
export interface Part extends Span {
  readonly role: 'value' | 'keyword' | 'stray';
  readonly value: Value;
  readonly key: string | undefined;
  readonly slot: Slot | undefined;
}

export interface LineParts {
  readonly parts: readonly Part[];
  /** What may come next: the slots that are still open there, without their keyword, and those that want one. */
  readonly open: readonly (readonly [key: string, slot: Slot])[];
  readonly keyed: readonly (readonly [key: string, slot: Slot])[];
}

/** The slots of a line with their keys, listed once for each line of the vocabulary. */
const listed = new WeakMap<LineSpec, readonly (readonly [string, Slot])[]>();
function slotsOf(spec: LineSpec): readonly (readonly [string, Slot])[] {
  const known = listed.get(spec);
  if (known !== undefined) return known;
  const slots = Object.entries(spec.slots);
  listed.set(spec, slots);
  return slots;
}

/** Which slot each value of a line fills. Values in a wrong place are `stray`; whatever is missing is simply open. */
export function partsOf(spec: LineSpec, values: readonly Value[]): LineParts {
  const slots = slotsOf(spec);
  const filled = new Set<string>();
  const parts: Part[] = [];
  /** Index of the next slot; a slot with a keyword is entered by its keyword only. */
  let at = 0;
  let entered = false;

  const put = (value: Value, index: number): void => {
    const [key, slot] = slots[index] as [string, Slot];
    parts.push({ role: 'value', value, key, slot, start: value.start, end: value.end });
    filled.add(key);
    entered = slot.many === true;
    at = slot.many === true ? index : index + 1;
  };
  const keyword = (value: Value & { text: string }): boolean => {
    const index = slots.findIndex(([key, slot]) => slot.after === value.text && !filled.has(key));
    if (index < 0) return false;
    const [key, slot] = slots[index] as [string, Slot];
    parts.push({ role: 'keyword', value, key, slot, start: value.start, end: value.end });
    at = index;
    entered = true;
    return true;
  };

  for (const value of values) {
    if (value.kind === 'comma') continue;
    if (value.kind === 'word' && keyword(value)) continue;
    // A number may have taken the keyword behind it for its unit: `140 by 120 mm`.
    const taken = value.kind === 'number' && value.unit !== undefined && unitNamed(value.unit.text) === undefined ? value.unit : undefined;
    const isKeyword = taken !== undefined && slots.some(([, slot]) => slot.after === taken.text);
    const amount: Value =
      isKeyword && value.kind === 'number' ? { ...value, unit: undefined, end: value.start + value.text.length } : value;
    const index = slotFor(slots, at, entered, amount);
    if (index === undefined) parts.push({ role: 'stray', value, key: undefined, slot: undefined, start: value.start, end: value.end });
    else put(amount, index);
    if (isKeyword) keyword(taken as WordValue);
  }

  const current = slots[at];
  // Its keyword stands there, so its value must come next.
  if (entered && current !== undefined && !filled.has(current[0])) return { parts, open: [current], keyed: [] };
  const open: (readonly [string, Slot])[] = [];
  for (let i = at; i < slots.length; i++) {
    const [key, slot] = slots[i] as [string, Slot];
    if (slot.after !== undefined && !(i === at && entered)) break;
    if (slot.kind === 'tolerance') continue;
    open.push([key, slot]);
    if (slot.optional !== true && slot.many !== true) break;
    if (slot.many === true && !filled.has(key)) break;
  }
  // A keyword can follow once the slot before it is filled; `many` slots may end at any value.
  const blocked = open.some(([key, slot]) => slot.optional !== true && !filled.has(key));
  const keyed = blocked
    ? []
    : slots.filter(([key, slot]) => slot.after !== undefined && !filled.has(key) && !open.some(([other]) => other === key));
  return { parts, open, keyed };
}

/** The slot that a value without a keyword fills, from the slot at `at` on; optional ones that it does not fit are passed over. */
function slotFor(slots: readonly (readonly [string, Slot])[], at: number, entered: boolean, value: Value): number | undefined {
  for (let i = at; i < slots.length; i++) {
    const slot = (slots[i] as readonly [string, Slot])[1];
    if (slot.after !== undefined && !(i === at && entered)) return undefined;
    if (slot.kind === 'tolerance') continue;
    if (slot.optional === true && !(i === at && entered) && !fits(value, slot)) continue;
    return i;
  }
  return undefined;
}

/** The value of a statement that holds the offset. */
export function valueAt(statement: Statement, offset: number): Value | undefined {
  return statement.values.find((value) => value.kind !== 'comma' && holds(value, offset));
}
