import { regimeOf } from '../../model/index.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { matrixSource } from '../safeguarding-below-minimum/matrix.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'hold-to-run-misuse',
  severity: 'error',
  title: 'A hold-to-run control is used where it does not protect.',
  why: 'Hold-to-run protects only because one person sees the whole gate and lets go in time, and knows that this is what they are for.',
  remedy:
    'Use a key switch where only a limited group may operate it, another kind of control where the public is, and a place with full view.',
  source: matrixSource,
  acceptable: false,
  check: (installation, report) => {
    const { site, controls } = installation;
    const users = site?.facts.users;
    const { judgesHeldControls } = regimeOf(installation);
    for (const control of controls) {
      const acts = control.facts.acts;
      if (acts?.value !== 'hold-to-run') continue;
      const related = toFact('these are the users', users);
      if (judgesHeldControls && users?.value === 'public')
        report({
          at: acts.line,
          what: `${quoted(control.name)} is hold-to-run, which is not allowed where the public is near the gate.`,
          remedy: 'Choose another kind of control, with the protection that it asks for.',
          related,
        });
      else if (judgesHeldControls && users?.value === 'limited' && control.facts.by?.value !== 'key-switch')
        report({
          at: acts.line,
          what: `${quoted(control.name)} is hold-to-run for a limited group, but it is not a key switch, so anybody can use it.`,
          remedy: 'Use a key switch, or similar, and say “by key-switch”.',
          related,
        });
      const sight = (control.facts.sight ?? site?.facts.sight)?.value;
      if (sight !== 'full')
        report({
          at: acts.line,
          severity: 'warning',
          what: `${quoted(control.name)} is hold-to-run, but ${sight === undefined ? 'nobody says that the whole gate is' : 'the whole gate is not'} in view from it.`,
          remedy:
            sight === undefined
              ? 'If all of the gate is in view from it, say “sight full”; if not, move it.'
              : 'Move it to where all of the gate is in view, and say “sight full”.',
          source: { text: 'EN 12453, from memory', standing: 'from memory' },
        });
    }
  },
});
