// What stands under the pointer: a word and its limits, a quantity in other units, what a name points at, the values
// that come of the line, and the rules that find something there. Everything from the vocabulary table and the analysis.
import { holds, type Span, type Statement, type Value } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { subjectOf } from '../engine/inside.ts';
import type { Figure } from '../figures/index.ts';
import { marginsAbout, marginsOf, ruleNamed } from '../rules/index.ts';
import {
  type BlockSpec,
  headerShape,
  inOtherUnits,
  type LineSpec,
  lineShape,
  readerOf,
  type Slot,
  showLimit,
  threeDigits,
  unitNamed,
} from '../vocabulary/index.ts';
import { declarationOf, type Target } from './definition.ts';
import { derivation, marginInWords } from './derivation.ts';
import { code, codeBlock, escape } from './markdown.ts';
import { mentionAt } from './names.ts';
import { blockSpecOf, headEnd, innermost, lineSpecOf, type Part, partsOf, statementAt } from './places.ts';

export interface Hover extends Span {
  /** Markdown; nothing in it that a file's author wrote is markup. */
  readonly markdown: string;
}

/** The text of another file of the workspace, where it is known. */
export type TextOf = (path: string) => string | undefined;

/** Most lines of a block that a hover quotes. */
const mostLines = 14;

/** What is worth saying of an offset; undefined where nothing stands. */
export function hover(analysis: Analysis, offset: number, textOf: TextOf = () => undefined): Hover | undefined {
  const { tree } = analysis.installation.reading;
  if (tree.comments.some((comment) => offset > comment.start && offset <= comment.end)) return undefined;
  const found = statementAt(tree, offset);
  if (found === undefined) return findingsOnly(analysis, offset);
  const { statement, around } = found;
  const { spec, isTop } = innermost(around);
  const word = statement.word;
  if (word === undefined) return findingsOnly(analysis, offset);
  const block =
    statement.body === undefined && lineSpecOf(spec, isTop, word.text) !== undefined ? undefined : blockSpecOf(spec, isTop, word.text);
  const line = block === undefined ? lineSpecOf(spec, isTop, word.text) : undefined;

  const at = spotAt(statement, line, offset);
  const parts: string[] = [];
  let place: Span = word;
  if (holds(word, offset)) {
    if (block !== undefined) parts.push(blockDoc(word.text, block));
    else if (line !== undefined) parts.push(lineDoc(word.text, line));
    parts.push(...figuresOn(analysis, statement));
  } else if (at !== undefined) {
    place = at.place;
    const pointed = mentionAt(analysis, offset);
    if (pointed !== undefined) {
      place = pointed;
      const target = pointed.declares ? undefined : declarationOf(analysis, pointed.meaning);
      if (pointed.meaning.kind === 'rule') parts.push(ruleDoc(pointed.meaning.name));
      else if (target !== undefined && pointed.meaning.kind !== 'file') parts.push(quote(analysis, target, textOf));
      else if (pointed.meaning.kind === 'file') parts.push(`Library ${code(pointed.meaning.path)}`);
      else if (block !== undefined) parts.push(blockDoc(word.text, block));
    }
    if (at.value !== undefined) parts.push(...valueDoc(at.value, at.part));
    parts.push(...figuresOn(analysis, statement));
  } else return findingsOnly(analysis, offset);

  parts.push(...findingsAt(analysis, offset));
  const said = parts.filter((part) => part !== '');
  return said.length === 0 ? undefined : { start: place.start, end: place.end, markdown: said.join('\n\n---\n\n') };
}

function findingsOnly(analysis: Analysis, offset: number): Hover | undefined {
  const finding = analysis.findings.find((candidate) => holds(candidate, offset));
  return finding === undefined
    ? undefined
    : { start: finding.start, end: finding.end, markdown: findingsAt(analysis, offset).join('\n\n') };
}

/** The value at an offset, with the slot it fills where its line is known. */
function spotAt(
  statement: Statement,
  line: LineSpec | undefined,
  offset: number,
): { readonly value: Value | undefined; readonly part: Part | undefined; readonly place: Span } | undefined {
  if (line !== undefined) {
    const part = partsOf(line, statement.values).parts.find((candidate) => holds(candidate, offset));
    if (part !== undefined) return { value: part.value, part, place: part };
  }
  const value = statement.values.find((candidate) => holds(candidate, offset));
  return value === undefined ? undefined : { value, part: undefined, place: value };
}

