import { factPlace, headPlace } from '../../model/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'manual-release-not-stated',
  severity: 'error',
  title: 'A drive does not say how it is released, or cannot be.',
  why: 'When the supply fails, or somebody is caught, the leaf must be moved by hand at once; whoever is there must know how.',
  remedy: 'Find out how the drive is released, and write “release key”, “release handle” or “release tool” into it.',
  source: { text: 'HSE, Powered gates: responsibilities (how a trapped person is released is handed over)', standing: 'published' },
  acceptable: 'warnings',
  check: ({ drives }, report) => {
    for (const drive of drives) {
      if (drive.leaf === undefined) continue;
      const release = drive.facts.release;
      if (release === undefined) {
        if (!drive.unread.includes('release'))
          report({
            at: headPlace(drive),
            severity: 'warning',
            what: `It is not stated how ${quoted(drive.name)} is released, so that ${quoted(drive.leaf.name)} can be moved by hand.`,
          });
      } else if (release.value === 'none')
        report({
          at: factPlace(drive, release),
          what: `${quoted(drive.name)} cannot be released, so nobody can move ${quoted(drive.leaf.name)} by hand.`,
          remedy: 'Choose a drive that can be released.',
        });
    }
  },
});
