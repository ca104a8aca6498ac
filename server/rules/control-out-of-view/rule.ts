import { headPlace, type Leaf } from '../../model/index.ts';
import { hasAPlace, matrixSource, measuresFor, meets, requirementFor, statedSightOf, type Users } from '../../safeguards/index.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'control-out-of-view',
  severity: 'error',
  title: 'A control is said to have the gate in view, and whoever uses it may be anywhere.',
  why: 'Who sends a command by radio or telephone, or drives over a loop, need not look at the gate, and a clock looks at nothing: that the gate could be seen protects nobody.',
  remedy: 'Take the claim away and fit the protection that a gate out of view asks for, or command it from a fixed place with full view.',
  source: matrixSource,
  acceptable: false,
  under: 'outside north-america',
  check: (installation, report) => {
    const { site, controls, leaves } = installation;
    const users: Users = site?.facts.users?.value ?? 'public';
    for (const control of controls) {
      const { acts, by, sight } = control.facts;
      if (acts?.value !== 'impulse' || hasAPlace(control)) continue;
      const claim = statedSightOf(control);
      if (claim?.value !== 'full') continue;
      const short = leaves.find((leaf) => leaf.drives.length > 0 && reliesOnView(leaf, users));
      // Where the site is seen from some other place and nothing hangs on this control, nothing is claimed of it.
      if (short === undefined && sight === undefined) continue;
      const who = by === undefined ? 'nobody says by what it is given' : `it is given by ${by.value}, from anywhere`;
      report({
        at: sight?.line ?? by?.line ?? headPlace(control),
        severity: short === undefined ? 'warning' : 'error',
        what:
          short === undefined
            ? `${quoted(control.name)} is said to have the whole gate in view, but ${who}.`
            : `What protects ${quoted(short.name)} is enough only where the command is given in view of the gate, but ${who} (${quoted(control.name)}).`,
        related: [
          ...(sight === undefined ? toFact('this says that the gate is in view', claim) : []),
          ...(short === undefined ? [] : [{ message: 'the leaf that relies on it', ...headPlace(short) }]),
        ],
      });
    }
  },
});

/** What is there meets what a gate in view asks for, and not what one out of view does. */
function reliesOnView(leaf: Leaf, users: Users): boolean {
  const measures = measuresFor(leaf, 'closing', false);
  return (
    meets(measures, requirementFor('impulse, gate in view', users)) && !meets(measures, requirementFor('impulse, gate not in view', users))
  );
}
