// What can be written next. All of it comes from the vocabulary table, the names of the file and the models it can see.
import { parse, scan, type Span, type Statement, type Value } from '../../grammar/index.ts';
import { folderOf, type Panel, type PanelModel, type Terminal } from '../model/index.ts';
import { allRules, ruleNamed } from '../rules/index.ts';
import { likelyUnit, unitNamed, unitsOf, type BlockSpec, type Dimension, type LineSpec, type ModelKind, type Slot } from '../vocabulary/index.ts';
import { anywhereLines, blocks, languageVersion, topLines } from '../vocabulary/index.ts';
import { blockDoc, lineDoc, ruleDoc, slotDoc } from './hover.ts';
import { code, codeBlock, escape } from './markdown.ts';
import { blocksAround, innermost, lineSpecOf, blockSpecOf, partsOf, type Enclosing, type LineParts } from './places.ts';
import type { Analysis } from './workspace.ts';

export type CompletionKind = 'block' | 'line' | 'keyword' | 'choice' | 'name' | 'model' | 'terminal' | 'unit' | 'rule' | 'file' | 'value';

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  /** What replaces `Completions.replace`. With `snippet`, `$1` and `${1:…}` are places to fill and `$` itself is `\$`. */
  readonly insert: string;
  readonly snippet: boolean;
  /** Offered in this order; smaller first. */
  readonly rank: number;
  /** True where something can be offered again right behind it. */
  readonly goesOn: boolean;
  /** Markdown. */
  readonly documentation: () => string;
}

export interface Completions {
  /** What is being typed and will be replaced. */
  readonly replace: Span;
  readonly items: readonly Completion[];
}

export interface CompletionContext {
  /** Absolute paths of the library files of the workspace. */
  readonly libraries: readonly string[];
}

type Draft = Partial<Completion> & Pick<Completion, 'label' | 'kind'>;

const item = (draft: Draft): Completion => ({
  detail: '',
  insert: draft.label,
  snippet: false,
  rank: 0,
  goesOn: false,
  documentation: () => '',
  ...draft,
});

/** What can stand at an offset. Works on half-typed lines; in a comment there is nothing to offer. */
export function completion(analysis: Analysis, offset: number, context: CompletionContext = { libraries: [] }): Completions {
  const { tree } = analysis.installation.reading;
  const typed = typedBefore(analysis.text, offset);
  if (typed === undefined) return { replace: { start: offset, end: offset }, items: [] };
  const around = blocksAround(tree, offset);
  return { replace: typed.replace, items: itemsFor(analysis, around, typed, context) };
}

/** The part of a line before the caret that belongs to the same statement, and the piece that is being typed. */
interface Typed {
  /** The finished part, read as a statement of its own; none at the start of a line. */
  readonly before: Statement | undefined;
  readonly partial: string;
  readonly replace: Span;
  /** The piece stands inside an open text. */
  readonly inText: boolean;
  /** The finished part ends with a colon: a model follows. */
  readonly afterColon: boolean;
  /** The finished part ends with `±`. */
  readonly afterSign: boolean;
  /** The number that the piece is the unit of, or that ends right before the blank. */
  readonly number: { readonly amount: number; readonly isRange: boolean } | undefined;
}

function typedBefore(text: string, offset: number): Typed | undefined {
  let start = offset;
  while (start > 0 && !/[\r\n]/.test(text.charAt(start - 1))) start--;
  const line = text.slice(start, offset);
  const { tokens, comments, problems } = scan(line);
  if (comments.length > 0) return undefined;
  // Only what stands behind the last brace of the line belongs to this statement.
  let from = 0;
  for (let i = 0; i < tokens.length; i++) if (tokens[i]?.tokenType.name === 'Open' || tokens[i]?.tokenType.name === 'Close') from = i + 1;
  const own = tokens.slice(from);
  const last = own[own.length - 1];
  const inText = last !== undefined && problems.some((problem) => problem.kind === 'text-not-closed');
  const touches = last !== undefined && last.endOffset === line.length && !inText;
  const isPiece = touches && last.tokenType.name === 'Word';
  if (touches && (last.tokenType.name === 'Number' || last.tokenType.name === 'Date')) return undefined;
  if (touches && last.tokenType.name === 'Text') return undefined;
  const pieceStart = inText ? last.startOffset + 1 : isPiece ? last.startOffset : line.length;
  const finished = inText || isPiece ? own.slice(0, -1) : own;
  const first = finished[0];
  const end = finished[finished.length - 1];
  const source = first === undefined || end === undefined ? '' : line.slice(first.startOffset, end.endOffset);
  const before = parse(source).items[0];
  const tail = finished[finished.length - 1]?.tokenType.name;
  const previous = finished[finished.length - 2]?.tokenType.name;
  return {
    before,
    partial: line.slice(pieceStart),
    replace: { start: start + pieceStart, end: endOfPiece(text, offset, inText) },
    inText,
    afterColon: tail === 'Colon',
    afterSign: tail === 'PlusMinus',
    number: tail === 'Number' ? { amount: Number(finished[finished.length - 1]?.image.replace('\u2212', '-')), isRange: previous === 'Dots' || previous === 'PlusMinus' } : undefined,
  };
}

