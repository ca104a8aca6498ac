// Reading one line by its form: which of its values belongs to which slot.
import type { Statement, Value } from '../../grammar/index.ts';
import type { LineForm, SlotForm } from './forms.ts';
import type { ProblemList } from './problems.ts';
import { lineShape } from './shapes.ts';
import { unitNamed } from './units.ts';
import { fits, quickly, toleranceOf, valueOf } from './values.ts';

/** The line at hand, kept in one object for all lines of a file, so that none needs lists of its own. */
export interface LineAtHand {
  readonly found: ProblemList;
  /** The statement, then its slots. */
  readonly row: unknown[];
  /** The values, in the order of the slots as far as they are read. */
  values: readonly Value[];
  /** The first value that no slot has taken yet. */
  at: number;
  /** Every value so far fits its slot. */
  isSound: boolean;
}

export const noLineYet = (found: ProblemList): LineAtHand => ({ found, row: [], values: [], at: 0, isSound: true });

/** A line as its form says; undefined when something that it needs is missing or wrong, which is then reported. */
export function readLine(hand: LineAtHand, line: LineForm, statement: Statement): Record<string, unknown> | undefined {
  if (statement.body !== undefined) hand.found.add('body-unexpected', statement.word ?? statement, { word: line.word });
  const { row } = hand;
  const { slots, blank } = line;
  const { values } = statement;
  row[0] = statement;
  for (let place = 0; place < blank.length; place++) row[place + 1] = blank[place];
  // Most slots are plain and their values fit: no more is asked of those.
  let plain = 0;
  for (; plain < slots.length && plain < values.length; plain++) {
    const one = slots[plain] as SlotForm;
    const quick = one.isPlain ? quickly(one, values[plain] as Value) : undefined;
    if (quick === undefined) break;
    row[plain + 1] = quick;
  }
  if (plain === slots.length && plain === values.length) return line.record(row);
  hand.values = values;
  hand.at = plain;
  hand.isSound = true;
  for (let place = plain; place < slots.length; place++) {
    const one = slots[place] as SlotForm;
    if (!readSlot(hand, line, one, place)) return sayMissing(hand, line, one, statement);
  }
  // A value that did not fit has been reported; what stands behind it often belongs to the same slip.
  if (!hand.isSound) return undefined;
  if (hand.at < hand.values.length) sayLeftOver(hand, line);
  return line.record(row);
}

/** Reads what stands for a slot; false where nothing does and something must. */
function readSlot(hand: LineAtHand, line: LineForm, one: SlotForm, place: number): boolean {
  if (one.kind === 'tolerance') return readTolerance(hand, place);
  if (one.after !== undefined && !goToKeyword(hand, line, one.after)) return one.optional;
  const value = hand.values[hand.at];
  const mayLack = one.optional && one.after === undefined;
  if (value === undefined || (mayLack && !fits(value, one.slot, line.keywords))) return mayLack;
  if (one.many) readMany(hand, line, one, place);
  else readOne(hand, line, one, place, value);
  return true;
}

/** Goes behind a keyword, with what belongs to it, wherever it stands; false where it does not. */
function goToKeyword(hand: LineAtHand, line: LineForm, keyword: string): boolean {
  let from = keywordAt(hand.values, keyword, hand.at);
  if (from < 0) {
    // A number may have taken the keyword for its unit: `140 by 120 mm`.
    const split = splitAtKeyword(hand.values, keyword, hand.at);
    if (split === undefined) return false;
    hand.values = split;
    from = keywordAt(split, keyword, hand.at);
  }
  if (from !== hand.at) hand.values = moveToFront(hand.values, hand.at, from, line.keywords);
  hand.at++;
  return true;
}

function readOne(hand: LineAtHand, line: LineForm, one: SlotForm, place: number, value: Value): void {
  const quick = quickly(one, value);
  if (quick !== undefined) {
    hand.row[place + 1] = quick;
    hand.at++;
    return;
  }
  put(hand, place, valueOf(hand.found, line, one.slot, ownValue(hand, line)));
  // A tolerance that nothing here reads must not pass for one that was heeded.
  if (hand.isSound && value.kind === 'number' && value.plusMinus !== undefined && line.slots[place + 1]?.kind !== 'tolerance') {
    hand.isSound = false;
    const found = '± ' + hand.found.source(value.plusMinus);
    hand.found.add('value-unexpected', value.plusMinus, { word: line.word, found, shape: lineShape(line.word, line.spec) });
  }
  hand.at++;
}

