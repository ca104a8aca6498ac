import { bound, hair } from '../bounds.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted, written } from '../words.ts';

const held = { name: 'travel', unit: 'm', way: 'most' } as const;

export const rule = installationRule({
  name: 'travel-beyond-leaf',
  severity: 'error',
  title: 'A sliding leaf travels further than it is long.',
  why: 'Its front end leaves the rollers or the guide beside the opening, and its rack the pinion: nothing holds the leaf upright any more, and it falls on whoever is there.',
  remedy: 'Correct the travel or the width; the leaf, without its tail, is at least as long as its travel.',
  source: { text: 'plane geometry', standing: 'derived' },
  acceptable: false,
  holds: ({ leaves }, hold) => {
    for (const { name, facts } of leaves) {
      const { slides, width } = facts;
      if (slides === undefined || width === undefined) continue;
      hold(bound(held, name, slides.distance, width.value, hair(width.value)), slides.line, () => ({
        what: `${quoted(name)} travels further than its length of ${written(width.line)}, so its front end leaves what guides it beside the opening.`,
        related: toFact('its length', width),
      }));
    }
  },
});
