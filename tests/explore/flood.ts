// A flood of small texts through all that works on a text: read, judged, formatted, and of some of them the features of the editor.
// The same seed gives the same texts. What is thrown, what formatting changes though it must not, and what lies outside of its text is
// given with the text.
import {
  completion,
  diagnostics,
  foldings,
  formatting,
  highlight,
  hover,
  inlayValues,
  lenses,
  prepareRename,
  rangeFormatting,
  selectionAt,
  signature,
  symbols,
  tokens,
  typedFormatting,
} from '../../server/editor/index.ts';
import { type Analysis, fixAll, fixes, formatted, Workspace } from '../../server/engine/index.ts';
import { type BlockSpec, blocks, topLines, units } from '../../server/vocabulary/index.ts';
import { unsteady } from '../kit/steady.ts';

export interface Fault {
  /** Which of the texts it is, from 0. */
  readonly number: number;
  readonly text: string;
  readonly what: string;
}

const day = '2026-11-25';
const path = '/flood/site.gate';
const library = 'language 1\nsensor-model finch "x" {\n  output relay\n}\ndrive-model birch "x" {\n  turns leaf-pivot\n}\n';
const workspace = (): Workspace =>
  new Workspace({ root: '/flood', read: (other) => (other === '/flood/l.gate' ? { text: library } : 'missing') });

/** Numbers from 0 to below a limit, the same for the same seed (mulberry32, public domain). */
function drawFrom(seed: number): (limit: number) => number {
  let state = seed | 0;
  return (limit) => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * limit);
  };
}

/** Every line and every small block that the vocabulary shows as an example, and words, units and signs. */
const lines: string[] = [];
const bodies: string[] = [];
const words: string[] = [
  ...Object.keys(topLines),
  ...units.map(({ name }) => name),
  'accept',
  'by',
  'to',
  'because',
  'west',
  'east',
  'NAME',
];
const collect = (word: string, spec: BlockSpec): void => {
  words.push(word, ...Object.keys(spec.lines));
  bodies.push(spec.example);
  for (const line of Object.values(spec.lines)) lines.push(line.example);
  for (const [inner, nested] of Object.entries(spec.blocks)) collect(inner, nested);
};
for (const [word, spec] of Object.entries<BlockSpec>(blocks)) collect(word, spec);

const signs = [
  ...[
    '{',
    '}',
    '"',
    '#',
    ':',
    ',',
    '±',
    '+-',
    '..',
    '...',
    '\\',
    '+',
    '-',
    '.',
    '\u2212',
    '1,5',
    ',5',
    '5',
    '007',
    '1.5',
    '-5',
    '2026-05-14',
    '8k2',
  ],
  ...[
    ' ',
    '  ',
    '\t',
    '\u00a0',
    '\f',
    '\u3000',
    '\n',
    '\r',
    '\r\n',
    '\n\n',
    ' # x',
    '{ }',
    '"a"',
    '"a \\"b"',
    ': finch',
    'use "l.gate"\n',
    '\u0435ast',
  ],
  ...['\u200b', '\u00ad', '\ufeff', '\u202e', '\u{e0061}', '\0', '\u2028', '\ud800', '\u{1f600}', 'é', 'e\u0301', '門', 'ж', 'Ω'],
];

