import { heedingOf } from '../../circuits/index.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'function-leaves-out-part',
  severity: 'error',
  title: 'A safety function leaves out the panel through which its sensor reports.',
  why: 'What is reckoned is then not the chain that stops the gate: the part that is left out fails as well, and its failures are not counted.',
  remedy: 'Name the panel among the parts.',
  source: { text: 'EN ISO 13849-1: a function runs from what senses to what stops, and every part of it counts', standing: 'published' },
  acceptable: false,
  check: ({ functions }, report) => {
    for (const of of functions) {
      // What is put together of single parts may be the panel’s own.
      if (of.subsystems.length > 0) continue;
      const { parts } = of;
      const named = new Set(parts.map((part) => part.it?.it));
      for (const { at, it: load } of parts) {
        if (load?.kind !== 'sensor') continue;
        const panel = heedingOf(load.it)?.wire.panel;
        if (panel === undefined || named.has(panel)) continue;
        report({
          at,
          what: `The function ${quoted(of.name)} runs through ${quoted(load.it.name)}, which reports to ${quoted(panel.name)}, and leaves out ${quoted(panel.name)}.`,
          related: toFact('it reports over this wire', heedingOf(load.it)?.wire.fact),
        });
      }
    }
  },
});
