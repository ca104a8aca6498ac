// Examples of pages that show only what differs from another text. The first line of such an example says which one:
//   # from NAME             the base site examples/bases/NAME.gate
//   # from NAME, only A, B  no more of it than its first line and what begins so: leaf, drive east-ram, drives.gate (its library)
//   # from above            the nearest example above that is not itself `from above`
// Then come whole blocks and lines of the language:
//   a block         stands in for the block of the same word and name, or is added
//   … in a block    its other lines stay; each line given stands in for the one of the same word (and name or first value,
//                   where the word may stand more than once), or is added, before or behind the others as it stands before or
//                   behind the …
//   without A, B    takes away the blocks, or within a block the lines, that begin so
import { anywhereLines, type BlockSpec, blocks, type LineSpec, topLines } from '../../server/vocabulary/index.ts';

interface From {
  readonly name: string;
  /** What is taken of it; undefined where all of it is. */
  readonly only: readonly string[] | undefined;
}

/** What an example is from; undefined where it is whole. */
export function fromOf(example: string): From | undefined {
  const said = /^# from ([a-z][a-z0-9-]*)(?:, only (.+))?\n/.exec(example);
  return said === null ? undefined : { name: said[1] as string, only: said[2]?.split(', ') };
}

/** Makes the examples of a page whole, in their order; `kind` is what the page says of each: flagged, fixed, sound. */
export function expander(baseOf: (name: string) => string): (kind: string | undefined, example: string) => string {
  let above: string | undefined;
  return (kind, example) => {
    const from = fromOf(example);
    if (from?.name === 'above' && above === undefined) throw new Error('an example is from above, where there is none');
    const whole = from === undefined ? example : derived(example, from.name === 'above' ? (above as string) : baseOf(from.name));
    if (kind !== 'fixed' && from?.name !== 'above') above = whole;
    return whole;
  };
}

/** Something at one level of a text: a line, or a block with its lines; with the blank lines and remarks above it. */
interface Item {
  readonly above: readonly string[];
  readonly lines: readonly string[];
  readonly key: string;
}

interface Level {
  readonly items: readonly Item[];
  /** What stands below the last of them. */
  readonly below: readonly string[];
}

const topBlocks: Readonly<Record<string, BlockSpec>> = blocks;
const outside: Readonly<Record<string, LineSpec>> = { ...topLines, ...anywhereLines };

/** The text that an example stands for; `base` is the one it is from. Throws where a line of it has nothing to refer to. */
export function derived(example: string, base: string): string {
  const lines = example.replace(/\n$/, '').split('\n').slice(1);
  const day = /^# as of /.test(lines[0] ?? '') ? lines.splice(0, 1) : [];
  const given = levelOf(lines, '', undefined);
  const all = levelOf(withoutMarks(base).replace(/\n$/, '').split('\n'), '', undefined);
  const text = changed(onlyOf(all, fromOf(example)?.only), given.items, '', undefined).concat(given.below);
  return [...day, ...(day.length === 0 ? text : text.filter((line) => !line.startsWith('# as of ')))].join('\n') + '\n';
}

/** What is taken of a text: its first line, and what is named. */
function onlyOf(all: Level, only: readonly string[] | undefined): Level {
  if (only === undefined) return all;
  const unknown = only.find((name) => !all.items.some((item) => isCalled(item, name)));
  if (unknown !== undefined) throw new Error(`“only ${unknown}”: no such line stands in what the example is from`);
  return { ...all, items: all.items.filter((item, i) => i === 0 || only.some((name) => isCalled(item, name))) };
}

