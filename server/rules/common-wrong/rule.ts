import type { WordValue } from '../../../grammar/index.ts';
import { repeatsAnEnd, unfitEnd } from '../../circuits/index.ts';
import type { Panel, Terminal, TerminalUse, Wire } from '../../model/index.ts';
import { asWritten } from '../../vocabulary/index.ts';
import { replaceBy } from '../fixes.ts';
import { toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Related, type Report } from '../rule.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'common-wrong',
  severity: 'error',
  title: 'A wire has another return than its input names, or none, or a supply or a test has only one end.',
  why: 'An input reads what lies between it and its own common. With another return, or none, it reads nothing of the device, or reads it only as long as two commons happen to be joined.',
  remedy: 'Wire the device between the input and the common that the panel’s model names for it.',
  source: ofTheModel,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) for (const wire of panel.wires) checkWire(panel, wire, report);
  },
});

/** An end of a wire that returns to a common of its own. */
interface Input {
  readonly at: WordValue;
  readonly terminal: Terminal;
  readonly wanted: string;
}

/** Nearly every wire: an input and its common. */
const isPlain = (ends: readonly TerminalUse[]): boolean =>
  ends.length === 2 && ends[0]?.terminal?.common !== undefined && ends[0].terminal.common.text === ends[1]?.at.text;

function checkWire(panel: Panel, wire: Wire, report: (report: Report) => void): void {
  const { ends } = wire;
  if (isAlone(wire)) sayAlone(panel, wire, report);
  if (isPlain(ends)) return;
  const inputs: Input[] = [];
  let commons = 0;
  for (const { at, terminal } of ends) {
    if (terminal === undefined) return;
    if (terminal.common !== undefined) inputs.push({ at, terminal, wanted: terminal.common.text });
    else if (terminal.role === 'common') commons++;
  }
  const first = inputs[0];
  if (first === undefined) return;
  const lacking = inputs.find(({ wanted }) => !ends.some(({ at }) => at.text === wanted));
  // A common in the wire that no input in it returns to.
  const strange = ends.find(({ at, terminal }) => terminal?.role === 'common' && !inputs.some(({ wanted }) => wanted === at.text))?.at;
  if (lacking === undefined && strange === undefined) return;
  // What is wrong with the wire in a graver way is reported for that.
  if (wire.device === undefined || unfitEnd(wire) !== undefined || repeatsAnEnd(ends)) return;
  if (lacking !== undefined) {
    if (strange === undefined) sayMissing(panel, wire, lacking, report);
    else sayOther(panel, wire, lacking, strange, report);
    // Only where each input names its return is a further common surely one too many.
  } else if (strange !== undefined && inputs.length + commons === ends.length) sayMixed(panel, wire, first, strange, report);
}

/** True for a supply or a test of which only one end is wired to something that could give it. */
function isAlone(wire: Wire): boolean {
  if (wire.part === 'signal' || wire.device === undefined || unfitEnd(wire) !== undefined) return false;
  let first: Terminal | undefined;
  for (const { terminal } of wire.ends) {
    if (terminal === undefined) return false;
    if (terminal.role === 'earth' || terminal === first) continue;
    if (first !== undefined) return false;
    first = terminal;
  }
  // A return by itself is reported for carrying nothing.
  return first !== undefined && first.role !== 'common';
}

function sayAlone(panel: Panel, { fact, part, ends }: Wire, report: (report: Report) => void): void {
  const [first] = ends;
  if (first === undefined) return;
  const commons = [...(panel.model?.terminals.values() ?? [])].filter(({ role }) => role === 'common').map(({ name }) => name.text);
  report({
    at: fact.line,
    what: `The ${part} of ${quoted(fact.device.text)} is wired to ${quoted(first.at.text)} alone, and not to its return.`,
    why:
      part === 'test'
        ? 'Over one wire no signal comes: the device is never tested, and one that has failed is not found before the next movement.'
        : 'Over one wire no current flows: the device does not work.',
    remedy: `Name both ends, the return too${commons.length === 0 ? '' : `: one of ${quotedList(commons)}`}.`,
    related: toModelFact(`${quoted(first.at.text)} in the model`, panel.installation, panel.model, first.terminal),
  });
}

const namesIt = (panel: Panel, { at, terminal }: Input): readonly Related[] =>
  toModelFact(`${quoted(at.text)} names its common here`, panel.installation, panel.model, terminal);

function sayMissing(panel: Panel, { fact, ends }: Wire, input: Input, report: (report: Report) => void): void {
  const { at, wanted } = input;
  const end = (ends.at(-1) ?? input).at.end;
  const comma = panel.installation.reading.tree.text.slice((ends[0] ?? input).at.end, end).includes(',') ? ',' : '';
  report({
    at,
    what: `${quoted(fact.device.text)} is wired to ${quoted(at.text)}, but its return is not wired: ${quoted(at.text)} returns to ${quoted(wanted)}.`,
    remedy: `Wire its return to ${quoted(wanted)}.`,
    related: namesIt(panel, input),
    fixes: [{ title: `Wire its return to “${wanted}”`, edits: [{ start: end, end, text: `${comma} ${asWritten(wanted)}` }], safe: false }],
  });
}

function sayOther(panel: Panel, { fact }: Wire, input: Input, strange: WordValue, report: (report: Report) => void): void {
  const { at, wanted } = input;
  report({
    at: strange,
    what: `${quoted(fact.device.text)} is wired to ${quoted(at.text)} and ${quoted(strange.text)}, but ${quoted(at.text)} returns to ${quoted(wanted)}.`,
    remedy: `Wire it to ${quoted(wanted)} in place of ${quoted(strange.text)}.`,
    related: [{ message: 'the input', start: at.start, end: at.end }, ...namesIt(panel, input)],
    fixes: replaceBy(strange, asWritten(wanted), false),
  });
}

function sayMixed(panel: Panel, { fact }: Wire, input: Input, strange: WordValue, report: (report: Report) => void): void {
  report({
    at: strange,
    what: `${quoted(fact.device.text)} is wired to ${quoted(strange.text)} as well, which no input of this wire returns to.`,
    why: 'The wire joins two commons that the panel keeps apart.',
    remedy: `Leave out ${quoted(strange.text)}: ${quoted(input.at.text)} returns to ${quoted(input.wanted)}.`,
    related: namesIt(panel, input),
  });
}
