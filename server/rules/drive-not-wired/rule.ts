import { headPlace, type Installation } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { blockLost, isRepeatedName, lost } from '../unread.ts';
import { quoted, quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'drive-not-wired',
  severity: 'error',
  title: 'A drive is not wired to any panel.',
  why: 'Nobody can say what stops it: no sensor and no stop counts for what it moves.',
  remedy: 'Wire the drive to a motor output of the panel, or take it out of the file.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    const { drives, panels } = installation;
    // Where there is no panel at all, that is said.
    if (panels.length === 0 || drives.length === 0 || blockLost(installation, 'panel')) return;
    const wired = wiredIn(installation);
    if (wired === undefined) return;
    for (const drive of drives) {
      if (wired.has(drive) || isRepeatedName(installation, drive.nameAt)) continue;
      report({
        at: drive.nameAt ?? headPlace(drive),
        what: `${quoted(drive.name)} is not wired to ${panels.length === 1 ? quotedList(panels.map(({ name }) => name)) : 'any panel'}.`,
        related: panels.slice(0, 4).map((panel) => ({ message: `nothing in ${quoted(panel.name)} wires it`, ...headPlace(panel) })),
      });
    }
  },
});

/** Every device that a wire names; undefined where the line that is missed may be one that could not be read, or names what is not there. */
function wiredIn({ panels }: Installation): ReadonlySet<unknown> | undefined {
  const wired = new Set<unknown>();
  for (const { unread, wires } of panels) {
    if (lost(unread, 'panel', 'wire')) return undefined;
    for (const { device, part } of wires) {
      if (device === undefined) return undefined;
      // What drives the motor is its signal; a supply or a test of it moves nothing.
      if (part === 'signal') wired.add(device.it);
    }
  }
  return wired;
}
