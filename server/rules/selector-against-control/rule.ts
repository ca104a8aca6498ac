import { positionsOf } from '../../safeguards/index.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule, ofTheModel, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'selector-against-control',
  severity: 'error',
  title: 'A selector makes the gate move in another way than the file says that it is commanded.',
  why: 'One of the two is not so: the gate closes by itself where somebody is to hold it, or does not do what it is relied on to do.',
  remedy: 'Set the selector to the position that is meant, and say in “control” and “motion” how the gate is commanded in it.',
  source: ofTheModel,
  acceptable: false,
  check: (installation, report) => {
    const { motion, controls } = installation;
    for (const { panel, selection, option } of positionsOf(installation)) {
      const { acts } = option;
      if (acts === undefined || acts === 'any') continue;
      const moving = controls.filter(({ facts }) => facts.acts !== undefined && facts.acts.value !== 'stop');
      const held = moving.find(({ facts }) => facts.acts?.value === 'hold-to-run');
      const given = moving.find(({ facts }) => facts.acts?.value !== 'hold-to-run');
      const dwell = motion?.facts.dwell;
      let against: { readonly says: string; readonly related: readonly Related[] } | undefined;
      if (acts === 'hold-to-run' && given !== undefined)
        against = { says: `${quoted(given.name)} is to move it at one command`, related: toFact('how it is commanded', given.facts.acts) };
      else if (acts === 'hold-to-run' && dwell !== undefined)
        against = { says: 'it is to close after a dwell', related: toFact('the dwell', dwell) };
      else if (acts === 'automatic' && held !== undefined && given === undefined)
        against = { says: `${quoted(held.name)} is to be held`, related: toFact('how it is commanded', held.facts.acts) };
      else if (acts === 'impulse' && held !== undefined && given === undefined)
        against = { says: `${quoted(held.name)} is to be held`, related: toFact('how it is commanded', held.facts.acts) };
      else if (acts === 'impulse' && dwell !== undefined)
        against = { says: 'it is to close after a dwell', related: toFact('the dwell', dwell) };
      if (against === undefined) continue;
      report({
        at: selection.fact.line,
        what: `With ${quoted(selection.fact.selector.text)} at ${quoted(option.name.text)} the gate ${does[acts]}, but ${against.says}.`,
        related: [...against.related, ...toModelFact('what the position means', installation, panel.model, option)],
      });
    }
  },
});

const does = {
  'hold-to-run': 'moves only while a command is held',
  automatic: 'closes by itself',
  impulse: 'closes only when it is told to',
} as const;
