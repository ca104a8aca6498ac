import { guards, heedingOf, measureOf, sensorsFor } from '../../circuits/index.ts';
import { headPlace, type Installation, type Leaf, type Sensor } from '../../model/index.ts';
import { type Asked, askedOf, commandsOf, forcesProven, measuresFor, meets } from '../../safeguards/index.ts';
import { installationRule, type Related, type Report } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'protection-untested',
  severity: 'error',
  title: 'A device that protects people is not tested before each movement.',
  why: 'A sensor that has failed unseen looks like a clear path, and only a test before each movement finds that out in time.',
  remedy: 'Use self-checking sensors, or sensors with a test input on a panel that tests them.',
  source: {
    text: 'EN 12453:2017, 5.1.2; DHF, Powered Gate Myth Buster #4 (at least category 2 as installed); on faults that must be found, BGR 232, 4.7.3 (withdrawn), and HSE safety alert of 26 November 2018',
    standing: 'published',
  },
  acceptable: 'warnings',
  under: 'outside north-america',
  check: (installation, report) => {
    const told = new Set<Sensor>();
    const asked = askedOf(installation);
    if (asked !== undefined) sayRelied(installation, asked, told, report);
    // What is not needed for that, or watches another movement, is there for a reason too.
    for (const sensor of installation.sensors) {
      const heeding = measureOf(sensor) === undefined || told.has(sensor) ? undefined : heedingOf(sensor);
      if (heeding === undefined || heeding.tested) continue;
      report({
        at: headPlace(sensor),
        severity: 'warning',
        what: `${quoted(sensor.name)} protects people, and is not tested before each movement: ${heeding.because}.`,
      });
    }
  },
});

/** What the closing edges rely on and nothing tests. */
function sayRelied(installation: Installation, asked: Asked, told: Set<Sensor>, report: (report: Report) => void): void {
  const { requirement } = asked;
  // Of those that ask for as much, the one that waits for nobody matters most.
  const itself = commandsOf(installation).find(({ kind }) => kind === 'automatic');
  const command = itself ?? asked.command;
  for (const leaf of installation.leaves) {
    if (leaf.drives.length === 0) continue;
    // What is missing altogether is the business of the rules on the closing edge; here it is there, but not tested.
    if (!meets(measuresFor(leaf, 'closing', false), requirement) || meets(measuresFor(leaf, 'closing', true), requirement)) continue;
    const untested = untestedOf(leaf, told);
    const first = untested[0];
    report({
      at: first ?? headPlace(leaf),
      what: `What protects ${quoted(leaf.name)} is not tested before each movement${itself === undefined ? '' : ', and the gate moves by itself'}: ${untested.map((it) => it.says).join('; ')}.`,
      related: [
        ...untested.slice(1).map((it): Related => ({ message: it.says, start: it.start, end: it.end })),
        { message: itself === undefined ? 'this commands it' : 'it moves by itself', start: command.at.start, end: command.at.end },
        { message: 'the leaf that relies on it', ...headPlace(leaf) },
      ],
    });
  }
}

/** Most devices that are named: somebody who mends these looks at the rest as well. */
const mostNamed = 6;

function untestedOf(leaf: Leaf, told: Set<Sensor>): { says: string; start: number; end: number }[] {
  const sensors: { says: string; start: number; end: number }[] = [];
  for (const sensor of sensorsFor(leaf)) {
    const heeding = heedingOf(sensor);
    if (heeding === undefined || heeding.tested || !guards(sensor, leaf, 'closing') || measureOf(sensor) === undefined) continue;
    told.add(sensor);
    if (sensors.length < mostNamed) sensors.push({ says: `${quoted(sensor.name)}: ${heeding.because}`, ...headPlace(sensor) });
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
