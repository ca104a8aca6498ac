import { overlapOf, type OverlapWorkings } from '../../figures/least-lag/figure.ts';
import { factPlace, type Installation } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { seconds, secondsAtLeast } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** Ten milliseconds: finer than any panel keeps time. */
const slack = 0.01;

const held = {
  opening: { figure: 'motion.least-lag', name: 'lag when opening', unit: 's', way: 'least' },
  closing: { figure: 'motion.least-lag-closing', name: 'lag when closing', unit: 's', way: 'least' },
} as const;
const movements = ['opening', 'closing'] as const;

const lagOf = (installation: Installation, movement: (typeof movements)[number]) => installation.motion?.facts.lag.find((each) => each.movement === movement);
const boundOf = (installation: Installation, overlap: OverlapWorkings, movement: (typeof movements)[number]): Bound =>
  bound(held[movement], '', lagOf(installation, movement)?.time ?? 0, overlap[movement].lag, slack);

export const rule = installationRule({
  name: 'lag-too-small',
  severity: 'error',
  title: 'The lag between two leaves that overlap is so short that they run into each other.',
  why: 'The leaves jam or lock the wrong way round, and whoever has a hand between them is caught by two drives.',
  remedy: 'Set at least the least lag, and some more for wind, wear and cold.',
  source: { text: 'plane geometry and constant-acceleration motion of both leaves', standing: 'derived' },
  acceptable: false,
  check: (installation, report) => {
    const overlap = overlapOf(installation);
    if (overlap === undefined) return;
    const closes = overlap.covering.facts.closes;
    for (const movement of movements) {
      const lagBound = boundOf(installation, overlap, movement);
      if (keeps(lagBound)) continue;
      const least = lagBound.limit;
      const lag = lagOf(installation, movement);
      const [first, second] = movement === 'opening' ? [overlap.covering, overlap.covered] : [overlap.covered, overlap.covering];
      report({
        at: factPlace(overlap.covering, lag ?? closes),
        what:
          lag === undefined
            ? `No lag is set for ${movement}, but “${second.name}” must start at least ${secondsAtLeast(least)} after “${first.name}”, or the leaves meet.`
            : `The lag of ${seconds(lag.time)} for ${movement} is too short: “${second.name}” must start at least ${secondsAtLeast(least)} after “${first.name}”, or the leaves meet.`,
        related: closes === undefined || lag === undefined ? [] : [{ message: 'the overlap', start: closes.line.start, end: closes.line.end }],
      });
    }
  },
  margins: (installation, give) => {
    const overlap = overlapOf(installation);
    if (overlap === undefined) return;
    for (const movement of movements) give(boundOf(installation, overlap, movement), factPlace(overlap.covering, lagOf(installation, movement) ?? overlap.covering.facts.closes));
  },
});
