// What depends on a value, and what a value is worked out from. Not told by a list that somebody keeps: the value is
// changed and the file is worked out again; what is then different depends on it, and nothing else does.
import { type NumberValue, parse, type Span, type Statement } from '../../grammar/index.ts';
import type { Analysis, Steps } from '../engine/index.ts';
import { nameOfFigure, shownValue } from '../engine/inside.ts';
import { type Figure, idOf } from '../figures/index.ts';
import { hasOwnModels, resolve } from '../model/index.ts';
import { marginsOf, ruleNamed } from '../rules/index.ts';
import { readerOf, readFile, type Slot, unitNamed } from '../vocabulary/index.ts';
import { keyOf, mentionsOf } from './names.ts';
import { type Enclosing, headEnd, innermost, lineSpecOf, partsOf, statementAt, statementsOf } from './places.ts';

/** A line or block of the file, a figure, or a rule. */
export interface Dependence {
  readonly kind: 'fact' | 'figure' | 'rule';
  /** Finds it again in the same text: the start of a line, the id of a figure, the name of a rule. */
  readonly key: string;
  /** `mass 165 kg`, `run time 17.9 s`, `lag-too-small`. */
  readonly label: string;
  /** The block that it is of. */
  readonly detail: string;
  /** The line, the place of the figure, the place of which the rule speaks. */
  readonly at: Span;
}

/** Works out another text of the same file, whole and in small steps. */
export type Judge = (text: string) => Steps;

/** Rules that only say that something is not written: that they would speak without the line is no news. */
const aboutAbsence: ReadonlySet<string> = new Set(['fact-missing']);
const longestLabel = 60;

/** What stands at an offset: the line or block, and the figures that are shown on it. */
export function dependencesAt(analysis: Analysis, offset: number): Dependence[] {
  const found = statementAt(analysis.installation.reading.tree, offset);
  if (found === undefined) return [];
  const fact = factOf(analysis, found.statement, found.around);
  if (fact === undefined) return [];
  const end = headEnd(found.statement);
  return [
    fact,
    ...analysis.figures
      .filter(({ at }) => at.start < end && at.end > found.statement.start && at.start >= found.statement.start)
      .map((figure) => figureNode(analysis, figure)),
  ];
}

/** One of them: behind the last value, where values are shown, the first of the figures; elsewhere the line or block itself. */
export function dependenceAt(analysis: Analysis, offset: number): Dependence | undefined {
  const [fact, figure] = dependencesAt(analysis, offset);
  return fact !== undefined && figure !== undefined && offset >= fact.at.end ? figure : fact;
}

/** The same again, from its key; undefined where the text has changed so that it is not there. */
export function dependenceOf(analysis: Analysis, kind: Dependence['kind'], key: string): Dependence | undefined {
  if (kind === 'figure') {
    const figure = analysis.figures.find((candidate) => candidate.id === key);
    return figure === undefined ? undefined : figureNode(analysis, figure);
  }
  if (kind === 'rule') return undefined;
  const found = statementAt(analysis.installation.reading.tree, Number(key));
  return found === undefined || String(found.statement.start) !== key ? undefined : factOf(analysis, found.statement, found.around);
}

