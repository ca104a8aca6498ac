// How the gate is commanded in the positions that a panel's selectors are in.
import { type Installation, type Panel, perSubject, type Selection } from '../model/index.ts';

type Selector = NonNullable<Selection['selector']>;
type Option = Selector['facts']['option'][number];

/** How the gate is commanded in a position that it is set to. */
export interface Position {
  readonly panel: Panel;
  readonly selection: Selection;
  readonly option: Option;
}

/** The positions that are set, of all panels, in the order of the text; what a model does not have is left out. */
export const positionsOf = perSubject(({ panels }: Installation): readonly Position[] => {
  let positions: Position[] | undefined;
  for (const panel of panels)
    for (const selection of panel.selections) {
      const option = selection.selector?.facts.option.find(({ name }) => name.text === selection.fact.option.text);
      if (option !== undefined) (positions ??= []).push({ panel, selection, option });
    }
  return positions ?? none;
});

/** The selectors of a panel that nobody says the position of. */
export function unsetSelectorsOf({ model, selections }: Panel): readonly Selector[] {
  if (model === undefined || model.selectors.size === 0) return none;
  return [...model.selectors.values()].filter((selector) => !selections.some((selection) => selection.selector === selector));
}

const none: readonly never[] = [];
