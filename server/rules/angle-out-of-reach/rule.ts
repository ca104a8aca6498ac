import { reachOf } from '../../figures/reachable-angle/figure.ts';
import { mechanics } from '../../figures/common.ts';
import { inDegrees } from '../../figures/index.ts';
import { factPlace, headPlace, type Drive } from '../../model/index.ts';
import { bound, keeps, type Bound } from '../bounds.ts';
import { degrees } from '../numbers.ts';
import { installationRule } from '../rule.ts';

/** A tenth of a degree. */
const slack = 0.1;
const held = { figure: 'drive.NAME.reachable-angle', name: 'reach of the drive', unit: 'deg', way: 'least' } as const;

/** Rams have a rule of their own, and so have dead points. */
function boundOf(drive: Drive): Bound | undefined {
  const opens = drive.leaf?.facts.opens;
  const reach = opens === undefined ? undefined : reachOf(drive);
  return opens === undefined || reach === undefined || reach.endedBy === 'stroke' || reach.endedBy === 'dead point' ? undefined : bound(held, drive.name, inDegrees(reach.angle), inDegrees(opens.angle), slack);
}

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
      const angle = boundOf(drive);
      const opens = angle === undefined || keeps(angle) ? undefined : drive.leaf?.facts.opens;
      const reach = opens === undefined ? undefined : reachOf(drive);
      if (opens === undefined || reach === undefined) continue;
      report({
        at: factPlace({ at: opens.line }, opens),
        what: `“${drive.leaf?.name ?? ''}” is to open ${degrees(opens.angle)}, but “${drive.name}” ${reach.endedBy === 'rotation' ? `turns ${degrees(reach.angle)} at most` : 'does not fit between its shaft and the leaf: its arms are too short or too long'}.`,
        related: [{ message: 'the drive', ...headPlace(drive) }],
      });
    }
  },
  margins: ({ drives }, give) => {
    for (const drive of drives) {
      const opens = drive.leaf?.facts.opens;
      const angle = boundOf(drive);
      // How far an arm could open the leaf beyond what it is asked is not known.
      if (opens !== undefined && angle !== undefined && !(keeps(angle) && reachOf(drive)?.endedBy === 'arms')) give(angle, factPlace({ at: opens.line }, opens));
    }
  },
});
