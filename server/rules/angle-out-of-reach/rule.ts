import { reachOf } from '../../figures/reachable-angle/figure.ts';
import { mechanics } from '../../figures/common.ts';
import { factPlace, headPlace } from '../../model/index.ts';
import { degrees } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** A tenth of a degree. */
const slack = 0.1 * (Math.PI / 180);

export const rule = installationRule({
  name: 'angle-out-of-reach',
  severity: 'error',
  title: 'The drive cannot open the leaf as far as it is asked to.',
  why: 'The leaf stops short of its place, and vehicles and people meet it there; the drive strains against its own end.',
  remedy: 'Open less far, move the drive, or choose one that reaches further.',
  source: mechanics,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const opens = drive.leaf?.facts.opens;
      const reach = opens === undefined ? undefined : reachOf(drive);
      // Rams have a rule of their own, and so have dead points.
      if (opens === undefined || reach === undefined || reach.endedBy === 'stroke' || reach.endedBy === 'dead point' || reach.angle >= opens.angle - slack) continue;
      report({
        at: factPlace({ at: opens.line }, opens),
        what: `“${drive.leaf?.name ?? ''}” is to open ${degrees(opens.angle)}, but “${drive.name}” ${reach.endedBy === 'rotation' ? `turns ${degrees(reach.angle)} at most` : 'does not fit between its shaft and the leaf: its arms are too short or too long'}.`,
        related: [{ message: 'the drive', ...headPlace(drive) }],
      });
    }
  },
});
