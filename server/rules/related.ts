// Where else a finding points. What is not stated cannot be pointed to, and is left out.
import { headPlace, type Installation } from '../model/index.ts';
import type { Related } from './rule.ts';

/** Something read from a line. */
interface Fact {
  readonly line: { readonly start: number; readonly end: number };
}

type Head = Parameters<typeof headPlace>[0];

/** To the line of a fact in this file. */
export const toFact = (message: string, fact: Fact | undefined): readonly Related[] =>
  fact === undefined ? [] : [{ message, start: fact.line.start, end: fact.line.end }];

/** To the line of a fact of a model, which may stand in another file. */
export function toModelFact(
  message: string,
  installation: Installation,
  model: { readonly path: string } | undefined,
  fact: Fact | undefined,
): readonly Related[] {
  if (model === undefined || model.path === installation.path) return toFact(message, fact);
  return toFact(message, fact).map((place) => ({ ...place, path: model.path }));
}

/** To the head of a model, or of a block in it. */
export const toModelHead = (
  message: string,
  installation: Installation,
  model: Head & { readonly path: string },
  block: Head = model,
): readonly Related[] => toModelFact(message, installation, model, { line: headPlace(block) });
