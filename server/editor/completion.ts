// What can be written next, and only what fits: from the vocabulary table, the names of the file, what is wired and set
// already, and the models that it can see.
import type { Span, Statement, Value } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { type Device, folderOf, type Panel, type PanelModel, resolveUse, type Terminal } from '../model/index.ts';
import { allRules, ruleNamed } from '../rules/index.ts';
import {
  anywhereLines,
  asWritten,
  type BlockSpec,
  blocks,
  type Dimension,
  dayNumber,
  type LineSpec,
  languageVersion,
  likelyUnit,
  type ModelKind,
  modelKindOf,
  nameIn,
  type Slot,
  topLines,
  unitNamed,
  unitsOf,
} from '../vocabulary/index.ts';
import {
  coverable,
  devicesOf,
  feeding,
  lineFits,
  linkEnds,
  nextEdges,
  ownTerminals,
  partsToWire,
  terminalsFor,
  toRegister,
  undriven,
  unsetSelectors,
  type Writing,
} from './fitting.ts';
import { blockDoc, lineDoc, ruleDoc, slotDoc } from './hover.ts';
import { code, codeBlock, escape } from './markdown.ts';
import { blockSpecOf, blocksAround, type Enclosing, innermost, type LineParts, lineSpecOf, partsOf } from './places.ts';
import { asPlain, asSnippet, blockPieces, type Piece, templatePieces, templates } from './snippets.ts';
import { type Typed, typedBefore } from './typed.ts';

export type CompletionKind =
  | 'block'
  | 'line'
  | 'keyword'
  | 'choice'
  | 'name'
  | 'model'
  | 'terminal'
  | 'unit'
  | 'rule'
  | 'file'
  | 'value'
  | 'template';

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  /** What replaces `Completions.replace`. With `snippet`, `$1` and `${1:…}` are places to fill and `$` itself is `\$`. */
  readonly insert: string;
  readonly snippet: boolean;
  /** The same without places to fill, for those who know none. */
  readonly plain: string;
  /** Offered in this order; smaller first. */
  readonly rank: number;
  /** The one that surely comes next. */
  readonly preselect: boolean;
  /** True where something can be offered again right behind it. */
  readonly goesOn: boolean;
  /** Markdown. */
  readonly documentation: () => string;
}

export interface Completions {
  /** What is being typed and will be replaced. */
  readonly replace: Span;
  /** The part of it that stands before the caret. */
  readonly insert: Span;
  readonly items: readonly Completion[];
}

export interface CompletionContext {
  /** Absolute paths of the library files of the workspace. Asked for only where a path is written. */
  readonly libraries: readonly string[];
  /** The day, YYYY-MM-DD; without it no dates are offered. */
  readonly today?: string;
}

type Draft = Partial<Completion> & Pick<Completion, 'label' | 'kind'>;

const item = (draft: Draft): Completion => ({
  detail: '',
  insert: draft.label,
  plain: draft.insert ?? draft.label,
  snippet: false,
  rank: 0,
  preselect: false,
  goesOn: false,
  documentation: () => '',
  ...draft,
});

const withPlaces = (pieces: readonly Piece[]): Pick<Completion, 'insert' | 'snippet' | 'plain'> => ({
  insert: asSnippet(pieces),
  snippet: true,
  plain: asPlain(pieces),
});

/** What can stand at an offset. Works on half-typed lines; in a comment there is nothing to offer. */
export function completion(analysis: Analysis, offset: number, context: CompletionContext = { libraries: [] }): Completions {
  const { tree } = analysis.installation.reading;
  const typed = typedBefore(analysis.text, offset);
  if (typed === undefined) return { replace: { start: offset, end: offset }, insert: { start: offset, end: offset }, items: [] };
  const around = blocksAround(tree, offset);
  return { replace: typed.replace, insert: { start: typed.replace.start, end: offset }, items: itemsFor(analysis, around, typed, context) };
}

function itemsFor(analysis: Analysis, around: readonly Enclosing[], typed: Typed, context: CompletionContext): Completion[] {
  const { spec, isTop } = innermost(around);
  const word = typed.before?.word?.text;
  if (word === undefined)
    return typed.before === undefined && !typed.inText && !typed.afterColon
      ? startOfLine(analysis, around, typed.start, isLastOfLine(analysis.text, typed.replace.end))
      : [];
  const values = typed.before?.values ?? [];
  const line = lineSpecOf(spec, isTop, word);
  const block = blockSpecOf(spec, isTop, word);
  if (line !== undefined && (block === undefined || typed.before?.body === undefined))
    return inLine({ analysis, around, word, line, values, typed, context, writing: (span) => span.start === typed.start });
  return block === undefined ? [] : inHeader(analysis, word, block, values, typed);
}

