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
  title: 'The lag between two leaves that overlap is so short that they run into each other, or may.',
  why: 'The leaves jam or lock the wrong way round, and whoever has a hand between them is caught by two drives.',
  remedy: 'Set at least the least lag.',
  source: { text: 'plane geometry and constant-acceleration motion of both leaves', standing: 'derived' },
  acceptable: 'warnings',
  holds: (installation, hold) => {
    for (const least of overlapsOf(installation)) {
      const { covering, covered, exact } = least;
      const { closes } = covering.facts;
      for (const movement of movements) {
        const lag = installation.motion?.facts.lag.find((each) => each.movement === movement);
        const time = lag?.time ?? 0;
        hold(bound(held[movement], '', time, least[movement].lag, slack), factPlace(covering, lag ?? closes), () => {
          const [first, second] = movement === 'opening' ? [covering, covered] : [covered, covering];
          const must = `${quoted(second.name)} must start at least ${secondsAtLeast(least[movement].lag)} after ${quoted(first.name)}`;
          if (lag === undefined) return { what: `No lag is set for ${movement}, but ${must}, or the leaves meet.` };
          const related = toFact('the overlap', closes);
          // Told to start together, whichever starts a moment sooner decides which leaf lies in the way of the other.
          if (time === 0 || time < exact[movement].lag - slack)
            return { what: `The lag of ${seconds(time)} for ${movement} is too short: ${must}, or the leaves meet.`, related };
          return {
            severity: 'warning',
            what: `The lag of ${seconds(time)} for ${movement} is just enough while both drives run as stated: ${must} to have something in hand for wind, wear and cold.`,
            source: inHand,
            related,
          };
        });
      }
    }
  },
});

const inHand = {
  text: 'plane geometry and motion of both leaves; that one may be 5 % slower, the other 5 % quicker, and 0.2 s between their starts: common practice, no source',
  standing: 'common practice',
} as const;
