import type { WordValue } from '../../../grammar/index.ts';
import { isUnfit } from '../../circuits/index.ts';
import type { Panel, PanelModel, TerminalUse, Wire } from '../../model/index.ts';
import { asWritten, editDistance, hasUnusual, looksTheSame } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import { toFact, toModelHead } from '../related.ts';
import { installationRule, ofTheModel, type Report } from '../rule.ts';
import { lost } from '../unread.ts';
import { clipped, listed, perhaps, quoted } from '../words.ts';

export const rule = installationRule({
  name: 'terminal-unknown',
  severity: 'error',
  title: 'A wire, link or accessory names a terminal that this panel does not have.',
  why: 'Whoever wires the panel by this file looks for a terminal that is not there; and what hangs on it cannot be checked.',
  remedy: 'Write the terminal as it is printed on the panel.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { model } = panel;
      // A model with a terminal line that cannot be read may have this very one.
      if (model === undefined || lost(model.unread, 'panel-model', 'terminal')) continue;
      for (const wire of panel.wires) reportUnknown(panel, model, wire.ends, report, wire);
      for (const { ends } of panel.links) reportUnknown(panel, model, ends, report);
      for (const { from } of panel.facts.accessory) if (!model.terminals.has(from.text)) report(unknown(panel, model, from, noOthers));
    }
  },
});

type Say = (report: Report) => void;

function reportUnknown(panel: Panel, model: PanelModel, ends: readonly TerminalUse[], report: Say, wire?: Wire): void {
  let others: Others | undefined;
  for (const { at, terminal } of ends) if (terminal === undefined) report(unknown(panel, model, at, (others ??= othersOf(ends)), wire));
}

/** What stands beside a name on its line. */
interface Others {
  readonly names: ReadonlySet<string>;
  /** Where the named inputs return to. */
  readonly returns: ReadonlySet<string>;
}

const othersOf = (ends: readonly TerminalUse[]): Others => ({
  names: new Set(ends.map(({ at }) => at.text)),
  returns: new Set(ends.flatMap(({ terminal }) => terminal?.common?.text ?? [])),
});
const noOthers = othersOf([]);

function unknown({ installation, modelAt }: Panel, model: PanelModel, at: WordValue, others: Others, wire?: Wire): Report {
  const meant = likely(model, at, others, wire);
  const known = [...model.terminals.keys()];
  return {
    at,
    what: `${quoted(model.name)} has no terminal ${quoted(at.text)}.`,
    remedy:
      (known.length === 0 ? 'Add the terminals to the model.' : `Write one of its terminals: ${clipped(listed(known))}.`) +
      (meant.length > 1 ? ` Perhaps ${meant.map(quoted).join(' or ')} is meant.` : perhaps(meant[0], at.text)),
    related: [
      ...toFact('the model of this panel', modelAt && { line: modelAt }),
      ...toModelHead('the model, with all its terminals', installation, model),
    ],
    fixes: meant.flatMap((name) => replaceBy(at, asWritten(name), false)),
  };
}

/** The names that are likely meant: the nearest of those that can stand there. Names of terminals are short, so there may be several. */
function likely(model: PanelModel, at: WordValue, { names, returns }: Others, wire: Wire | undefined): string[] {
  const word = plain(at.text);
  const limit = Math.max(1, Math.floor(word.length / 3));
  const unusual = hasUnusual(at.text);
  let least = limit + 1;
  let best: string[] = [];
  for (const { name, role } of model.terminals.values()) {
    if (names.has(name.text) || (wire !== undefined && isUnfit(wire, role))) continue;
    if ((unusual || hasUnusual(name.text)) && looksTheSame(at.text, name.text)) return [name.text];
    const distance = editDistance(word, plain(name.text), limit);
    if (distance > limit || distance > least) continue;
    if (distance < least) best = [];
    least = distance;
    best.push(name.text);
  }
  // The common that the input beside it returns to is likelier than any other name.
  const commons = best.filter((name) => returns.has(name));
  return commons.length > 0 ? commons : best.length > most ? [] : best;
}

/** More guesses than this help nobody. */
const most = 3;

/** A name as the eye takes it: no case, and letters for the digits that look like them. */
const plain = (name: string): string =>
  name.slice(0, 64).toLowerCase().replaceAll('0', 'o').replaceAll(/[1i]/g, 'l').replaceAll('5', 's').replaceAll('8', 'b');
