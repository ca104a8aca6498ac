import { headPlace, type Installation } from '../../model/index.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { blockLost } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'site-missing',
  severity: 'error',
  title: 'A file describes a gate and does not say where it stands.',
  why: 'Which rules hold and who uses the gate decide what is safe there; without them no safeguard is judged.',
  remedy: 'Write a “site” block that says which rules hold and who uses the gate.',
  source: ofTheLanguage,
  acceptable: false,
  check: (installation, report) => {
    // A `site` that has no braces or is misspelt was reported as that.
    if (installation.site !== undefined || blockLost(installation, 'site')) return;
    const first = firstBlock(installation);
    if (first === undefined) return;
    const at = headPlace(first);
    report({ at, what: `The file describes ${quoted(installation.reading.tree.text.slice(at.start, at.end))} and has no “site” block.` });
  },
});

/** What stands first in the file of all that a gate consists of. */
function firstBlock({ leaves, drives, sensors, controls, panels, cables, motion }: Installation) {
  const blocks = [...leaves, ...drives, ...sensors, ...controls, ...panels, ...cables, ...(motion === undefined ? [] : [motion])];
  return blocks.sort((a, b) => a.at.start - b.at.start)[0];
}
