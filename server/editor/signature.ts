// What a line takes, value by value, while it is written: each with its limits, and which one comes next.

import type { Analysis } from '../engine/index.ts';
import { type BlockSpec, headerShape, type LineSpec, lineShape, type Slot } from '../vocabulary/index.ts';
import { blockDoc, slotDoc } from './hover.ts';
import { escape } from './markdown.ts';
import { blockSpecOf, blocksAround, innermost, lineSpecOf, partsOf } from './places.ts';
import { statementBefore } from './typed.ts';

export interface Parameter {
  /** Its stretch of the label. */
  readonly start: number;
  readonly end: number;
  /** Markdown. */
  readonly doc: string;
}
export interface Signature {
  /** The shape of the line: `closes onto LEAF [overlap LENGTH] [gap LENGTH]`. */
  readonly label: string;
  readonly doc: string;
  readonly parameters: readonly Parameter[];
  /** Index of the parameter that is being written, or that comes next. */
  readonly active: number;
}

/** The signature of the line or header that is being written at an offset; undefined where nothing more can follow. */
export function signature(analysis: Analysis, offset: number): Signature | undefined {
  const typed = statementBefore(analysis.text, offset);
  const word = typed?.statement.word;
  // The word itself is completed, not explained.
  if (typed === undefined || word === undefined || (typed.isTyping && typed.statement.values.length === 0 && typed.tail === 'Word'))
    return undefined;
  const { spec, isTop } = innermost(blocksAround(analysis.installation.reading.tree, offset));
  const line = lineSpecOf(spec, isTop, word.text);
  if (line !== undefined) return ofLine(word.text, line, typed);
  const block = blockSpecOf(spec, isTop, word.text);
  return block === undefined ? undefined : ofHeader(word.text, block, typed);
}

type Before = NonNullable<ReturnType<typeof statementBefore>>;

function ofLine(word: string, spec: LineSpec, { statement, isTyping, tail }: Before): Signature | undefined {
  const slots = Object.entries<Slot>(spec.slots);
  if (slots.length === 0) return undefined;
  let label = word;
  const parameters = slots.map(([key, slot]) => {
    // Each slot's own part of the shape, as the shape itself writes it.
    const part = lineShape('', { ...spec, slots: { [key]: slot } });
    label += part;
    return { start: label.length - part.length + 1, end: label.length, doc: slotDoc(slot) };
  });
  const indexOf = (key: string | undefined): number => slots.findIndex(([other]) => other === key);
  const { parts, open, keyed } = partsOf(spec, statement.values);
  const last = parts[parts.length - 1];
  const value = last?.value;
  const wantsUnit =
    last?.role === 'value' &&
    value?.kind === 'number' &&
    value.unit === undefined &&
    (last.slot?.kind === 'quantity' || last.slot?.kind === 'range');
  const isTolerance =
    tail === 'PlusMinus' || (value?.kind === 'number' && value.plusMinus !== undefined && (isTyping || value.plusMinus.unit === undefined));
  const key =
    isTolerance && slots.some(([, slot]) => slot.kind === 'tolerance')
      ? slots.find(([, slot]) => slot.kind === 'tolerance')?.[0]
      : last !== undefined && (isTyping || wantsUnit)
        ? last.key
        : (open[0] ?? keyed[0])?.[0];
  const active = indexOf(key ?? (isTyping ? (open[0] ?? keyed[0])?.[0] : undefined));
  return active < 0 ? undefined : { label, doc: escape(spec.doc), parameters, active };
}

function ofHeader(word: string, spec: BlockSpec, { statement, isTyping, tail }: Before): Signature | undefined {
  const label = headerShape(word, spec);
  const parts = [
    ...(spec.named ? [{ kind: 'word', shown: 'NAME', doc: 'Its name, by which other lines speak of it.' }] : []),
    ...(spec.model === undefined ? [] : [{ kind: 'model', shown: ': MODEL', doc: `The ${escape(spec.model)} that it is one of.` }]),
    ...(spec.title === true ? [{ kind: 'text', shown: '["…"]', doc: 'What people call it.' }] : []),
  ];
  let from = word.length;
  const parameters = parts.map(({ shown, doc }) => {
    const start = label.indexOf(shown, from);
    from = start + shown.length;
    return { start, end: from, doc };
  });
  const { values } = statement;
  const last = values[values.length - 1];
  const active =
    tail === 'Colon'
      ? parts.findIndex((part) => part.kind === 'model')
      : isTyping && last !== undefined
        ? parts.findIndex((part) => part.kind === last.kind)
        : parts.findIndex((part) => !values.some((value) => value.kind === part.kind));
  return active < 0 || statement.body !== undefined ? undefined : { label, doc: blockDoc(word, spec), parameters, active };
}
