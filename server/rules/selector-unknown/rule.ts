import type { WordValue } from '../../../grammar/index.ts';
import { headPlace, type Panel, type PanelModel, type Selection } from '../../model/index.ts';
import { nearest } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import { toFact, toModelHead } from '../related.ts';
import { installationRule, ofTheModel, type Report } from '../rule.ts';
import { listed, perhaps, quoted } from '../words.ts';

export const rule = installationRule({
  name: 'selector-unknown',
  severity: 'error',
  title: 'A line sets a selector or a position that the panel does not have, or one selector twice.',
  why: 'Whoever sets the panel by this file cannot follow it, and what the panel really does stays open.',
  remedy: 'Write a selector of the panel’s model and one of its positions, each selector once.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { model } = panel;
      if (model !== undefined) for (const selection of panel.selections) checkSelection(panel, model, selection, report);
    }
  },
});

type Selector = NonNullable<Selection['selector']>;

function checkSelection(panel: Panel, model: PanelModel, selection: Selection, report: (report: Report) => void): void {
  const { selector, fact } = selection;
  if (selector === undefined) return saySelector(panel, model, selection, report);
  for (const other of panel.selections) {
    if (other === selection) break;
    if (other.selector === selector) return sayTwice(selection, other, report);
  }
  for (const option of selector.facts.option) if (option.name.text === fact.option.text) return;
  if (selector.unread.length === 0) sayOption(panel, model, selector, fact.option, report);
}

function saySelector(panel: Panel, model: PanelModel, { fact }: Selection, report: (report: Report) => void): void {
  if (model.unread.length > 0) return;
  const known = [...model.selectors.keys()];
  const meant = nearest(fact.selector.text, known);
  const { start, end } = panel.modelAt ?? headPlace(panel);
  report({
    at: fact.selector,
    what: `${quoted(model.name)} has no selector ${quoted(fact.selector.text)}.`,
    remedy:
      (known.length === 0
        ? `Leave the line out: ${quoted(model.name)} has no selectors.`
        : `Write one of its selectors: ${listed(known)}.`) + perhaps(meant, fact.selector.text),
    related: [
      { message: 'the model of this panel', start, end },
      ...toModelHead('the model, with its selectors', panel.installation, model),
    ],
    fixes: replaceBy(fact.selector, meant, false),
  });
}

function sayTwice({ fact }: Selection, { fact: first }: Selection, report: (report: Report) => void): void {
  const same = first.option.text === fact.option.text;
  report({
    at: fact.selector,
    what: `Selector ${quoted(fact.selector.text)} is set twice${same ? '' : `: to ${quoted(first.option.text)} and to ${quoted(fact.option.text)}`}.`,
    why: 'A selector stands in one position; nobody can tell which of the two is meant.',
    remedy: 'Leave out one of the two lines.',
    related: toFact('it is set here first', first),
  });
}

function sayOption(
  { installation }: Panel,
  model: PanelModel,
  selector: Selector,
  option: WordValue,
  report: (report: Report) => void,
): void {
  const known = selector.facts.option.map(({ name }) => name.text);
  const meant = nearest(option.text, known);
  report({
    at: option,
    what: `Selector ${quoted(selector.name)} has no position ${quoted(option.text)}.`,
    remedy:
      (known.length === 0 ? 'Add its positions to the model.' : `Write one of its positions: ${listed(known)}.`) +
      perhaps(meant, option.text),
    related: toModelHead('the selector, with its positions', installation, model, selector),
    fixes: replaceBy(option, meant, false),
  });
}
