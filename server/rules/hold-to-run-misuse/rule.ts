import { type Control, type Installation, regimeOf } from '../../model/index.ts';
import { hasAPlace, matrixSource, measuresFor, meets, seesTheGate, statedSightOf } from '../../safeguards/index.ts';
import { toFact } from '../related.ts';
import { installationRule, type Report } from '../rule.ts';
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
    // Beside full protection a key for maintenance needs nobody who watches: the sensors do.
    if (isFullyProtected(installation)) return;
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
      if (!seesTheGate(control)) report({ at: acts.line, ...outOfView(control) });
    }
  },
});

/** Nothing relies on anybody’s eyes: what protects every closing edge does for a gate that closes by itself. */
const isFullyProtected = ({ leaves }: Installation): boolean =>
  leaves.some(({ drives }) => drives.length > 0) &&
  leaves.every((leaf) => leaf.drives.length === 0 || meets(measuresFor(leaf, 'closing', true), '(C and D) or E'));

function outOfView(control: Control): Partial<Report> & Pick<Report, 'what'> {
  const name = quoted(control.name);
  if (!hasAPlace(control)) {
    const { by } = control.facts;
    return {
      ...(by === undefined ? {} : { at: by.line }),
      what: `${name} is hold-to-run, ${by === undefined ? 'and nobody says by what, so that whoever holds it may be' : `but whoever holds it (${by.value}) may be`} anywhere, and need not see the gate.`,
      remedy: 'Use a button or a key switch in a place with full view of the gate, or protection that needs nobody’s eyes.',
    };
  }
  const sight = statedSightOf(control);
  return {
    ...(sight === undefined ? {} : { at: sight.line }),
    what: `${name} is hold-to-run, but ${sight === undefined ? 'nobody says that the whole gate is' : 'the whole gate is not'} in view from it.`,
    remedy:
      sight === undefined
        ? 'If all of the gate is in view from it, say “sight full”; if not, move it.'
        : 'Move it to where all of the gate is in view, and say “sight full”.',
    related: toFact('this control is held', control.facts.acts),
  };
}
