import { commonPractice, installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'lag-without-overlap',
  severity: 'warning',
  title: 'A lag is set, but no leaf overlaps another.',
  why: 'A lag makes every passage slower and leaves the opening half closed for longer; without an overlap it has no work to do, and perhaps the overlap was forgotten.',
  remedy: 'Say which leaf covers the other with “closes onto”, or take the lag out.',
  source: commonPractice,
  acceptable: true,
  check: ({ motion, leaves }, report) => {
    if (motion === undefined) return;
    for (const leaf of leaves) if (leaf.facts.closes !== undefined || leaf.unread.includes('closes')) return;
    for (const lag of motion.facts.lag)
      if (lag.time > 0) report({ at: lag.line, what: `A lag is set for ${lag.movement}, but no leaf of this gate closes onto another.` });
  },
});
