import { headPlace } from '../../model/index.ts';
import { isFixed } from '../control-within-reach/rule.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { clipped } from '../words.ts';

export const rule = installationRule({
  name: 'entrapment-facts-unstated',
  severity: 'note',
  title: 'Under the rules of North America, the site does not say all that they ask about.',
  why: 'What is not stated is not judged; no finding about it does not mean that it is as it should be.',
  remedy: 'Look at the place and write down what is missing.',
  source: commonPractice,
  acceptable: true,
  check: ({ site, controls }, report) => {
    if (site?.facts.rules?.value !== 'north-america') return;
    const missing: string[] = [];
    for (const fact of ['usage-class', 'pedestrian-entrance', 'signs'] as const) if (site.facts[fact] === undefined && !site.unread.includes(fact)) missing.push(fact);
    for (const control of controls) if (isFixed(control) && control.facts.reach === undefined) missing.push(`reach of “${control.name}”`);
    if (missing.length > 0) report({ at: headPlace(site), what: `This is not judged, because it is not stated: ${clipped(missing.join(', '))}.`, lacks: missing.filter((fact) => !fact.includes(' ')) });
  },
});
