import { headPlace } from '../../model/index.ts';
import { isFixed } from '../control-within-reach/rule.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { clipped, quoted } from '../words.ts';

export const rule = installationRule({
  name: 'entrapment-facts-unstated',
  severity: 'note',
  title: 'Under the rules of North America, the site does not say all that they ask about.',
  why: 'What is not stated is not judged; no finding about it does not mean that it is as it should be.',
  remedy: 'Look at the place and write down what is missing.',
  source: commonPractice,
  acceptable: true,
  under: 'north-america',
  check: ({ site, controls }, report) => {
    if (site === undefined) return;
    const lacks = (['usage-class', 'pedestrian-entrance', 'signs'] as const).filter(
      (fact) => site.facts[fact] === undefined && !site.unread.includes(fact),
    );
    const reaches = controls
      .filter((control) => isFixed(control) && control.facts.reach === undefined)
      .map(({ name }) => `reach of ${quoted(name)}`);
    const missing = [...lacks, ...reaches];
    if (missing.length > 0)
      report({ at: headPlace(site), what: `This is not judged, because it is not stated: ${clipped(missing.join(', '))}.`, lacks });
  },
});
