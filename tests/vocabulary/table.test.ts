// The vocabulary table holds what it promises: every example reads, every text is a sentence, every limit has a sense.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import {
  anywhereLines,
  type BlockSpec,
  blocks,
  type Entity,
  editDistance,
  headerShape,
  type LineSpec,
  likelyUnit,
  lineShape,
  modelKinds,
  nearest,
  type QuantitySlot,
  type Reading,
  readFile,
  type Slot,
  slotInWords,
  topLines,
  unitNamed,
} from '../../server/vocabulary/index.ts';
import { blockOf, lineOf } from '../grammar/arbitrary.ts';

interface Place {
  /** The words of the blocks around it, outermost first. */
  readonly path: readonly string[];
}
interface LinePlace extends Place {
  readonly word: string;
  readonly spec: LineSpec;
}
interface BlockPlace extends Place {
  readonly word: string;
  readonly spec: BlockSpec;
}

const allBlocks: BlockPlace[] = [];
const allLines: LinePlace[] = [];
const collect = (path: readonly string[], word: string, spec: BlockSpec): void => {
  allBlocks.push({ path, word, spec });
  for (const [key, line] of Object.entries(spec.lines)) allLines.push({ path: [...path, word], word: key, spec: line });
  for (const [key, block] of Object.entries(spec.blocks)) collect([...path, word], key, block);
};
for (const [word, spec] of Object.entries(blocks)) collect([], word, spec);
for (const [word, spec] of Object.entries({ ...topLines, ...anywhereLines })) allLines.push({ path: [], word, spec });

/** A file that holds the text, with the blocks around it that it needs. */
function fileWith(path: readonly string[], text: string): string {
  let out = text;
  let spec: BlockSpec | undefined;
  const headers = path.map((word) => {
    spec = spec === undefined ? (blocks as Readonly<Record<string, BlockSpec>>)[word] : spec.blocks[word];
    return spec?.named === true ? `${word} around` : word;
  });
  for (const header of headers.reverse()) out = `${header} {\n${out}\n}`;
  return (text.startsWith('language') ? '' : 'language 1\n') + out + '\n';
}

const problemsOf = (text: string): string[] =>
  readFile(parse(text)).problems.map((problem) => `${problem.kind}: ${text.slice(problem.start, problem.end)}`);

describe.each(allLines.map((line) => [[...line.path, line.word].join(' › '), line] as const))('%s', (_, { path, word, spec }) => {
  test('its example is a line of its own word that reads without problems', () => {
    expect(spec.example.split(' ')[0]).toBe(word);
    expect(problemsOf(fileWith(path, spec.example))).toEqual([]);
    expect(print(parse(spec.example + '\n')), 'the example is in canonical form').toBe(spec.example + '\n');
  });
  // Only one version of the language is known, so its line is not one to be random in.
  if (word !== 'language')
    test('random lines of its shape read without problems, parts with a keyword in any order', () => {
      fc.assert(
        fc.property(lineOf(word, spec), ({ tokens }) => void expect(problemsOf(fileWith(path, tokens.join(' ')))).toEqual([])),
        { numRuns: 60 },
      );
    });
  test('its texts are sentences and its words are plain', () => {
    expect(word).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    for (const text of [spec.doc, ...Object.values<Slot>(spec.slots).map((slot) => slot.doc)]) expect(text).toMatch(/^[A-Z0-9“±].*[^.]\.$/);
    for (const slot of Object.values<Slot>(spec.slots)) {
      if (slot.after !== undefined) expect(slot.after).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
      if (slot.kind !== 'choice') continue;
      expect(Object.keys(slot.options).length).toBeGreaterThan(1);
      for (const [option, meaning] of Object.entries(slot.options)) {
        expect(option).toMatch(/^[A-Za-z][A-Za-z0-9]*(-[a-z0-9]+)*$/);
        expect(meaning.trim(), option).not.toBe('');
        expect(meaning, option).not.toMatch(/\.$/);
      }
    }
    if (spec.source !== undefined) expect(spec.source.trim()).not.toBe('');
  });
  test('its limits and defaults have a sense', () => {
    for (const [key, slot] of Object.entries<Slot>(spec.slots)) {
      if (slot.kind === 'quantity' || slot.kind === 'count') expect(slot.min, key).toBeLessThan(slot.max);
      if (slot.kind === 'quantity') {
        expect(Number.isFinite(slot.min) && Number.isFinite(slot.max)).toBe(true);
        if (slot.fallback !== undefined) expect(slot.fallback >= slot.min && slot.fallback <= slot.max, key).toBe(true);
      }
      if (slot.kind === 'choice' && slot.fallback !== undefined) expect(Object.keys(slot.options)).toContain(slot.fallback);
      if (slot.kind === 'tolerance')
        expect(Object.values<Slot>(spec.slots)[Object.keys(spec.slots).indexOf(key) - 1]?.kind).toBe('quantity');
    }
    const keywords = Object.values<Slot>(spec.slots).flatMap((slot) => (slot.after === undefined ? [] : [slot.after]));
    expect(new Set(keywords).size).toBe(keywords.length);
    // A slot that takes many values without a keyword behind it would swallow what follows.
    const plain = Object.values<Slot>(spec.slots).filter((slot) => slot.after === undefined);
    plain.slice(0, -1).forEach((slot) => expect(slot.many).not.toBe(true));
  });
  test('it can be said in words', () => {
    expect(lineShape(word, spec).startsWith(word)).toBe(true);
    for (const slot of Object.values<Slot>(spec.slots)) expect(slotInWords(slot)).not.toBe('');
  });
});