// --- The first word of a line.

/** True where nothing but a remark follows on the line: else a whole block would be torn in two by what stands there. */
const isLastOfLine = (text: string, end: number): boolean => /^[^\S\r\n]*(?:#.*)?$/m.exec(text.slice(end))?.index === 0;

/** `at`: where the word stands that is being typed; what it says already is not in its own way. */
function startOfLine(analysis: Analysis, around: readonly Enclosing[], at: number, isLast: boolean): Completion[] {
  const { spec, isTop } = innermost(around);
  if (isTop) return topWords(analysis, at, isLast);
  const block = around[around.length - 1];
  if (spec === undefined || block === undefined) return [];
  const writing: Writing = (span) => span.start === at;
  const used = new Set(
    (block.statement.body?.items ?? []).filter((statement) => !writing(statement)).map((statement) => statement.word?.text ?? ''),
  );
  const items: Completion[] = [];
  for (const [word, line] of Object.entries<LineSpec>(spec.lines))
    if ((line.many === true || !used.has(word)) && lineFits(analysis.installation, block.statement, block.word, word, writing))
      items.push(lineItem(word, line, line.required === true && !used.has(word) ? 0 : 1));
  for (const [word, inner] of Object.entries<BlockSpec>(spec.blocks))
    if (inner.single !== true || !used.has(word)) items.push(blockItem(word, inner, 2, isLast));
  if (!isModelWord(around[0]?.word ?? ''))
    for (const [word, line] of Object.entries<LineSpec>(anywhereLines)) items.push(lineItem(word, line, rankAnywhere(word)));
  return items;
}

/** Promises are for files that teach or test. */
const rankAnywhere = (word: string): number => (word === 'accept' ? 4 : 5);

function topWords(analysis: Analysis, at: number, isLast: boolean): Completion[] {
  const used = new Set(
    analysis.installation.reading.tree.items.filter((statement) => statement.start !== at).map((statement) => statement.word?.text ?? ''),
  );
  const items: Completion[] = [];
  for (const [word, line] of Object.entries<LineSpec>(topLines))
    if (line.many === true || !used.has(word))
      items.push(lineItem(word, line, word === 'language' ? 0 : word === 'use' ? 1 : rankAnywhere(word)));
  for (const [word, block] of Object.entries<BlockSpec>(blocks))
    if (block.single !== true || !used.has(word)) items.push(blockItem(word, block, isModelWord(word) ? 3 : 2, isLast));
  for (const template of isLast ? templates() : []) {
    const pieces = templatePieces(template, used);
    items.push(
      item({
        label: template.name,
        kind: 'template',
        detail: template.doc,
        ...withPlaces(pieces),
        rank: 3.5,
        documentation: () => escape(template.doc) + '\n\n' + codeBlock(asPlain(pieces)),
      }),
    );
  }
  for (const [word, line] of Object.entries<LineSpec>(anywhereLines)) items.push(lineItem(word, line, rankAnywhere(word)));
  return items;
}

const isModelWord = (word: string): boolean => word.endsWith('-model');

/** A line's word, and the keyword that must follow it. Never a value: a value that nobody chose would stand as a fact. */
function lineItem(word: string, spec: LineSpec, rank: number): Completion {
  const first = Object.values<Slot>(spec.slots)[0];
  const insert = first === undefined ? word : word + ' ' + (first.after !== undefined && first.optional !== true ? first.after + ' ' : '');
  return item({
    label: word,
    kind: 'line',
    detail: spec.doc,
    insert,
    rank,
    goesOn: first !== undefined,
    documentation: () => lineDoc(word, spec),
  });
}

/** A block with the lines that it must have, each with its value still to be written; only its word where more follows it. */
const blockItem = (word: string, spec: BlockSpec, rank: number, isLast: boolean): Completion =>
  item({
    label: word,
    kind: 'block',
    detail: spec.doc,
    ...(isLast ? withPlaces(blockPieces(word, spec)) : {}),
    rank,
    documentation: () => blockDoc(word, spec) + '\n\n' + codeBlock(spec.example),
  });

// --- The header of a block.

function inHeader(analysis: Analysis, word: string, spec: BlockSpec, values: readonly Value[], typed: Typed): Completion[] {
  const kind = modelKindOf(spec);
  if (kind === undefined || typed.inText) return [];
  if (typed.afterColon) return modelItems(analysis, kind, '');
  const isNamed = values.some((value) => value.kind === 'word');
  const hasModel = values.some((value) => value.kind === 'model');
  return isNamed && !hasModel && word !== '' ? modelItems(analysis, kind, ': ') : [];
}

function modelItems(analysis: Analysis, kind: ModelKind, lead: string): Completion[] {
  const models: { readonly name: string; readonly title: string | undefined; readonly path: string }[] = [
    ...analysis.shelf.models[kind].values(),
  ];
  return models.map(({ name, title, path }) =>
    item({
      label: lead + name,
      kind: 'model',
      detail: title ?? '',
      documentation: () =>
        [title === undefined ? '' : escape(title), `${code(kind)} in ${code(relative(analysis.root, path))}`]
          .filter((part) => part !== '')
          .join('\n\n'),
    }),
  );
}

const relative = (root: string, path: string): string => (path.startsWith(root + '/') ? path.slice(root.length + 1) : path);

// --- The rest of a line.

interface InLine {
  readonly analysis: Analysis;
  readonly around: readonly Enclosing[];
  readonly word: string;
  readonly line: LineSpec;
  readonly values: readonly Value[];
  readonly typed: Typed;
  readonly context: CompletionContext;
  readonly writing: Writing;
}

function inLine(at: InLine): Completion[] {
  const { word, line, values, typed, context, analysis } = at;
  if (typed.inText) return word === 'use' && at.around.length === 0 ? fileItems(analysis, context, at.writing) : [];
  if (typed.afterSign || typed.afterColon) return [];
  const number = typed.number;
  if (number !== undefined) {
    const parts = partsOf(line, values);
    const last = parts.parts[parts.parts.length - 1];
    const dimensions = dimensionsOf(last?.slot, values);
    if (dimensions.length > 0) return unitItems(dimensions, last?.slot, number.amount, typed.partial);
  }
  // A sign that follows belongs to the number before it: nothing comes between the two.
  if (/^[^\S\r\n]*(?:±|\+-|\.\.)/.test(analysis.text.slice(typed.replace.end, typed.replace.end + 40))) return [];
  const parts = partsOf(line, values);
  const items: Completion[] = [];
  for (const [key, slot] of parts.open) items.push(...slotItems(at, key, slot, parts));
  const keyed = parts.keyed.filter(([, slot]) => slot.after !== undefined && keywordFits(at, slot.after, parts));
  for (const [, slot] of keyed)
    if (slot.after !== undefined) {
      const isOnly = items.length === 0 && keyed.length === 1;
      items.push(
        item({
          label: slot.after,
          kind: 'keyword',
          detail: slot.doc,
          insert: slot.after + ' ',
          rank: slot.optional === true ? 3 : 1,
          preselect: isOnly && slot.optional !== true,
          goesOn: true,
          documentation: () => slotDoc(slot),
        }),
      );
    }
  const lastValue = values[values.length - 1];
  if (lastValue?.kind === 'number' && lastValue.plusMinus === undefined && lastValue.unit !== undefined) {
    const tolerance = Object.values<Slot>(line.slots).find((slot) => slot.kind === 'tolerance');
    if (tolerance !== undefined)
      items.push(
        item({
          label: '±',
          kind: 'keyword',
          detail: tolerance.doc,
          insert: '± ',
          rank: 3,
          goesOn: true,
          documentation: () => slotDoc(tolerance),
        }),
      );
  }
  // A word that is already whole needs no list over the end of its line.
  return items.some((candidate) => candidate.label === typed.partial && !candidate.goesOn && candidate.kind === 'choice') &&
    items.length === 1
    ? []
    : items;
}

/** The dimensions in which the unit of the last number can be: none where its slot takes no unit. */
function dimensionsOf(slot: Slot | undefined, values: readonly Value[]): readonly Dimension[] {
  const last = values[values.length - 1];
  if (last?.kind === 'number' && last.plusMinus !== undefined && last.upTo === undefined) return ['ratio'];
  if (slot?.kind === 'quantity') return [slot.dimension];
  if (slot?.kind !== 'range') return [];
  const low =
    last?.kind === 'number' && last.upTo !== undefined && last.unit !== undefined ? unitNamed(last.unit.text)?.dimension : undefined;
  return low !== undefined && slot.dimensions.includes(low) ? [low] : slot.dimensions;
}

/** Units of the right dimension, those in which the number makes sense first. */
function unitItems(dimensions: readonly Dimension[], slot: Slot | undefined, amount: number, partial: string): Completion[] {
  const fitting = dimensions.flatMap((dimension) => unitsOf(dimension));
  // The unit is whole: a list would only take the next key.
  if (partial !== '' && fitting.some((unit) => unit.name === partial)) return [];
  const likely = slot?.kind === 'quantity' ? likelyUnit(slot, amount) : undefined;
  const isFit = (si: number): boolean => slot?.kind !== 'quantity' || (si >= slot.min && si <= slot.max);
  return fitting.map((unit, index) => {
    const si = unit.toSi(amount);
    return item({
      label: unit.name,
      kind: 'unit',
      detail: unit.says,
      rank: unit === likely ? 0 : isFit(si) ? 1 + index / 100 : 2 + index / 100,
      documentation: () => `${escape(unit.says)} (${escape(unit.dimension)})${isFit(si) ? '' : '; outside what can be meant here'}`,
    });
  });
}

function slotItems(at: InLine, key: string, slot: Slot, parts: LineParts): Completion[] {
  const { analysis, word } = at;
  switch (slot.kind) {
    case 'choice': {
      const taken = new Set(slot.many === true ? wordsOf(parts, slot) : []);
      return Object.entries(slot.options)
        .filter(([option]) => !taken.has(option) && choiceFits(at, key, option, parts))
        .map(([option, meaning]) =>
          item({
            label: option,
            kind: 'choice',
            detail: meaning,
            rank: slot.optional === true ? 2 : 0,
            documentation: () => `${code(option)}: ${escape(meaning)}`,
          }),
        );
    }
    case 'count':
      return word === 'language'
        ? [
            item({
              label: String(languageVersion),
              kind: 'value',
              detail: 'the version that this Pintle reads',
              preselect: true,
              documentation: () => 'The version of the language that this Pintle reads.',
            }),
          ]
        : [];
    case 'text':
      if (word === 'use' && at.around.length === 0)
        return fileItems(analysis, at.context, at.writing).map((file) => ({
          ...file,
          insert: `"${file.insert}"`,
          plain: `"${file.plain}"`,
        }));
      return [
        item({
          label: '"…"',
          kind: 'value',
          detail: slot.doc,
          ...withPlaces([{ key: 'text', quoted: 'form' }]),
          rank: slot.optional === true ? 2 : 0,
          documentation: () => slotDoc(slot),
        }),
      ];
    case 'date':
      return dateItems(at, slot);
    case 'ref':
      return refItems(at, slot.to, new Set(wordsOf(parts, slot)), parts);
    default:
      return [];
  }
}

const wordsOf = (parts: LineParts, slot: Slot): string[] =>
  parts.parts.flatMap((part) =>
    part.slot === slot && part.role === 'value'
      ? (nameIn(part.value, slot)?.text ?? (part.value.kind === 'word' ? part.value.text : []))
      : [],
  );
const wordAt = (parts: LineParts, key: string): string | undefined => {
  const value = parts.parts.find((part) => part.key === key && part.role === 'value')?.value;
  return value?.kind === 'word' ? value.text : undefined;
};

/** False for a choice that what the file says rules out here. */
function choiceFits(at: InLine, key: string, option: string, parts: LineParts): boolean {
  const { installation } = at.analysis;
  const others = (word: string): Statement[] =>
    (at.around[at.around.length - 1]?.statement.body?.items ?? []).filter((item) => item.word?.text === word && !at.writing(item));
  const isSaid = (word: string): boolean =>
    others(word).some((line) => line.values.some((value) => value.kind === 'word' && value.text === option));
  switch (at.word) {
    case 'wire': {
      const device = deviceNamed(at, wordAt(parts, 'device'));
      return (
        key !== 'part' ||
        (option !== 'signal' &&
          (device === undefined || partsToWire(installation, device, at.writing).includes(option as 'supply' | 'test')))
      );
    }
    case 'on': {
      if (key !== 'edge') return true;
      const leaf = installation.leaves.find((candidate) => candidate.name === wordAt(parts, 'leaf'));
      return !(option === 'hinge-edge' && leaf?.facts.slides !== undefined) && !(option === 'post-edge' && leaf?.facts.opens !== undefined);
    }
    case 'lag':
    case 'order':
      return key !== 'movement' || !isSaid(at.word);
    case 'sets':
      return !(at.around[0]?.statement.body?.items ?? []).some(
        (block) =>
          block.word?.text === 'adjuster' &&
          block.body?.items.some(
            (line) =>
              line.word?.text === 'sets' &&
              !at.writing(line) &&
              line.values.some((value) => value.kind === 'word' && value.text === option),
          ) === true,
      );
    case 'shows':
      return key !== 'state' || !isSaid('shows');
    default:
      return true;
  }
}

/** False for a keyword whose part has been said on another line, and for contacts in series where there is no other. */
function keywordFits(at: InLine, keyword: string, parts: LineParts): boolean {
  if (keyword === 'in-series-with') return hasOtherContact(at, parts);
  if (at.word !== 'wire' || keyword !== 'to' || wordAt(parts, 'part') !== undefined) return true;
  const device = deviceNamed(at, wordAt(parts, 'device'));
  return device === undefined || partsToWire(at.analysis.installation, device, at.writing).includes('signal');
}

/** True where the line being written names an input for a contact, and another line brings a contact to it. */
function hasOtherContact({ analysis, around, writing }: InLine, parts: LineParts): boolean {
  const outer = around[0]?.statement;
  const panel = analysis.installation.panels.find((candidate) => candidate.at === outer);
  const named = new Set(
    parts.parts.flatMap(({ key, role, value }) => (key === 'to' && role === 'value' && value.kind === 'word' ? [value.text] : [])),
  );
  return (
    panel?.wires.some(
      (wire) =>
        wire.part === 'signal' &&
        !writing(wire.fact.line) &&
        wire.ends.some(({ at, terminal }) => named.has(at.text) && (terminal?.role === 'safety-input' || terminal?.role === 'stop-input')),
    ) === true
  );
}

const deviceNamed = (at: InLine, name: string | undefined): Device | undefined =>
  name === undefined ? undefined : devicesOf(at.analysis.installation).find((device) => device.it.name === name);

// --- Names.

const nameItem = (label: string, kind: string, title: string | undefined, rank = 0): Completion =>
  item({
    label,
    kind: 'name',
    detail: [kind, title ?? ''].filter((part) => part !== '').join(' · '),
    rank,
    documentation: () => `${escape(kind)} ${code(label)}${title === undefined ? '' : `: ${escape(title)}`}`,
  });

const deviceItem = ({ kind, it }: Device, rank = 0): Completion =>
  nameItem(it.name, kind, kind === 'control' ? undefined : it.model?.title, rank);

/** Where there is only one, it is the one. */
const chosen = (items: Completion[]): Completion[] =>
  items.length === 1 && items[0] !== undefined ? [{ ...items[0], preselect: true }] : items;

function refItems(at: InLine, to: string, taken: ReadonlySet<string>, parts: LineParts): Completion[] {
  const { analysis, word, writing } = at;
  const { installation } = analysis;
  const outer = at.around[0]?.statement;
  const panel = installation.panels.find((candidate) => candidate.at === outer);
  const isFree = (thing: { readonly name: string; readonly at: Statement }): boolean =>
    thing.name !== '' && thing.at !== outer && !taken.has(thing.name);
  switch (to) {
    case 'leaf': {
      const leaves =
        word === 'moves'
          ? undriven(
              installation,
              installation.drives.find((drive) => drive.at === outer),
            )
          : word === 'closes'
            ? coverable(
                installation,
                installation.leaves.find((leaf) => leaf.at === outer),
              )
            : installation.leaves;
      return chosen(leaves.filter(isFree).map((leaf) => nameItem(leaf.name, 'leaf', leaf.title)));
    }
    case 'cable':
      return installation.cables.filter(isFree).map((cable) => nameItem(cable.name, 'cable', cable.model?.title));
    case 'sensor': {
      const sensors =
        word === 'chains-into'
          ? nextEdges(
              installation,
              installation.sensors.find((sensor) => sensor.at === outer),
            )
          : word === 'registered' && panel !== undefined
            ? toRegister(installation, panel, writing)
            : installation.sensors;
      return chosen(sensors.filter(isFree).map((it) => deviceItem({ kind: 'sensor', it })));
    }
    case 'drive':
      return installation.drives.filter(isFree).map((it) => deviceItem({ kind: 'drive', it }));
    case 'control':
      return installation.controls.filter(isFree).map((it) => deviceItem({ kind: 'control', it }));
    case 'load': {
      const isPart = word === 'parts';
      const fed = new Set(isPart ? [] : installation.cables.filter((cable) => cable.at !== outer).map((cable) => cable.load?.it));
      return [
        ...devicesOf(installation)
          .filter((device) => isFree(device.it) && !(isPart && device.kind === 'control'))
          .map((device) => deviceItem(device, fed.has(device.it) ? 1 : 0)),
        ...installation.panels.filter(isFree).map((it) => nameItem(it.name, 'panel', it.title ?? it.model?.title, fed.has(it) ? 1 : 0)),
      ];
    }
    case 'device':
      return devicesOf(installation).flatMap((device) => {
        if (!isFree(device.it)) return [];
        const left = word === 'wire' ? partsToWire(installation, device, writing) : ['signal'];
        return left.length === 0 ? [] : [deviceItem(device, left.includes('signal') ? 0 : 1)];
      });
    case 'rule':
      return ruleItems(at);
    case 'terminal':
      return terminalItems(at, panel, taken, parts);
    case 'selector':
      return panel === undefined
        ? []
        : chosen(
            unsetSelectors(panel, writing).map((selector) =>
              item({
                label: selector.name,
                kind: 'name',
                detail: selector.title ?? '',
                goesOn: true,
                documentation: () => `selector ${code(selector.name)}${selector.title === undefined ? '' : `: ${escape(selector.title)}`}`,
              }),
            ),
          );
    case 'option': {
      const options = panel?.model?.selectors.get(wordAt(parts, 'selector') ?? '')?.facts.option ?? [];
      return options.map((option) =>
        item({
          label: option.name.text,
          kind: 'name',
          detail: option.meaning ?? '',
          documentation: () => `${code(option.name.text)}${option.meaning === undefined ? '' : `: ${escape(option.meaning)}`}`,
        }),
      );
    }
    default:
      return [];
  }
}

/** Rules that find something in this block first, those that only find it elsewhere after all others. */
function ruleItems(at: InLine): Completion[] {
  const within = at.around[at.around.length - 1]?.statement ?? { start: 0, end: Number.POSITIVE_INFINITY };
  const counts = new Map<string, number>();
  for (const finding of at.analysis.findings)
    if (finding.start >= within.start && finding.end <= within.end) counts.set(finding.rule, (counts.get(finding.rule) ?? 0) + 1);
  return allRules
    .filter((rule) => rule.acceptable || at.word !== 'accept')
    .map((rule) => {
      const count = counts.get(rule.name) ?? 0;
      const found = count === 0 ? '' : count === 1 ? '1 finding here · ' : `${count} findings here · `;
      return item({
        label: rule.name,
        kind: 'rule',
        detail: found + rule.title,
        rank: count > 0 ? 0 : 1,
        documentation: () => (ruleNamed(rule.name) === undefined ? '' : ruleDoc(rule.name)),
      });
    });
}

function terminalItems(at: InLine, panel: Panel | undefined, taken: ReadonlySet<string>, parts: LineParts): Completion[] {
  const { analysis, word, writing } = at;
  const outer = at.around[0];
  if (outer === undefined) return [];
  const terminal = (it: Terminal, rank: number, isUsed = false): Completion =>
    item({
      label: asWritten(it.name.text),
      kind: 'terminal',
      detail: [it.role, it.contact ?? '', isUsed ? 'in use' : ''].filter((part) => part !== '').join(' · '),
      rank,
      documentation: () => terminalDoc(it, isUsed),
    });
  if (outer.word === 'panel-model') {
    const model = ownModel(analysis, outer.statement);
    return model === undefined
      ? []
      : chosen(
          ownTerminals(model, word, writing)
            .filter((it) => !taken.has(it.name.text))
            .map((it, index) => terminal(it, index / 1000)),
        );
  }
  const model = panel?.model;
  if (panel === undefined || model === undefined) return [];
  if (word === 'link') return chosen(linkEnds(panel, taken, writing).map((it, index) => terminal(it, index / 1000)));
  if (word === 'accessory')
    return chosen(
      feeding(model)
        .filter((it) => !taken.has(it.name.text))
        .map((it, index) => terminal(it, index / 1000)),
    );
  const part = wordAt(parts, 'part');
  const choices = terminalsFor(
    panel,
    model,
    deviceNamed(at, wordAt(parts, 'device')),
    part === 'supply' || part === 'test' ? part : 'signal',
    taken,
    writing,
  );
  return chosen(choices.map(({ terminal: it, rank, isUsed }) => terminal(it, rank, isUsed)));
}

/** The panel model that a block of the same file declares. */
function ownModel(analysis: Analysis, statement: Statement): PanelModel | undefined {
  for (const model of analysis.shelf.models['panel-model'].values())
    if (model.at === statement || (model.path === analysis.path && model.at.start === statement.start)) return model;
  return undefined;
}

const terminalDoc = (terminal: Terminal, isUsed: boolean): string =>
  [
    `${code(terminal.name.text)}: ${escape(terminal.role)}`,
    terminal.contact === undefined ? '' : `Expects a ${escape(terminal.contact)} contact.`,
    terminal.common === undefined ? '' : `Returns to ${code(terminal.common.text)}.`,
    isUsed ? 'Something is wired to it already.' : '',
  ]
    .filter((part) => part !== '')
    .join('\n\n');

// --- Dates.

/** An acceptance is offered an end; a day on which something was done is offered today. No other day can be known here. */
function dateItems(at: InLine, slot: Slot): Completion[] {
  const { today } = at.context;
  if (today === undefined || dayNumber(today) === undefined) return [];
  const date = (label: string, detail: string, rank: number): Completion =>
    item({ label, kind: 'value', detail, rank, documentation: () => `${code(label)}: ${escape(detail)}` });
  if (at.word === 'accept') return [3, 6, 12].map((months, rank) => date(monthsAfter(today, months), `in ${months} months`, rank));
  return slot.after === undefined ? [date(today, 'today', 0)] : [];
}

/** The same day some months later; the last day of the month where it has no such day. */
export function monthsAfter(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const total = year * 12 + month - 1 + months;
  const two = (number: number): string => String(number).padStart(2, '0');
  for (let last = date; last > 27; last--) {
    const found = `${String(Math.floor(total / 12)).padStart(4, '0')}-${two((total % 12) + 1)}-${two(last)}`;
    if (dayNumber(found) !== undefined) return found;
  }
  return `${String(Math.floor(total / 12)).padStart(4, '0')}-${two((total % 12) + 1)}-${two(Math.min(date, 27))}`;
}

// --- Paths.

/** The path from one file to another, as a `use` line writes it. */
export function usePath(from: string, to: string): string {
  const source = folderOf(from).split('/');
  const target = to.split('/');
  let same = 0;
  while (same < source.length && same < target.length - 1 && source[same] === target[same]) same++;
  return '../'.repeat(source.length - same) + target.slice(same).join('/');
}

function fileItems(analysis: Analysis, context: CompletionContext, writing: Writing): Completion[] {
  const { reading } = analysis.installation;
  const direct = new Set(reading.uses.filter((use) => !writing(use.line)).map((use) => targetOf(analysis, use.path)));
  const reached = new Set(analysis.shelf.useOf.keys());
  return [...context.libraries]
    .filter((path) => path !== analysis.path && path.startsWith(analysis.root + '/') && !direct.has(path))
    .sort()
    .map((path) => {
      const label = usePath(analysis.path, path);
      const isKnown = reached.has(path) && !reading.uses.some((use) => writing(use.line) && targetOf(analysis, use.path) === path);
      return item({
        label,
        kind: 'file',
        detail: isKnown ? 'known through another library' : '',
        rank: isKnown ? 1 : 0,
        documentation: () => code(relative(analysis.root, path)),
      });
    });
}

function targetOf(analysis: Analysis, use: string): string | undefined {
  const target = resolveUse(analysis.path, use, analysis.root);
  return 'path' in target ? target.path : undefined;
}
