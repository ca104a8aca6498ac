import { inDegrees, mechanics } from '../../figures/index.ts';
import { reachOf } from '../../figures/reachable-angle/working.ts';
import { factPlace, headPlace } from '../../model/index.ts';
import { bound, keeps } from '../bounds.ts';
import { degrees } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

/** A tenth of a degree. */
const slack = 0.1;
const held = { figure: 'drive.NAME.reachable-angle', name: 'reach of the drive', unit: 'deg', way: 'least' } as const;

export const rule = installationRule({
  name: 'angle-out-of-reach',
  severity: 'error',
  title: 'The drive cannot open the leaf as far as it is asked to.',
  why: 'The leaf stops short of its place, and vehicles and people meet it there; the drive strains against its own end.',
  remedy: 'Open less far, move the drive, or choose one that reaches further.',
  source: mechanics,
  acceptable: false,
  holds: ({ drives }, hold) => {
    for (const drive of drives) {
      const { leaf } = drive;
      const opens = leaf?.facts.opens;
      const reach = reachOf(drive);
      // Rams have a rule of their own, and so have dead points.
      if (leaf === undefined || opens === undefined || (reach?.endedBy !== 'rotation' && reach?.endedBy !== 'arms')) continue;
      const angle = bound(held, drive.name, inDegrees(reach.angle), inDegrees(opens.angle), slack);
      // How far an arm could open the leaf beyond what it is asked is not known.
      if (reach.endedBy === 'arms' && keeps(angle)) continue;
      hold(angle, factPlace(leaf, opens), () => ({
        what: `${quoted(leaf.name)} is to open ${degrees(opens.angle)}, but ${quoted(drive.name)} ${reach.endedBy === 'rotation' ? `turns ${degrees(reach.angle)} at most` : 'does not fit between its shaft and the leaf: its arms are too short or too long'}.`,
        related: [{ message: 'the drive', ...headPlace(drive) }],
      }));
    }
  },
});
