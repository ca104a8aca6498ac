import { installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'warning-sign-missing',
  severity: 'warning',
  title: 'Under the rules of North America, no sign warns of the moving gate on one or both of its sides.',
  why: 'Who comes to the gate for the first time does not know that it moves by itself.',
  remedy: 'Put up a warning sign on each side of the gate, where it can be seen from, and write “signs both-sides”.',
  source: { text: 'UL 325, as reported in ASHI Reporter, December 2001', standing: 'published' },
  acceptable: true,
  under: 'north-america',
  check: ({ site }, report) => {
    if (site === undefined) return;
    const signs = site.facts.signs;
    if (signs === undefined || signs.value === 'both-sides') return;
    report({
      at: signs.line,
      what: signs.value === 'none' ? 'No sign warns of the moving gate.' : 'A sign warns of the moving gate on one of its sides only.',
    });
  },
});
