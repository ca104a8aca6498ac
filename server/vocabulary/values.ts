// How a value fits its slot: what it says where it does, and what is wrong where it does not.
import type { NumberValue, Value } from '../../grammar/index.ts';
import { dayNumber } from './dates.ts';
import type { LineForm, SlotForm } from './forms.ts';
import { likelyUnit, nearestUnit } from './guesses.ts';
import { nearest } from './likeness.ts';
import { nameIn } from './printed.ts';
import type { ProblemList } from './problems.ts';
import { lineShape, unitNamesOf } from './shapes.ts';
import type { ChoiceSlot, CountSlot, QuantitySlot, Range, RangeSlot, Slot } from './spec.ts';
import { unitNamed } from './units.ts';

const noKeywords: ReadonlySet<string> = new Set();

/** True when a value is of the kind that a slot takes; a keyword of the line is none. */
export function fits(value: Value, slot: Slot, keywords: ReadonlySet<string> = noKeywords): boolean {
  if (value.kind === 'word' && keywords.has(value.text)) return false;
  switch (slot.kind) {
    case 'quantity':
    case 'count':
    case 'range':
      return value.kind === 'number';
    case 'choice':
      return value.kind === 'word';
    case 'name':
    case 'ref':
      return nameIn(value, slot) !== undefined;
    case 'text':
      return value.kind === 'text';
    case 'date':
      return value.kind === 'date';
    case 'tolerance':
      return false;
  }
}

/** The value of a slot in the plain case: a word that fits, or a number with a unit inside the limits. */
export function quickly(one: SlotForm, value: Value): unknown {
  if (value.kind === 'word') return one.kind === 'ref' ? value : one.options.get(value.text);
  if (value.kind !== 'number' || one.kind !== 'quantity') return undefined;
  if (value.unit === undefined || value.upTo !== undefined || value.plusMinus !== undefined) return undefined;
  const si = one.units.get(value.unit.text)?.toSi(numberOf(value));
  return si !== undefined && si >= one.low && si <= one.high ? si : undefined;
}

/** One value by its slot; undefined when it does not fit, which is then reported. */
export function valueOf(found: ProblemList, line: LineForm, slot: Slot, value: Value): unknown {
  switch (slot.kind) {
    case 'quantity':
      if (value.kind === 'number' && value.upTo === undefined) return quantityOf(found, line, slot, value);
      break;
    case 'count':
      if (isBare(value)) return countOf(found, line, slot, value);
      break;
    case 'range':
      if (value.kind === 'number' && value.upTo !== undefined) return rangeOf(found, line, slot, value, value.upTo);
      break;
    case 'choice':
      if (value.kind === 'word') return choiceOf(found, line, slot, value.text, value);
      break;
    case 'name':
    case 'ref': {
      const name = nameIn(value, slot);
      if (name !== undefined) return name;
      break;
    }
    case 'text':
      if (value.kind === 'text') return value.text;
      break;
    case 'date':
      if (value.kind === 'date') return isDate(value.text) ? value.text : found.add('date-impossible', value, { found: value.text });
      break;
    case 'tolerance':
      break;
  }
  return found.add('value-unfit', value, { word: line.word, found: found.source(value), slot, shape: lineShape(line.word, line.spec) });
}

const isBare = (value: Value): value is NumberValue =>
  value.kind === 'number' && value.unit === undefined && value.upTo === undefined && value.plusMinus === undefined;

function countOf(found: ProblemList, line: LineForm, { min, max }: CountSlot, value: NumberValue): number | undefined {
  const number = numberOf(value);
  if (Number.isInteger(number) && number >= min && number <= max) return number;
  const limits = { of: 'count', least: min, most: max } as const;
  return found.add('value-out-of-range', value, { word: line.word, found: found.source(value), limits });
}

function choiceOf(found: ProblemList, line: LineForm, { options }: ChoiceSlot, text: string, at: Value): string | undefined {
  if (Object.hasOwn(options, text)) return text;
  const choices = Object.keys(options);
  return found.add('choice-unknown', at, { word: line.word, found: text, choices, meant: nearest(text, choices) });
}

