// Random well-formed files, made from the vocabulary table, in any style that people write.
import fc from 'fast-check';
import { withoutUnseen } from '../../grammar/index.ts';
import {
  anywhereLines,
  type BlockSpec,
  blocks,
  type LineSpec,
  type QuantitySlot,
  type Slot,
  unitsOf,
} from '../../server/vocabulary/index.ts';

/** A statement as the words that stand in it, and for a block what stands between its braces. */
export interface Node {
  readonly tokens: readonly string[];
  readonly items: readonly Node[] | undefined;
}

const letters = [...'abcdefghijklmnopqrstuvwxyz'];
const nameOf = fc
  .tuple(fc.constantFrom(...letters, 'Ö', 'ж', '門'), fc.array(fc.constantFrom(...letters, '-', '1', '2', 'é'), { maxLength: 6 }))
  .map(([first, rest]) => first + rest.join('') + 'z');
const textOf = fc
  .string({ unit: 'grapheme', maxLength: 20 })
  .map((text) => '"' + withoutUnseen(text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Cn}\p{Co}]/gu, '')).replace(/["\\]/g, '\\$&') + '"');
const dateOf = fc
  .tuple(fc.integer({ min: 1900, max: 2100 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([y, m, d]) => `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`);

/** A number as people write it: no exponent, no tail of noughts. */
const decimal = (value: number): string => {
  const digits = Math.max(0, Math.min(12, 4 - Math.ceil(Math.log10(Math.abs(value) || 1))));
  const text = value.toFixed(digits);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

function quantityOf(slot: QuantitySlot): fc.Arbitrary<string[]> {
  return fc
    .tuple(fc.constantFrom(...unitsOf(slot.dimension)), fc.double({ min: 0, max: 1, noNaN: true }), fc.nat())
    .map(([unit, share, pick]) => {
      const spellings = [unit.name, ...unit.also].filter((name) => !/^\d/.test(name));
      const spelling = spellings[pick % spellings.length] as string;
      const si = slot.min + share * (slot.max - slot.min);
      const number = decimal(unit.fromSi(si));
      const back = unit.toSi(Number(number));
      if (back >= slot.min && back <= slot.max) return [number, spelling];
      const middle = unitsOf(slot.dimension)[0];
      return middle === undefined ? [number, spelling] : [decimal(middle.fromSi(slot.min + (slot.max - slot.min) / 2)), middle.name];
    });
}

function slotOf(slot: Slot): fc.Arbitrary<string[]> {
  switch (slot.kind) {
    case 'quantity':
      return quantityOf(slot);
    case 'count':
      return fc.integer({ min: slot.min, max: Math.min(slot.max, slot.min + 60) }).map((count) => [String(count)]);
    case 'range':
      return fc
        .tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 51, max: 99 }), fc.constantFrom(...slot.dimensions))
        .map(([low, high, dimension]) => {
          const unit = unitsOf(dimension)[0]?.name ?? '';
          return low % 2 === 0 ? [String(low), unit, '..', String(high), unit] : [String(low), '..', String(high), unit];
        });
    case 'choice':
      return fc.constantFrom(...Object.keys(slot.options)).map((option) => [option]);
    case 'name':
    case 'ref':
      return nameOf.map((name) => [name]);
    case 'text':
      return textOf.map((text) => [text]);
    case 'date':
      return dateOf.map((date) => [date]);
    case 'tolerance':
      return fc.integer({ min: 0, max: 20 }).map((share) => ['±', String(share), '%']);
  }
}

/** A line that reads without problems: optional parts there or not, those with a keyword in any order. */
export function lineOf(word: string, spec: LineSpec): fc.Arbitrary<Node> {
  const slots = Object.values(spec.slots);
  const plain = slots.filter((slot) => slot.after === undefined && slot.kind !== 'tolerance');
  const keyed = slots.filter((slot) => slot.after !== undefined);
  const part = (slot: Slot): fc.Arbitrary<string[]> => {
    const one: fc.Arbitrary<string[]> =
      slot.many === true ? fc.array(slotOf(slot), { minLength: 1, maxLength: 3 }).map((list) => list.flat()) : slotOf(slot);
    // A tolerance stands right behind the quantity that it is of.
    const next = slots[slots.indexOf(slot) + 1];
    const exact: fc.Arbitrary<string[]> =
      next?.kind === 'tolerance' ? fc.tuple(one, fc.option(slotOf(next), { nil: [] as string[] })).map((both) => both.flat()) : one;
    const whole: fc.Arbitrary<string[]> = slot.after === undefined ? exact : exact.map((tokens) => [slot.after as string, ...tokens]);
    return slot.optional === true ? fc.option(whole, { nil: [] as string[] }) : whole;
  };
  return fc
    .tuple(
      fc.tuple(...plain.map(part)),
      fc.tuple(...keyed.map(part)),
      fc.shuffledSubarray(
        keyed.map((_, i) => i),
        { minLength: keyed.length },
      ),
    )
    .map(([first, rest, order]) => ({ tokens: [word, ...first.flat(), ...order.flatMap((i) => rest[i] as string[])], items: undefined }));
}

const acceptOf = lineOf('accept', anywhereLines.accept);

/** A block with some of its lines in any order. */
export function blockOf(word: string, spec: BlockSpec): fc.Arbitrary<Node> {
  const parts: fc.Arbitrary<Node[]>[] = [];
  for (const [key, line] of Object.entries(spec.lines)) {
    const one = lineOf(key, line);
    parts.push(
      line.many === true
        ? fc.array(one, { maxLength: 3 })
        : fc.option(one, { nil: undefined }).map((node) => (node === undefined ? [] : [node])),
    );
  }
  for (const [key, block] of Object.entries(spec.blocks))
    parts.push(fc.array(blockOf(key, block), { maxLength: block.single === true ? 1 : 2 }));
  parts.push(fc.array(acceptOf, { maxLength: 1 }));
  const header = fc
    .tuple(nameOf, nameOf, textOf, fc.boolean(), fc.boolean())
    .map(([name, model, title, withModel, withTitle]) => [
      word,
      ...(spec.named ? [name] : []),
      ...(spec.model !== undefined && withModel ? [':', model] : []),
      ...(spec.title === true && withTitle ? [title] : []),
    ]);
  return fc.tuple(header, fc.tuple(...parts), fc.nat()).map(([tokens, items, seed]) => ({ tokens, items: shuffled(items.flat(), seed) }));
}

function shuffled<T>(list: readonly T[], seed: number): T[] {
  const random = randomOf(seed);
  return list
    .map((item) => [random(), item] as const)
    .sort((a, b) => a[0] - b[0])
    .map(([, item]) => item);
}

/** A whole file: the version, some `use` lines, some blocks. */
export const fileOf: fc.Arbitrary<readonly Node[]> = fc
  .tuple(
    fc.array(textOf, { maxLength: 2 }),
    fc.array(fc.oneof(...Object.entries(blocks).map(([word, spec]) => blockOf(word, spec)), { arbitrary: acceptOf, weight: 2 }), {
      minLength: 2,
      maxLength: 6,
    }),
  )
  .map(([uses, statements]) => [
    { tokens: ['language', '1'], items: undefined },
    ...uses.map((path) => ({ tokens: ['use', path], items: undefined })),
    ...statements.filter(
      (node, i) =>
        (blocks as Readonly<Record<string, BlockSpec>>)[node.tokens[0] ?? '']?.single !== true ||
        statements.findIndex((other) => other.tokens[0] === node.tokens[0]) === i,
    ),
  ]);

/** Numbers from 0 to 1, the same for the same seed. */
export function randomOf(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Style {
  readonly lineEnd: string;
  readonly indent: string;
  readonly brace: 'same line' | 'next line' | 'indented next line';
  /** Comments, blank lines and odd spaces strewn in. */
  readonly noise: boolean;
  readonly seed: number;
}

export const styleOf: fc.Arbitrary<Style> = fc.record({
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  indent: fc.constantFrom('  ', '    ', '\t', ' '),
  brace: fc.constantFrom('same line' as const, 'next line' as const, 'indented next line' as const),
  noise: fc.boolean(),
  seed: fc.nat(),
});

const remarks = ['# a remark', '#', '# { not a block', '# "not a text', '#} no', '# é門 \\', '#\tlast: 5 kg .. 3'];

/** The text of a statement, from its first word to the end of its last line (without the line end). */
export function textOfNode(node: Node, style: Style, depth: number, random: () => number): string {
  const { lineEnd, indent, brace, noise } = style;
  const margin = indent.repeat(depth);
  const blank = (): string => (noise && random() < 0.2 ? ([' ', '  ', '\t', '\u00a0', ' \t '][Math.floor(random() * 5)] ?? ' ') : ' ');
  const remark = (): string => remarks[Math.floor(random() * remarks.length)] ?? '#';
  const behind = (): string => (noise && random() < 0.15 ? blank() + remark() : '') + (noise && random() < 0.1 ? ' ' : '');
  const before = (deep: string): string => {
    let out = '';
    if (!noise) return out;
    while (random() < 0.25) out += (random() < 0.5 ? '' : deep + remark()) + lineEnd;
    return out;
  };
  let out = node.tokens.join('\0').replace(/\0/g, () => blank());
  if (node.items === undefined) return out + behind();
  out += brace === 'same line' ? blank() + '{' : behind() + lineEnd + before(margin) + margin + (brace === 'next line' ? '' : indent) + '{';
  out += behind() + lineEnd;
  for (const item of node.items) out += before(margin + indent) + margin + indent + textOfNode(item, style, depth + 1, random) + lineEnd;
  return out + before(margin + indent) + margin + (brace === 'indented next line' ? indent : '') + '}' + behind();
}

/** The text of a file, and where each statement of it stands. */
export function render(nodes: readonly Node[], style: Style): string {
  const random = randomOf(style.seed);
  let out = '';
  for (const node of nodes) {
    if (style.noise) while (random() < 0.3) out += (random() < 0.5 ? '' : '# between') + style.lineEnd;
    out += textOfNode(node, style, 0, random) + style.lineEnd;
  }
  return out;
}
