import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'pedestrian-leaf-covered',
  severity: 'error',
  title: 'The leaf that opens for people on foot lies behind another one.',
  why: 'It opens alone, and cannot: it pushes against the leaf that covers it, with a drive at each, or takes it along to where nobody expects it.',
  remedy: 'Let the covering leaf be the one that opens for people on foot, or turn the overlap round.',
  source: { text: 'geometry of the overlap', standing: 'derived' },
  acceptable: false,
  check: ({ motion, leaves }, report) => {
    const pedestrian = motion?.facts.pedestrian;
    if (pedestrian === undefined) return;
    const opening = pedestrian.leaf.text;
    for (const covering of leaves) {
      if (covering.covers?.name !== opening) continue;
      report({
        at: pedestrian.line,
        what: `${quoted(opening)} is to open alone for people on foot, but ${quoted(covering.name)} covers it and must open first.`,
        related: toFact('the overlap', covering.facts.closes),
      });
    }
  },
});
