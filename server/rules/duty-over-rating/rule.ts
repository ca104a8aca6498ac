import { dutyOf, dutySource, trafficOf } from '../../figures/traffic/figure.ts';
import { cyclesAllowed } from '../../figures/traffic/maths.ts';
import { factPlace, headPlace, type Drive } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A hundredth of the duty: finer than anybody knows the traffic. */
const slack = 0.01;
const held = { figure: 'drive.NAME.duty', name: 'duty', unit: '1', way: 'most', says: (value: number) => `${shown(value * 100)} %` } as const;

function boundOf(drive: Drive): Bound | undefined {
  const rated = drive.model?.facts.duty;
  const duty = rated === undefined ? undefined : dutyOf(drive);
  return rated === undefined || duty === undefined ? undefined : bound(held, drive.name, duty.factor, rated.value, rated.value * slack);
}

export const rule = installationRule({
  name: 'duty-over-rating',
  severity: 'error',
  title: 'In the busiest hour a motor runs for a greater share of the time than it is rated for.',
  why: 'It grows too hot and its protection stops it where it is: the gate stands open, or shut, when it is needed most.',
  remedy: 'Choose a drive of a higher duty, shorten the run or the seat, or let the gate stand open longer in busy hours.',
  source: dutySource,
  acceptable: true,
  check: (installation, report) => {
    const traffic = installation.site?.facts.traffic;
    if (traffic === undefined) return;
    for (const drive of installation.drives) {
      const rated = drive.model?.facts.duty;
      const dutyBound = boundOf(drive);
      const duty = dutyBound === undefined || keeps(dutyBound) ? undefined : dutyOf(drive);
      if (rated === undefined || duty === undefined) continue;
      const cycles = (trafficOf(installation)?.cycles ?? 0) * 3600;
      report({
        at: headPlace(drive),
        what: `${quoted(drive.name)} runs for ${shown(duty.factor * 100)} % of the busiest hour, with ${shown(cycles)} cycles of ${shown(duty.running)} s, but is rated for ${shown(rated.value * 100)} %: ${shown(cyclesAllowed(rated.value, duty.running))} cycles an hour.`,
        related: [
          { message: 'the traffic', ...factPlace({ at: traffic.line }, traffic) },
          { message: 'the rating, in its model', ...(drive.model === undefined || drive.model.path === installation.path ? {} : { path: drive.model.path }), start: rated.line.start, end: rated.line.end },
        ],
      });
    }
  },
  margins: ({ site, drives }, give) => {
    if (site?.facts.traffic === undefined) return;
    for (const drive of drives) {
      const dutyBound = boundOf(drive);
      if (dutyBound !== undefined) give(dutyBound, headPlace(drive));
    }
  },
});
