import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'pedestrian-entrance-shared',
  severity: 'error',
  title: 'Under the rules of North America, people on foot pass through the powered gate.',
  why: 'A gate for vehicles moves without regard to people on foot, and most who were caught were walking through.',
  remedy: 'Give people on foot an entrance of their own, away from where the leaf moves, and write “pedestrian-entrance separate”.',
  source: { text: 'CPSC, Operation Safe Gate, 2018', standing: 'published' },
  acceptable: false,
  under: 'north-america',
  check: ({ site, motion }, report) => {
    if (site === undefined) return;
    const entrance = site.facts['pedestrian-entrance'];
    const pedestrian = motion?.facts.pedestrian;
    if (entrance?.value === 'shared')
      report({ at: entrance.line, what: 'People on foot pass through the powered gate, together with the vehicles.' });
    else if (pedestrian !== undefined)
      report({
        at: pedestrian.line,
        what: 'The gate has a pedestrian opening, so people on foot pass through the powered gate.',
        related: toFact('the site says this', entrance),
      });
  },
});
