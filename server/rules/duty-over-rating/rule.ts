import { cyclesAllowed, dutyOf, dutySource, trafficOf } from '../../figures/traffic/working.ts';
import { headPlace } from '../../model/index.ts';
import { bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact, toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A hundredth of the duty: finer than anybody knows the traffic. */
const slack = 0.01;
const held = {
  figure: 'drive.NAME.duty',
  name: 'duty',
  unit: '1',
  way: 'most',
  says: (value: number) => `${shown(value * 100)} %`,
} as const;

export const rule = installationRule({
  name: 'duty-over-rating',
  severity: 'error',
  title: 'In the busiest hour a motor runs for a greater share of the time than it is rated for.',
  why: 'It grows too hot and its protection stops it where it is: the gate stands open, or shut, when it is needed most.',
  remedy: 'Choose a drive of a higher duty, shorten the run or the seat, or let the gate stand open longer in busy hours.',
  source: dutySource,
  acceptable: true,
  holds: (installation, hold) => {
    const traffic = trafficOf(installation);
    if (traffic === undefined) return;
    for (const drive of installation.drives) {
      const rated = drive.model?.facts.duty;
      if (rated === undefined) continue;
      const duty = dutyOf(drive);
      if (duty === undefined) continue;
      hold(bound(held, drive.name, duty.factor, rated.value, rated.value * slack), headPlace(drive), () => ({
        what: `${quoted(drive.name)} runs for ${shown(duty.factor * 100)} % of the busiest hour, with ${shown(traffic.cycles * 3600)} cycles of ${shown(duty.running)} s, but is rated for ${shown(rated.value * 100)} %: ${shown(cyclesAllowed(rated.value, duty.running))} cycles an hour.`,
        related: [
          ...toFact('the traffic', installation.site?.facts.traffic),
          ...toModelFact('the rating, in its model', installation, drive.model, rated),
        ],
      }));
    }
  },
});
