import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'slow-zone-missing',
  severity: 'warning',
  title: 'Two leaves meet, or one meets its post, at full speed.',
  why: 'The last part of closing is where a hand or a body is caught, and a leaf that arrives at full speed has all its energy left to give.',
  remedy: 'Set a slow zone over the last part of the travel, for example “slow-zone last 10 %”.',
  source: commonPractice,
  acceptable: true,
  check: ({ motion, leaves }, report) => {
    if (motion === undefined || motion.unread.includes('slow-zone') || (motion.facts['slow-zone']?.last ?? 0) > 0) return;
    let driven = 0;
    for (const leaf of leaves) if (leaf.drives.length > 0) driven++;
    if (driven === 0) return;
    const zone = motion.facts['slow-zone'];
    report({
      at: zone === undefined ? headPlace(motion) : zone.line,
      what: driven > 1 ? 'The leaves meet at full speed: no slow zone is set.' : 'The leaf arrives at full speed: no slow zone is set.',
    });
  },
});
