import { guards, heedingOf, measureOf, missesPeople, watches } from '../../circuits/index.ts';
import { headPlace, type Leaf, type Sensor } from '../../model/index.ts';
import {
  type Command,
  commandsOf,
  inWords,
  matrixSource,
  measuresFor,
  meets,
  missed,
  present,
  strictest,
  type Users,
} from '../../safeguards/index.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'safeguarding-below-minimum',
  severity: 'error',
  title: 'The closing edge of a leaf has less protection than the way it is controlled and the people near it ask for.',
  why: 'The closing edge is where people are crushed. Who may be there and how the gate is commanded decide the least that must protect them.',
  remedy: 'Add the device that is missing, wire it, and let the panel heed it while the gate closes; or change how the gate is controlled.',
  source: matrixSource,
  acceptable: false,
  check: (installation, report) => {
    const { site, leaves } = installation;
    if (site?.facts.rules?.value !== 'europe' || site.facts.users === undefined) return;
    const users = site.facts.users.value;
    const worst = strictest(commandsOf(installation), users);
    if (worst === undefined) return;
    for (const leaf of leaves) {
      if (leaf.drives.length === 0) continue;
      const measures = measuresFor(leaf, 'closing', false);
      // A leaf with nothing at all is the business of closing-edge-unguarded.
      if (!measures.C && !measures.D && !measures.E) continue;
      if (meets(measures, worst.requirement)) continue;
      report({
        at: headPlace(leaf),
        what: `The closing edge of ${quoted(leaf.name)} has measure ${present(measures)}, but ${commandInWords(worst.command)} with ${people[users]} near needs ${worst.requirement}.`,
        remedy: `Give ${quoted(leaf.name)} ${inWords[worst.requirement]}.`,
        related: [
          { message: 'this way of control asks for it', start: worst.command.at.start, end: worst.command.at.end },
          { message: 'and these users', start: site.facts.users.line.start, end: site.facts.users.line.end },
          ...uncounted(leaf),
        ],
      });
    }
  },
});

/** Most devices that are pointed to. */
const mostNamed = 6;

/** Devices that protect people and do not count at this edge while it closes, each with why. */
function uncounted(leaf: Leaf): readonly Related[] {
  const told: Related[] = [];
  for (const sensor of leaf.installation.sensors) {
    if (told.length === mostNamed) break;
    if (measureOf(sensor) === undefined || (sensor.leaf !== undefined && sensor.leaf !== leaf)) continue;
    const why = whyUncounted(sensor, leaf);
    if (why !== '') told.push({ message: `${quoted(sensor.name)} ${why}`, ...headPlace(sensor) });
  }
  return told;
}

function whyUncounted(sensor: Sensor, leaf: Leaf): string {
  if (heedingOf(sensor) === undefined) return 'does not count: the panel does not heed it';
  if (!watches(sensor, 'closing')) return 'does not watch closing';
  if (!guards(sensor, leaf, 'closing')) return 'does not guard this edge';
  return missesPeople(sensor) ? missed(sensor) : '';
}

export const people: Readonly<Record<Users, string>> = {
  trained: 'trained people only',
  limited: 'a limited group of people',
  public: 'the public',
};

const commandInWords = ({ control, kind, cause }: Command): string =>
  control === undefined ? byItself[cause] : `${quoted(control.name)} (${kind})`;

const byItself: Readonly<Record<Command['cause'], string>> = {
  control: 'what moves it by itself',
  dwell: 'closing by itself after the dwell',
  loop: 'moving for a vehicle on a loop',
  selector: 'closing by itself, as a selector is set,',
};
