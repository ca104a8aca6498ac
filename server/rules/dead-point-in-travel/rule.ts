import { armOf } from '../../figures/articulated-arm/working.ts';
import { mechanics } from '../../figures/index.ts';
import { ramOf } from '../../figures/linear-ram/working.ts';
import { type Drive, factPlace } from '../../model/index.ts';
import { degrees, millimetres } from '../numbers.ts';
import { toFact } from '../related.ts';
import { installationRule, type Related } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'dead-point-in-travel',
  severity: 'error',
  title: 'The drive meets a dead point before the leaf is open.',
  why: 'At a dead point the drive cannot turn the leaf whatever its force, and just before it the force on hinges and brackets has no limit.',
  remedy: 'Move the brackets, and look at the figures of this drive again.',
  source: mechanics,
  acceptable: false,
  check: ({ drives }, report) => {
    for (const drive of drives) {
      const ram = ramOf(drive);
      if (ram?.deadPoint !== undefined) {
        const wrongSide = ram.mounting.out < 0 && ram.mounting.along >= 0;
        report({
          at: factPlace(drive, drive.facts['post-bracket']),
          what: `${quoted(drive.name)} meets a dead point at ${degrees(ram.deadPoint)}, before the ${degrees(ram.opening)} asked for: hinge and both brackets are then in one line.`,
          ...(wrongSide
            ? {
                remedy: `The post bracket stands ${millimetres(-ram.mounting.out)} on the side that the leaf does not open to. Put it on the other side of the hinge line, or in front of the hinge for a leaf that is pushed open.`,
              }
            : {}),
          related: toOpeningAskedFor(drive),
        });
        continue;
      }
      const arm = armOf(drive);
      if (arm?.deadPoint !== undefined)
        report({
          at: factPlace(drive, drive.facts.shaft),
          what: `${quoted(drive.name)} meets a dead point at ${degrees(arm.deadPoint.angle)}, before the ${degrees(arm.opening)} asked for: ${arm.deadPoint.kind === 'arms-in-line' ? 'its two arms are then in one line' : 'the arm on the leaf then points at the hinge'}.`,
          related: toOpeningAskedFor(drive),
        });
    }
  },
});

const toOpeningAskedFor = (drive: Drive): readonly Related[] => toFact('the opening asked for', drive.leaf?.facts.opens);