describe.each(allBlocks.map((block) => [[...block.path, block.word].join(' › '), block] as const))(
  'block %s',
  (_, { path, word, spec }) => {
    test('its example is a whole block that reads without problems', () => {
      expect(spec.example.split(/[ {]/)[0]).toBe(word);
      expect(problemsOf(fileWith(path, spec.example))).toEqual([]);
      expect(print(parse(spec.example + '\n'))).toBe(spec.example + '\n');
    });
    test('its example holds every line that it must have', () => {
      const items = parse(spec.example).items[0]?.body?.items.map((item) => item.word?.text) ?? [];
      for (const [key, line] of Object.entries(spec.lines)) if (line.required === true) expect(items).toContain(key);
    });
    test('random blocks of its shape read without problems', () => {
      fc.assert(
        fc.property(blockOf(word, spec), (node) => {
          const text = (function textOf(of: typeof node): string {
            return of.tokens.join(' ') + (of.items === undefined ? '' : ` {\n${of.items.map(textOf).join('\n')}\n}`);
          })(node);
          expect(problemsOf(fileWith(path, text))).toEqual([]);
        }),
        { numRuns: 60 },
      );
    });
    test('its texts are sentences', () => {
      expect(word).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(spec.doc).toMatch(/^[A-Z].*[^.]\.$/);
      expect(headerShape(word, spec).startsWith(word)).toBe(true);
    });
  },
);

test('no word is a line and a block of the same block', () => {
  for (const { spec } of allBlocks) for (const word of Object.keys(spec.lines)) expect(Object.keys(spec.blocks)).not.toContain(word);
  for (const word of Object.keys(topLines)) expect(Object.keys(blocks)).not.toContain(word);
});

test('no keyword is also a unit that a number of its line could take', () => {
  for (const { word, spec } of allLines) {
    const slots = Object.values<Slot>(spec.slots);
    const measured = slots.flatMap((slot) => (slot.kind === 'quantity' ? [slot.dimension] : slot.kind === 'range' ? slot.dimensions : []));
    for (const slot of slots)
      if (slot.after !== undefined) expect(measured, `${slot.after} in ${word}`).not.toContain(unitNamed(slot.after)?.dimension);
  }
});

describe('what is read', () => {
  const read = (text: string): Reading => readFile(parse('language 1\n' + text));
  const one = (text: string): Entity => {
    const reading = read(text);
    expect(reading.problems).toEqual([]);
    return Object.values(reading.entities).flat()[0] as Entity;
  };
  const fact = (text: string, word: string): Record<string, unknown> => one(text).facts[word] as unknown as Record<string, unknown>;

  test('parts with a keyword stand in any order', () => {
    for (const line of [
      'closes onto east overlap 40 mm gap 10 mm',
      'closes gap 10 mm onto east overlap 40 mm',
      'closes overlap 40 mm gap 10 mm onto east',
    ])
      expect(fact(`leaf a {\n ${line}\n}`, 'closes')).toMatchObject({ onto: { text: 'east' }, overlap: 0.04, gap: 0.01 });
    const accepts = read('accept a until 2027-01-31 by "KL" because "b"').accepts[0]?.fact;
    expect(accepts).toMatchObject({ rule: { text: 'a' }, reason: 'b', initials: 'KL', until: '2027-01-31' });
  });
  test('a keyword right behind a number is not its unit', () => {
    const text = 'language 1\ndrive a {\n  post-bracket 140 by 120 mm\n}\n';
    expect(problemsOf(text)).toEqual(['unit-missing: 140']);
    expect(fact('drive a {\n post-bracket 140 mm by 120 mm\n}', 'post-bracket')).toMatchObject({ along: 0.14, out: 0.12 });
    expect(fact('drive a {\n post-bracket -140 mm by \u2212120 mm\n}', 'post-bracket')).toMatchObject({ along: -0.14, out: -0.12 });
  });
  test('one unit behind a range holds for both ends', () => {
    for (const line of ['range 2 s .. 120 s', 'range 2 .. 120 s', 'range 2..120 s', 'range 2000 ms .. 2 min'])
      expect(
        (one(`panel-model p {\n adjuster x {\n  ${line}\n }\n}`).blocks as Record<string, Entity[]>)['adjuster']?.[0]?.facts,
      ).toMatchObject({
        range: { value: { low: 2, high: 120, dimension: 'time' } },
      });
  });
  test('a tolerance, a default and a list', () => {
    expect(fact('sensor a {\n terminator 8.2 kohm\n}', 'terminator')).toMatchObject({ value: 8200, tolerance: 0.05 });
    expect(fact('sensor a {\n terminator 8.2 kΩ ± 1 %\n}', 'terminator')).toMatchObject({ value: 8200, tolerance: 0.01 });
    expect(fact('sensor a {\n terminator 8.2kohm +- 1%\n}', 'terminator')).toMatchObject({ value: 8200, tolerance: 0.01 });
    for (const list of ['closing, opening', 'closing opening', 'closing,opening'])
      expect(fact(`sensor a {\n watches ${list}\n}`, 'watches')).toMatchObject({ movements: ['closing', 'opening'] });
  });
  test('an acceptance knows the block that it stands in', () => {
    const reading = read('accept a because "b" until 2027-01-31\nleaf x {\n  accept c because "d" until 2027-01-31\n}');
    expect(reading.accepts.map((accept) => [accept.fact.rule.text, accept.within?.word?.text])).toEqual([
      ['a', undefined],
      ['c', 'leaf'],
    ]);
  });
});

describe('what cannot be read is told, and the rest stands', () => {
  const cases: readonly (readonly [kind: string, line: string, at: string, detail?: object])[] = [
    ['unit-missing', 'leaf a {\n  width 2100\n}', '2100', { unit: 'mm', dimensions: ['length'] }],
    ['unit-missing', 'leaf a {\n  mass 165\n}', '165', { unit: 'kg' }],
    ['unit-missing', 'leaf a {\n  width 2.1\n}', '2.1', { unit: 'm' }],
    ['unit-missing', 'leaf a {\n  opens inward 95\n}', '95', { unit: 'deg' }],
    ['unit-missing', 'motion {\n  dwell 25\n}', '25', { unit: 's' }],
    ['unit-missing', 'sensor a {\n  terminator 8.2\n}', '8.2', { unit: 'kohm' }],
    ['unit-missing', 'sensor a {\n  terminator 8200\n}', '8200', { unit: 'ohm' }],
    ['unit-missing', 'sensor a {\n  terminator 8.2 kohm ± 5\n}', '5', { unit: '%' }],
    ['unit-missing', 'panel-model p {\n  adjuster a {\n    range 2 .. 120\n  }\n}', '2 .. 120'],
    ['unit-unknown', 'leaf a {\n  width 2100 MM\n}', 'MM', { meant: 'mm' }],
    ['unit-unknown', 'leaf a {\n  width 2 metres\n}', 'metres', { meant: 'm' }],
    ['unit-unknown', 'leaf a {\n  mass 165 kgs\n}', 'kgs', { meant: 'kg' }],
    ['unit-unknown', 'leaf a {\n  width 2 parsec\n}', 'parsec'],
    ['unit-wrong', 'leaf a {\n  width 2 kg\n}', 'kg', { measures: 'mass', dimensions: ['length'] }],
    ['unit-wrong', 'sensor a {\n  terminator 8.2 kohm ± 5 mm\n}', '5 mm'],
    ['unit-wrong', 'panel-model p {\n  adjuster a {\n    range 2 m .. 3 m\n  }\n}', 'm'],
    ['unit-wrong', 'panel-model p {\n  adjuster a {\n    range 2 % .. 3 s\n  }\n}', 's'],
    ['decimal-comma', 'leaf a {\n  width 2,1 m\n}', '2,'],
    ['value-out-of-range', 'leaf a {\n  width 21 m\n}', '21 m', { limits: { of: 'quantity', least: 0.3, most: 20, amount: 21 } }],
    [
      'value-out-of-range',
      'leaf a {\n  width 21000 mm\n}',
      '21000 mm',
      { limits: { of: 'quantity', least: 0.3, most: 20, amount: 21_000 } },
    ],
    ['value-out-of-range', 'leaf a {\n  mass -5 kg\n}', '-5 kg'],
    ['value-out-of-range', 'panel-model p {\n  leaves 1.5\n}', '1.5'],
    ['value-out-of-range', 'panel-model p {\n  adjuster a {\n    range 120 s .. 2 s\n  }\n}', '120 s .. 2 s'],
    ['value-unfit', 'leaf a {\n  width wide\n}', 'wide'],
    ['value-unfit', 'leaf a {\n  width 2 m .. 3 m\n}', '2 m .. 3 m'],
    ['value-unfit', 'leaf a {\n  width "2 m"\n}', '"2 m"'],
    ['value-unfit', 'panel-model p {\n  leaves 2 m\n}', '2 m'],
    ['value-unfit', 'site {\n  rules 5\n}', '5'],
    ['value-missing', 'leaf a {\n  width\n}', 'width'],
    ['value-missing', 'leaf a {\n  opens inward\n}', 'inward'],
    ['value-missing', 'leaf a {\n  closes east\n}', 'east'],
    ['value-missing', 'accept a because "b"', '"b"'],
    ['value-unexpected', 'leaf a {\n  width 2 m 3 m\n}', '3 m'],
    ['value-unexpected', 'leaf a b {\n}', 'b'],
    ['value-unexpected', 'leaf a : b {\n}', ': b'],
    ['choice-unknown', 'site {\n  rules eurpe\n}', 'eurpe', { meant: 'europe' }],
    ['choice-unknown', 'sensor a {\n  watches closing, openin\n}', 'openin', { meant: 'opening' }],
    ['date-impossible', 'accept a because "b" until 2027-02-29', '2027-02-29'],
    ['word-unknown', 'leaf a {\n  widht 2 m\n}', 'widht', { meant: 'width' }],
    ['word-unknown', 'leef a {\n}', 'leef', { meant: 'leaf' }],
    ['word-unknown', 'leaf a {\n  dwell 25 s\n}', 'dwell'],
    ['word-unknown', 'leaf a {\n  constructor 25 s\n}', 'constructor'],
    ['block-without-body', 'leaf a', 'leaf a'],
    ['body-unexpected', 'leaf a {\n  width 2 m {\n  }\n}', 'width'],
    ['name-missing', 'leaf {\n}', 'leaf'],
    ['name-unfit', 'leaf -a {\n}', '-a'],
    ['fact-repeated', 'leaf a {\n  width 2 m\n  width 3 m\n}', 'width 3 m'],
    ['fact-repeated', 'site {\n}\nsite {\n}', 'site'],
  ];
  test.each(cases)('%s: %j', (kind, line, at, detail) => {
    const text = 'language 1\n' + line + '\n';
    const problems = readFile(parse(text)).problems;
    expect(problems.map((problem) => [problem.kind, text.slice(problem.start, problem.end)])).toEqual([[kind, at]]);
    if (detail !== undefined) expect(problems[0]?.detail).toMatchObject(detail as object);
  });

  test('the version of the language', () => {
    const kinds = (text: string): string[] => readFile(parse(text)).problems.map((problem) => problem.kind);
    expect(kinds('')).toEqual(['file-empty']);
    expect(kinds('leaf a {\n}\n')).toEqual(['language-missing']);
    expect(kinds('language 2\n')).toEqual(['language-unknown']);
    expect(kinds('leaf a {\n}\nlanguage 1\n')).toEqual(['language-not-first']);
    expect(kinds('language 1\nlanguage 1\n')).toEqual(['fact-repeated']);
  });

  test('a wrong line is left out, and the block remembers that it was there', () => {
    const reading = readFile(parse('language 1\nleaf a {\n  width 21 m\n  mass 165 kg\n}\n'));
    const leaf = reading.entities.leaf[0];
    expect(leaf?.facts.width).toBeUndefined();
    expect(leaf?.facts.mass?.value).toBe(165);
    expect(leaf?.unread).toEqual(['width']);
  });
});

describe('the likely unit of a bare number', () => {
  const slot = (min: number, max: number, dimension: QuantitySlot['dimension']): QuantitySlot => ({
    kind: 'quantity',
    doc: '',
    dimension,
    min,
    max,
  });
  const cases: readonly (readonly [amount: number, slot: QuantitySlot, unit: string | undefined])[] = [
    [2100, slot(0.3, 20, 'length'), 'mm'],
    [2.1, slot(0.3, 20, 'length'), 'm'],
    [165, slot(5, 5000, 'mass'), 'kg'],
    [25, slot(0, 3600, 'time'), 's'],
    [90, slot(0.05, 1, 'ratio'), '%'],
    [14, slot(0.05e-6, 50e-6, 'area'), 'mm2'],
    [95, slot((10 * Math.PI) / 180, Math.PI, 'angle'), 'deg'],
    [1e9, slot(0.3, 20, 'length'), undefined],
  ];
  test.each(cases)('%f', (amount, of, unit) => void expect(likelyUnit(of, amount)?.name).toBe(unit));
});

describe('the nearest word', () => {
  test('the distance is that of Damerau and Levenshtein without edits between a swap (checked against the plain recursion)', () => {
    const plain = (a: string, b: string): number => {
      if (a === '' || b === '') return a.length + b.length;
      const cost = a.at(-1) === b.at(-1) ? 0 : 1;
      let least = Math.min(plain(a.slice(0, -1), b) + 1, plain(a, b.slice(0, -1)) + 1, plain(a.slice(0, -1), b.slice(0, -1)) + cost);
      if (a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1))
        least = Math.min(least, plain(a.slice(0, -2), b.slice(0, -2)) + 1);
      return least;
    };
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 5 });
    fc.assert(fc.property(word, word, (a, b) => void expect(editDistance(a, b, 20)).toBe(plain(a, b))));
    fc.assert(
      fc.property(
        word,
        word,
        fc.integer({ min: 0, max: 4 }),
        (a, b, limit) => void expect(Math.min(editDistance(a, b, limit), limit + 1)).toBe(Math.min(plain(a, b), limit + 1)),
      ),
    );
  });
  test('what is too far is nobody', () => {
    expect(nearest('widht', ['width', 'height'])).toBe('width');
    expect(nearest('Width', ['width'])).toBe('width');
    expect(nearest('zebra', ['width', 'height'])).toBeUndefined();
    expect(nearest('', ['width'])).toBeUndefined();
  });
});

test('every block that is one of a model says of which, and there are such models', () => {
  for (const { word, spec } of allBlocks) if (spec.model !== undefined) expect(modelKinds, word).toContain(spec.model);
});