/** What is different when this is: figures and rules. It yields between two workings, for whoever must not work long at a time. */
export function* dependents(analysis: Analysis, of: Dependence, judge: Judge): Generator<unknown, Dependence[]> {
  if (of.kind === 'rule') return [];
  if (of.kind === 'figure') {
    // A figure is held against limits, and other figures name it among what went into them.
    const using = analysis.figures.filter((figure) => figure.id !== of.key && namesOf(figure).includes(of.key));
    const rules = marginsOf(analysis.installation).filter((margin) => margin.figure === of.key);
    return [
      ...using.map((figure) => figureNode(analysis, figure)),
      ...unique(rules.map((margin) => ruleNode(margin.rule.name, margin.at))),
    ];
  }
  const found = statementAt(analysis.installation.reading.tree, Number(of.key));
  if (found === undefined) return [];
  const figures = new Map<string, Dependence>();
  const rules = new Map<string, Dependence>();
  const before = pictureOf(analysis);
  for (const change of changesOf(found.statement, found.around)) {
    const changed = yield* judge(withChange(analysis.text, change));
    yield undefined;
    const after = pictureOf(changed, change);
    for (const [id, figure] of before.figures)
      if (!figures.has(id) && after.figures.get(id)?.value !== figure.value) figures.set(id, figureNode(analysis, figure));
    for (const [id, figure] of after.figures)
      if (!figures.has(id) && !before.figures.has(id)) figures.set(id, figureNode(changed, figure, change));
    const differs = (one: Picture['rules'], other: Picture['rules']): void => {
      for (const [key, { rule, at }] of one) if (!rules.has(rule) && !other.has(key)) rules.set(rule, ruleNode(rule, at));
    };
    differs(before.rules, after.rules);
    differs(after.rules, before.rules);
  }
  return [...figures.values(), ...rules.values()];
}

/** What a figure is worked out from: the lines of this file that change it, and the figures that it names. */
export function* sources(analysis: Analysis, of: Dependence, judge: Judge): Generator<unknown, Dependence[]> {
  const figure = of.kind === 'figure' ? analysis.figures.find((candidate) => candidate.id === of.key) : undefined;
  if (figure === undefined) return [];
  const named = new Set(namesOf(figure));
  const found: Dependence[] = analysis.figures
    .filter((other) => other.id !== of.key && named.has(other.id))
    .map((other) => figureNode(analysis, other));
  const near = nearby(analysis, figure);
  // What is worked out of those blocks alone must be the same value; else all of the file counts.
  yield undefined;
  // The shelf of a file with models of its own is made anew with each text.
  const isOwn = hasOwnModels(analysis.installation.reading);
  const valueIn = function* (text: string): Generator<unknown, number | undefined> {
    if (isOwn) return (yield* judge(text)).figures.find((other) => other.id === figure.id)?.value;
    return workOut(analysis, text, figure);
  };
  const isEnough = near !== undefined && (yield* valueIn(near.text)) === figure.value;
  const text = isEnough ? near.text : analysis.text;
  const facts: Dependence[] = [];
  for (const { statement, around } of statementsOf(analysis.installation.reading.tree)) {
    const outermost = around[0]?.statement ?? statement;
    if (isEnough && !near.kept.has(outermost)) continue;
    const fact = factOf(analysis, statement, around);
    if (fact === undefined) continue;
    for (const change of statement.body === undefined ? changesOf(statement, around) : changesOfHead(statement)) {
      yield undefined;
      if ((yield* valueIn(withChange(text, change))) === figure.value) continue;
      facts.push(fact);
      break;
    }
  }
  return [...facts, ...found];
}

// --- Changes.

interface Change extends Span {
  readonly text: string;
}

const withChange = (text: string, { start, end, text: put }: Change): string => text.slice(0, start) + put + text.slice(end);
/** Blanks of the same length, line ends kept: what stands behind keeps its place. */
const blanked = (text: string): string => text.replace(/[^\r\n]/g, ' ');

/** The changes by which it is seen what depends on a line: it is left out, each number is one step more, each choice another. */
function changesOf(statement: Statement, around: readonly Enclosing[]): Change[] {
  const changes: Change[] = [{ start: statement.start, end: statement.end, text: ' '.repeat(statement.end - statement.start) }];
  if (statement.body !== undefined) return changes;
  const { spec, isTop } = innermost(around);
  const line = lineSpecOf(spec, isTop, statement.word?.text ?? '');
  if (line === undefined) return changes;
  for (const { role, slot, value } of partsOf(line, statement.values).parts) {
    if (role !== 'value' || slot === undefined) continue;
    if (value.kind === 'number') changes.push(...stepsOf(value, slot));
    else if (value.kind === 'word' && slot.kind === 'choice') {
      const other = Object.keys(slot.options).find(
        (option) => option !== value.text && !statement.values.some((each) => each.kind === 'word' && each.text === option),
      );
      if (other !== undefined) changes.push({ start: value.start, end: value.end, text: other });
    }
  }
  return changes;
}