/** The rest of the word or text that the caret stands in: it is replaced too. */
function endOfPiece(text: string, offset: number, inText: boolean): number {
  let end = offset;
  const stop = inText ? /["\r\n]/ : /[\s{}":,#±]/;
  while (end < text.length && !stop.test(text.charAt(end))) end++;
  return inText && text.charAt(end) !== '"' ? offset : end;
}

function itemsFor(analysis: Analysis, around: readonly Enclosing[], typed: Typed, context: CompletionContext): Completion[] {
  const { spec, isTop } = innermost(around);
  const word = typed.before?.word?.text;
  if (word === undefined) return typed.before === undefined && !typed.inText && !typed.afterColon ? startOfLine(analysis, around, typed.replace.start) : [];
  const values = typed.before?.values ?? [];
  const line = lineSpecOf(spec, isTop, word);
  const block = blockSpecOf(spec, isTop, word);
  if (line !== undefined && (block === undefined || typed.before?.body === undefined)) return inLine({ analysis, around, word, line, values, typed, context });
  return block === undefined ? [] : inHeader(analysis, word, block, values, typed);
}

// --- The first word of a line.

/** `at`: where the word stands that is being typed; what it says already is not in its own way. */
function startOfLine(analysis: Analysis, around: readonly Enclosing[], at: number): Completion[] {
  const { spec, isTop } = innermost(around);
  if (isTop) return topWords(analysis, at);
  if (spec === undefined) return [];
  const body = around[around.length - 1]?.statement.body;
  const used = new Set((body?.items ?? []).filter((statement) => statement.start !== at).map((statement) => statement.word?.text ?? ''));
  const items: Completion[] = [];
  for (const [word, line] of Object.entries(spec.lines) as [string, LineSpec][])
    if (line.many === true || !used.has(word)) items.push(lineItem(word, line, line.required === true && !used.has(word) ? 0 : 1));
  for (const [word, block] of Object.entries(spec.blocks) as [string, BlockSpec][]) items.push(blockItem(word, block, 2));
  for (const [word, line] of Object.entries(anywhereLines) as [string, LineSpec][]) if (!isModelWord(around[0]?.word ?? '')) items.push(lineItem(word, line, 3));
  return items;
}

function topWords(analysis: Analysis, at: number): Completion[] {
  const used = new Set(analysis.installation.reading.tree.items.filter((statement) => statement.start !== at).map((statement) => statement.word?.text ?? ''));
  const items: Completion[] = [];
  for (const [word, line] of Object.entries(topLines) as [string, LineSpec][])
    if (line.many === true || !used.has(word)) items.push(lineItem(word, line, word === 'language' ? 0 : 1));
  for (const [word, block] of Object.entries(blocks) as [keyof typeof blocks, BlockSpec][])
    if (block.single !== true || !used.has(word)) items.push(blockItem(word, block, isModelWord(word) ? 3 : 2));
  for (const [word, line] of Object.entries(anywhereLines) as [string, LineSpec][]) items.push(lineItem(word, line, 4));
  return items;
}

const isModelWord = (word: string): boolean => word.endsWith('-model');

/** A line's word, and the keyword that must follow it. Never a value: a value that nobody chose would stand as a fact. */
function lineItem(word: string, spec: LineSpec, rank: number): Completion {
  const first = Object.values(spec.slots)[0];
  const insert = first === undefined ? word : word + ' ' + (first.after !== undefined && first.optional !== true ? first.after + ' ' : '');
  return item({ label: word, kind: 'line', detail: spec.doc, insert, rank, goesOn: first !== undefined, documentation: () => lineDoc(word, spec) });
}

/** A block with the lines that it must have, each with its value still to be written. */
function blockItem(word: string, spec: BlockSpec, rank: number): Completion {
  let place = 0;
  const head = [word, spec.named ? `\${${++place}:name}` : '', spec.model === undefined ? '' : `: \${${++place}:model}`].filter((part) => part !== '').join(' ');
  const lines: string[] = [];
  for (const [key, line] of Object.entries(spec.lines) as [string, LineSpec][]) {
    if (line.required !== true) continue;
    const slot = Object.values(line.slots)[0];
    const options = slot?.kind === 'choice' ? Object.keys(slot.options) : [];
    lines.push(`  ${key}${slot?.after === undefined ? '' : ' ' + slot.after} ${options.length > 0 ? `\${${++place}|${options.join(',')}|}` : `$${++place}`}`);
  }
  return item({ label: word, kind: 'block', detail: spec.doc, insert: `${head} {\n${lines.map((line) => line + '\n').join('')}  $0\n}`, snippet: true, rank, documentation: () => blockDoc(word, spec) + '\n\n' + codeBlock(spec.example) });
}

// --- The header of a block.

function inHeader(analysis: Analysis, word: string, spec: BlockSpec, values: readonly Value[], typed: Typed): Completion[] {
  if (spec.model === undefined || typed.inText) return [];
  if (typed.afterColon) return modelItems(analysis, spec.model, '');
  const isNamed = values.some((value) => value.kind === 'word');
  const hasModel = values.some((value) => value.kind === 'model');
  return isNamed && !hasModel && word !== '' ? modelItems(analysis, spec.model, ': ') : [];
}

function modelItems(analysis: Analysis, kind: ModelKind, lead: string): Completion[] {
  const models: { readonly name: string; readonly title: string | undefined; readonly path: string }[] = [...analysis.shelf.models[kind].values()];
  return models.map(({ name, title, path }) =>
    item({
      label: lead + name,
      kind: 'model',
      detail: title ?? '',
      documentation: () => [title === undefined ? '' : escape(title), `${code(kind)} in ${code(relative(analysis.root, path))}`].filter((part) => part !== '').join('\n\n'),
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
}

function inLine(at: InLine): Completion[] {
  const { word, line, values, typed, context, analysis } = at;
  if (typed.inText) return word === 'use' && at.around.length === 0 ? fileItems(analysis, context) : [];
  if (typed.afterSign || typed.afterColon) return [];
  const number = typed.number;
  if (number !== undefined) {
    const parts = partsOf(line, values);
    const last = parts.parts[parts.parts.length - 1];
    const dimensions = dimensionsOf(last?.slot, values);
    if (dimensions.length > 0) return unitItems(dimensions, last?.slot, number.amount, typed.partial);
  }
  const parts = partsOf(line, values);
  const items: Completion[] = [];
  for (const [, slot] of parts.open) items.push(...slotItems(at, slot, parts));
  for (const [, slot] of parts.keyed)
    if (slot.after !== undefined) items.push(item({ label: slot.after, kind: 'keyword', detail: slot.doc, insert: slot.after + ' ', rank: slot.optional === true ? 3 : 1, goesOn: true, documentation: () => slotDoc(slot) }));
  const lastValue = values[values.length - 1];
  if (lastValue?.kind === 'number' && lastValue.plusMinus === undefined && lastValue.unit !== undefined) {
    const tolerance = Object.values(line.slots).find((slot) => slot.kind === 'tolerance');
    if (tolerance !== undefined) items.push(item({ label: '±', kind: 'keyword', detail: tolerance.doc, insert: '± ', rank: 3, goesOn: true, documentation: () => slotDoc(tolerance) }));
  }
  // A word that is already whole needs no list over the end of its line.
  return items.some((candidate) => candidate.label === typed.partial && !candidate.goesOn && candidate.kind === 'choice') && items.length === 1 ? [] : items;
}

/** The dimensions in which the unit of the last number can be: none where its slot takes no unit. */
function dimensionsOf(slot: Slot | undefined, values: readonly Value[]): readonly Dimension[] {
  const last = values[values.length - 1];
  if (last?.kind === 'number' && last.plusMinus !== undefined && last.upTo === undefined) return ['ratio'];
  if (slot?.kind === 'quantity') return [slot.dimension];
  if (slot?.kind !== 'range') return [];
  const low = last?.kind === 'number' && last.upTo !== undefined && last.unit !== undefined ? unitNamed(last.unit.text)?.dimension : undefined;
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

function slotItems(at: InLine, slot: Slot, parts: LineParts): Completion[] {
  const { analysis, word } = at;
  switch (slot.kind) {
    case 'choice': {
      const taken = new Set(slot.many === true ? wordsOf(parts, slot) : []);
      return Object.entries(slot.options)
        .filter(([option]) => !taken.has(option))
        .map(([option, meaning]) => item({ label: option, kind: 'choice', detail: meaning, rank: slot.optional === true ? 2 : 0, documentation: () => `${code(option)}: ${escape(meaning)}` }));
    }
    case 'count':
      return word === 'language' ? [item({ label: String(languageVersion), kind: 'value', detail: 'the version that this Pintle reads' })] : [];
    case 'text':
      return word === 'use' && at.around.length === 0 ? fileItems(analysis, at.context).map((file) => ({ ...file, insert: `"${file.insert}"` })) : [];
    case 'ref':
      return refItems(at, slot.to, new Set(wordsOf(parts, slot)), parts);
    default:
      return [];
  }
}

const wordsOf = (parts: LineParts, slot: Slot): string[] => parts.parts.flatMap((part) => (part.slot === slot && part.role === 'value' && part.value.kind === 'word' ? [part.value.text] : []));

function refItems(at: InLine, to: string, taken: ReadonlySet<string>, parts: LineParts): Completion[] {
  const { installation } = at.analysis;
  const outer = at.around[0]?.statement;
  const name = (label: string, kind: string, title: string | undefined, rank = 0): Completion =>
    item({ label, kind: 'name', detail: [kind, title ?? ''].filter((part) => part !== '').join(' · '), rank, documentation: () => `${escape(kind)} ${code(label)}${title === undefined ? '' : `: ${escape(title)}`}` });
  const free = <T extends { readonly name: string; readonly at: Statement }>(things: readonly T[]): readonly T[] => things.filter((thing) => thing.name !== '' && thing.at !== outer && !taken.has(thing.name));
  switch (to) {
    case 'leaf':
      return free(installation.leaves).map((leaf) => name(leaf.name, 'leaf', leaf.title));
    case 'cable':
      return free(installation.cables).map((cable) => name(cable.name, 'cable', cable.model?.title));
    case 'drive':
      return free(installation.drives).map((drive) => name(drive.name, 'drive', drive.model?.title));
    case 'control':
      return free(installation.controls).map((control) => name(control.name, 'control', undefined));
    case 'sensor':
      return free(installation.sensors).map((sensor) => name(sensor.name, 'sensor', sensor.model?.title, at.word === 'registered' && sensor.registered ? 1 : 0));
    case 'load':
      return [...refItems(at, 'device', taken, parts), ...free(installation.panels).map((panel) => name(panel.name, 'panel', panel.title ?? panel.model?.title))];
    case 'device':
      return [
        ...free(installation.sensors).map((sensor) => name(sensor.name, 'sensor', sensor.model?.title, at.word === 'wire' && sensor.wires.length > 0 ? 1 : 0)),
        ...free(installation.drives).map((drive) => name(drive.name, 'drive', drive.model?.title, at.word === 'wire' && isWired(installation.panels, drive.name) ? 1 : 0)),
        ...free(installation.controls).map((control) => name(control.name, 'control', undefined, at.word === 'wire' && control.wires.length > 0 ? 1 : 0)),
      ];
    case 'rule': {
      // An acceptance holds for the block that it stands in.
      const within = at.around[at.around.length - 1]?.statement ?? { start: 0, end: Number.POSITIVE_INFINITY };
      const found = new Set(at.analysis.findings.filter((finding) => finding.start >= within.start && finding.end <= within.end).map((finding) => finding.rule));
      return allRules
        .filter((rule) => rule.acceptable)
        .map((rule) => item({ label: rule.name, kind: 'rule', detail: rule.title, rank: found.has(rule.name) ? 0 : 1, documentation: () => (ruleNamed(rule.name) === undefined ? '' : ruleDoc(rule.name)) }));
    }
    case 'terminal':
      return terminalItems(at, taken, parts);
    case 'selector': {
      const panel = installation.panels.find((candidate) => candidate.at === outer);
      return [...(panel?.model?.selectors.values() ?? [])].map((selector) =>
        item({ label: selector.name, kind: 'name', detail: selector.title ?? '', rank: panel?.selections.some((selection) => selection.selector === selector) === true ? 1 : 0, goesOn: true }),
      );
    }
    case 'option': {
      const selector = parts.parts.find((part) => part.slot?.kind === 'ref' && part.slot.to === 'selector')?.value;
      const panel = installation.panels.find((candidate) => candidate.at === outer);
      const options = selector?.kind === 'word' ? (panel?.model?.selectors.get(selector.text)?.facts.option ?? []) : [];
      return options.map((option) => item({ label: option.name.text, kind: 'name', detail: option.meaning ?? '', documentation: () => escape(option.meaning ?? '') }));
    }
    default:
      return [];
  }
}

const isWired = (panels: readonly Panel[], name: string): boolean => panels.some((panel) => panel.wires.some((wire) => wire.device?.it.name === name));

/** Terminals of the panel's model: those that suit what is wired first, then the other free ones, then those in use. */
function terminalItems(at: InLine, taken: ReadonlySet<string>, parts: LineParts): Completion[] {
  const { installation, shelf } = at.analysis;
  const outer = at.around[0];
  if (outer === undefined) return [];
  const panel = installation.panels.find((candidate) => candidate.at === outer.statement);
  const model: PanelModel | undefined =
    panel?.model ?? [...shelf.models['panel-model'].values()].find((candidate) => candidate.at === outer.statement || (candidate.path === at.analysis.path && candidate.at.start === outer.statement.start));
  if (model === undefined) return [];
  const own = at.around.length === 1 && outer.word === 'panel-model';
  const used = new Set<string>();
  const lineStart = at.typed.replace.start;
  for (const line of [...(panel?.wires ?? []).map((wire) => ({ at: wire.fact.line, ends: wire.ends })), ...(panel?.links ?? []).map((link) => ({ at: link.fact.line, ends: link.ends }))])
    // What stands on this very line is not in the way of itself.
    if (!(lineStart >= line.at.start && lineStart <= line.at.end)) for (const end of line.ends) used.add(end.at.text);
  const roles = own ? new Set(['common']) : rolesWanted(at, parts);
  const wanted = commonsOf(model, taken);
  return [...model.terminals.values()]
    .filter((terminal) => !taken.has(terminal.name.text) && (!own || terminal.role === 'common'))
    .map((terminal, index) => {
      const name = terminal.name.text;
      const isUsed = terminal.role !== 'common' && used.has(name);
      const suits = wanted.has(name) ? 0 : roles.has(terminal.role) ? 1 : terminal.role === 'common' ? 2 : 3;
      return item({
        label: name,
        kind: 'terminal',
        detail: [terminal.role, terminal.contact ?? '', isUsed ? 'in use' : ''].filter((part) => part !== '').join(' · '),
        rank: (isUsed ? 10 : 0) + suits + index / 1000,
        documentation: () => terminalDoc(terminal, isUsed),
      });
    });
}

/** Commons of the terminals that the line already names: the next thing that it needs. */
function commonsOf(model: PanelModel, taken: ReadonlySet<string>): ReadonlySet<string> {
  const commons = new Set<string>();
  for (const name of taken) {
    const common = model.terminals.get(name)?.common;
    if (common !== undefined) commons.add(common.text);
  }
  return commons;
}

function rolesWanted(at: InLine, parts: LineParts): ReadonlySet<string> {
  const device = parts.parts.find((part) => part.key === 'device')?.value;
  const side = parts.parts.find((part) => part.key === 'part')?.value;
  if (device?.kind !== 'word') return new Set();
  if (side?.kind === 'word' && side.text === 'supply') return new Set(['supply-out']);
  if (side?.kind === 'word' && side.text === 'test') return new Set(['test-output']);
  const { installation } = at.analysis;
  if (installation.drives.some((drive) => drive.name === device.text)) return new Set(['motor']);
  if (installation.controls.some((control) => control.name === device.text)) return new Set(['command-input', 'stop-input']);
  const output = installation.sensors.find((sensor) => sensor.name === device.text)?.model?.facts.output?.value;
  if (output === 'two-wire') return new Set(['two-wire-input']);
  if (output === 'resistive') return new Set(['edge-input']);
  return output === 'relay' ? new Set(['safety-input']) : new Set();
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

// --- Paths.

/** The path from one file to another, as a `use` line writes it. */
export function usePath(from: string, to: string): string {
  const source = folderOf(from).split('/');
  const target = to.split('/');
  let same = 0;
  while (same < source.length && same < target.length - 1 && source[same] === target[same]) same++;
  return '../'.repeat(source.length - same) + target.slice(same).join('/');
}

function fileItems(analysis: Analysis, context: CompletionContext): Completion[] {
  const used = new Set(analysis.shelf.useOf.keys());
  return [...context.libraries]
    .filter((path) => path !== analysis.path && path.startsWith(analysis.root + '/'))
    .sort()
    .map((path) => {
      const label = usePath(analysis.path, path);
      return item({ label, kind: 'file', detail: used.has(path) ? 'in use' : '', rank: used.has(path) ? 1 : 0, documentation: () => code(relative(analysis.root, path)) });
    });
}
