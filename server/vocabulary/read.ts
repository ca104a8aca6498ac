// From the tree to facts, by the table alone. What cannot be read is reported and left out; the rest stands.
import type { NumberValue, Statement, Tree, Value, WordValue } from '../../grammar/index.ts';
import { dayNumber } from './dates.ts';
import { nearest } from './likeness.ts';
import { records } from './records.ts';
import type { BlockSpec, Entity, Line, LineSpec, Problem, QuantitySlot, Range, RangeSlot, Slot } from './spec.ts';
import { anywhereLines, blocks, type Blocks, type BlockWord, languageVersion, topLines } from './table.ts';
import { type Dimension, type Unit, unitNamed, unitsOf } from './units.ts';

export type AcceptLine = Line<(typeof anywhereLines)['accept']>;

/** An acceptance and the block it stands in; none when it holds for the whole file. */
export interface Acceptance {
  readonly fact: AcceptLine;
  readonly within: Statement | undefined;
}

export type ExpectLine = Line<(typeof anywhereLines)['expects']>;

/** A promise that a rule finds something, and the block it stands in; none when it is of the whole file. */
export interface Expectation {
  readonly fact: ExpectLine;
  readonly within: Statement | undefined;
}

/** One file as read: its blocks by their word, nothing yet resolved. */
export interface Reading {
  readonly tree: Tree;
  readonly language: Line<(typeof topLines)['language']> | undefined;
  readonly uses: readonly Line<(typeof topLines)['use']>[];
  readonly accepts: readonly Acceptance[];
  readonly expects: readonly Expectation[];
  readonly expectsNo: Line<(typeof topLines)['expects-no']> | undefined;
  readonly entities: { readonly [K in BlockWord]: readonly Entity<Blocks[K]>[] };
  readonly problems: readonly Problem[];
}

/** A slot with what the quick path asks of it. All have one shape, whatever the slot: that is what makes reading quick. */
interface SlotReader {
  readonly key: string;
  readonly slot: Slot;
  readonly kind: Slot['kind'];
  readonly after: string | undefined;
  readonly optional: boolean;
  readonly many: boolean;
  /** The words of a choice, by themselves: the table's own text is quicker to compare than a piece of the file. */
  readonly options: ReadonlyMap<string, string>;
  /** The units of a quantity, by each of their spellings. */
  readonly units: ReadonlyMap<string, Unit>;
  readonly low: number;
  readonly high: number;
}

interface Reader {
  readonly word: string;
  readonly spec: LineSpec;
  readonly slots: readonly SlotReader[];
  readonly keywords: ReadonlySet<string>;
  readonly many: boolean;
  /** Its place among the lines of its block. */
  readonly place: number;
  /** What the slots hold where nothing is stated. */
  readonly blank: readonly unknown[];
  readonly record: MakeRecord;
}

interface BlockReader {
  readonly word: string;
  readonly spec: BlockSpec;
  readonly lines: ReadonlyMap<string, Reader>;
  readonly blocks: ReadonlyMap<string, BlockReader>;
  /** What the lines hold where nothing is stated. */
  readonly blank: readonly unknown[];
  readonly record: MakeRecord;
}

/** Makes a record of its values, in the order of its keys. */
type MakeRecord = (values: readonly unknown[]) => Record<string, unknown>;

/** The name of a shape in records.ts. */
export const shapeOf = (keys: readonly string[]): string => keys.join(' ');

/** What makes records of these keys. A shape that is not generated yet only takes longer. */
function recordOf(keys: readonly string[]): MakeRecord {
  return records[shapeOf(keys)] ?? ((values) => Object.fromEntries(keys.map((key, at) => [key, values[at]])));
}

const none: readonly never[] = Object.freeze([]) as readonly never[];
const noKeywords: ReadonlySet<string> = new Set();
/** Most unknown words of one file for which a likely meaning is looked up. */
const mostGuesses = 200;
const noBlocks: Record<string, Entity[]> = Object.freeze({}) as Record<string, Entity[]>;

