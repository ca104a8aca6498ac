import { headPlace, type Panel, type Selection } from '../../model/index.ts';
import { nearest } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import { installationRule, type Report } from '../rule.ts';
import { inModel, ofTheModel } from '../wiring.ts';
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
      if (panel.model === undefined) continue;
      for (const selection of panel.selections) checkSelection(panel, selection, report);
    }
  },
});

function checkSelection(panel: Panel, selection: Selection, report: (report: Report) => void): void {
  const { selector, fact } = selection;
  if (selector === undefined) return saySelector(panel, selection, report);
  for (const other of panel.selections) {
    if (other === selection) break;
    if (other.selector === selector) return sayTwice(selection, other, report);
  }
  for (const option of selector.facts.option) if (option.name.text === fact.option.text) return;
  if (selector.unread.length === 0) sayOption(panel, selection, report);
}

function saySelector({ model, installation, modelAt }: Panel, { fact }: Selection, report: (report: Report) => void): void {
  if (model === undefined || model.unread.length > 0) return;
  const known = [...model.selectors.keys()];
  const meant = nearest(fact.selector.text, known) ?? '';
  report({
    at: fact.selector,
    what: `${quoted(model.name)} has no selector ${quoted(fact.selector.text)}.`,
    remedy: (known.length === 0 ? `Leave the line out: ${quoted(model.name)} has no selectors.` : `Write one of its selectors: ${listed(known.join(', '))}.`) + perhaps(meant),
    related: [...(modelAt === undefined ? [] : [{ message: 'the model of this panel', start: modelAt.start, end: modelAt.end }]), inModel(model, installation, headPlace(model), 'the model, with its selectors')],
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
    related: [{ message: 'it is set here first', start: first.line.start, end: first.line.end }],
  });
}

function sayOption({ model, installation }: Panel, { fact, selector }: Selection, report: (report: Report) => void): void {
  if (model === undefined || selector === undefined) return;
  const known = selector.facts.option.map((option) => option.name.text);
  const meant = nearest(fact.option.text, known) ?? '';
  report({
    at: fact.option,
    what: `Selector ${quoted(selector.name)} has no position ${quoted(fact.option.text)}.`,
    remedy: (known.length === 0 ? 'Add its positions to the model.' : `Write one of its positions: ${listed(known.join(', '))}.`) + perhaps(meant),
    related: [inModel(model, installation, headPlace(selector), 'the selector, with its positions')],
    fixes: replaceBy(fact.option, meant, false),
  });
}
