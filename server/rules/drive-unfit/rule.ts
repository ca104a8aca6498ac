import { headPlace, type Drive } from '../../model/index.ts';
import type { Statement } from '../../../grammar/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { installationRule, type Report } from '../rule.ts';
import { inModel, ofTheModel } from '../wiring.ts';
import { quoted } from '../words.ts';

const kinds = blocks['drive-model'].lines.kind.slots.value.options;

export const rule = installationRule({
  name: 'drive-unfit',
  severity: 'error',
  title: 'A drive for sliding leaves moves a swing leaf, or the other way round.',
  why: 'The drive cannot move that leaf, so nothing that is worked out for it means anything.',
  remedy: 'Choose a drive that fits the leaf, or correct which leaf it moves and how that leaf opens.',
  source: ofTheModel,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const kind = drive.model?.facts.kind?.value;
      const facts = drive.leaf?.facts;
      if (kind === undefined || facts === undefined) continue;
      const { opens, slides } = facts;
      // A leaf that does both, or neither, is reported for that.
      if (kind === 'rack') {
        if (opens !== undefined && slides === undefined) say(drive, opens.line, 'swings', report);
      } else if (slides !== undefined && opens === undefined) say(drive, slides.line, 'slides', report);
    }
  },
});

function say(drive: Drive, opens: Statement, does: 'swings' | 'slides', report: (report: Report) => void): void {
  const { leaf, model, installation } = drive;
  const kind = model?.facts.kind;
  // A line that could not be read may be the very one that says how the leaf opens.
  if (leaf === undefined || model === undefined || kind === undefined || leaf.unread.length > 0) return;
  report({
    at: drive.modelAt ?? headPlace(drive),
    what: `${quoted(drive.name)} (${model.name}) is ${kinds[kind.value]}; its leaf ${quoted(leaf.name)} ${does}.`,
    related: [
      { message: `${quoted(leaf.name)} ${does}`, start: opens.start, end: opens.end },
      inModel(model, installation, kind.line, 'the kind of drive'),
    ],
  });
}