function slotReader(key: string, slot: Slot): SlotReader {
  return {
    key,
    slot,
    kind: slot.kind,
    after: slot.after,
    optional: slot.optional === true,
    many: slot.many === true,
    options: new Map(slot.kind === 'choice' ? Object.keys(slot.options).map((option) => [option, option]) : none),
    units: new Map(slot.kind === 'quantity' ? unitsOf(slot.dimension).flatMap((unit) => [unit.name, ...unit.also].map((name) => [name, unit] as const)) : none),
    low: slot.kind === 'quantity' ? slot.min : 0,
    high: slot.kind === 'quantity' ? slot.max : 0,
  };
}

function lineReader(word: string, spec: LineSpec, place = 0): Reader {
  const slots = Object.entries(spec.slots);
  const keywords = new Set(slots.flatMap(([, slot]) => (slot.after === undefined ? [] : [slot.after])));
  const blank = slots.map(([, slot]) => ('fallback' in slot ? slot.fallback : undefined));
  return { word, spec, slots: slots.map(([key, slot]) => slotReader(key, slot)), keywords, many: spec.many === true, place, blank, record: recordOf(['line', ...Object.keys(spec.slots)]) };
}

function blockReader(word: string, spec: BlockSpec): BlockReader {
  const lines = Object.entries(spec.lines);
  return {
    word,
    spec,
    lines: new Map(lines.map(([key, line], place) => [key, lineReader(key, line, place)])),
    blocks: new Map(Object.entries(spec.blocks).map(([key, block]) => [key, blockReader(key, block)])),
    blank: lines.map(([, line]) => (line.many === true ? none : undefined)),
    record: recordOf(Object.keys(spec.lines)),
  };
}

const blockReaders = new Map(Object.entries(blocks).map(([word, spec]) => [word, blockReader(word, spec)]));
const topReaders = new Map(Object.entries(topLines).map(([word, spec]) => [word, lineReader(word, spec)]));
const acceptReader = lineReader('accept', anywhereLines.accept);
const expectsReader = lineReader('expects', anywhereLines.expects);

/** Everything that a file says, and all that could not be understood of it. Never throws. */
export function readFile(tree: Tree): Reading {
  const reading = new FileReading(tree);
  reading.readTop();
  return reading.finish();
}

