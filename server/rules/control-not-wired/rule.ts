import { headPlace, type Installation } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { blockLost, isRepeatedName, lost } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'control-not-wired',
  severity: 'error',
  title: 'A control that needs a wire is not wired to any panel.',
  why: 'The panel never hears of it: whoever presses it to open the gate, or to stop it, does so in vain.',
  remedy: 'Wire it to an input of the panel that takes it, or take it out of the file.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    if (installation.panels.length === 0) return;
    for (const control of installation.controls) {
      const { by, acts } = control.facts;
      // A transmitter needs no wire; of what nobody says what it is, only a stop surely does: no radio stops a gate for certain.
      if (control.wires.length > 0 || by?.value === 'transmitter' || (by === undefined && acts?.value !== 'stop')) continue;
      if (lost(control.unread, 'control', 'by') || isRepeatedName(installation, control.nameAt) || mayBeLost(installation)) continue;
      report({
        at: control.nameAt ?? headPlace(control),
        what: `${quoted(control.name)} (${by?.value ?? 'a stop'}) is not wired to ${installation.panels.length === 1 ? quoted(installation.panels[0]?.name ?? '') : 'any panel'}.`,
        related: installation.panels
          .slice(0, 4)
          .map((panel) => ({ message: `nothing in ${quoted(panel.name)} wires it`, ...headPlace(panel) })),
      });
    }
  },
});

/** The line that is missed may be one that could not be read, or that names a control there is not. */
const mayBeLost = (installation: Installation): boolean =>
  blockLost(installation, 'panel') ||
  installation.panels.some((panel) => lost(panel.unread, 'panel', 'wire') || panel.wires.some((wire) => wire.device === undefined));
