// Every name in a file: where it stands, what it means, and whether it is declared there. Definition, references,
// highlight and hover all read this one list.
import { holds, type Span, type Statement, type WordValue } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { type Panel, type PanelModel, resolveUse } from '../model/index.ts';
import { isModelKind, type ModelKind, type NameSpace, nameIn, nameSpaceOf } from '../vocabulary/index.ts';
import { type Enclosing, innermost, lineSpecOf, partsOf, statementsOf } from './places.ts';

/** What a name stands for. Names of models, and of what is in a panel model, carry the file that declares them. */
export type Meaning =
  | { readonly kind: NameSpace; readonly name: string }
  | { readonly kind: ModelKind; readonly name: string; readonly path: string }
  | {
      readonly kind: 'terminal' | 'selector' | 'adjuster' | 'indicator';
      readonly name: string;
      readonly model: string;
      readonly path: string;
    }
  | { readonly kind: 'option'; readonly name: string; readonly selector: string; readonly model: string; readonly path: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'file'; readonly path: string };

/** One place where a name stands. */
export interface Mention extends Span {
  readonly meaning: Meaning;
  readonly declares: boolean;
  /** The statement that declares, where it does. */
  readonly statement: Statement;
}

/** Equal for two meanings that are the same thing. */
export function keyOf(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'leaf':
    case 'device':
    case 'panel':
    case 'cable':
    case 'function':
    case 'rule':
      return `${meaning.kind}\n${meaning.name}`;
    case 'file':
      return `file\n${meaning.path}`;
    case 'terminal':
    case 'selector':
    case 'adjuster':
    case 'indicator':
      return `${meaning.kind}\n${meaning.path}\n${meaning.model}\n${meaning.name}`;
    case 'option':
      return `option\n${meaning.path}\n${meaning.model}\n${meaning.selector}\n${meaning.name}`;
    default:
      return `${meaning.kind}\n${meaning.path}\n${meaning.name}`;
  }
}

/** True for what other files can speak of. */
export const isShared = (meaning: Meaning): boolean => 'path' in meaning;

const kept = new WeakMap<Analysis, readonly Mention[]>();

/** All names of a file, in the order of the text. A name that leads nowhere has no meaning and is left out. */
export function mentionsOf(analysis: Analysis): readonly Mention[] {
  const known = kept.get(analysis);
  if (known !== undefined) return known;
  const mentions = findMentions(analysis);
  kept.set(analysis, mentions);
  return mentions;
}

function findMentions(analysis: Analysis): Mention[] {
  const { installation, path } = analysis;
  const mentions: Mention[] = [];
  const panels = new Map<Statement, Panel>(installation.panels.map((panel) => [panel.at, panel]));
  const names = {
    leaf: new Set(installation.leaves.map((leaf) => leaf.name)),
    device: new Set([...installation.sensors, ...installation.drives, ...installation.controls].map((device) => device.name)),
    cable: new Set(installation.cables.map((cable) => cable.name)),
    panel: new Set(installation.panels.map((panel) => panel.name)),
  };
  const put = (at: Span, meaning: Meaning | undefined, statement: Statement, declares = false): void => {
    if (meaning !== undefined) mentions.push({ start: at.start, end: at.end, meaning, declares, statement });
  };

  for (const { statement, around } of statementsOf(installation.reading.tree)) {
    const { spec, isTop } = innermost(around);
    const word = statement.word?.text ?? '';
    const block = statement.body === undefined ? undefined : (isTop ? undefined : spec?.blocks)?.[word];
    if (statement.body !== undefined && (isTop || block !== undefined)) {
      for (const value of statement.values) {
        if (value.kind === 'word') put(value, declared(word, value.text, path, around), statement, true);
        else if (value.kind === 'model') put(value.name, modelMeant(analysis, statement, value.name), statement);
      }
      continue;
    }
    const line = lineSpecOf(spec, isTop, word);
    if (line === undefined) continue;
    const parts = partsOf(line, statement.values).parts;
    for (const part of parts) {
      const { slot, value } = part;
      if (part.role !== 'value' || slot === undefined) continue;
      const name = nameIn(value, slot);
      if (slot.kind === 'name' && name !== undefined) put(name, declared(word, name.text, path, around), statement, true);
      else if (slot.kind === 'text' && value.kind === 'text' && isTop && word === 'use') {
        const target = resolveUse(path, value.text, analysis.root);
        if ('path' in target) put(value, { kind: 'file', path: target.path }, statement);
      } else if (slot.kind === 'ref' && name !== undefined) {
        switch (slot.to) {
          case 'leaf':
            if (names.leaf.has(name.text)) put(name, { kind: 'leaf', name: name.text }, statement);
            break;
          case 'cable':
            if (names.cable.has(name.text)) put(name, { kind: 'cable', name: name.text }, statement);
            break;
          case 'load':
            if (names.device.has(name.text)) put(name, { kind: 'device', name: name.text }, statement);
            else if (names.panel.has(name.text)) put(name, { kind: 'panel', name: name.text }, statement);
            break;
          case 'rule':
            put(name, { kind: 'rule', name: name.text }, statement);
            break;
          case 'terminal':
          case 'selector':
          case 'option':
            put(name, ofPanel(analysis, slot.to, name, statement, around, panels, firstSelector(parts)), statement);
            break;
          default:
            if (names.device.has(name.text)) put(name, { kind: 'device', name: name.text }, statement);
        }
      }
    }
  }
  return mentions;
}