function readMany(hand: LineAtHand, line: LineForm, one: SlotForm, place: number): void {
  const list: unknown[] = [];
  for (; hand.at < hand.values.length; hand.at++) {
    let value = hand.values[hand.at] as Value;
    if (value.kind === 'comma') continue;
    if (value.kind === 'word' && line.keywords.has(value.text)) break;
    if (value.kind === 'number') value = ownValue(hand, line);
    const read = quickly(one, value) ?? valueOf(hand.found, line, one.slot, value);
    if (read === undefined) hand.isSound = false;
    else list.push(read);
  }
  hand.row[place + 1] = list;
}

/** `±` behind the number before it. */
function readTolerance(hand: LineAtHand, place: number): true {
  const number = hand.values[hand.at - 1];
  if (number?.kind === 'number' && number.plusMinus !== undefined) put(hand, place, toleranceOf(hand.found, number.plusMinus));
  return true;
}

function put(hand: LineAtHand, place: number, value: unknown): void {
  if (value === undefined) hand.isSound = false;
  else hand.row[place + 1] = value;
}

/** The value at hand, without a keyword that it took for its unit. */
function ownValue(hand: LineAtHand, line: LineForm): Value {
  const value = hand.values[hand.at] as Value;
  if (value.kind !== 'number' || value.unit === undefined) return value;
  const { text } = value.unit;
  if (line.keywords.has(text) && unitNamed(text) === undefined) hand.values = splitAtKeyword(hand.values, text, hand.at) ?? hand.values;
  return hand.values[hand.at] as Value;
}

function sayMissing(hand: LineAtHand, line: LineForm, { slot }: SlotForm, statement: Statement): undefined {
  // A figure that did not fit may have taken the word behind it for its unit: that was reported, and nothing else is surely missing.
  if (!hand.isSound && statement.values.some(({ kind }) => kind === 'number')) return undefined;
  const at = statement.values[statement.values.length - 1] ?? statement.word ?? statement;
  return hand.found.add('value-missing', at, { word: line.word, slot, example: line.spec.example });
}

function sayLeftOver(hand: LineAtHand, line: LineForm): void {
  const rest = hand.values[hand.at] as Value;
  // Values may have been moved to the order of the slots, so the last one need not stand last in the text.
  const at = { start: rest.start, end: Math.max(rest.end, (hand.values[hand.values.length - 1] as Value).end) };
  hand.found.add('value-unexpected', at, { word: line.word, found: hand.found.source(at), shape: lineShape(line.word, line.spec) });
}

function keywordAt(values: readonly Value[], keyword: string, from: number): number {
  for (let i = from; i < values.length; i++) {
    const value = values[i] as Value;
    if (value.kind === 'word' && value.text === keyword) return i;
  }
  return -1;
}

/** A number that took a keyword for its unit gives it back. */
function splitAtKeyword(values: readonly Value[], keyword: string, from: number): Value[] | undefined {
  for (let i = from; i < values.length; i++) {
    const value = values[i] as Value;
    if (value.kind !== 'number' || value.unit?.text !== keyword || value.plusMinus !== undefined || value.upTo !== undefined) continue;
    const number = { ...value, unit: undefined, end: value.start + value.text.length };
    return [...values.slice(0, i), number, value.unit, ...values.slice(i + 1)];
  }
  return undefined;
}

/** Puts the keyword at `from` and what belongs to it in front of what stands at `at`: keyed slots come in any order. */
function moveToFront(values: readonly Value[], at: number, from: number, keywords: ReadonlySet<string>): Value[] {
  let end = from + 1;
  while (end < values.length) {
    const value = values[end] as Value;
    if (value.kind === 'word' && keywords.has(value.text)) break;
    end++;
  }
  return [...values.slice(0, at), ...values.slice(from, end), ...values.slice(at, from), ...values.slice(end)];
}
