// Pieces of language with places to fill. A place never holds a value that nobody chose: it is empty, or it is a choice that
// starts with a sign that no line takes, so that what is left unfilled is found. Names have a default, for they claim nothing.
import { parse, type Statement, type Value } from '../../grammar/index.ts';
import { type Analysis, Workspace } from '../engine/index.ts';
import { type BlockSpec, blocks, type LineSpec, type Slot } from '../vocabulary/index.ts';
import { keyOf, mentionsOf } from './names.ts';
import { blockSpecOf, lineSpecOf, partsOf } from './places.ts';
import { snippetFiles } from './snippet-files.ts';

/** A place to fill. Places of one key are one: what is written in one of them stands in all. */
interface Stop {
  readonly key: string;
  readonly shown?: string;
  readonly choices?: readonly string[];
  /** A text: it brings its quotation marks. `form`: they stand there, empty, also where nobody can fill them in at once. */
  readonly quoted?: 'text' | 'form';
}

export type Piece = string | Stop;
/** Where the caret ends up. */
const last = '\u0000';

/** What stands in a choice until somebody chooses. No line takes it, so it is found when it is left. */
export const unchosen = '…';

/** For clients that know snippets: `$1`, `${1:name}`, `${1|a,b|}`, and `$0` where the caret ends up. */
export function asSnippet(pieces: readonly Piece[]): string {
  const numbers = new Map<string, number>();
  return pieces
    .map((piece) => {
      if (piece === last) return '$0';
      if (typeof piece === 'string') return escaped(piece);
      const known = numbers.get(piece.key);
      const number = known ?? numbers.size + 1;
      numbers.set(piece.key, number);
      const marked = (text: string): string => (piece.quoted === undefined ? text : `"${text}"`);
      // One that stands for another is told apart by its number alone.
      if (known !== undefined) return marked(`$${number}`);
      if (piece.choices !== undefined)
        return `\${${number}|${piece.choices.map((choice) => choice.replace(/[\\,|]/g, '\\$&')).join(',')}|}`;
      return marked(piece.shown === undefined ? `$${number}` : `\${${number}:${escaped(piece.shown).replaceAll('}', '\\}')}}`);
    })
    .join('');
}
const escaped = (text: string): string => text.replace(/[\\$]/g, '\\$&');

/** For clients that know none: each line up to its first place that is still to be filled. */
export function asPlain(pieces: readonly Piece[]): string {
  let out = '';
  let isOpen = false;
  for (const piece of pieces) {
    if (typeof piece !== 'string') {
      if (piece.quoted === undefined ? piece.shown === undefined : piece.quoted === 'text' && piece.shown === undefined) isOpen = true;
      else if (!isOpen) out += piece.quoted === undefined ? piece.shown : `"${piece.shown ?? ''}"`;
    } else if (piece === last) {
      if (!isOpen) out += last;
    } else {
      const end = piece.search(/\r\n|\r|\n/);
      if (!isOpen) out += piece;
      else if (end >= 0) out = out.trimEnd() + piece.slice(end);
      if (end >= 0) isOpen = false;
    }
  }
  // A line on which only the caret would stand is none.
  return out
    .replace(/\r?\n[ \t]*\u0000(?=\r?\n)/g, '')
    .replaceAll(last, '')
    .replace(/[ \t]+(?=[\r\n]|$)/g, '');
}

/** A line with a place for each value that it must have. */
export function linePieces(word: string, spec: LineSpec, key = word): Piece[] {
  const pieces: Piece[] = [word];
  for (const [name, slot] of Object.entries<Slot>(spec.slots)) {
    if (slot.optional === true || slot.kind === 'tolerance') continue;
    if (slot.after !== undefined) pieces.push(' ' + slot.after);
    pieces.push(' ', ...placeFor(slot, `${key} ${name}`));
  }
  return pieces;
}

function placeFor(slot: Slot, key: string, first?: string): Piece[] {
  if (slot.kind === 'choice')
    return [
      {
        key,
        choices: [unchosen, ...(first === undefined ? [] : [first]), ...Object.keys(slot.options).filter((option) => option !== first)],
      },
    ];
  return slot.kind === 'text' ? [{ key, quoted: 'text' }] : [{ key }];
}

/** A block with the lines that it must have. */
export function blockPieces(word: string, spec: BlockSpec): Piece[] {
  const pieces: Piece[] = [word];
  if (spec.named) pieces.push(' ', { key: 'name', shown: 'name' });
  if (spec.model !== undefined) pieces.push(' : ', { key: 'model', shown: 'model' });
  pieces.push(' {');
  const required = Object.entries<LineSpec>(spec.lines).filter(([, line]) => line.required === true);
  for (const [key, line] of required) pieces.push('\n  ', ...linePieces(key, line));
  // No line is left empty: where there is one already, the caret ends up behind it.
  return [...pieces, ...(required.length === 0 ? ['\n  '] : []), last, '\n}'];
}

// --- Templates: real files, of which a stretch is offered.

export interface Template {
  readonly name: string;
  readonly doc: string;
  /** Its blocks, in order. */
  readonly parts: readonly { readonly word: string; readonly single: boolean; readonly pieces: readonly Piece[] }[];
}

let templatesKept: readonly Template[] | undefined;