/** A block's entry in the vocabulary. */
export function blockDoc(word: string, spec: BlockSpec): string {
  const required = Object.entries(spec.lines).flatMap(([key, line]) => (line.required === true ? [code(key)] : []));
  return [code(headerShape(word, spec)), escape(spec.doc), required.length === 0 ? '' : `Needs ${required.join(', ')}.`]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** A line's entry in the vocabulary: shape, documentation, each slot with its limits, example and source. */
export function lineDoc(word: string, spec: LineSpec): string {
  const slots = Object.values(spec.slots).map((slot) => '- ' + slotDoc(slot));
  return [
    code(lineShape(word, spec)),
    escape(spec.doc),
    slots.join('\n'),
    codeBlock(spec.example),
    spec.source === undefined ? '' : `Source: ${escape(spec.source)}`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** One slot in a sentence: what it is, its limits, what holds when it is not stated. */
export function slotDoc(slot: Slot): string {
  const lead = slot.after === undefined ? '' : `${code(slot.after)} `;
  const doc = lead + escape(slot.doc);
  switch (slot.kind) {
    case 'quantity': {
      const limits = ` Between ${escape(showLimit(slot.min, slot.dimension))} and ${escape(showLimit(slot.max, slot.dimension))}.`;
      return doc + limits + (slot.fallback === undefined ? '' : ` When not stated: ${escape(showLimit(slot.fallback, slot.dimension))}.`);
    }
    case 'tolerance':
      return doc + (slot.fallback === undefined ? '' : ` When not stated: ± ${threeDigits(slot.fallback * 100)} %.`);
    case 'count':
      return `${doc} A whole number from ${slot.min} to ${slot.max}.`;
    case 'choice':
      return `${doc} One of ${Object.keys(slot.options).map(code).join(', ')}.${slot.fallback === undefined ? '' : ` When not stated: ${code(slot.fallback)}.`}`;
    default:
      return doc;
  }
}

function valueDoc(value: Value, part: Part | undefined): string[] {
  const slot = part?.slot;
  if (part?.role === 'keyword' && slot !== undefined) return [slotDoc(slot)];
  const docs: string[] = [];
  if (value.kind === 'number') {
    for (const number of [value, value.upTo])
      if (number?.unit !== undefined) {
        const amount = Number(number.text.replace('\u2212', '-'));
        const others = inOtherUnits(amount, number.unit.text);
        const unit = unitNamed(number.unit.text);
        if (unit !== undefined)
          docs.push([code(`${number.text} ${number.unit.text}`), ...others.map(escape)].join(' = ') + ` (${escape(unit.says)})`);
      }
  }
  if (slot?.kind === 'choice' && value.kind === 'word') {
    const meaning = Object.hasOwn(slot.options, value.text) ? slot.options[value.text] : undefined;
    if (meaning !== undefined) docs.push(`${code(value.text)}: ${escape(meaning)}`);
  }
  if (slot !== undefined) docs.push(slotDoc(slot));
  return docs.length === 0 ? [] : [docs.join('\n\n')];
}

/** The source lines of a declaration, and the file when it is another one. */
function quote(analysis: Analysis, target: Target, textOf: TextOf): string {
  const text = target.path === analysis.path ? analysis.text : textOf(target.path);
  const where = target.path === analysis.path ? '' : `In ${code(target.path.slice(analysis.root.length).replace(/^\//, ''))}`;
  if (text === undefined) return where;
  const lines = text.slice(target.whole.start, target.whole.end).split(/\r\n|\r|\n/);
  const indent = Math.min(
    ...lines
      .slice(1)
      .filter((line) => line.trim() !== '')
      .map((line) => line.length - line.trimStart().length),
    columnOf(text, target.whole.start),
  );
  const shown = lines.map((line, index) => (index === 0 ? line : line.slice(Number.isFinite(indent) ? indent : 0)));
  const clipped =
    shown.length > mostLines ? [...shown.slice(0, mostLines - 1), `  # … and ${shown.length - mostLines + 1} more lines`] : shown;
  return [codeBlock(clipped.join('\n')), where].filter((part) => part !== '').join('\n\n');
}

function columnOf(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && !/[\r\n]/.test(text.charAt(at - 1))) at--;
  return offset - at;
}

/** Derivations of the figures whose place covers the head of this statement, then what else is held against a limit there. */
function figuresOn(analysis: Analysis, statement: Statement): string[] {
  const { installation } = analysis;
  const reader = readerOf(installation);
  const end = headEnd(statement);
  const isHere = (at: Span): boolean => at.start < end && at.end > statement.start && at.start >= statement.start;
  const figures = analysis.figures.filter((figure) => isHere(figure.at));
  const shown = new Set(figures.map((figure) => figure.id));
  const others = marginsOf(installation).filter(
    (margin) => isHere(margin.at) && !(margin.figure !== undefined && shown.has(margin.figure)),
  );
  const isOneOfSeveral = (figure: Figure): boolean => figures.some((other) => other !== figure && other.kind === figure.kind);
  return [
    ...figures.map((figure) =>
      derivation(figure, reader, marginsAbout(installation, figure.id), isOneOfSeveral(figure) ? subjectOf(figure) : undefined),
    ),
    others.map((margin) => marginInWords(margin, reader)).join('  \n'),
  ];
}

/** The rules that find something at an offset. The finding itself is shown by the editor beside this. */
function findingsAt(analysis: Analysis, offset: number): string[] {
  const names = new Set(analysis.findings.filter((finding) => holds(finding, offset)).map((finding) => finding.rule));
  return [...names].map(ruleDoc).filter((doc) => doc !== '');
}

/** A rule in short: what it says, why, what to do, its source, and whether it can be accepted. */
export function ruleDoc(name: string): string {
  const rule = ruleNamed(name);
  if (rule === undefined) return '';
  return [
    `**${escape(rule.name)}** (${rule.severity}): ${escape(rule.title)}`,
    escape(rule.why),
    `Source: ${escape(rule.source.text)}. ${rule.acceptable === 'warnings' ? 'As a warning it can be accepted with a reason, as an error it cannot.' : rule.acceptable ? 'It can be accepted with a reason.' : 'It cannot be accepted: no local reason may overrule it.'}`,
  ].join('\n\n');
}
