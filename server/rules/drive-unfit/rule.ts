import { headPlace } from '../../model/index.ts';
import { blocks } from '../../vocabulary/index.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, ofTheModel } from '../rule.ts';
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
      const { model, leaf } = drive;
      // A line that could not be read may be the very one that says how the leaf opens.
      if (model === undefined || leaf === undefined || leaf.unread.length > 0) continue;
      const { kind } = model.facts;
      const { opens, slides } = leaf.facts;
      // A leaf that does both, or neither, is reported for that.
      if (kind === undefined || (opens !== undefined && slides !== undefined)) continue;
      const isRack = kind.value === 'rack';
      const moved = isRack ? opens : slides;
      if (moved === undefined) continue;
      const does = `${quoted(leaf.name)} ${isRack ? 'swings' : 'slides'}`;
      report({
        at: drive.modelAt ?? headPlace(drive),
        what: `${quoted(drive.name)} (${model.name}) is ${kinds[kind.value]}; its leaf ${does}.`,
        related: [...toFact(does, moved), ...toModelFact('the kind of drive', drive.installation, model, kind)],
      });
    }
  },
});
