import { headPlace } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { isRepeatedName } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'leaf-driven-twice',
  severity: 'warning',
  title: 'Two drives move one leaf.',
  why: 'Two drives on one leaf work against each other unless they are made for it; and together they push with the force of both.',
  remedy: 'Correct what each drive moves. Where two drives are made to share a leaf, accept the finding with that reason.',
  source: commonPractice,
  acceptable: true,
  check: ({ leaves }, report) => {
    for (const { name, drives, installation } of leaves) {
      const first = drives[0];
      if (first === undefined) continue;
      for (const drive of drives) {
        if (drive === first || isRepeatedName(installation, drive.nameAt)) continue;
        report({
          at: drive.facts.moves?.leaf ?? headPlace(drive),
          what: `${quoted(drive.name)} moves ${quoted(name)}, which ${quoted(first.name)} moves already.`,
          related: toFact('the first drive of this leaf', first.facts.moves),
        });
      }
    }
  },
});