class FileReading {
  readonly #tree: Tree;
  readonly #problems: Problem[] = [];
  readonly #accepts: Acceptance[] = [];
  #expects: Expectation[] | undefined;
  #expectsNo: Reading['expectsNo'];
  readonly #entities: Record<string, Entity[]> = {
    site: [], leaf: [], drive: [], sensor: [], control: [], panel: [], motion: [], cable: [], measured: [], function: [],
    'panel-model': [], 'drive-model': [], 'sensor-model': [], 'cable-model': [],
  } satisfies Record<BlockWord, Entity[]>;
  #language: Reading['language'];
  readonly #uses: Line<(typeof topLines)['use']>[] = [];

  /** The line being read: its statement, then its slots. One row for all lines. */
  readonly #row: unknown[] = [];
  readonly #guesses = new Map<string, { readonly meant: string; readonly elsewhere: string }>();

  constructor(tree: Tree) {
    this.#tree = tree;
    for (const problem of tree.problems)
      this.#problems.push({ kind: problem.kind, start: problem.start, end: problem.end, detail: { found: problem.detail } });
  }

  /** The version line: there, first, and one that is known. */
  #checkLanguage(): void {
    const first = this.#tree.items[0];
    if (first === undefined) {
      if (this.#tree.problems.length === 0) this.#problem('file-empty', { start: 0, end: 0 }, {});
      return;
    }
    const version = this.#language?.version;
    if (this.#language === undefined) {
      if (!this.#tree.items.some((item) => item.word?.text === 'language')) this.#problem('language-missing', first.word ?? { start: first.start, end: first.start + 1 }, { version: String(languageVersion), at: String(first.start) });
    } else if (version !== languageVersion) this.#problem('language-unknown', this.#language.line.values[0] ?? this.#language.line, { found: String(version), version: String(languageVersion) });
    else if (this.#language.line !== first) this.#problem('language-not-first', this.#language.line, {});
  }

  finish(): Reading {
    this.#checkLanguage();
    return {
      tree: this.#tree,
      language: this.#language,
      uses: this.#uses,
      accepts: this.#accepts,
      expects: this.#expects ?? none,
      expectsNo: this.#expectsNo,
      entities: this.#entities as unknown as Reading['entities'],
      problems: this.#problems,
    };
  }

  readTop(): void {
    for (const statement of this.#tree.items) {
      const word = statement.word;
      if (word === undefined) continue;
      const block = blockReaders.get(word.text);
      if (block !== undefined) this.#topBlock(block, statement);
      else if (word.text === 'accept') this.#accept(statement, undefined);
      else if (word.text === 'expects') this.#expect(statement, undefined);
      else {
        const reader = topReaders.get(word.text);
        if (reader === undefined) this.#unknownWord(word, topReaders.keys(), blockReaders.keys(), 'a file');
        else this.#topLine(reader, statement);
      }
    }
  }

  #topLine(reader: Reader, statement: Statement): void {
    const line = this.#line(reader, statement);
    if (line === undefined) return;
    if (reader.word === 'use') this.#uses.push({ ...(line as unknown as Line<(typeof topLines)['use']>), path: this.#rawText(statement) });
    else if (reader.word === 'expects-no') {
      if (this.#expectsNo === undefined) this.#expectsNo = line as unknown as Line<(typeof topLines)['expects-no']>;
      else this.#repeated(statement, this.#expectsNo.line, reader.word);
    } else if (this.#language === undefined) this.#language = line as unknown as Line<(typeof topLines)['language']>;
    else this.#repeated(statement, this.#language.line, reader.word);
  }

  /** A path as it was typed: in a path a backslash is a mistake to be told of and not the mark of an escape. */
  #rawText(statement: Statement): string {
    const value = statement.values[0];
    if (value?.kind !== 'text') return '';
    const raw = this.#source(value);
    return raw.slice(1, raw.length > 1 && raw.endsWith('"') ? -1 : undefined);
  }

  #topBlock(reader: BlockReader, statement: Statement): void {
    if (statement.body === undefined) {
      this.#problem('block-without-body', statement, { word: reader.word });
      return;
    }
    const list = this.#entities[reader.word] as Entity[];
    const first = list[0];
    if (reader.spec.single === true && first !== undefined) this.#repeated(statement.word ?? statement, first.at.word ?? first.at, reader.word);
    list.push(this.#block(reader, statement));
  }

  #block(reader: BlockReader, statement: Statement): Entity {
    const header = this.#header(reader, statement);
    // A row by the places of the lines, and one literal of it at the end: keys that are stored one by one cost far more.
    const row = reader.blank.slice();
    const nested: Record<string, Entity[]> = reader.blocks.size === 0 ? noBlocks : {};
    for (const word of reader.blocks.keys()) nested[word] = [];
    let unread: string[] | undefined;
    for (const item of statement.body?.items ?? []) {
      const word = item.word;
      if (word === undefined) continue;
      const line = reader.lines.get(word.text);
      if (line !== undefined) {
        const read = this.#line(line, item);
        if (read === undefined) (unread ??= []).push(word.text);
        else if (line.many) {
          const list = row[line.place] as unknown[];
          if (list.length === 0) row[line.place] = [read];
          else list.push(read);
        } else if (row[line.place] === undefined) row[line.place] = read;
        else this.#repeated(item, (row[line.place] as { line: Statement }).line, line.word);
        continue;
      }
      const block = reader.blocks.get(word.text);
      if (block !== undefined) {
        if (item.body === undefined) this.#problem('block-without-body', item, { word: word.text });
        else {
          const list = nested[block.word] as Entity[];
          if (block.spec.single === true && list[0] !== undefined) this.#repeated(item.word ?? item, list[0].at.word ?? list[0].at, block.word);
          list.push(this.#block(block, item));
        }
      } else if (word.text === 'accept') this.#accept(item, statement);
      else if (word.text === 'expects') this.#expect(item, statement);
      else {
        this.#unknownWord(word, reader.lines.keys(), reader.blocks.keys(), `a ${reader.word}`);
        (unread ??= []).push(word.text);
      }
    }
    return {
      kind: reader.word,
      name: header.name,
      nameAt: header.nameAt,
      title: header.title,
      model: header.model,
      at: statement,
      facts: reader.record(row) as Entity['facts'],
      blocks: nested,
      unread: unread ?? none,
      memo: [],
    };
  }

  #header(reader: BlockReader, statement: Statement): Pick<Entity, 'name' | 'nameAt' | 'title' | 'model'> {
    let nameAt: WordValue | undefined;
    let title: string | undefined;
    let model: WordValue | undefined;
    for (const value of statement.values) {
      if (value.kind === 'word' && nameAt === undefined && reader.spec.named) nameAt = value;
      else if (value.kind === 'text' && title === undefined && reader.spec.title !== undefined) title = value.text;
      else if (value.kind === 'model' && model === undefined && reader.spec.model !== undefined) model = value.name;
      else this.#problem('value-unexpected', value, { found: this.#source(value), word: reader.word, shape: headerShape(reader.word, reader.spec) });
    }
    if (reader.spec.named) {
      if (nameAt === undefined) this.#problem('name-missing', statement.word ?? statement, { word: reader.word, example: reader.spec.example.split('\n')[0] ?? '' });
      else if (!startsWithLetter(nameAt.text)) this.#problem('name-unfit', nameAt, { name: nameAt.text });
    }
    return { name: nameAt?.text ?? '', nameAt, title, model };
  }

  #accept(statement: Statement, within: Statement | undefined): void {
    const fact = this.#line(acceptReader, statement);
    if (fact !== undefined) this.#accepts.push({ fact: fact as unknown as AcceptLine, within });
  }

  #expect(statement: Statement, within: Statement | undefined): void {
    const fact = this.#line(expectsReader, statement);
    if (fact !== undefined) (this.#expects ??= []).push({ fact: fact as unknown as ExpectLine, within });
  }

  /** Reads a line; undefined when something that it needs is missing or wrong, which is then reported. */
  #line(reader: Reader, statement: Statement): Record<string, unknown> | undefined {
    if (statement.body !== undefined) this.#problem('body-unexpected', statement.word ?? statement, { word: reader.word });
    const row = this.#row;
    row[0] = statement;
    for (let i = 0; i < reader.blank.length; i++) row[i + 1] = reader.blank[i];
    let values = statement.values;
    let at = 0;
    let ok = true;
    for (let i = 0; i < reader.slots.length; i++) {
      const one = reader.slots[i] as SlotReader;
      const { slot } = one;
      if (one.kind === 'tolerance') {
        const number = values[at - 1];
        if (number?.kind === 'number' && number.plusMinus !== undefined) {
          const share = this.#tolerance(number);
          if (share !== undefined) row[i + 1] = share;
          else ok = false;
        }
        continue;
      }
      let from = at;
      if (one.after !== undefined) {
        from = keywordAt(values, one.after, at);
        if (from < 0) {
          // A number may have taken the keyword for its unit: `140 by 120 mm`.
          const split = splitAtKeyword(values, one.after, at);
          if (split !== undefined) {
            values = split;
            from = keywordAt(values, one.after, at);
          }
        }
        if (from < 0) {
          if (one.optional) continue;
          this.#missing(reader, statement, slot);
          return undefined;
        }
        if (from !== at) {
          values = moveToFront(values, at, from, reader.keywords);
          from = at;
        }
        from++;
      }
      const value = values[from];
      if (value === undefined || (one.after === undefined && one.optional && !fits(value, slot, reader.keywords))) {
        if (one.optional && one.after === undefined) continue;
        this.#missing(reader, statement, slot);
        return undefined;
      }
      if (one.many) {
        const list: unknown[] = [];
        while (from < values.length) {
          let next = values[from] as Value;
          if (next.kind === 'number' && next.unit !== undefined && reader.keywords.has(next.unit.text) && unitNamed(next.unit.text) === undefined) {
            values = splitAtKeyword(values, next.unit.text, from) ?? values;
            next = values[from] as Value;
          }
          if (next.kind === 'comma') {
            from++;
            continue;
          }
          if (next.kind === 'word' && reader.keywords.has(next.text)) break;
          const read = quickly(one, next) ?? this.#slot(reader, slot, next);
          if (read === undefined) ok = false;
          else list.push(read);
          from++;
        }
        row[i + 1] = list;
        at = from;
        continue;
      }
      const quick = quickly(one, value);
      if (quick !== undefined) {
        row[i + 1] = quick;
        at = from + 1;
        continue;
      }
      if (value.kind === 'number' && value.unit !== undefined && reader.keywords.has(value.unit.text) && unitNamed(value.unit.text) === undefined)
        values = splitAtKeyword(values, value.unit.text, from) ?? values;
      const read = this.#slot(reader, slot, values[from] as Value);
      if (read === undefined) ok = false;
      else row[i + 1] = read;
      // A tolerance that nothing here reads must not pass for one that was heeded.
      if (ok && value.kind === 'number' && value.plusMinus !== undefined && reader.slots[i + 1]?.kind !== 'tolerance')
        ok = this.#problem('value-unexpected', value.plusMinus, { found: '± ' + this.#source(value.plusMinus), word: reader.word, shape: lineShape(reader.word, reader.spec) }) ?? false;
      at = from + 1;
    }
    // A value that did not fit has been reported; what stands behind it often belongs to the same slip.
    if (!ok) return undefined;
    if (at < values.length) this.#leftOver(reader, values, at);
    return reader.record(row);
  }

  #leftOver(reader: Reader, values: readonly Value[], at: number): void {
    const rest = values[at] as Value;
    // Values may have been moved to the order of the slots, so the last one need not stand last in the text.
    const end = Math.max(rest.end, (values[values.length - 1] as Value).end);
    this.#problem('value-unexpected', { start: rest.start, end }, { found: this.#tree.text.slice(rest.start, end), word: reader.word, shape: lineShape(reader.word, reader.spec) });
  }

  /** One value by its slot; undefined when it does not fit, which is then reported. */
  #slot(reader: Reader, slot: Slot, value: Value): unknown {
    switch (slot.kind) {
      case 'quantity':
        return this.#quantity(reader, slot, value);
      case 'count':
        if (value.kind === 'number' && value.unit === undefined && value.upTo === undefined && value.plusMinus === undefined) {
          const number = numberOf(value);
          if (Number.isInteger(number) && number >= slot.min && number <= slot.max) return number;
          return this.#problem('value-out-of-range', value, { word: reader.word, found: this.#source(value), least: String(slot.min), most: String(slot.max), what: 'a whole number' });
        }
        break;
      case 'range':
        if (value.kind === 'number' && value.upTo !== undefined) return this.#range(reader, slot, value, value.upTo);
        break;
      case 'choice':
        if (value.kind === 'word') {
          if (Object.hasOwn(slot.options, value.text)) return value.text;
          return this.#problem('choice-unknown', value, { word: reader.word, found: value.text, choices: Object.keys(slot.options).join(', '), meant: nearest(value.text, Object.keys(slot.options)) ?? '' });
        }
        break;
      case 'name':
      case 'ref':
        if (value.kind === 'word') return value;
        break;
      case 'text':
        if (value.kind === 'text') return value.text;
        break;
      case 'date':
        if (value.kind === 'date') {
          if (isDate(value.text)) return value.text;
          return this.#problem('date-impossible', value, { found: value.text });
        }
        break;
      case 'tolerance':
        break;
    }
    return this.#problem('value-unfit', value, { word: reader.word, found: this.#source(value), wanted: slotInWords(slot), shape: lineShape(reader.word, reader.spec) });
  }

  #quantity(reader: Reader, slot: QuantitySlot, value: Value): number | undefined {
    if (value.kind !== 'number' || value.upTo !== undefined)
      return this.#problem('value-unfit', value, { word: reader.word, found: this.#source(value), wanted: slotInWords(slot), shape: lineShape(reader.word, reader.spec) });
    const amount = numberOf(value);
    if (value.unit === undefined) {
      if (this.#tree.text.charAt(value.end) === ',' && /^,\d/.test(this.#tree.text.slice(value.end, value.end + 2)))
        return this.#problem('decimal-comma', { start: value.start, end: value.end + 1 }, { word: reader.word });
      return this.#problem('unit-missing', value, { word: reader.word, found: value.text, dimension: slot.dimension, unit: likelyUnit(slot, amount)?.name ?? '', units: namesOf(slot.dimension) });
    }
    const unit = unitNamed(value.unit.text);
    if (unit === undefined)
      return this.#problem('unit-unknown', value.unit, { word: reader.word, found: value.unit.text, dimension: slot.dimension, units: namesOf(slot.dimension), meant: nearestUnit(value.unit.text, slot.dimension) ?? '' });
    if (unit.dimension !== slot.dimension)
      return this.#problem('unit-wrong', value.unit, { word: reader.word, found: value.unit.text, measures: unit.dimension, dimension: slot.dimension, units: namesOf(slot.dimension) });
    const si = unit.toSi(amount);
    // The limits carry no rounding of their own, so a hair is allowed for that of the conversion.
    const hair = 1e-9 * Math.max(Math.abs(slot.min), Math.abs(slot.max));
    if (!(si >= slot.min - hair && si <= slot.max + hair))
      return this.#problem('value-out-of-range', value, { word: reader.word, found: this.#source(value), least: inUnit(slot.min, unit), most: inUnit(slot.max, unit), what: slot.doc });
    return si;
  }

  #range(reader: Reader, slot: RangeSlot, low: NumberValue, high: NumberValue): Range | undefined {
    const highUnit = high.unit === undefined ? undefined : unitNamed(high.unit.text);
    const lowUnit = low.unit === undefined ? highUnit : unitNamed(low.unit.text);
    if (highUnit === undefined || lowUnit === undefined || lowUnit.dimension !== highUnit.dimension || !slot.dimensions.includes(highUnit.dimension)) {
      const units = slot.dimensions.map(namesOf).join(', ');
      const unit = high.unit ?? low.unit;
      if (unit === undefined) return this.#problem('unit-missing', low, { word: reader.word, found: this.#source(low), dimension: slot.dimensions.join(' or '), unit: '', units });
      return this.#problem('unit-wrong', unit, { word: reader.word, found: unit.text, measures: unitNamed(unit.text)?.dimension ?? 'nothing known here', dimension: slot.dimensions.join(' or '), units });
    }
    const range = { low: lowUnit.toSi(numberOf(low)), high: highUnit.toSi(numberOf(high)), dimension: highUnit.dimension };
    if (!(range.low < range.high) || !Number.isFinite(range.high))
      return this.#problem('value-out-of-range', low, { word: reader.word, found: this.#source(low), least: '', most: '', what: 'a range runs from its smaller to its greater end' });
    return range;
  }

  #tolerance(value: NumberValue): number | undefined {
    const given = value.plusMinus as NumberValue;
    const amount = numberOf(given);
    const unit = given.unit === undefined ? undefined : unitNamed(given.unit.text);
    if (unit === undefined) return this.#problem('unit-missing', given, { word: '±', found: given.text, dimension: 'ratio', unit: '%', units: '%' });
    if (unit.dimension === 'ratio' && amount >= 0 && amount < 100) return unit.toSi(amount);
    return this.#problem('unit-wrong', given, { word: '±', found: this.#source(given), measures: unit.dimension, dimension: 'ratio', units: '%' });
  }

  #missing(reader: Reader, statement: Statement, slot: Slot): void {
    const at = statement.values[statement.values.length - 1] ?? statement.word ?? statement;
    // What stands in place of the missing part was already reported as part of the shape.
    this.#problem('value-missing', at, { word: reader.word, wanted: (slot.after === undefined ? '' : `“${slot.after}” and `) + slotInWords(slot), shape: lineShape(reader.word, reader.spec), example: reader.spec.example });
  }

  #unknownWord(word: WordValue, lines: Iterable<string>, nested: Iterable<string>, where: string): void {
    const known = [...lines, ...nested];
    const key = where + '\n' + word.text;
    let guess = this.#guesses.get(key);
    if (guess === undefined) {
      // A file in ruins is not mended by more guesses, and each costs some microseconds.
      guess = this.#guesses.size < mostGuesses ? { meant: nearest(word.text, known) ?? '', elsewhere: placesOf(word.text) } : { meant: '', elsewhere: '' };
      if (this.#guesses.size < mostGuesses) this.#guesses.set(key, guess);
    }
    this.#problem('word-unknown', word, { word: word.text, where, meant: guess.meant, elsewhere: guess.elsewhere, known: known.join(', ') });
  }

  #repeated(at: { start: number; end: number }, first: { start: number; end: number }, word: string): void {
    this.#problems.push({ kind: 'fact-repeated', start: at.start, end: at.end, detail: { word }, related: [{ start: first.start, end: first.end, note: 'it stands here first' }] });
  }

  #problem(kind: string, at: { start: number; end: number }, detail: Record<string, string>): undefined {
    this.#problems.push({ kind, start: at.start, end: at.end, detail });
    return undefined;
  }

  #source(value: { start: number; end: number }): string {
    return this.#tree.text.slice(value.start, value.end);
  }
}