/** A block’s head: it is of no model. */
const changesOfHead = (statement: Statement): Change[] =>
  statement.values.flatMap((value) =>
    value.kind === 'model' ? [{ start: value.start, end: value.end, text: ' '.repeat(value.end - value.start) }] : [],
  );

/** A number one more in its last digit, or one less where more is beyond what can be meant. */
function stepsOf(value: NumberValue, slot: Slot): Change[] {
  const steps: Change[] = [];
  const unit = value.unit === undefined ? undefined : unitNamed(value.unit.text);
  const step = stepped(value.text, slot, unit?.toSi ?? ((amount) => amount));
  if (step !== undefined) steps.push({ start: value.start, end: value.start + value.text.length, text: step });
  for (const more of [value.plusMinus, value.upTo]) if (more !== undefined) steps.push(...stepsOf(more, slot));
  return steps;
}

function stepped(text: string, slot: Slot, toSi: (amount: number) => number): string | undefined {
  const digits = /^[-+\u2212]?\d+(?:\.(\d+))?$/.exec(text);
  if (digits === null) return undefined;
  const places = digits[1]?.length ?? 0;
  const amount = Number(text.replace('\u2212', '-'));
  const most = slot.kind === 'quantity' || slot.kind === 'count' ? slot.max : Number.POSITIVE_INFINITY;
  const size = 10 ** -places;
  const more = amount + size;
  const next = toSi(more) > most ? amount - size : more;
  return Number.isFinite(next) && Math.abs(next) < 1e15 ? next.toFixed(Math.min(places, 20)) : undefined;
}

// --- What is worked out.

interface Picture {
  readonly figures: ReadonlyMap<string, Figure>;
  /** What each rule says and holds: by a key that is equal when nothing is different. */
  readonly rules: ReadonlyMap<string, { readonly rule: string; readonly at: Span }>;
}

/** All that follows from a text. Places are told as they were before the change that led to it. */
function pictureOf(analysis: Analysis, change?: Change): Picture {
  const figures = new Map(analysis.figures.map((figure) => [figure.id, figure]));
  const rules = new Map<string, { readonly rule: string; readonly at: Span }>();
  const put = (rule: string, what: string, place: Span): void => {
    const at = moved(place, change);
    rules.set(`${rule} ${at.start} ${what}`, { rule, at });
  };
  for (const { rule, held, subject, value, limit, at } of marginsOf(analysis.installation))
    put(rule.name, `${held.name} ${subject} ${value} ${limit}`, at);
  for (const finding of [...analysis.findings, ...analysis.accepted])
    if (ruleNamed(finding.rule)?.kind === 'installation' && !aboutAbsence.has(finding.rule))
      put(finding.rule, `${finding.severity} ${finding.what}`, finding);
  return { figures, rules };
}

/** A place as it was before the change. */
function moved({ start, end }: Span, change: Change | undefined): Span {
  if (change === undefined) return { start, end };
  const shift = change.text.length - (change.end - change.start);
  const back = (offset: number): number => (offset < change.end + shift ? offset : offset - shift);
  return { start: back(start), end: back(end) };
}

/** The value of one figure in another text of the file; undefined where it then is none. */
function workOut(analysis: Analysis, text: string, figure: Figure): number | undefined {
  const installation = resolve(analysis.path, readFile(parse(text)), analysis.shelf);
  let value: number | undefined;
  figure.kind.work(installation, (subject, found) => {
    if (Number.isFinite(found) && idOf(figure.kind.id, subject) === figure.id) value = found;
  });
  return value;
}

// --- Blocks that have to do with each other.

