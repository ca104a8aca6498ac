import { factPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';

export const rule = installationRule({
  name: 'slow-zone-missing',
  severity: 'warning',
  title: 'Two leaves meet, or one meets its post, at full speed.',
  why: 'The last part of closing is where a hand or a body is caught, and a leaf that arrives at full speed has all its energy left to give.',
  remedy: 'Set a slow zone that begins early enough for the leaf to have come down to its slow speed before it meets anything.',
  source: commonPractice,
  acceptable: true,
  check: ({ motion, leaves }, report) => {
    if (motion === undefined || motion.unread.includes('slow-zone')) return;
    const { 'slow-zone': zone, speed } = motion.facts;
    const isSet = zone !== undefined && zone.last > 0;
    // A zone may be stated that is no slower than what comes before it.
    if (isSet && (zone.speed ?? 0) < (speed?.value ?? 1)) return;
    const driven = leaves.filter((leaf) => leaf.drives.length > 0).length;
    if (driven === 0) return;
    report({
      at: factPlace(motion, zone),
      what: `${driven > 1 ? 'The leaves meet' : 'The leaf arrives'} at full speed: ${isSet ? 'the slow zone is run no slower than the rest' : 'no slow zone is set'}.`,
    });
  },
});
