// Snippets: the example of each block, with a stop at everything that a person would change.
import { parse, type Statement, type Value } from '../../grammar/index.ts';
import type { BlockSpec, LineSpec, Slot } from '../../server/vocabulary/index.ts';
import { allBlocks, linesOfAnyBlock, linesOfFile } from './generated-places.ts';

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

/** A stop in the text of an example. */
interface Stop {
  readonly start: number;
  readonly end: number;
  /** Words to choose from; the first is the example's own. */
  readonly choices?: readonly string[];
}

export function snippets(): Record<string, Snippet> {
  const found: Record<string, Snippet> = {};
  for (const { path, word, spec } of allBlocks()) {
    const [statement] = parse(spec.example).items;
    if (statement === undefined) continue;
    const title = [...path, word].join(' › ');
    found[title] = { prefix: word, description: spec.doc, body: bodyOf(spec.example, stopsOfBlock(statement, spec)) };
  }
  for (const [word, spec] of Object.entries({ ...linesOfFile, ...linesOfAnyBlock })) {
    const [statement] = parse(spec.example).items;
    if (statement === undefined || word === 'language') continue;
    found[word] = { prefix: word, description: spec.doc, body: bodyOf(spec.example, stopsOfLine(statement, spec)) };
  }
  return found;
}

function stopsOfBlock(statement: Statement, spec: BlockSpec): Stop[] {
  return [
    ...statement.values.flatMap((value) => stopOf(value, undefined)),
    ...(statement.body?.items ?? []).flatMap((item) => {
      const word = item.word?.text ?? '';
      const line = spec.lines[word];
      const block = spec.blocks[word];
      return line !== undefined ? stopsOfLine(item, line) : block !== undefined ? stopsOfBlock(item, block) : [];
    }),
  ];
}

function stopsOfLine(statement: Statement, spec: LineSpec): Stop[] {
  return statement.values.flatMap((value) => stopOf(value, spec));
}

function stopOf(value: Value, spec: LineSpec | undefined): Stop[] {
  switch (value.kind) {
    case 'number':
      return [
        { start: value.start, end: value.start + value.text.length },
        ...(value.plusMinus === undefined ? [] : stopOf(value.plusMinus, spec)),
        ...(value.upTo === undefined ? [] : stopOf(value.upTo, spec)),
      ];
    case 'text':
      return [{ start: value.start + 1, end: value.end - 1 }];
    case 'date':
      return [{ start: value.start, end: value.end }];
    case 'model':
      return [{ start: value.name.start, end: value.name.end }];
    case 'comma':
      return [];
    case 'word': {
      const slots = Object.values<Slot>(spec?.slots ?? {});
      if (slots.some((slot) => slot.after === value.text)) return [];
      const choice = slots.find((slot) => slot.kind === 'choice' && Object.hasOwn(slot.options, value.text));
      if (choice?.kind !== 'choice') return [{ start: value.start, end: value.end }];
      return [{ start: value.start, end: value.end, choices: [value.text, ...Object.keys(choice.options).filter((option) => option !== value.text)] }];
    }
  }
}

/** The example as the lines of a snippet: stops numbered in order, indentation by tabs, the caret at last behind it all. */
function bodyOf(example: string, stops: readonly Stop[]): string[] {
  let out = '';
  let at = 0;
  [...stops].sort((a, b) => a.start - b.start).forEach(({ start, end, choices }, i) => {
    const own = escaped(example.slice(start, end)).replaceAll('}', '\\}');
    out += escaped(example.slice(at, start)) + (choices === undefined ? `\${${i + 1}:${own}}` : `\${${i + 1}|${choices.join(',')}|}`);
    at = end;
  });
  out += escaped(example.slice(at)) + '$0';
  return out.split('\n');
}

const escaped = (text: string): string => text.replace(/[\\$]/g, '\\$&');