/** All templates, by their files; each is worked out once. */
export const templates = (): readonly Template[] => (templatesKept ??= snippetFiles.map(({ name, text }) => templateOf(name, text)));

/** The stretch of a file between `# snippet: …` and `# end of snippet`, its values made places to fill. */
export function templateOf(name: string, text: string): Template {
  const { comments } = parse(text);
  const from = comments.find((comment) => comment.text.startsWith('# snippet:'));
  const to = comments.find((comment) => comment.text.startsWith('# end of snippet'));
  const path = `/${name}.gate`;
  const analysis = new Workspace({ root: '', read: () => 'missing' }).judge(path, text, '2000-01-01');
  const parts = analysis.installation.reading.tree.items
    .filter((item) => from !== undefined && to !== undefined && item.start > from.start && item.end < to.start)
    .map((item) => {
      const word = item.word?.text ?? '';
      const spec = (blocks as Readonly<Record<string, BlockSpec>>)[word];
      const taker = new Places(analysis, { start: from?.end ?? 0, end: to?.start ?? 0 });
      if (spec !== undefined) taker.block(item, spec);
      return { word, single: spec?.single === true, pieces: taker.pieces(item) };
    });
  return { name, doc: from?.text.slice('# snippet:'.length).trim() ?? '', parts };
}

/** A template's pieces, without the blocks that a file can hold once and holds already. */
export function templatePieces(template: Template, stated: ReadonlySet<string>): Piece[] {
  const parts = template.parts.filter((part) => !(part.single && stated.has(part.word)));
  return [...parts.flatMap((part, i) => [...(i === 0 ? [] : ['\n\n']), ...part.pieces]), last];
}

/** The places in one statement of a template. */
class Places {
  readonly #analysis: Analysis;
  readonly #region: { readonly start: number; readonly end: number };
  readonly #found: { readonly start: number; readonly end: number; readonly pieces: readonly Piece[] }[] = [];
  readonly #named: ReadonlyMap<number, string>;

  constructor(analysis: Analysis, region: { readonly start: number; readonly end: number }) {
    this.#analysis = analysis;
    this.#region = region;
    const mentions = mentionsOf(analysis);
    const own = new Set(
      mentions
        .filter((mention) => mention.declares && mention.start >= region.start && mention.end <= region.end)
        .map((mention) => keyOf(mention.meaning)),
    );
    // Names that the template itself declares are one place, wherever they stand.
    this.#named = new Map(
      mentions.filter((mention) => own.has(keyOf(mention.meaning))).map((mention) => [mention.start, keyOf(mention.meaning)]),
    );
  }

  block(statement: Statement, spec: BlockSpec): void {
    for (const value of statement.values) {
      if (value.kind === 'word') this.#put(value, [{ key: this.#named.get(value.start) ?? `${value.start}`, shown: value.text }]);
      else if (value.kind === 'text') this.#put(value, [{ key: `${value.start}`, shown: value.text, quoted: 'text' }]);
      else if (value.kind === 'model') this.#put(value.name, [{ key: `${value.start}`, shown: 'model' }]);
    }
    for (const item of statement.body?.items ?? []) {
      const word = item.word?.text ?? '';
      const line = lineSpecOf(spec, false, word);
      const inner = blockSpecOf(spec, false, word);
      if (item.body !== undefined && inner !== undefined) this.block(item, inner);
      else if (line !== undefined) this.#line(item, line);
    }
  }

  #line(statement: Statement, spec: LineSpec): void {
    const seen = new Set<string>();
    for (const { role, key, slot, value } of partsOf(spec, statement.values).parts) {
      if (role !== 'value' || slot === undefined || key === undefined) continue;
      const name = this.#named.get(value.start);
      if (value.kind === 'word' && name !== undefined && (slot.kind === 'name' || slot.kind === 'ref'))
        this.#put(value, [{ key: name, shown: value.text }]);
      else if (slot.many === true && seen.has(key)) this.#put({ start: this.#blankBefore(value), end: value.end }, []);
      else if (slot.kind === 'text') this.#put(value, [{ key: `${value.start}`, quoted: 'text' }]);
      else
        this.#put(
          value,
          placeFor(
            slot,
            value.kind === 'word' && slot.kind === 'ref' ? `the ${slot.to} ${value.text}` : `${value.start}`,
            value.kind === 'word' ? value.text : undefined,
          ),
        );
      seen.add(key);
    }
  }

  #put(at: { readonly start: number; readonly end: number }, pieces: readonly Piece[]): void {
    this.#found.push({ start: at.start, end: at.end, pieces });
  }

  #blankBefore(value: Value): number {
    let at = value.start;
    while (at > this.#region.start && /[ \t,]/.test(this.#analysis.text.charAt(at - 1))) at--;
    return at;
  }

  /** The statement's text with its places. */
  pieces(statement: Statement): Piece[] {
    const { text } = this.#analysis;
    const pieces: Piece[] = [];
    let at = statement.start;
    for (const found of this.#found.sort((a, b) => a.start - b.start)) {
      pieces.push(text.slice(at, found.start), ...found.pieces);
      at = found.end;
    }
    pieces.push(text.slice(at, statement.end));
    return pieces.filter((piece) => piece !== '');
  }
}