/** The text with only the blocks that are tied by names to what a figure is of; undefined where it is of the whole site. */
function nearby(analysis: Analysis, figure: Figure): { readonly text: string; readonly kept: ReadonlySet<Statement> } | undefined {
  const { items } = analysis.installation.reading.tree;
  const pattern = figure.kind.id;
  const [word = '', second] = pattern.split('.');
  if (second !== 'NAME' && second !== 'PANEL') return undefined;
  const name = figure.id.split('.')[1] ?? '';
  const keysOf = new Map<Statement, Set<string>>(items.map((item) => [item, new Set()]));
  let at = 0;
  for (const mention of mentionsOf(analysis)) {
    while (at < items.length && (items[at] as Statement).end < mention.start) at++;
    const item = items[at];
    if (item !== undefined && mention.start >= item.start && mention.meaning.kind !== 'rule' && mention.meaning.kind !== 'file')
      keysOf.get(item)?.add(keyOf(mention.meaning));
  }
  const byKey = new Map<string, Statement[]>();
  for (const [item, keys] of keysOf) for (const key of keys) byKey.set(key, [...(byKey.get(key) ?? []), item]);
  const kept = new Set<Statement>(
    items.filter((item) => item.body === undefined || item.word?.text === 'site' || item.word?.text === 'motion'),
  );
  const open = items.filter((item) => item.word?.text === word && item.values[0]?.kind === 'word' && item.values[0].text === name);
  if (open.length === 0) return undefined;
  for (let item = open.pop(); item !== undefined; item = open.pop()) {
    if (kept.has(item)) continue;
    kept.add(item);
    for (const key of keysOf.get(item) ?? [])
      if (
        !/^(?:panel|drive|sensor|cable)-model\n|^(?:terminal|selector|option|adjuster|indicator)\n/.test(key) ||
        key.includes(`\n${analysis.path}\n`)
      )
        open.push(...(byKey.get(key) ?? []));
  }
  let text = analysis.text;
  for (const item of items)
    if (!kept.has(item)) text = text.slice(0, item.start) + blanked(text.slice(item.start, item.end)) + text.slice(item.end);
  return { text, kept };
}

// --- Nodes.

/** Ids of figures that a figure names among what went into it. */
function namesOf(figure: Figure): string[] {
  try {
    return figure.inputs().flatMap((input) => (input.from === undefined ? [] : [input.from]));
  } catch {
    return [];
  }
}

function factOf(analysis: Analysis, statement: Statement, around: readonly Enclosing[]): Dependence | undefined {
  const { word } = statement;
  if (word === undefined || (around.length === 0 && statement.body === undefined)) return undefined;
  const at = { start: statement.start, end: Math.max(headEnd(statement), word.end) };
  const label = analysis.text.slice(at.start, at.end).replace(/\s+/g, ' ');
  const block = around[around.length - 1];
  return {
    kind: 'fact',
    key: String(statement.start),
    label: label.length > longestLabel ? label.slice(0, longestLabel - 1) + '…' : label,
    detail:
      block === undefined
        ? ''
        : [block.word, block.statement.values[0]?.kind === 'word' ? block.statement.values[0].text : '']
            .filter((part) => part !== '')
            .join(' '),
    at,
  };
}

function figureNode(analysis: Analysis, figure: Figure, change?: Change): Dependence {
  return {
    kind: 'figure',
    key: figure.id,
    label: `${nameOfFigure(figure)} ${shownValue(figure, readerOf(analysis.installation))}`,
    detail: figure.id,
    at: moved(figure.at, change),
  };
}

const ruleNode = (rule: string, at: Span): Dependence => ({
  kind: 'rule',
  key: rule,
  label: rule,
  detail: ruleNamed(rule)?.title ?? '',
  at: { start: at.start, end: at.end },
});

function unique(nodes: readonly Dependence[]): Dependence[] {
  const seen = new Map<string, Dependence>();
  for (const node of nodes) if (!seen.has(node.key)) seen.set(node.key, node);
  return [...seen.values()];
}
