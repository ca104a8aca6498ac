// Whether a change touches a safety-critical line is decided by the lines that it touches alone. Here the whole text is read instead.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, printValue, type Statement } from '../../grammar/index.ts';
import { blocks, changesSafety } from '../../server/vocabulary/index.ts';
import type { BlockSpec, LineSpec } from '../../server/vocabulary/spec.ts';
import { site } from '../editor/bench.ts';

const lookUp = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined => (Object.hasOwn(table, key) ? table[key] : undefined);

/** Every safety-critical line of a text, once, with the blocks around it; blocks of one head apart by their number. */
function safetyLines(text: string): Set<string> {
  const found = new Set<string>();
  const walk = (items: readonly Statement[], around: string, spec: BlockSpec | undefined): void => {
    for (const item of items) {
      const word = item.word?.text ?? '';
      const head = `${around}\n${[word, ...item.values.filter(({ kind }) => kind !== 'comma').map(printValue)].join(' ')}`;
      if (spec !== undefined && lookUp<LineSpec>(spec.lines, word)?.safety === true) found.add(head);
      const block = spec === undefined ? lookUp<BlockSpec>(blocks, word) : lookUp(spec.blocks, word);
      if (item.body !== undefined && block !== undefined) walk(item.body.items, head, block);
    }
  };
  walk(parse(text).items, '', undefined);
  return found;
}

const text = site();
const lines = text.split('\n');
const starts = lines.map((_, i) => lines.slice(0, i).reduce((sum, line) => sum + line.length + 1, 0));

const same = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean =>
  one.size === other.size && [...one].every((line) => other.has(line));

test('one line in another one’s place, taken out, or written once more', () => {
  let changed = 0;
  fc.assert(
    fc.property(
      fc.nat(lines.length - 1),
      fc.nat(lines.length - 1),
      fc.constantFrom('in place', 'out', 'once more', 'comment'),
      (at, other, how) => {
        const line = lines[at] as string;
        // Braces that do not pair make other blocks of all that follows.
        if (/[{}]/.test(line) || /[{}]/.test(lines[other] as string)) return;
        const start = starts[at] as number;
        const edit =
          how === 'in place'
            ? { start, end: start + line.length, text: lines[other] as string }
            : how === 'out'
              ? { start, end: Math.min(start + line.length + 1, text.length), text: '' }
              : how === 'once more'
                ? { start: start + line.length, end: start + line.length, text: `\n${lines[other] as string}` }
                : { start, end: start, text: '# ' };
        const after = text.slice(0, edit.start) + edit.text + text.slice(edit.end);
        const expected = !same(safetyLines(text), safetyLines(after));
        if (expected) changed++;
        expect(changesSafety(parse(text), [edit]), `${how} ${at} ${other}: ${line}`).toBe(expected);
      },
    ),
    { numRuns: 2000 },
  );
  expect(changed).toBeGreaterThan(100);
});

test('a line that stands twice may lose its double, wherever it stands in its block', () => {
  const twice = 'panel main : x {\n  wire a to B C\n  link D E\n  wire a to B C\n}\n';
  const tree = parse(twice);
  const first = twice.indexOf('  wire');
  const last = twice.lastIndexOf('  wire');
  const length = '  wire a to B C\n'.length;
  expect(changesSafety(tree, [{ start: first, end: first + length, text: '' }])).toBe(false);
  expect(changesSafety(tree, [{ start: last, end: last + length, text: '' }])).toBe(false);
  expect(
    changesSafety(tree, [
      { start: first, end: first + length, text: '' },
      { start: last, end: last + length, text: '' },
    ]),
  ).toBe(true);
});

test('of a block of ten thousand lines a change of one reads one', () => {
  const text = `panel main : x {\n${'  wire a to B C\n'.repeat(10_000)}  link D E\n}\n`;
  const tree = parse(text);
  const at = text.indexOf('  link');
  let read = 0;
  const counted = {
    slice: (start: number, end: number): string => {
      read += end - start;
      return text.slice(start, end);
    },
    charAt: (offset: number): string => text.charAt(offset),
  } as unknown as string;
  expect(changesSafety({ ...tree, text: counted }, [{ start: at, end: at + '  link D E'.length, text: '  link D F' }])).toBe(true);
  expect(read).toBeLessThan(200);
});
