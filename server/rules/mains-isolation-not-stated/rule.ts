import { extraLow } from '../../circuits/index.ts';
import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted, written } from '../words.ts';

export const rule = installationRule({
  name: 'mains-isolation-not-stated',
  severity: 'warning',
  title: 'It is not stated where the mains of a panel is cut off.',
  why: 'Whoever works on the gate must be able to make it dead and keep it dead; in an emergency nobody should have to look for the switch.',
  remedy: 'State the isolator of the panel, as in “isolator "beside the panel, two poles, takes a padlock"”; fit one where there is none.',
  source: commonPractice,
  acceptable: true,
  check: ({ panels, site }, report) => {
    for (const panel of panels) {
      if (panel.facts.isolator !== undefined) continue;
      const supply = panel.model?.facts.supply ?? site?.facts.supply;
      if (supply === undefined || supply.voltage <= extraLow || lost(panel.unread, 'panel', 'isolator')) continue;
      report({ at: headPlace(panel), what: `${quoted(panel.name)} is fed with ${written(supply.line)}, and its isolator is not stated.` });
    }
  },
});
