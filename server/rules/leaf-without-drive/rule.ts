import { headPlace, type Installation, type Leaf } from '../../model/index.ts';
import { commonPractice, installationRule, type Report } from '../rule.ts';
import { blockLost, isRepeatedName } from '../wiring.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'leaf-without-drive',
  severity: 'warning',
  title: 'A leaf has no drive, though others have.',
  why: 'Nothing is worked out for this leaf: no times, no forces, no lag to the leaf that it meets.',
  remedy: 'Write the drive that moves it. A leaf that is opened by hand is accepted with that reason.',
  source: commonPractice,
  acceptable: true,
  check: (installation, report) => {
    if (installation.drives.length === 0) return;
    for (const leaf of installation.leaves) if (leaf.drives.length === 0) say(installation, leaf, report);
  },
});

function say(installation: Installation, leaf: Leaf, report: (report: Report) => void): void {
  const { drives } = installation;
  // A drive that does not say, or not plainly, what it moves may be the one of this leaf.
  if (drives.some((drive) => drive.leaf === undefined) || isRepeatedName(installation, leaf.nameAt) || blockLost(installation, 'drive')) return;
  report({
    at: headPlace(leaf),
    what: `No drive moves ${quoted(leaf.name)}.`,
    related: drives.slice(0, 4).map((drive) => ({ message: `moves ${quoted(drive.leaf?.name ?? '')}`, ...headPlace(drive) })),
  });
}
