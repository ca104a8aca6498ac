import { guards, heedingOf, measureOf, sensorsFor } from '../../circuits/index.ts';
import { headPlace, type Leaf } from '../../model/index.ts';
import { commandsOf, forcesProven, measuresFor } from '../../safeguards/index.ts';
import { installationRule, type Related } from '../rule.ts';
import { meets, requirementFor, type Users } from '../safeguarding-below-minimum/matrix.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'auto-close-without-tested-sensors',
  severity: 'error',
  title: 'The gate closes by itself, but its protection is not tested before each closing.',
  why: 'A sensor that has failed unseen looks like a clear path. When nobody stands by, only a test before each closing finds that out in time.',
  remedy: 'Use self-checking sensors, or sensors with a test input on a panel that tests them; or leave out the closing by itself.',
  source: {
    text: 'EN 12453:2000, 5.5.1, Table 1; on faults that must be found, BGR 232, 4.7.3 (withdrawn), and HSE safety alert of 26 November 2018',
    standing: 'published',
  },
  acceptable: false,
  under: 'outside north-america',
  check: (installation, report) => {
    const { site, leaves } = installation;
    const automatic = commandsOf(installation).findLast(({ kind }) => kind === 'automatic');
    if (automatic === undefined) return;
    const users: Users = site?.facts.users?.value ?? 'public';
    const requirement = requirementFor('automatic', users);
    for (const leaf of leaves) {
      if (leaf.drives.length === 0) continue;
      // What is missing altogether is the business of the rules on the closing edge; here it is there, but not tested.
      if (!meets(measuresFor(leaf, 'closing', false), requirement) || meets(measuresFor(leaf, 'closing', true), requirement)) continue;
      const untested = untestedOf(leaf);
      report({
        at: automatic.at,
        what: `The gate is to close by itself, but what protects ${quoted(leaf.name)} is not tested before each closing: ${untested.map((it) => it.says).join('; ')}.`,
        related: [
          ...untested.map((it): Related => ({ message: it.says, start: it.start, end: it.end })),
          { message: 'the leaf that relies on it', ...headPlace(leaf) },
        ],
      });
    }
  },
});

/** Most devices that are named: somebody who mends these looks at the rest as well. */
const mostNamed = 6;

function untestedOf(leaf: Leaf): { says: string; start: number; end: number }[] {
  const sensors: { says: string; start: number; end: number }[] = [];
  for (const sensor of sensorsFor(leaf)) {
    if (sensors.length === mostNamed) break;
    const heeding = heedingOf(sensor);
    if (heeding === undefined || heeding.tested || !guards(sensor, leaf, 'closing') || measureOf(sensor) === undefined) continue;
    sensors.push({ says: `${quoted(sensor.name)}: ${heeding.because}`, ...headPlace(sensor) });
  }
  const drive = leaf.drives[0];
  // Measured forces can stand for an edge, but a limiter that has failed since shows in no record.
  if (drive === undefined || !forcesProven(leaf) || measuresFor(leaf, 'closing', true).C) return sensors;
  return [
    ...sensors,
    {
      says: `${quoted(drive.name)}: its forces were measured, but its model states no sensing of its own that would find a fault`,
      ...headPlace(drive),
    },
  ];
}
