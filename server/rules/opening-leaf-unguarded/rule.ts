import { guards, heedingOf, measureOf, missesPeople, sensorsFor } from '../../circuits/index.ts';
import { headPlace, type Sensor } from '../../model/index.ts';
import { heldInView, missed, openingForcesProven, opensUnwatched } from '../../safeguards/index.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'opening-leaf-unguarded',
  severity: 'error',
  title: 'A leaf opens onto people, and nothing that is tested watches it while it opens.',
  why: 'Who stands or walks where the leaf opens to does not expect it, and is pushed over or crushed by it.',
  remedy:
    'Let tested presence detection watch “opening” where the leaf swings, or fit a tested pressure-sensitive edge on its opening edge, or measure the forces of opening; or let the leaf open the other way.',
  source: {
    text: 'EN 12453:2000, 5.5.1 (hazards of opening are to be covered as well); HSE, Powered gates: responsibilities',
    standing: 'published',
  },
  acceptable: false,
  under: 'outside north-america',
  check: (installation, report) => {
    const unwatched = opensUnwatched(installation);
    const publicIsNear = (installation.site?.facts.users?.value ?? 'public') === 'public';
    if (heldInView(installation)) return;
    for (const leaf of installation.leaves) {
      const { opens } = leaf.facts;
      if (leaf.drives.length === 0 || opens === undefined) continue;
      const ontoPublic = publicIsNear && opens.way === 'outward';
      if (!ontoPublic && unwatched === undefined) continue;
      const there = sensorsFor(leaf).filter((sensor) => measureOf(sensor) !== undefined && guards(sensor, leaf, 'opening'));
      if (there.some((sensor) => heedingOf(sensor)?.tested === true && !missesPeople(sensor)) || openingForcesProven(leaf)) continue;
      const why = ontoPublic
        ? 'opens outward, where the public is'
        : unwatched?.control === undefined
          ? 'is opened for a vehicle on a loop'
          : `is opened without anybody beside it (${quoted(unwatched.control.name)})`;
      report({
        at: opens.line,
        what: `${quoted(leaf.name)} ${why}, and nothing that is tested watches it while it opens.`,
        related: [
          ...there.map((sensor): Related => ({ message: whyNot(sensor), ...headPlace(sensor) })),
          ...(ontoPublic || unwatched === undefined
            ? []
            : [{ message: 'it is opened by this', start: unwatched.at.start, end: unwatched.at.end }]),
        ],
      });
    }
  },
});

function whyNot(sensor: Sensor): string {
  const heeding = heedingOf(sensor);
  if (heeding === undefined) return `${quoted(sensor.name)} is meant to, but the panel does not heed it`;
  if (missesPeople(sensor)) return `${quoted(sensor.name)} ${missed(sensor)}`;
  return `${quoted(sensor.name)} is not tested: ${heeding.because}`;
}