function quantityOf(found: ProblemList, line: LineForm, slot: QuantitySlot, value: NumberValue): number | undefined {
  const amount = numberOf(value);
  const { dimension, min, max } = slot;
  const { word } = line;
  const units = (): string[] => unitNamesOf(dimension);
  if (value.unit === undefined) {
    const isComma = /^,\d/.test(found.text.slice(value.end, value.end + 2));
    if (isComma) return found.add('decimal-comma', { start: value.start, end: value.end + 1 }, {});
    const unit = likelyUnit(slot, amount)?.name;
    return found.add('unit-missing', value, { word, found: value.text, dimensions: [dimension], units: units(), unit });
  }
  const { text } = value.unit;
  const unit = unitNamed(text);
  if (unit === undefined)
    return found.add('unit-unknown', value.unit, { word, found: text, units: units(), meant: nearestUnit(text, dimension) });
  if (unit.dimension !== dimension)
    return found.add('unit-wrong', value.unit, { word, found: text, measures: unit.dimension, dimensions: [dimension], units: units() });
  const si = unit.toSi(amount);
  // The limits carry no rounding of their own, so a hair is allowed for that of the conversion.
  const hair = 1e-9 * Math.max(Math.abs(min), Math.abs(max));
  if (si >= min - hair && si <= max + hair) return si;
  const digits = value.plusMinus === undefined ? value.text : undefined;
  const limits = { of: 'quantity', least: min, most: max, unit, amount, digits } as const;
  return found.add('value-out-of-range', value, { word, found: found.source(value), limits });
}

function rangeOf(found: ProblemList, line: LineForm, { dimensions }: RangeSlot, low: NumberValue, high: NumberValue): Range | undefined {
  const { word } = line;
  const highUnit = high.unit === undefined ? undefined : unitNamed(high.unit.text);
  const lowUnit = low.unit === undefined ? highUnit : unitNamed(low.unit.text);
  const isOne = highUnit !== undefined && lowUnit?.dimension === highUnit.dimension && dimensions.includes(highUnit.dimension);
  if (!isOne) {
    const units = dimensions.flatMap(unitNamesOf);
    const unit = high.unit ?? low.unit;
    if (unit === undefined) return found.add('unit-missing', low, { word, found: found.source(low), dimensions, units, unit: undefined });
    return found.add('unit-wrong', unit, { word, found: unit.text, measures: unitNamed(unit.text)?.dimension, dimensions, units });
  }
  const range = { low: lowUnit.toSi(numberOf(low)), high: highUnit.toSi(numberOf(high)), dimension: highUnit.dimension };
  if (range.low < range.high && Number.isFinite(range.high)) return range;
  return found.add('value-out-of-range', low, { word, found: found.source(low), limits: { of: 'range' } });
}

/** The share that stands behind `±`. */
export function toleranceOf(found: ProblemList, value: NumberValue): number | undefined {
  const amount = numberOf(value);
  const unit = value.unit === undefined ? undefined : unitNamed(value.unit.text);
  const wanted = { word: '±', dimensions: ['ratio'], units: ['%'] } as const;
  if (unit === undefined) return found.add('unit-missing', value, { ...wanted, found: value.text, unit: '%' });
  if (unit.dimension === 'ratio' && amount >= 0 && amount < 100) return unit.toSi(amount);
  return found.add('unit-wrong', value, { ...wanted, found: found.source(value), measures: unit.dimension });
}

/** A day that exists, of a year in which a gate could have been built. */
const isDate = (text: string): boolean => text >= '1900' && dayNumber(text) !== undefined;

/** Most digits of which a whole number holds each one, whatever they are. */
const mostDigits = 15;
const minus = 0x2212;

/**
 * What a number says. Plain ones are put together here: whole digits over a power of ten is rounded once, as `Number` does, and
 * quicker.
 */
function numberOf({ text }: NumberValue): number {
  let whole = 0;
  let under = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 46) under = 1;
    else if (code < 48 || code > 57 || text.length > mostDigits) return Number(text.charCodeAt(0) === minus ? '-' + text.slice(1) : text);
    else {
      whole = whole * 10 + code - 48;
      under *= 10;
    }
  }
  return under === 0 ? whole : whole / under;
}
