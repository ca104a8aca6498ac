// The words made ready for reading: what is asked of every line and value, looked up once and in objects of one shape.

import { records } from './records.ts';
import type { BlockSpec, Entity, LineSpec, Slot } from './spec.ts';
import { type Unit, unitsOf } from './units.ts';
import { blocks } from './words/all.ts';
import { anywhereLines, topLines } from './words/outside.ts';

/** A slot with what the quick path asks of it. All have one shape, whatever the slot: that is what makes reading quick. */
export interface SlotForm {
  readonly key: string;
  readonly slot: Slot;
  readonly kind: Slot['kind'];
  readonly after: string | undefined;
  readonly optional: boolean;
  readonly many: boolean;
  /** One value must stand here, right behind what stands before it. */
  readonly isPlain: boolean;
  /** The words of a choice, by themselves: the table's own text is quicker to compare than a piece of the file. */
  readonly options: ReadonlyMap<string, string>;
  /** The units of a quantity, by each of their spellings. */
  readonly units: ReadonlyMap<string, Unit>;
  readonly low: number;
  readonly high: number;
}

export interface LineForm {
  readonly word: string;
  readonly spec: LineSpec;
  readonly slots: readonly SlotForm[];
  readonly keywords: ReadonlySet<string>;
  readonly many: boolean;
  /** Its place among the lines of its block. */
  readonly place: number;
  /** What the slots hold where nothing is stated. */
  readonly blank: readonly unknown[];
  readonly record: MakeRecord;
}

export interface BlockForm {
  readonly word: string;
  readonly spec: BlockSpec;
  readonly lines: ReadonlyMap<string, LineForm>;
  readonly blocks: ReadonlyMap<string, BlockForm>;
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

export const none: readonly never[] = Object.freeze([]) as readonly never[];
export const noBlocks: Record<string, Entity[]> = Object.freeze({}) as Record<string, Entity[]>;

function slotForm(key: string, slot: Slot): SlotForm {
  const units = slot.kind === 'quantity' ? unitsOf(slot.dimension) : none;
  return {
    key,
    slot,
    kind: slot.kind,
    after: slot.after,
    optional: slot.optional === true,
    many: slot.many === true,
    isPlain: slot.after === undefined && slot.optional !== true && slot.many !== true && slot.kind !== 'tolerance',
    options: new Map(slot.kind === 'choice' ? Object.keys(slot.options).map((option) => [option, option]) : none),
    units: new Map(units.flatMap((unit) => [unit.name, ...unit.also].map((name) => [name, unit] as const))),
    low: slot.kind === 'quantity' ? slot.min : 0,
    high: slot.kind === 'quantity' ? slot.max : 0,
  };
}

function lineForm(word: string, spec: LineSpec, place = 0): LineForm {
  const slots = Object.entries(spec.slots);
  return {
    word,
    spec,
    slots: slots.map(([key, slot]) => slotForm(key, slot)),
    keywords: new Set(slots.flatMap(([, slot]) => (slot.after === undefined ? [] : [slot.after]))),
    many: spec.many === true,
    place,
    blank: slots.map(([, slot]) => ('fallback' in slot ? slot.fallback : undefined)),
    record: recordOf(['line', ...Object.keys(spec.slots)]),
  };
}

function blockForm(word: string, spec: BlockSpec): BlockForm {
  const lines = Object.entries(spec.lines);
  return {
    word,
    spec,
    lines: new Map(lines.map(([key, line], place) => [key, lineForm(key, line, place)])),
    blocks: new Map(Object.entries(spec.blocks).map(([key, block]) => [key, blockForm(key, block)])),
    blank: lines.map(([, line]) => (line.many === true ? none : undefined)),
    record: recordOf(Object.keys(spec.lines)),
  };
}

const byWord = <Spec, Form>(specs: Readonly<Record<string, Spec>>, form: (word: string, spec: Spec) => Form): ReadonlyMap<string, Form> =>
  new Map(Object.entries(specs).map(([word, spec]) => [word, form(word, spec)]));

export const blockForms = byWord<BlockSpec, BlockForm>(blocks, blockForm);
export const topForms = byWord<LineSpec, LineForm>(topLines, (word, spec) => lineForm(word, spec));
export const acceptForm = lineForm('accept', anywhereLines.accept);
export const expectsForm = lineForm('expects', anywhereLines.expects);
