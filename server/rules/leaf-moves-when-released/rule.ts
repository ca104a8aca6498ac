import { releasedOf } from '../../figures/leaf-load/working.ts';
import { factPlace } from '../../model/index.ts';
import { degrees, shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'leaf-moves-when-released',
  severity: 'warning',
  title: 'A leaf moves by itself as soon as its drive is released.',
  why: 'Whoever releases the drive, to free somebody or because the supply failed, is struck or caught by a leaf that nobody expects to move.',
  remedy:
    'Fit a brake, a counterweight or a catch, level the hinges or the track, or say on a sign at the release which way the leaf goes; then accept this with that reason.',
  source: { text: 'statics, any mechanics textbook', standing: 'derived' },
  acceptable: true,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const released = leaf.drives.length === 0 ? undefined : releasedOf(leaf);
      if (released === undefined) continue;
      const { swing, friction, frictionStated } = released;
      const closes = released.towardsClosed - friction;
      const opens = released.towardsOpen - friction;
      const [force, at, way] = closes >= opens ? [closes, released.closedAt, 'shut'] : [opens, released.openAt, 'open'];
      if (force <= 1e-6) continue;
      const { 'hinge-tilt': tilt, rises, slope, friction: stated } = leaf.facts;
      const pulled = swing ? `${shown(force)} N·m at ${degrees(at)}` : `${shown(force)} N`;
      report({
        at: factPlace(leaf, swing ? (tilt ?? rises) : slope),
        what: `Once released, ${quoted(leaf.name)} moves ${way} by itself, pulled by ${pulled}${frictionStated ? ' more than its friction holds' : swing ? ', with no friction stated' : ' more than its rollers hold (3 % of the weight, from memory)'}.`,
        related: toFact('its friction', stated),
      });
    }
  },
});
