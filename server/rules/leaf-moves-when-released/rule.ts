import { releasedOf } from '../../figures/leaf-load/working.ts';
import { factPlace, type Leaf } from '../../model/index.ts';
import { degrees, shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** What a leaf may press with for longer than a moment, N: EN 12453:2017, Annex A (static force). */
const pressesMost = 150;

export const rule = installationRule({
  name: 'leaf-moves-when-released',
  severity: 'error',
  title: 'A leaf moves by itself as soon as its drive is released.',
  why: 'Whoever releases the drive, to free somebody or because the supply failed, is struck or caught by a leaf that nobody expects to move.',
  remedy:
    'Level the hinges or the track, or fit a brake or a counterweight that works while the drive is released, and state as “friction” with what pull the leaf then just moves.',
  source: { text: 'statics, any mechanics textbook; EN 12453:2017, Annex A (150 N static force)', standing: 'published' },
  acceptable: 'warnings',
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
      // What nobody has measured may hold the leaf, as long as it need not hold more than may press on somebody.
      const mayHold = !frictionStated && atEdge(leaf, force) <= pressesMost;
      report({
        at: factPlace(leaf, swing ? (tilt ?? rises) : slope),
        severity: mayHold ? 'warning' : 'error',
        what: `Once released, ${quoted(leaf.name)} moves ${way} by itself, pulled by ${pulled}${frictionStated ? ' more than its friction holds' : swing ? ', with no friction stated' : ' more than its rollers hold (3 % of the weight, from memory)'}.`,
        related: toFact('its friction', stated),
      });
    }
  },
});

/** N at the free edge: of a swing leaf `force` is a moment. */
const atEdge = ({ facts }: Leaf, force: number): number => (facts.slides === undefined ? force / (facts.width?.value ?? 1) : force);
