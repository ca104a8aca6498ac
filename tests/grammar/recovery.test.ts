// A mistake in one block leaves what is said of every other block as it was.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../grammar/index.ts';
import { readFile } from '../../server/vocabulary/index.ts';
import { seed } from '../kit/chance.ts';
import { fileOf, type Node, randomOf, type Style, styleOf, textOfNode } from './arbitrary.ts';
import { examples } from './examples.ts';
import { entitiesOf, entityFacts, problemsIn } from './meaning.ts';

/** A text in pieces; those that are blocks are looked at, one of them is damaged. */
interface Piece {
  readonly text: string;
  readonly isBlock: boolean;
}

const garbage = [
  '{',
  '}',
  '"',
  '#',
  ':',
  ',',
  '..',
  '±',
  '+-',
  '\0',
  '\ud800',
  '} {',
  '{ {',
  '} }',
  '{'.repeat(20),
  '}'.repeat(20),
  'word',
  '5',
  '"text"',
  '{ }',
  '}{',
  '\u2028',
  '= ;',
  '<<<<<<<',
];

/** Ways to damage a block of well-formed text. */
const damages: Readonly<Record<string, (text: string, random: () => number) => string>> = {
  'closing brace deleted': (text) => without(text, text.lastIndexOf('}')),
  'opening brace deleted': (text) => without(text, text.indexOf('{')),
  'some brace deleted': (text, random) => {
    const braces = [...text.matchAll(/[{}]/g)].map((match) => match.index);
    return without(text, braces[Math.floor(random() * braces.length)] ?? -1);
  },
  'text not closed': (text, random) => insert(text, random, '"'),
  'garbage in a line': (text, random) => insert(text, random, garbage[Math.floor(random() * garbage.length)] ?? ''),
  'garbage at the end of a line': (text, random) => {
    const lines = text.split(/(\r\n|\r|\n)/);
    const at = 2 * Math.floor((random() * (lines.length + 1)) / 2);
    return lines.map((line, i) => (i === at ? line + ' ' + garbage[Math.floor(random() * garbage.length)] : line)).join('');
  },
  'stray brace on a line of its own': (text, random) => {
    const lines = text.split(/(\r\n|\r|\n)/);
    const at = 2 * Math.floor((random() * (lines.length + 1)) / 2);
    const end = lines[1] ?? '\n';
    const column = ' '.repeat(Math.floor(random() * 6));
    return lines.map((line, i) => (i === at ? line + end + column + (random() < 0.5 ? '}' : '{') : line)).join('');
  },
  'line deleted': (text, random) => {
    const lines = text.split(/(\r\n|\r|\n)/);
    const at = 2 + 2 * Math.floor((random() * (lines.length - 1)) / 2);
    return lines.filter((_, i) => i !== at).join('');
  },
  // Where an inner block follows at once, nothing tells it from one of the block above: that case is not held here.
  'header deleted': (text) => {
    const lines = text.split(/(\r\n|\r|\n)/);
    const second = lines.slice(1).find((line) => line.trim() !== '' && !line.trim().startsWith('#')) ?? '';
    return /\{/.test(second) || /^\s*\{/.test(lines.slice(3).find((line) => line.trim() !== '' && !line.trim().startsWith('#')) ?? '')
      ? text
      : lines.slice(1).join('');
  },
  'end cut off': (text, random) => text.slice(0, 1 + Math.floor(random() * text.length)),
  'header being typed': (text) => (text.split(/[\r\n{]/)[0] ?? '') + '{',
};

function without(text: string, at: number): string {
  return at < 0 ? text : text.slice(0, at) + text.slice(at + 1);
}

function insert(text: string, random: () => number, what: string): string {
  const at = Math.floor(random() * (text.length + 1));
  return text.slice(0, at) + what + text.slice(at);
}

function piecesOf(nodes: readonly Node[], style: Style): Piece[] {
  const random = randomOf(style.seed);
  return nodes.flatMap((node) => [
    { text: textOfNode(node, style, 0, random), isBlock: node.items !== undefined },
    { text: style.lineEnd.repeat(style.noise && random() < 0.5 ? 2 : 1), isBlock: false },
  ]);
}

/** The pieces of a well-formed text: each block at `depth`, and what stands between them. */
function piecesAt(text: string, depth: number): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  const add = (items: ReturnType<typeof parse>['items'], level: number): void => {
    for (const item of items) {
      if (item.body === undefined) continue;
      if (level < depth) {
        add(item.body.items, level + 1);
        continue;
      }
      pieces.push({ text: text.slice(at, item.start), isBlock: false }, { text: text.slice(item.start, item.end), isBlock: true });
      at = item.end;
    }
  };
  add(parse(text).items, 0);
  return [...pieces, { text: text.slice(at), isBlock: false }];
}

/** Compares every piece but the damaged one, before and after; the first difference, or none. */
function firstDifference(pieces: readonly Piece[], damaged: number, becomes: string): string | undefined {
  const before = readFile(parse(pieces.map((piece) => piece.text).join('')));
  const text = pieces.map((piece, i) => (i === damaged ? becomes : piece.text)).join('');
  const after = readFile(parse(text));
  const [entitiesBefore, entitiesAfter] = [entitiesOf(before), entitiesOf(after)];
  let [from, to] = [0, 0];
  for (const [i, piece] of pieces.entries()) {
    const nowLength = i === damaged ? becomes.length : piece.text.length;
    if (i !== damaged && piece.isBlock) {
      const was = entitiesBefore.get(from);
      const is = entitiesAfter.get(to);
      const sameFacts = JSON.stringify(was && entityFacts(was)) === JSON.stringify(is && entityFacts(is));
      const sameProblems =
        JSON.stringify(problemsIn(before, from, from + piece.text.length)) ===
        JSON.stringify(problemsIn(after, to, to + piece.text.length));
      if (was === undefined || !sameFacts || !sameProblems)
        return `${is === undefined ? 'lost' : sameFacts ? 'other problems' : 'other facts'} in\n${piece.text}\nof\n${(pieces[damaged - 1]?.text ?? '').slice(-200)}>>>${becomes}<<<\n${JSON.stringify(after.problems.map((p) => [p.kind, text.slice(p.start, p.end)]))}`;
    }
    from += piece.text.length;
    to += nowLength;
  }
  return undefined;
}

/** More of them by hand: `RUNS=20000 npx vitest run tests/grammar/recovery.test.ts `. */
const runs = Number(process.env['RUNS'] ?? 300);

describe.each(Object.keys(damages))('%s', (name) => {
  const damage = damages[name] as (typeof damages)[string];

  test('in a block of a random file leaves the other blocks as they were', () => {
    fc.assert(
      fc.property(fileOf, styleOf, fc.nat(), fc.nat(), (nodes, style, pick, seed) => {
        const pieces = piecesOf(nodes, style);
        const candidates = pieces.flatMap((piece, i) => (piece.isBlock ? [i] : []));
        fc.pre(candidates.length > 1);
        const damaged = candidates[pick % candidates.length] as number;
        const difference = firstDifference(pieces, damaged, damage(pieces[damaged]?.text ?? '', randomOf(seed)));
        if (difference !== undefined) throw new Error(difference);
      }),
      { numRuns: runs },
    );
  });

  test('in a nested block leaves its neighbours as they were', () => {
    const nested = examples()
      .map(({ text }) => piecesAt(text, 1))
      .filter((pieces) => pieces.length > 3);
    expect(nested.length).toBeGreaterThan(0);
    fc.assert(
      fc.property(fc.nat({ max: nested.length - 1 }), fc.nat(), fc.nat(), (file, pick, seed) => {
        const pieces = nested[file] as Piece[];
        const candidates = pieces.flatMap((piece, i) => (piece.isBlock ? [i] : []));
        const damaged = candidates[pick % candidates.length] as number;
        const difference = firstDifference(pieces, damaged, damage(pieces[damaged]?.text ?? '', randomOf(seed)));
        if (difference !== undefined) throw new Error(difference);
      }),
      { numRuns: runs },
    );
  });

  test('in any block of every example leaves the other blocks as they were', () => {
    for (const { text } of examples()) {
      const pieces = piecesAt(text, 0);
      for (const [i, piece] of pieces.entries())
        if (piece.isBlock) expect(firstDifference(pieces, i, damage(piece.text, randomOf(seed() + i)))).toBeUndefined();
    }
  });
});

test('a file without any indentation is mended block by block too', () => {
  fc.assert(
    fc.property(
      fileOf,
      fc.nat(),
      fc.constantFrom('closing brace deleted', 'opening brace deleted', 'text not closed'),
      fc.nat(),
      (nodes, pick, name, seed) => {
        const pieces = piecesOf(nodes, { lineEnd: '\n', indent: '', brace: 'same line', noise: false, seed: 1 });
        const candidates = pieces.flatMap((piece, i) => (piece.isBlock ? [i] : []));
        fc.pre(candidates.length > 1);
        const damaged = candidates[pick % candidates.length] as number;
        const difference = firstDifference(
          pieces,
          damaged,
          (damages[name] as (typeof damages)[string])(pieces[damaged]?.text ?? '', randomOf(seed)),
        );
        if (difference !== undefined) throw new Error(difference);
      },
    ),
    { numRuns: 200 },
  );
});

test('the comparison sees a difference: a block that swallows its neighbour is told', () => {
  const pieces = [
    { text: 'language 1\n', isBlock: false },
    { text: 'motion {\n  seat 1 s\n}', isBlock: true },
    { text: '\n', isBlock: false },
    { text: 'leaf a {\n  width 2 m\n}', isBlock: true },
  ];
  expect(firstDifference(pieces, 1, 'motion {\n  seat 1 s\n}')).toBeUndefined();
  // Two mistakes that undo each other for one who only counts.
  expect(firstDifference([...pieces, { text: '\n}', isBlock: false }], 1, 'motion {')).toContain('leaf a');
});

describe('what is said of braces', () => {
  const told = (text: string): [string, string][] =>
    parse(text).problems.map((problem) => [problem.kind, text.slice(problem.start, problem.end)]);

  test('a missing closing brace is told at the header of its block, once', () => {
    expect(told('leaf a {\n  width 2 m\nleaf b {\n  width 3 m\n}\n')).toEqual([['brace-missing', 'leaf']]);
    expect(parse('leaf a {\n  width 2 m\nleaf b {\n  width 3 m\n}\n').problems[0]).toMatchObject({ start: 0, detail: { brace: '}' } });
  });
  test('also when lines of the file follow, and not a block', () => {
    const tree = parse('leaf a {\n  width 2 m\nuse "x.gate"\nleaf b {\n}\n');
    expect(tree.problems.map((problem) => [problem.kind, problem.start])).toEqual([['brace-missing', 0]]);
    expect(tree.items.map((item) => item.word?.text)).toEqual(['leaf', 'use', 'leaf']);
  });
  test('a missing opening brace is told at the line that should have it, in a nested block too', () => {
    expect(told('leaf a\n  width 2 m\n}\n')).toEqual([['brace-missing', 'leaf']]);
    const text = 'panel-model p {\n  leaves 1\n  selector s\n    option a\n  }\n  selector t {\n    option b\n  }\n}\n';
    expect(told(text)).toEqual([['brace-missing', 'selector']]);
    expect(readFile(parse(text)).entities['panel-model'][0]?.blocks.selector.map((selector) => selector.name)).toEqual(['s', 't']);
  });
  test('a stray closing brace is told where it stands', () => {
    expect(told('leaf a {\n  width 2 m\n  }\n  height 1 m\n}\nleaf b {\n}\n')).toEqual([['brace-stray', '}']]);
    expect(told('leaf a {\n}\n}\n\n}\n')).toEqual([['brace-stray', '}\n\n}']]);
  });
  test('a closing brace in an unusual column is no mistake of itself', () => {
    const text = 'leaf a {\n  width 2 m\n    }\nleaf b {\n  width 3 m }\nleaf c {\n  width 1 m\n';
    expect(told(text)).toEqual([['brace-missing', 'leaf']]);
    expect(parse(text).items.map((item) => item.body?.items.length)).toEqual([1, 1, 1]);
  });
  test('nesting that is too deep is told once and costs only itself', () => {
    const text = 'leaf a {\n  ' + 'w {'.repeat(100) + '  width 2 m  ' + '}'.repeat(100) + '\n}\nleaf b {\n  width 3 m\n}\n';
    expect(told(text)).toEqual([['nested-too-deep', '{']]);
    expect(readFile(parse(text)).entities.leaf[1]?.facts.width?.value).toBe(3);
  });
});

test('whatever braces stand in a text, the tree holds each statement once and the canonical form can be read', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('{', '}', '\n', '\n  ', '\n    ', 'a', 'b', ' '), { maxLength: 60 }), (parts) => {
      const text = parts.join('');
      const tree = parse(text);
      const words = (items: typeof tree.items): string[] =>
        items.flatMap((item) => [
          ...(item.word === undefined ? [] : [item.word.text]),
          ...item.values.map((value) => (value.kind === 'word' ? value.text : '')),
          ...words(item.body?.items ?? []),
        ]);
      if (!tree.problems.some((problem) => problem.kind === 'nested-too-deep'))
        expect(words(tree.items).join(' ')).toBe(
          text
            .split(/[\s{}]+/)
            .filter((word) => word !== '')
            .join(' '),
        );
      expect(parse(print(tree)).problems.filter((problem) => problem.kind.startsWith('brace'))).toEqual([]);
    }),
    { numRuns: 2000 },
  );
});
