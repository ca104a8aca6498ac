import { balanceOf } from '../../figures/cantilever/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound, keeps } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact } from '../related.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

// Common practice, no source.
const least = 0.3;
const most = 0.5;
/** Least tail in practice, 30 %, asks for 1.2 times the weight at the best; more than twice that is no tail that somebody built. */
const mostUplift = 2.5;
const says = (share: number): string => `${shown(share * 100)} %`;
const saysTimes = (times: number): string => `${shown(times)} times its weight`;
const held = {
  least: { figure: 'leaf.NAME.tail-share', name: 'tail', unit: '1', way: 'least', says },
  uplift: { name: 'uplift at the rear rollers', unit: '1', way: 'most', says: saysTimes },
  most: { figure: 'leaf.NAME.tail-share', name: 'tail', unit: '1', way: 'most', says },
} as const;

const statics = { text: 'statics of a beam on two supports, any mechanics textbook', standing: 'derived' } as const;

export const rule = installationRule({
  name: 'tail-outside-practice',
  severity: 'error',
  title: 'The tail of a leaf without a track is shorter or longer than is usual.',
  why: 'With a short tail the rollers carry several times the weight, and the free end drops and swings; a long one costs room behind the opening and gains little.',
  remedy: 'Make the tail 30 to 50 % of the leaf, 40 % as a rule, the more the heavier or windier; or accept it with the reason.',
  source: commonPractice,
  acceptable: 'warnings',
  holds: ({ leaves }, hold) => {
    for (const leaf of leaves) {
      const balance = balanceOf(leaf);
      if (balance === undefined) continue;
      const { share, uplift } = balance;
      const { tail, 'roller-spacing': spacing } = leaf.facts;
      const toUplift = bound(held.uplift, leaf.name, uplift, mostUplift, 1e-9);
      hold(toUplift, factPlace(leaf, spacing ?? tail), () => ({
        what: `The rear rollers of ${quoted(leaf.name)} hold it down with ${shown(uplift)} times its weight when it is closed${spacing === undefined ? ', even as far back as its tail is long' : ''}; more than ${mostUplift} times cannot stand.`,
        why: 'With so short a lever the rollers carry many times the weight, and what little play they have lets the free end drop to the ground: the leaf jams, or comes off its rollers and falls.',
        remedy: 'Make the tail longer and set the rollers further apart.',
        source: statics,
        related: toFact('the tail', tail),
      }));
      // What cannot stand need not be said to be unusual too.
      if (!keeps(toUplift)) continue;
      const say = () => ({
        severity: 'warning' as const,
        what: `The tail of ${quoted(leaf.name)} is ${says(share)} of the leaf; 30 to 50 % is usual.`,
      });
      hold(bound(held.least, leaf.name, share, least, 1e-9), factPlace(leaf, tail), say);
      hold(bound(held.most, leaf.name, share, most, 1e-9), factPlace(leaf, tail), say);
    }
  },
});
