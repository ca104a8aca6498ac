import type { Panel, Terminal, TerminalUse, Wire } from '../../model/index.ts';
import { installationRule, type Fix, type Report } from '../rule.ts';
import { inModel, ofTheModel, repeatsAnEnd, unfitEnd } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'common-wrong',
  severity: 'error',
  title: 'A wire has another return than its input names, or none.',
  why: 'An input reads what lies between it and its own common. With another return, or none, it reads nothing of the device, or reads it only as long as two commons happen to be joined.',
  remedy: 'Wire the device between the input and the common that the panel’s model names for it.',
  source: ofTheModel,
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) if (panel.model !== undefined) for (const wire of panel.wires) checkWire(panel, wire, report);
  },
});

const has = (ends: readonly TerminalUse[], name: string): boolean => {
  for (const end of ends) if (end.at.text === name) return true;
  return false;
};

function checkWire(panel: Panel, wire: Wire, report: (report: Report) => void): void {
  const { ends } = wire;
  let returning = 0;
  let commons = 0;
  let missing: TerminalUse | undefined;
  for (const end of ends) {
    const terminal = end.terminal;
    if (terminal === undefined) return;
    if (terminal.common !== undefined) {
      returning++;
      if (missing === undefined && !has(ends, terminal.common.text)) missing = end;
    } else if (terminal.role === 'common') commons++;
  }
  if (returning === 0 || (missing === undefined && commons < 2)) return;
  // What is wrong with the wire in a graver way is reported for that.
  if (wire.device === undefined || unfitEnd(wire) !== undefined || repeatsAnEnd(ends)) return;
  if (missing !== undefined) sayMissing(panel, wire, missing, report);
  // Only where each input names its return is a further common surely one too many.
  else if (returning + commons === ends.length) sayMixed(panel, wire, report);
}

/** A common in the wire that no input in it returns to. */
function strangeCommon({ ends }: Wire): TerminalUse | undefined {
  return ends.find((end) => end.terminal?.role === 'common' && !ends.some((other) => other.terminal?.common?.text === end.at.text));
}

function sayMissing(panel: Panel, wire: Wire, { at, terminal }: TerminalUse, report: (report: Report) => void): void {
  const wanted = terminal?.common?.text;
  if (terminal === undefined || wanted === undefined || panel.model === undefined) return;
  const device = quoted(wire.fact.device.text);
  const strange = strangeCommon(wire);
  report({
    at: strange?.at ?? at,
    what:
      strange === undefined
        ? `${device} is wired to ${quoted(at.text)}, but its return is not wired: ${quoted(at.text)} returns to ${quoted(wanted)}.`
        : `${device} is wired to ${quoted(at.text)} and ${quoted(strange.at.text)}, but ${quoted(at.text)} returns to ${quoted(wanted)}.`,
    remedy: strange === undefined ? `Wire its return to ${quoted(wanted)}.` : `Wire it to ${quoted(wanted)} in place of ${quoted(strange.at.text)}.`,
    related: [
      ...(strange === undefined ? [] : [{ message: 'the input', start: at.start, end: at.end }]),
      inModel(panel.model, panel.installation, terminal.line, `${quoted(at.text)} names its common here`),
    ],
    fixes: strange === undefined ? [insert(panel, wire, wanted)] : [{ title: `Write “${wanted}”`, edits: [{ start: strange.at.start, end: strange.at.end, text: wanted }], safe: false }],
  });
}

function insert({ installation }: Panel, { ends, fact }: Wire, wanted: string): Fix {
  const end = ends.at(-1)?.at.end ?? fact.line.end;
  const comma = installation.reading.tree.text.slice(ends[0]?.at.end ?? end, end).includes(',') ? ',' : '';
  return { title: `Wire its return to “${wanted}”`, edits: [{ start: end, end, text: `${comma} ${wanted}` }], safe: false };
}

function sayMixed(panel: Panel, wire: Wire, report: (report: Report) => void): void {
  const strange = strangeCommon(wire);
  if (strange === undefined) return;
  const input = wire.ends.find((end) => end.terminal?.common !== undefined) as TerminalUse & { readonly terminal: Terminal };
  report({
    at: strange.at,
    what: `${quoted(wire.fact.device.text)} is wired to ${quoted(strange.at.text)} as well, which no input of this wire returns to.`,
    why: 'The wire joins two commons that the panel keeps apart.',
    remedy: `Leave out ${quoted(strange.at.text)}: ${quoted(input.at.text)} returns to ${quoted(input.terminal.common?.text ?? '')}.`,
    related: panel.model === undefined ? [] : [inModel(panel.model, panel.installation, input.terminal.line, `${quoted(input.at.text)} names its common here`)],
  });
}
