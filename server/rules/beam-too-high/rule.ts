import { guards, heedingOf, measureOf } from '../../circuits/index.ts';
import type { Leaf } from '../../model/index.ts';
import { measuresFor } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Greatest height at which a beam still meets the lying test body of 200 mm by 300 mm by 700 mm, metres. */
const highest = 0.3;

/** Whether a beam that is low enough guards a leaf, and the panel heeds it: it sees what a higher one may not. */
export const hasLowBeam = (leaf: Leaf): boolean =>
  leaf.installation.sensors.some(
    (sensor) =>
      sensor.facts.height !== undefined &&
      sensor.facts.height.value <= highest &&
      measureOf(sensor) === 'D' &&
      heedingOf(sensor) !== undefined &&
      guards(sensor, leaf, 'closing'),
  );

export const rule = installationRule({
  name: 'beam-too-high',
  severity: 'warning',
  title: 'A beam that is to see people is so high that it misses somebody on the ground.',
  why: 'The test body stands for a child or a person who has fallen; lying down it is 200 mm high, and a beam above 300 mm passes over it.',
  remedy: 'Set the lowest beam at 300 mm or lower; at 200 mm it meets the test body in every position.',
  source: { text: 'EN 12453 and EN 12445 (test body), from memory', standing: 'from memory' },
  acceptable: true,
  check: ({ sensors, leaves }, report) => {
    for (const sensor of sensors) {
      const { height } = sensor.facts;
      if (height === undefined || height.value <= highest || measureOf(sensor) !== 'D') continue;
      if (leaves.some((leaf) => guards(sensor, leaf, 'closing') && measuresFor(leaf, 'closing', false).D && !hasLowBeam(leaf)))
        report({
          at: height.line,
          what: `${quoted(sensor.name)} is the lowest beam and stands at ${Math.round(height.value * 1000)} mm, which is more than 300 mm (from memory).`,
        });
    }
  },
});
