import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule, type Related } from '../rule.ts';
import { blockLost, isRepeatedName } from '../unread.ts';
import { quoted } from '../words.ts';

/** Of the drives that move other leaves as many are shown. */
const mostDrives = 4;

export const rule = installationRule({
  name: 'leaf-without-drive',
  severity: 'warning',
  title: 'A leaf has no drive, though others have.',
  why: 'Nothing is worked out for this leaf: no times, no forces, no lag to the leaf that it meets.',
  remedy: 'Write the drive that moves it. A leaf that is opened by hand is accepted with that reason.',
  source: commonPractice,
  acceptable: true,
  check: (installation, report) => {
    const { drives, leaves } = installation;
    if (drives.length === 0) return;
    for (const leaf of leaves) {
      if (leaf.drives.length > 0 || isRepeatedName(installation, leaf.nameAt)) continue;
      // A drive that does not say, or not plainly, what it moves may be the one of this leaf.
      if (blockLost(installation, 'drive')) return;
      const related: Related[] = [];
      for (const drive of drives) {
        if (drive.leaf === undefined) return;
        if (related.length < mostDrives) related.push({ message: `moves ${quoted(drive.leaf.name)}`, ...headPlace(drive) });
      }
      report({ at: headPlace(leaf), what: `No drive moves ${quoted(leaf.name)}.`, related });
    }
  },
});
