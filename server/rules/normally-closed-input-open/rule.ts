import { isUsed } from '../../circuits/index.ts';
import { headPlace, type Panel, type PanelModel, type Terminal } from '../../model/index.ts';
import { asWritten } from '../../vocabulary/index.ts';
import { addLine } from '../fixes.ts';
import { toModelFact } from '../related.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { wiringUnsure } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'normally-closed-input-open',
  severity: 'error',
  title: 'A normally-closed input has nothing wired to it and is not linked to its common.',
  why: 'An open input of that kind is an alarm that never ends: the gate will not move. Sooner or later somebody bridges inputs until it does, and bridges a device that is needed.',
  remedy: 'Wire a device to it, or link it to its common and write the link into the file.',
  source: commonPractice,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const { model } = panel;
      if (model === undefined) continue;
      for (const terminal of model.terminals.values())
        if (terminal.contact === 'normally-closed' && wantsContact(terminal) && !isUsed(panel, terminal) && !wiringUnsure(panel))
          report(openOn(panel, model, terminal));
    }
  },
});

const wantsContact = ({ role }: Terminal): boolean => role === 'safety-input' || role === 'stop-input' || role === 'command-input';

function openOn(panel: Panel, model: PanelModel, terminal: Terminal): Report {
  const { installation } = panel;
  const { name, common } = terminal;
  const said = {
    at: panel.nameAt ?? headPlace(panel),
    what: `Input ${quoted(name.text)} of ${quoted(panel.name)} stands open: no wire ends on it, and no link closes it.`,
    related: toModelFact(`${quoted(name.text)} expects a contact that is closed while all is well`, installation, model, terminal),
  };
  if (common === undefined) return { ...said, remedy: 'Wire a device to it, or link it as the panel’s manual says.' };
  const line = `link ${asWritten(name.text)} ${asWritten(common.text)}`;
  return {
    ...said,
    remedy: `Wire a device to it, or write ${quoted(line)} and fit that link.`,
    fixes: [{ title: `Write “${line}”`, edits: [addLine(installation.reading.tree.text, panel.at, line, ['wire', 'link'])], safe: false }],
  };
}