/** The value of a slot in the plain case: a word that fits, or a number with a unit inside the limits. */
function quickly(one: SlotReader, value: Value): unknown {
  if (value.kind === 'word') return one.kind === 'ref' ? value : one.options.get(value.text);
  if (value.kind !== 'number' || one.kind !== 'quantity' || value.unit === undefined || value.upTo !== undefined || value.plusMinus !== undefined) return undefined;
  const si = one.units.get(value.unit.text)?.toSi(numberOf(value));
  return si !== undefined && si >= one.low && si <= one.high ? si : undefined;
}

const letter = /^\p{L}/u;
const startsWithLetter = (text: string): boolean => {
  const code = text.charCodeAt(0) | 32;
  return (code >= 97 && code <= 122) || letter.test(text);
};

/** Most digits of which a whole number holds each one, whatever they are. */
const mostDigits = 15;

/** What a number says. Plain ones are put together here: whole digits over a power of ten is rounded once, as `Number` does, and quicker. */
function numberOf({ text }: NumberValue): number {
  let whole = 0;
  let under = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 46) under = 1;
    else if (code < 48 || code > 57 || text.length > mostDigits) return Number(text.charCodeAt(0) === 0x2212 ? '-' + text.slice(1) : text);
    else {
      whole = whole * 10 + code - 48;
      under *= 10;
    }
  }
  return under === 0 ? whole : whole / under;
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
    if (value.kind === 'number' && value.unit?.text === keyword && value.plusMinus === undefined && value.upTo === undefined)
      return [...values.slice(0, i), { ...value, unit: undefined, end: value.start + value.text.length }, value.unit, ...values.slice(i + 1)];
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
      return value.kind === 'word';
    case 'text':
      return value.kind === 'text';
    case 'date':
      return value.kind === 'date';
    case 'tolerance':
      return false;
  }
}

