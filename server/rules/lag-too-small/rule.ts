import { overlapsOf } from '../../figures/least-lag/working.ts';
import { factPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { seconds, secondsAtLeast } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Ten milliseconds: finer than any panel keeps time. */
const slack = 0.01;

const held = {
  opening: { figure: 'motion.least-lag', name: 'lag when opening', unit: 's', way: 'least' },
  closing: { figure: 'motion.least-lag-closing', name: 'lag when closing', unit: 's', way: 'least' },
} as const;
const movements = ['opening', 'closing'] as const;

export const rule = installationRule({
  name: 'lag-too-small',
  severity: 'error',
  title: 'The lag between two leaves that overlap is so short that they run into each other.',
  why: 'The leaves jam or lock the wrong way round, and whoever has a hand between them is caught by two drives.',
  remedy: 'Set at least the least lag, and some more for wind, wear and cold.',
  source: { text: 'plane geometry and constant-acceleration motion of both leaves', standing: 'derived' },
  acceptable: false,
  holds: (installation, hold) => {
    for (const least of overlapsOf(installation)) {
      const { covering, covered } = least;
      const { closes } = covering.facts;
      for (const movement of movements) {
        const lag = installation.motion?.facts.lag.find((each) => each.movement === movement);
        hold(bound(held[movement], '', lag?.time ?? 0, least[movement].lag, slack), factPlace(covering, lag ?? closes), () => {
          const [first, second] = movement === 'opening' ? [covering, covered] : [covered, covering];
          const must = `${quoted(second.name)} must start at least ${secondsAtLeast(least[movement].lag)} after ${quoted(first.name)}, or the leaves meet.`;
          return lag === undefined
            ? { what: `No lag is set for ${movement}, but ${must}` }
            : { what: `The lag of ${seconds(lag.time)} for ${movement} is too short: ${must}`, related: toFact('the overlap', closes) };
        });
      }
    }
  },
});
