import { forceWindowOf } from '../../figures/force-window/working.ts';
import { factPlace } from '../../model/index.ts';
import { keeps } from '../bounds.ts';
import { remedyFor, windowBound } from '../force-window-empty/rule.ts';
import { shown } from '../numbers.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Cold, wear and a battery that runs down move the forces by more than a quarter. */
const narrow = 1.25;

export const rule = installationRule({
  name: 'force-window-narrow',
  severity: 'note',
  title: 'There is hardly any room between the force that moves the leaf and the force that hurts.',
  why: 'Cold, wear and a tired battery change what the leaf needs; a setting that works today stalls tomorrow, and then somebody turns it up.',
  remedy: 'Widen the window by the change that suits the site.',
  source: commonPractice,
  acceptable: true,
  under: 'outside north-america',
  cost: 'idle',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      // A window that is shut has a rule of its own.
      if (window === undefined || !keeps(windowBound(leaf, window))) continue;
      hold(windowBound(leaf, window, narrow), factPlace(leaf, leaf.facts['hinge-guard'] ?? leaf.facts.mass), () => ({
        what: `${quoted(leaf.name)} can be driven with ${shown(window.low)} to ${shown(window.high)} ${window.of.unit} and nothing else: less does not move it, more is too much.`,
        remedy: remedyFor(window, narrow),
      }));
    }
  },
});