/** A day that exists, of a year in which a gate could have been built. */
const isDate = (text: string): boolean => text >= '1900' && dayNumber(text) !== undefined;

/** The unit in which a bare number would make sense here: the most usual one that lands inside the limits. */
export function likelyUnit(slot: QuantitySlot, amount: number): Unit | undefined {
  return unitsOf(slot.dimension).find((unit) => {
    const si = unit.toSi(amount);
    return si >= slot.min && si <= slot.max;
  });
}

const namesOf = (dimension: Dimension): string => unitsOf(dimension).map((unit) => unit.name).join(', ');

function nearestUnit(found: string, dimension: Dimension): string | undefined {
  const same = unitsOf(dimension);
  const lower = found.toLowerCase();
  const spelt = same.find((unit) => [unit.name, ...unit.also].some((name) => name.toLowerCase() === lower));
  return spelt?.name ?? (habits[lower] !== undefined && unitNamed(habits[lower])?.dimension === dimension ? habits[lower] : undefined) ?? same.find((unit) => unit.says === lower || unit.says === lower + 's')?.name ?? nearest(found, same.flatMap((unit) => (unit.name.length > 2 ? [unit.name] : [])));
}

/** Spellings that people use and that are not units here, with the unit that is meant. */
const habits: Readonly<Record<string, string>> = {
  metre: 'm', meter: 'm', metres: 'm', meters: 'm', mtr: 'm', '"': 'in', kgs: 'kg', kilo: 'kg', secs: 's', seconds: 's', second: 's', mins: 'min', minutes: 'min',
  hr: 'h', hrs: 'h', hours: 'h', degree: 'deg', degrees: 'deg', percent: '%', pct: '%', kph: 'km/h', kmh: 'km/h', volt: 'V', volts: 'V', amp: 'A', amps: 'A',
  k: 'kohm', r: 'ohm', sqmm: 'mm2', newton: 'N', newtons: 'N', nm: 'N·m', fps: 'ft/s', inches: 'in', feet: 'ft', foot: 'ft',
};