/** A text without the marks of what is flagged in it. */
export const withoutMarks = (text: string): string => text.replace(/^ *# flagged below *\n/gm, '').replace(/ *# flagged( twice)?$/gm, '');

/** The items of the lines of one level; `within` is what the block may hold, undefined at the top. */
function levelOf(lines: readonly string[], indent: string, within: BlockSpec | undefined): Level {
  const items: Item[] = [];
  let above: string[] = [];
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i] as string;
    if (line.trim() === '' || line.trim().startsWith('#')) {
      above.push(line);
      continue;
    }
    let to = i;
    if (/\{ *(#.*)?$/.test(line)) while (to + 1 < lines.length && lines[to] !== `${indent}}`) to++;
    items.push({ above, lines: lines.slice(i, to + 1), key: keyOf(line, within) });
    above = [];
    i = to;
  }
  return { items, below: above };
}

/** What an item is known by: its word, and its name or first value where there may be more of them. */
function keyOf(line: string, within: BlockSpec | undefined): string {
  const [word = '', next = ''] = line.trim().split(/\s+/);
  if (word === 'without' || word === '…') return line.trim();
  const block = (within === undefined ? topBlocks : within.blocks)[word];
  if (block !== undefined) return block.named ? `${word} ${next}` : word;
  return (within?.lines[word] ?? outside[word])?.many === true ? `${word} ${next}` : word;
}

/** The lines of a level with what is given in place of what is there. */
function changed(from: Level, given: readonly Item[], indent: string, within: BlockSpec | undefined): string[] {
  const items = [...from.items];
  const rest = given.findIndex((item) => item.key === '…');
  let first = 0;
  given.forEach((item, i) => {
    if (i === rest) return;
    const at = items.findIndex((one) => one.key === item.key);
    if (item.key.startsWith('without ')) takeAway(items, item.key.slice('without '.length).split(/, */));
    else if (at >= 0) items[at] = inPlaceOf(items[at] as Item, item, within);
    else if (i < rest) items.splice(first++, 0, item);
    else {
      if (item.lines.includes(`${indent}  …`)) throw new Error(`“${item.key}”: no such block stands in what the example is from`);
      const like = indent === '' ? items.findLastIndex((one) => wordOf(one) === wordOf(item)) : -1;
      const isBlock = item.lines.length > 1;
      const added = isBlock && indent === '' && item.above[0] !== '' ? { ...item, above: ['', ...item.above] } : item;
      items.splice(like < 0 ? items.length : like + 1, 0, isBlock ? added : { ...item, above: item.above.filter((line) => line !== '') });
    }
  });
  const lines = [...items.flatMap((item) => [...item.above, ...item.lines]), ...from.below];
  while (lines[0] === '') lines.shift();
  return lines;
}

function takeAway(items: Item[], names: readonly string[]): void {
  for (const name of names) {
    const left = items.filter((item) => !isCalled(item, name));
    if (left.length === items.length) throw new Error(`“without ${name}”: no such line stands in what the example is from`);
    items.splice(0, items.length, ...left);
  }
}

const wordOf = ({ key }: Item): string => key.split(' ')[0] as string;
/** Whether a page means an item by a name: its word, its word and name, or the library that it uses. */
const isCalled = (item: Item, name: string): boolean => item.key === name || wordOf(item) === name || item.key.endsWith(`/${name}"`);
const remarks = (lines: readonly string[]): string[] => lines.filter((line) => line !== '');

/** An item in place of another one: its remarks where it has any, and its lines, or the changes that it makes to the lines. */
function inPlaceOf(old: Item, item: Item, within: BlockSpec | undefined): Item {
  const own = remarks(item.above);
  const above = own.length === 0 ? old.above : [...old.above.filter((line) => line === '').slice(0, 1), ...own];
  const [head = '', ...body] = item.lines;
  const indent = head.slice(0, head.length - head.trimStart().length);
  if (!body.includes(`${indent}  …`)) return { ...item, above };
  const inner = `${indent}  `;
  const spec = (within?.blocks ?? topBlocks)[head.trim().split(' ')[0] as string];
  const [from, given] = [levelOf(old.lines.slice(1, -1), inner, spec), levelOf(item.lines.slice(1, -1), inner, spec)];
  return { ...item, above, lines: [head, ...changed(from, given.items, inner, spec), ...given.below, `${indent}}`] };
}
