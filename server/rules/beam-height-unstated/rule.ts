import { guards, heedingOf, measureOf } from '../../circuits/index.ts';
import { headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import { hasLowRay } from '../beam-too-high/rule.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { lost } from '../unread.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'beam-height-unstated',
  severity: 'note',
  title: 'It is not said how high a beam stands that is to see people, so whether it sees somebody on the ground is not judged.',
  why: 'A beam that passes over a child or over somebody who has fallen counts here as one that sees them.',
  remedy: 'Measure from the ground to the beam and state its “height”.',
  source: commonPractice,
  acceptable: true,
  check: ({ sensors, leaves }, report) => {
    for (const sensor of sensors) {
      if (sensor.facts.height !== undefined || !seesPeople(sensor) || lost(sensor.unread, 'sensor', 'height')) continue;
      const isRelied = (leaf: Leaf): boolean => leaf.drives.length > 0 && guards(sensor, leaf, 'closing') && !hasLowRay(leaf);
      if (!leaves.some(isRelied)) continue;
      report({
        at: headPlace(sensor),
        lacks: ['height'],
        what: `${quoted(sensor.name)} counts as one that sees people, also on the ground, though its height is not stated.`,
      });
    }
  },
});

const seesPeople = (sensor: Sensor): boolean =>
  sensor.model?.facts.kind?.value === 'beam' && measureOf(sensor) === 'D' && heedingOf(sensor) !== undefined;