/** A text of 10 to 400 characters or so: pieces of the language, one on the other, and changes at random. */
export function textOf(draw: (limit: number) => number): string {
  const pick = <T>(list: readonly T[]): T => list[draw(list.length)] as T;
  const end = pick(['\n', '\n', '\n', '\r\n', '\r']);
  let text = draw(4) === 0 ? '' : 'language 1\n';
  const kind = draw(8);
  if (kind === 0) for (let count = 5 + draw(30); count > 0; count--) text += pick(draw(3) === 0 ? words : signs);
  else if (kind === 1)
    for (let count = 5 + draw(80); count > 0; count--) text += String.fromCodePoint(draw(draw(4) === 0 ? 0x110000 : 0x2fff));
  else
    for (let count = 1 + draw(2); count > 0; count--) {
      text += `${pick(bodies)}\n`;
      if (draw(2) === 0) text = text.replace(/\}\s*$/, `${pick(lines)}\n  ${pick(lines)}\n}\n`);
    }
  for (let count = draw(4); count > 0; count--) {
    const at = draw(text.length + 1);
    const put = draw(3) === 0 ? pick(words) : draw(8) === 0 ? String.fromCodePoint(draw(0x3000)) : pick(signs);
    text = text.slice(0, at) + put + text.slice(at + [0, 0, 1, 3, 8][draw(5)]!);
  }
  return (end === '\n' ? text : text.replaceAll('\n', end)).slice(0, 400);
}

/** Of how many texts one is looked at for what it is asked: the whole of it takes many verdicts. */
const every = { steady: 4, features: 64, mended: 128 };

/** Feeds `count` texts, from the one of that number on; tells what is wrong with each. */
export function flood(seed: number, from: number, count: number, fault: (fault: Fault) => void): void {
  let shelf = workspace();
  const judge = (text: string): Analysis => shelf.judge(path, text, day);
  for (let number = from; number < from + count; number++) {
    // A workspace keeps a shelf for each row of `use` lines that it met.
    if (number % 20_000 === 0) shelf = workspace();
    // Each text has a seed of its own, so that one can be made again without those before it.
    const draw = drawFrom(Math.imul(seed, 0x9e3779b1) ^ Math.imul(number + 1, 0x85ebca6b));
    const text = textOf(draw);
    const say = (what: string): void => fault({ number, text, what });
    try {
      if (number % every.steady === 0) for (const what of unsteady(text, judge)) say(what);
      else {
        judge(text);
        const found = formatted(text);
        const again = 'text' in found ? formatted(found.text) : found;
        if ('text' in found && (!('text' in again) || again.text !== found.text)) say('formatted twice it is another text');
      }
      if (number % every.features === 0) features(judge(text), draw(text.length + 1), draw(text.length + 1), say);
      if (number % every.mended === 0) {
        const { text: mended } = fixAll(text, judge);
        if (fixAll(mended, judge).text !== mended) say('mended twice it is another text');
      }
    } catch (error) {
      say(error instanceof Error ? (error.stack ?? error.message) : String(error));
    }
  }
}

/** Asks the editor's features of one text, at one place. */
function features(analysis: Analysis, offset: number, other: number, say: (what: string) => void): void {
  const { text } = analysis;
  const inside = (what: string, place: { readonly start: number; readonly end: number }): void => {
    if (!(place.start >= 0 && place.start <= place.end && place.end <= text.length)) say(`${what}: ${place.start}–${place.end} is outside`);
  };
  const each = (what: string, places: Iterable<{ readonly start: number; readonly end: number }>): void => {
    for (const place of places) inside(what, place);
  };
  each('finding', analysis.findings);
  each('diagnostic', diagnostics(analysis));
  inside('completion', completion(analysis, offset, { libraries: ['/flood/l.gate'] }).replace);
  const told = hover(analysis, offset, () => undefined);
  if (told !== undefined) inside('hover', told);
  each('highlight', highlight(analysis, offset));
  each('selection', selectionAt(analysis, offset));
  signature(analysis, offset);
  prepareRename(analysis, offset);
  for (const fix of fixes(analysis, { start: 0, end: text.length })) each('fix', fix.edits);
  const range = { start: Math.min(offset, other), end: Math.max(offset, other) };
  for (const found of [formatting(text), rangeFormatting(text, range)]) if ('edits' in found) each('edit', found.edits);
  for (const key of ['}', '\n']) each('edit', typedFormatting(analysis, offset, key));
  tokens(analysis);
  symbols(analysis);
  foldings(analysis);
  inlayValues(analysis);
  lenses(analysis);
}
