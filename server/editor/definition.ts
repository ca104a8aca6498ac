// From a name to the place that declares it: in this file, or in a library.
import type { Span } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import type { PanelModel } from '../model/index.ts';
import { keyOf, type Meaning, mentionAt, mentionsOf } from './names.ts';
import { headEnd } from './places.ts';

/** A place that declares a name, maybe in another file. */
export interface Target {
  readonly path: string;
  /** The name itself; the start of the file for a file. */
  readonly name: Span;
  /** The block or line that it names. */
  readonly whole: Span;
}

/** What the name at an offset points at, and the name itself; undefined where no name stands or it leads nowhere. */
export function definition(analysis: Analysis, offset: number): { readonly from: Span; readonly targets: readonly Target[] } | undefined {
  const mention = mentionAt(analysis, offset);
  if (mention === undefined) return undefined;
  const target = declarationOf(analysis, mention.meaning);
  return target === undefined ? undefined : { from: { start: mention.start, end: mention.end }, targets: [target] };
}

/** Where a meaning is declared; undefined for a rule, which no file declares. */
export function declarationOf(analysis: Analysis, meaning: Meaning): Target | undefined {
  switch (meaning.kind) {
    case 'rule':
      return undefined;
    case 'file':
      return { path: meaning.path, name: { start: 0, end: 0 }, whole: { start: 0, end: 0 } };
    case 'leaf':
    case 'device':
    case 'panel':
    case 'cable':
    case 'function':
      return ownDeclaration(analysis, meaning);
    case 'terminal':
    case 'selector':
    case 'adjuster':
    case 'indicator':
    case 'option': {
      if (meaning.path === analysis.path) return ownDeclaration(analysis, meaning);
      const model = analysis.shelf.models['panel-model'].get(meaning.model);
      return model === undefined ? undefined : inPanelModel(model, meaning);
    }
    default: {
      const model = analysis.shelf.models[meaning.kind].get(meaning.name);
      if (model === undefined || model.path !== meaning.path) return ownDeclaration(analysis, meaning);
      return { path: model.path, name: spanOf(model.nameAt ?? model.at), whole: spanOf(model.at) };
    }
  }
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });

function ownDeclaration(analysis: Analysis, meaning: Meaning): Target | undefined {
  const key = keyOf(meaning);
  const mention = mentionsOf(analysis).find((candidate) => candidate.declares && keyOf(candidate.meaning) === key);
  if (mention === undefined) return undefined;
  const { statement } = mention;
  return {
    path: analysis.path,
    name: spanOf(mention),
    whole: { start: statement.start, end: statement.body === undefined ? headEnd(statement) : statement.end },
  };
}

function inPanelModel(
  model: PanelModel,
  meaning: Meaning & { readonly kind: 'terminal' | 'selector' | 'adjuster' | 'indicator' | 'option' },
): Target | undefined {
  const { path } = model;
  if (meaning.kind === 'terminal') {
    const terminal = model.terminals.get(meaning.name);
    return terminal === undefined ? undefined : { path, name: spanOf(terminal.name), whole: spanOf(terminal.line) };
  }
  if (meaning.kind === 'selector') {
    const selector = model.selectors.get(meaning.name);
    return selector === undefined ? undefined : { path, name: spanOf(selector.nameAt ?? selector.at), whole: spanOf(selector.at) };
  }
  if (meaning.kind === 'option') {
    const option = model.selectors.get(meaning.selector)?.facts.option.find((candidate) => candidate.name.text === meaning.name);
    return option === undefined ? undefined : { path, name: spanOf(option.name), whole: spanOf(option.line) };
  }
  return undefined;
}