const inUnit = (si: number, unit: Unit): string => `${Number(unit.fromSi(si).toPrecision(6))} ${unit.name}`;

/** The blocks in which a word is at home, for a word that stands in the wrong place. */
function placesOf(word: string): string {
  const places: string[] = [];
  const look = (name: string, spec: BlockSpec): void => {
    if (Object.hasOwn(spec.lines, word) || Object.hasOwn(spec.blocks, word)) places.push(name);
    for (const [key, block] of Object.entries(spec.blocks)) look(key, block);
  };
  for (const [name, spec] of Object.entries(blocks)) look(name, spec);
  if (Object.hasOwn(topLines, word) || Object.hasOwn(blocks, word)) places.push('the file itself, outside all blocks');
  return places.join(', ');
}

/** What a slot takes, in words. */
export function slotInWords(slot: Slot): string {
  switch (slot.kind) {
    case 'quantity':
      return `${article(slot.dimension)} (${namesOf(slot.dimension)})`;
    case 'tolerance':
      return 'a tolerance (± 5 %)';
    case 'range':
      return `a range such as “2 s .. 120 s”`;
    case 'count':
      return 'a whole number';
    case 'choice':
      return `one of ${Object.keys(slot.options).join(', ')}`;
    case 'name':
      return 'a name';
    case 'ref':
      return slot.to === 'option' || slot.to === 'selector' || slot.to === 'terminal' || slot.to === 'rule' ? `the name of ${article(slot.to)}` : `the name of ${article(slot.to)} of this file`;
    case 'text':
      return 'a text in double quotes';
    case 'date':
      return 'a date (YYYY-MM-DD)';
  }
}

const article = (word: string): string => (/^[aeiou]/.test(word) ? 'an ' : 'a ') + word;

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
  return [word, spec.named ? 'NAME' : '', spec.model === undefined ? '' : ': MODEL', spec.title === true ? '["…"]' : '', '{ … }'].filter((part) => part !== '').join(' ');
}
