import { mostOf, ratingOf } from '../../figures/current-rating/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound, hair } from '../bounds.ts';
import { overMost, protectionOf, ratingInWords, ratingRelated, ratingSource, ratingSourceText } from '../electrical.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { figure: 'cable.NAME.current-rating', name: 'protection', unit: 'A', way: 'most' } as const;

export const rule = installationRule({
  name: 'protection-over-cable-rating',
  severity: 'error',
  title: 'The breaker or fuse of a cable lets more current flow than the cable may carry.',
  why: 'In an overload the cable burns before the device cuts off.',
  remedy: 'Fit a device of a smaller rated current, or a thicker cable.',
  source: ratingSource,
  acceptable: 'warnings',
  holds: ({ cables }, hold) => {
    for (const cable of cables) {
      const device = protectionOf(cable);
      if (device === undefined) continue;
      const rating = ratingOf(cable);
      if (rating === undefined) {
        const most = mostOf(cable);
        // That it may be enough somehow is no margin worth telling.
        if (most === undefined || device.rating <= most.current) continue;
        hold(bound(held, cable.name, device.rating, most.current), factPlace(cable, device), () => {
          const { bears, ...rest } = overMost(cable, device.rating, most);
          return { ...rest, what: `${quoted(cable.name)} is protected at ${written(device.line)}; ${bears}` };
        });
        continue;
      }
      hold(bound(held, cable.name, device.rating, rating.current, hair(rating.current)), factPlace(cable, device), () => ({
        severity: rating.standing === 'published' && !rating.atLeast ? 'error' : 'warning',
        what: `${quoted(cable.name)} is protected at ${written(device.line)}; as it is laid it may carry ${shown(rating.current)} A${ratingInWords(rating)}.`,
        source: ratingSourceText(rating),
        related: ratingRelated(cable),
      }));
    }
  },
});
