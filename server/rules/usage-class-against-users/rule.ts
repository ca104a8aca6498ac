import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'usage-class-against-users',
  severity: 'warning',
  title: 'Under the rules of North America, the usage class leaves the public out, but the public is there.',
  why: 'In classes III and IV less is asked for, because nobody who does not know the gate comes near it.',
  remedy: 'Choose class I or II, or keep the public away and say which users there are.',
  source: { text: 'ASTM F2200 (usage classes)', standing: 'published' },
  acceptable: false,
  under: 'north-america',
  check: ({ site }, report) => {
    if (site === undefined) return;
    const { 'usage-class': usage, users } = site.facts;
    if (users?.value !== 'public' || (usage?.value !== 'III' && usage?.value !== 'IV')) return;
    report({
      at: usage.line,
      what: `Usage class ${usage.value} is for premises that the public does not come to, but the users are the public.`,
      related: toFact('these users', users),
    });
  },
});
