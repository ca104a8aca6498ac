import { panelsByDrive } from '../../circuits/index.ts';
import { factPlace, headPlace, type Leaf, type Panel } from '../../model/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'overlap-on-two-panels',
  severity: 'error',
  title: 'Two leaves that overlap are driven by two panels.',
  why: 'Each panel starts its leaf when it is told to, and neither knows of the other: nobody keeps the order, and the leaves run into each other with whoever is between them.',
  remedy: 'Wire both drives to one panel for two leaves.',
  source: { text: 'geometry of the overlap', standing: 'derived' },
  acceptable: false,
  check: ({ panels, leaves }, report) => {
    if (panels.length < 2) return;
    for (const leaf of leaves) {
      const { covers } = leaf;
      if (covers === undefined) continue;
      const own = drivingOf(leaf);
      const others = drivingOf(covers);
      const [first] = own;
      const [second] = others;
      // A drive on no panel is reported for that.
      if (first === undefined || second === undefined || own.some((panel) => others.includes(panel))) continue;
      report({
        at: factPlace(leaf, leaf.facts.closes),
        what: `${quoted(leaf.name)} covers ${quoted(covers.name)}, but ${quoted(first.name)} drives the one and ${quoted(second.name)} the other, so nothing keeps them in order.`,
        related: [first, second].map((panel) => ({ message: 'one of the two panels', ...headPlace(panel) })),
      });
    }
  },
});

/** The panels to which the drives of a leaf are wired. */
function drivingOf({ drives, installation }: Leaf): readonly Panel[] {
  const byDrive = panelsByDrive(installation);
  return drives.flatMap((drive) => byDrive.get(drive) ?? []);
}
