// What each word of a file is, as colours: block words, line words, names, quantities, choices; and which of them decide
// whether somebody can be hurt. What is not known, or of no use, has no token and so no colour.
import type { NumberValue, Span, Statement } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { nameIn, type Slot, unitNamed } from '../vocabulary/index.ts';
import { type Meaning, mentionsOf } from './names.ts';
import { blockSpecOf, innermost, lineSpecOf, partsOf, statementsOf } from './places.ts';

interface TokenType {
  /** For lists; undefined for a type of the protocol, which needs none. */
  readonly doc?: string;
  /** The type of the protocol that stands for it in editors that do not know it. */
  readonly like?: string;
  /** What themes call such a thing, where they know the type by no name. */
  readonly scopes: readonly string[];
}

/** The types of tokens: some of the protocol, some of our own. Their order is the legend. */
export const tokenTypes = {
  block: { doc: 'The word of a block: leaf, drive, panel.', like: 'keyword', scopes: ['storage.type.pintle', 'storage.type'] },
  fact: {
    doc: 'The word of a line: width, mass, opens.',
    like: 'property',
    scopes: ['support.type.property-name.pintle', 'support.type.property-name'],
  },
  keyword: { scopes: ['keyword.operator.word.pintle', 'keyword'] },
  variable: { scopes: ['variable.other.pintle', 'variable.other'] },
  class: { scopes: ['entity.other.inherited-class.pintle', 'entity.name.type'] },
  terminal: {
    doc: 'A terminal, a selector or an adjuster of a panel.',
    like: 'parameter',
    scopes: ['variable.parameter.pintle', 'variable.parameter'],
  },
  rule: { doc: 'The name of a rule.', like: 'decorator', scopes: ['entity.name.tag.pintle', 'entity.name.tag'] },
  number: { scopes: ['constant.numeric.pintle', 'constant.numeric'] },
  unit: { doc: 'The unit of a quantity.', like: 'number', scopes: ['keyword.other.unit.pintle', 'keyword.other.unit'] },
  enumMember: { scopes: ['constant.language.pintle', 'constant.language'] },
  date: { doc: 'A date.', like: 'number', scopes: ['constant.other.date.pintle', 'constant.other'] },
  string: { scopes: ['string.quoted.double.pintle', 'string'] },
} as const satisfies Readonly<Record<string, TokenType>>;
export type TokenKind = keyof typeof tokenTypes;

/** Their order is the legend: the first is the lowest bit. */
export const tokenModifiers = {
  declaration: { doc: undefined },
  safety: { doc: 'It decides whether somebody can be hurt.' },
} as const;

export interface Token extends Span {
  readonly kind: TokenKind;
  /** A name where it is given, and not where it is used. */
  readonly declares: boolean;
  /** A value on a line that the vocabulary calls safety-critical. Not its word: with that, half of a file would stand out. */
  readonly safety: boolean;
}

/** The tokens of a file, or of a stretch of it, in the order of the text; none holds a line end and no two overlap. */
export function tokens(analysis: Analysis, range?: Span): Token[] {
  const found: Token[] = [];
  const names = new Map(mentionsOf(analysis).map((mention) => [mention.start, mention]));
  const useless = analysis.findings.filter((finding) => finding.tag === 'unnecessary');
  let safety = false;

  const put = (at: Span, kind: TokenKind, declares = false): void => {
    if (at.end > at.start)
      found.push({ start: at.start, end: at.end, kind, declares, safety: safety && kind !== 'fact' && kind !== 'keyword' });
  };
  const name = (at: Span): void => {
    const mention = names.get(at.start);
    if (mention !== undefined && mention.end === at.end) put(at, kindOf(mention.meaning), mention.declares);
  };
  const number = (value: NumberValue, slot: Slot): void => {
    put({ start: value.start, end: value.start + value.text.length }, 'number');
    const unit = value.unit === undefined ? undefined : unitNamed(value.unit.text);
    if (value.unit !== undefined && unit !== undefined && measures(slot, unit.dimension)) put(value.unit, 'unit');
    if (value.plusMinus !== undefined) number(value.plusMinus, anyRatio);
    if (value.upTo !== undefined) number(value.upTo, slot);
  };

  for (const { statement, around } of statementsOf(analysis.installation.reading.tree)) {
    if (range !== undefined && (statement.end < range.start || statement.start > range.end)) continue;
    if (useless.some((finding) => finding.start <= statement.start && finding.end >= headEndOf(statement))) continue;
    const { spec, isTop } = innermost(around);
    const word = statement.word;
    if (word === undefined) continue;
    safety = false;
    const block = statement.body === undefined && !isTop ? undefined : blockSpecOf(spec, isTop, word.text);
    if (block !== undefined) {
      put(word, 'block');
      for (const value of statement.values) {
        if (value.kind === 'word') name(value);
        else if (value.kind === 'model') name(value.name);
        else if (value.kind === 'text') put(value, 'string');
      }
      continue;
    }
    const line = lineSpecOf(spec, isTop, word.text);
    if (line === undefined) continue;
    safety = line.safety === true;
    put(word, 'fact');
    for (const { role, slot, value } of partsOf(line, statement.values).parts) {
      if (slot === undefined) continue;
      if (role === 'keyword') put(value, 'keyword');
      else if (value.kind === 'number' && (slot.kind === 'quantity' || slot.kind === 'count' || slot.kind === 'range')) number(value, slot);
      else if (value.kind === 'text' && slot.kind === 'text') put(value, 'string');
      else if (value.kind === 'date' && slot.kind === 'date') put(value, 'date');
      else if (value.kind === 'word' && slot.kind === 'choice' && Object.hasOwn(slot.options, value.text)) put(value, 'enumMember');
      else if (nameIn(value, slot) !== undefined) name(value);
    }
  }
  // A line that is not finished may hold what stands on the next one; a colour for it may not.
  const tidy: Token[] = [];
  let end = 0;
  for (const token of found.sort((a, b) => a.start - b.start || a.end - b.end)) {
    if (
      token.start < end ||
      token.end > analysis.text.length ||
      (range !== undefined && (token.end <= range.start || token.start >= range.end)) ||
      hasLineEnd(analysis.text, token)
    )
      continue;
    tidy.push(token);
    end = token.end;
  }
  return tidy;
}

const anyRatio = { kind: 'quantity', dimension: 'ratio' } as Slot;

const headEndOf = (statement: Statement): number =>
  statement.values[statement.values.length - 1]?.end ?? statement.word?.end ?? statement.end;

/** Whether a quantity of that dimension can fill a slot. */
const measures = (slot: Slot, dimension: string): boolean =>
  slot.kind === 'quantity'
    ? slot.dimension === dimension
    : slot.kind === 'range' && (slot.dimensions as readonly string[]).includes(dimension);

function hasLineEnd(text: string, { start, end }: Span): boolean {
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return true;
  }
  return false;
}

function kindOf(meaning: Meaning): TokenKind {
  switch (meaning.kind) {
    case 'leaf':
    case 'device':
    case 'panel':
    case 'cable':
    case 'function':
      return 'variable';
    case 'terminal':
    case 'selector':
    case 'adjuster':
    case 'indicator':
      return 'terminal';
    case 'option':
      return 'enumMember';
    case 'rule':
      return 'rule';
    case 'file':
      return 'string';
    default:
      return 'class';
  }
}