const firstSelector = (parts: ReturnType<typeof partsOf>['parts']): string | undefined => {
  const part = parts.find((candidate) => candidate.slot?.kind === 'ref' && candidate.slot.to === 'selector' && candidate.role === 'value');
  return part?.value.kind === 'word' ? part.value.text : undefined;
};

/** What a name means where it is declared. */
function declared(word: string, name: string, path: string, around: readonly Enclosing[]): Meaning | undefined {
  const outer = around[0];
  if (outer === undefined) {
    const kind = nameSpaceOf.get(word);
    if (kind !== undefined) return { kind, name };
    return isModelKind(word) ? { kind: word, name, path } : undefined;
  }
  const model = nameOf(outer.statement);
  if (outer.word !== 'panel-model' || model === undefined) return undefined;
  if (around.length === 1 && (word === 'terminal' || word === 'selector' || word === 'adjuster' || word === 'indicator'))
    return { kind: word, name, model, path };
  const inner = around[1];
  const selector = inner?.word === 'selector' ? nameOf(inner.statement) : undefined;
  return word === 'option' && selector !== undefined ? { kind: 'option', name, selector, model, path } : undefined;
}

const nameOf = (statement: Statement): string | undefined => statement.values.find((value) => value.kind === 'word')?.text;

function modelMeant(analysis: Analysis, statement: Statement, name: WordValue): Meaning | undefined {
  const kind = `${statement.word?.text ?? ''}-model`;
  if (!isModelKind(kind)) return undefined;
  const model = analysis.shelf.models[kind].get(name.text);
  return model === undefined ? undefined : { kind, name: model.name, path: model.path };
}

/** A name on a line of a panel, or inside a panel model: one of that model's own. */
function ofPanel(
  analysis: Analysis,
  to: 'terminal' | 'selector' | 'option',
  value: WordValue,
  statement: Statement,
  around: readonly Enclosing[],
  panels: ReadonlyMap<Statement, Panel>,
  selector: string | undefined,
): Meaning | undefined {
  const outer = around[0];
  if (outer === undefined) return undefined;
  const model: Pick<PanelModel, 'name' | 'path' | 'terminals' | 'selectors'> | undefined =
    outer.word === 'panel' ? panels.get(outer.statement)?.model : ownPanelModel(analysis, outer.statement);
  if (model === undefined || statement === undefined) return undefined;
  const { name, path } = model;
  if (to === 'terminal') return model.terminals.has(value.text) ? { kind: 'terminal', name: value.text, model: name, path } : undefined;
  if (to === 'selector') return model.selectors.has(value.text) ? { kind: 'selector', name: value.text, model: name, path } : undefined;
  const options = selector === undefined ? undefined : model.selectors.get(selector)?.facts.option;
  return options?.some((option) => option.name.text === value.text) === true
    ? { kind: 'option', name: value.text, selector: selector as string, model: name, path }
    : undefined;
}

function ownPanelModel(analysis: Analysis, statement: Statement): PanelModel | undefined {
  const name = nameOf(statement);
  const model = name === undefined ? undefined : analysis.shelf.models['panel-model'].get(name);
  return model !== undefined && model.at === statement ? model : undefined;
}

/** The name at an offset. */
export function mentionAt(analysis: Analysis, offset: number): Mention | undefined {
  return mentionsOf(analysis).find((mention) => holds(mention, offset));
}
