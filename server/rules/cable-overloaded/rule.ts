import { ratingOf } from '../../figures/current-rating/figure.ts';
import { factPlace } from '../../model/index.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { written } from '../wiring.ts';
import { quoted } from '../words.ts';
import { ratingInWords, ratingRelated, ratingSource, ratingSourceText } from '../electrical.ts';

export const rule = installationRule({
  name: 'cable-overloaded',
  severity: 'error',
  title: 'A cable carries more current than it may as it is laid.',
  why: 'The conductors get hotter than their insulation bears; it ages, fails and can start a fire.',
  remedy: 'Choose a thicker conductor, or lay the cable where it can lose its heat.',
  source: ratingSource,
  acceptable: false,
  check: ({ cables }, report) => {
    for (const cable of cables) {
      const { carries } = cable.facts;
      if (carries === undefined) continue;
      const rating = ratingOf(cable);
      if (rating === undefined || carries.current <= rating.current * (1 + 1e-9)) continue;
      report({
        at: factPlace(cable, carries),
        severity: rating.standing === 'published' && !rating.atLeast ? 'error' : 'warning',
        what: `${quoted(cable.name)} carries ${written(carries.line)}; as it is laid it may carry ${shown(rating.current)} A${ratingInWords(rating)}.`,
        source: ratingSourceText(rating),
        related: ratingRelated(cable),
      });
    }
  },
});
