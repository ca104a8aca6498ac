import { guards, heedingOf, measureOf, passesOver } from '../../circuits/index.ts';
import { headPlace, type Leaf, regimeOf, type Sensor } from '../../model/index.ts';
import { askedOf, measuresFor, meets } from '../../safeguards/index.ts';
import { millimetres } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** Whether a ray that is low enough guards a leaf, and the panel heeds it: it sees what a higher one may not. */
const hasLowRay = (leaf: Leaf): boolean =>
  leaf.installation.sensors.some((sensor) => sensor.facts.height !== undefined && !passesOver(sensor) && seesFor(sensor, leaf));

const seesFor = (sensor: Sensor, leaf: Leaf): boolean => {
  const measure = measureOf(sensor);
  return (measure === 'D' || measure === 'E') && heedingOf(sensor) !== undefined && guards(sensor, leaf, 'closing');
};

export const rule = installationRule({
  name: 'beam-too-high',
  severity: 'error',
  title: 'The lowest ray that is to see people is so high that it misses somebody on the ground.',
  why: 'The test body stands for a child or a person who has fallen: it is 300 mm high at most when it lies on one of its long sides, and a ray above that passes over. So it counts as seeing nobody.',
  remedy: 'Set the lowest ray at 300 mm or lower; below 200 mm it meets the test body however it lies.',
  source: {
    text: 'DHF, Powered Gate Myth Buster #4 (a test body of 700 mm by 300 mm; that it is 200 mm thick is from memory)',
    standing: 'published',
  },
  acceptable: 'warnings',
  check: (installation, report) => {
    const { sensors, leaves } = installation;
    for (const sensor of sensors) {
      const { height } = sensor.facts;
      if (height === undefined || !passesOver(sensor)) continue;
      const leaf = leaves.find((each) => each.drives.length > 0 && seesFor(sensor, each) && !hasLowRay(each));
      if (leaf === undefined) continue;
      const asked = askedOf(installation);
      // Where what else is there is enough, a high beam adds little, and takes nothing away. In North America other bodies are tested with.
      const isNeeded =
        regimeOf(installation).body !== 'north-america' &&
        (asked === undefined || !meets(measuresFor(leaf, 'closing', false), asked.requirement));
      report({
        at: height.line,
        severity: isNeeded ? 'error' : 'warning',
        what: `${quoted(sensor.name)} has the lowest ray, at ${millimetres(height.value)}: more than 300 mm, so that it passes over who lies on the ground.`,
        related: [{ message: 'the leaf that it watches', ...headPlace(leaf) }],
      });
    }
  },
});
