import { headPlace, type Panel, type Terminal } from '../../model/index.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { addLine, inModel, wiringUnsure } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'normally-closed-input-open',
  severity: 'error',
  title: 'A normally-closed input has nothing wired to it and is not linked to its common.',
  why: 'An open input of that kind is an alarm that never ends: the gate will not move. Sooner or later somebody bridges inputs until it does, and bridges a device that is needed.',
  remedy: 'Wire a device to it, or link it to its common and write the link into the file.',
  source: commonPractice,
  acceptable: true,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { model } = panel;
      if (model === undefined) continue;
      for (const terminal of model.facts.terminal)
        if (terminal.contact === 'normally-closed' && wantsContact(terminal) && !isUsed(panel, terminal)) say(panel, terminal, report);
    }
  },
});

const wantsContact = ({ role }: Terminal): boolean => role === 'safety-input' || role === 'stop-input' || role === 'command-input';

function isUsed({ wires, links }: Panel, terminal: Terminal): boolean {
  for (const { ends } of wires) for (const end of ends) if (end.terminal === terminal) return true;
  for (const { ends } of links) for (const end of ends) if (end.terminal === terminal) return true;
  return false;
}

function say(panel: Panel, terminal: Terminal, report: (report: Report) => void): void {
  const { model, installation } = panel;
  const name = terminal.name.text;
  if (model === undefined || model.terminals.get(name) !== terminal || wiringUnsure(panel)) return;
  const common = terminal.common?.text;
  const line = `link ${name} ${common}`;
  report({
    at: panel.nameAt ?? headPlace(panel),
    what: `Input ${quoted(name)} of ${quoted(panel.name)} stands open: no wire ends on it, and no link closes it.`,
    remedy: common === undefined ? 'Wire a device to it, or link it as the panel’s manual says.' : `Wire a device to it, or write ${quoted(line)} and fit that link.`,
    related: [inModel(model, installation, terminal.line, `${quoted(name)} expects a contact that is closed while all is well`)],
    fixes: common === undefined ? [] : [{ title: `Write “${line}”`, edits: [addLine(installation.reading.tree.text, panel.at, line, ['wire', 'link'])], safe: false }],
  });
}
