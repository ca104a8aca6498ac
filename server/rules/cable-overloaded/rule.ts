import { mostOf, ratingOf } from '../../figures/current-rating/working.ts';
import { bound, hair } from '../bounds.ts';
import { overMost, ratingInWords, ratingRelated, ratingSource, ratingSourceText } from '../electrical.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'cable.NAME.current-rating', name: 'current', unit: 'A', way: 'most' } as const;

export const rule = installationRule({
  name: 'cable-overloaded',
  severity: 'error',
  title: 'A cable carries more current than it may as it is laid.',
  why: 'The conductors get hotter than their insulation bears; it ages, fails and can start a fire.',
  remedy: 'Choose a thicker conductor, or lay the cable where it can lose its heat.',
  source: ratingSource,
  acceptable: false,
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const { carries } = cable.facts;
      const rating = ratingOf(cable);
      if (carries === undefined) continue;
      if (rating === undefined) {
        const most = mostOf(cable);
        // That it may be enough somehow is no margin worth telling.
        if (most === undefined || carries.current <= most.current) continue;
        hold(bound(held, cable.name, carries.current, most.current), carries.line, () => {
          const { bears, ...rest } = overMost(cable, carries.current, most);
          return { ...rest, what: `${quoted(cable.name)} carries ${written(carries.line)}; ${bears}` };
        });
        continue;
      }
      hold(bound(held, cable.name, carries.current, rating.current, hair(rating.current)), carries.line, () => ({
        severity: rating.standing === 'published' && !rating.atLeast ? 'error' : 'warning',
        what: `${quoted(cable.name)} carries ${written(carries.line)}; as it is laid it may carry ${shown(rating.current)} A${ratingInWords(rating)}.`,
        source: ratingSourceText(rating),
        related: ratingRelated(cable),
      }));
    }
  },
});
